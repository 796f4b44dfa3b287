//! The document's plane shapes as outlines that can be meshed.

use coaming_panel as panel;

use crate::document::{Outline, Point};

/// The outline in metres. A rectangle or circle lies about `centre`, or about the cover's origin without one; a polygon is
/// already in the cover's coordinates and does not move.
///
/// A radius of 0 is a sharp corner. Whether the shape is possible is for [`Outline::check_shape`] to say.
pub(super) fn outline(shape: &Outline, centre: Option<&Point>) -> panel::Outline {
    let (x, y) = centre.map_or((0.0, 0.0), |centre| (centre.x.value, centre.y.value));
    match shape {
        Outline::Rectangle(rectangle) => {
            let (width, height) = (rectangle.width.value, rectangle.height.value);
            let (left, bottom) = (x - width / 2.0, y - height / 2.0);
            match rectangle.corner_radius.map(|radius| radius.value).filter(|radius| *radius > 0.0) {
                Some(radius) => panel::Outline::rounded_rectangle(left, bottom, width, height, radius),
                None => panel::Outline::rectangle(left, bottom, width, height),
            }
        }
        Outline::Circle(circle) => panel::Outline::circle(x, y, circle.diameter.value / 2.0),
        Outline::Polygon(polygon) => {
            let corners =
                polygon.points.iter().map(|point| panel::Point { x: point.x.value, y: point.y.value });
            panel::Outline::polygon(&corners.collect::<Vec<_>>())
        }
    }
}
