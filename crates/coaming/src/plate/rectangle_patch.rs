//! Kernel: rectangle under a patch of pressure, and where deflection and moment are largest. Plain numbers
//! for unit flexural rigidity and unit pressure.

use super::clamped_patch::ClampedPatch;
use super::field::Bending;
use super::levy_patch::Patch;

/// A value and its place from the corner.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Peak {
    pub value: f64,
    pub x: f64,
    pub y: f64,
}

/// What the plate does under the patch.
#[derive(Debug, Clone, Copy)]
pub(crate) struct UnderPatch {
    pub at_patch: Bending,
    pub deflection: Peak,
    /// Principal moment of the largest size on the patch.
    pub patch_moment: Peak,
    /// Moment across an edge of the largest size; zero for a supported plate.
    pub edge_moment: Peak,
    /// Twisting moment of the largest size at a corner; zero for a clamped plate.
    pub corner_twist: f64,
    /// Largest relative change of deflection and of moment at the patch between two resolutions.
    pub deflection_change: f64,
    pub moment_change: f64,
}

/// The deflected plate.
enum Plate {
    Supported(Patch),
    /// Resolved for the edges normal to x, and for those normal to y.
    Clamped(Box<(ClampedPatch, ClampedPatch)>),
}

impl Plate {
    fn at(&self, x: f64, y: f64) -> Bending {
        match self {
            Self::Supported(patch) => patch.at(x, y).bending(),
            Self::Clamped(plates) => plates.0.at(x, y),
        }
    }
}

/// Past this many short sides from the patch nothing is left of its effect: a longer plate is cut there.
const FELT: f64 = 10.0;
/// Most functions of one parity along a side.
const MOST_FUNCTIONS: f64 = 600.0;

/// Solves for a plate supported or clamped all round.
pub(crate) fn solve(patch: Patch, clamped: bool, poissons_ratio: f64) -> UnderPatch {
    let felt = FELT * patch.a.min(patch.b);
    let (x0, y0) = ((patch.x1 - felt).max(0.0), (patch.y1 - felt).max(0.0));
    let cut = Patch {
        a: patch.a.min(patch.x2 + felt) - x0,
        b: patch.b.min(patch.y2 + felt) - y0,
        x1: patch.x1 - x0,
        x2: patch.x2 - x0,
        y1: patch.y1 - y0,
        y2: patch.y2 - y0,
        ends: patch.ends,
    };
    let mut outcome = solve_cut(cut, clamped, poissons_ratio);
    for peak in [&mut outcome.deflection, &mut outcome.patch_moment, &mut outcome.edge_moment] {
        peak.x += x0;
        peak.y += y0;
    }
    outcome
}

fn solve_cut(patch: Patch, clamped: bool, poissons_ratio: f64) -> UnderPatch {
    let (x, y) = (0.5 * (patch.x1 + patch.x2), 0.5 * (patch.y1 + patch.y2));
    let plate = if clamped {
        let (nx, ny) = counts(patch.a, patch.b);
        let (my, mx) = counts(patch.b, patch.a);
        Plate::Clamped(Box::new((ClampedPatch::new(patch, nx, ny), ClampedPatch::new(patch, mx, my))))
    } else {
        Plate::Supported(patch)
    };
    let at_patch = plate.at(x, y);
    let deflection = largest_deflection(&plate, &patch, x, y);
    let patch_moment = largest_moment(&plate, &patch, poissons_ratio);
    let mut outcome = UnderPatch {
        at_patch,
        deflection,
        patch_moment,
        edge_moment: Peak::default(),
        corner_twist: 0.0,
        deflection_change: 0.0,
        moment_change: 0.0,
    };
    match &plate {
        Plate::Supported(patch) => {
            for (cx, cy) in [(0.0, 0.0), (patch.a, 0.0), (0.0, patch.b), (patch.a, patch.b)] {
                let twist = (1.0 - poissons_ratio) * patch.at(cx, cy).wxy;
                if twist.abs() > outcome.corner_twist.abs() {
                    outcome.corner_twist = twist;
                }
            }
        }
        Plate::Clamped(plates) => {
            let (first, second) = plates.as_ref();
            outcome.edge_moment = largest_edge_moment(first, second, &patch, x, y);
            let other = second.at(x, y);
            outcome.deflection_change = ((other.w - at_patch.w) / at_patch.w).abs();
            let (a, b) = (at_patch.moments(poissons_ratio), other.moments(poissons_ratio));
            let change = (a.0 - b.0).abs().max((a.1 - b.1).abs());
            outcome.moment_change =
                change / outcome.patch_moment.value.abs().max(outcome.edge_moment.value.abs());
        }
    }
    outcome
}

/// Functions of each parity across and along the edges normal to the first side.
fn counts(first: f64, second: f64) -> (usize, usize) {
    let across = 10.0 * (first / second).max(1.0).sqrt();
    let along = 20.0 * (second / first).max(1.0).sqrt();
    (across.min(MOST_FUNCTIONS).ceil() as usize, along.min(MOST_FUNCTIONS).ceil() as usize)
}

/// Newton's rule on the slopes, from the best of three places between the patch and the middle.
fn largest_deflection(plate: &Plate, patch: &Patch, x: f64, y: f64) -> Peak {
    let (mid_x, mid_y) = (0.5 * patch.a, 0.5 * patch.b);
    let mut best = (plate.at(x, y), x, y);
    for share in [0.5, 1.0] {
        let (tx, ty) = (x + share * (mid_x - x), y + share * (mid_y - y));
        let here = plate.at(tx, ty);
        if here.w > best.0.w {
            best = (here, tx, ty);
        }
    }
    for _ in 0..12 {
        let (f, fx, fy) = best;
        let determinant = f.wxx * f.wyy - f.wxy * f.wxy;
        // Uphill by Newton where the surface is a dome, otherwise straight up the slope.
        let (dx, dy) = if determinant > 0.0 && f.wxx < 0.0 {
            ((f.wxy * f.wy - f.wyy * f.wx) / determinant, (f.wxy * f.wx - f.wxx * f.wy) / determinant)
        } else {
            let steep = f.wx.abs() * patch.b + f.wy.abs() * patch.a;
            (0.1 * patch.a * patch.b * f.wx / steep, 0.1 * patch.a * patch.b * f.wy / steep)
        };
        let small = 1e-6;
        if dx.abs() <= small * patch.a && dy.abs() <= small * patch.b {
            break;
        }
        let mut step = 1.0;
        let mut gained = false;
        while step > 0.05 {
            let (tx, ty) = (fx + step * dx, fy + step * dy);
            if tx > 0.0 && tx < patch.a && ty > 0.0 && ty < patch.b {
                let here = plate.at(tx, ty);
                if here.w > f.w {
                    best = (here, tx, ty);
                    gained = true;
                    break;
                }
            }
            step *= 0.5;
        }
        if !gained {
            break;
        }
    }
    Peak { value: best.0.w, x: best.1, y: best.2 }
}

/// Highest point on the patch by fitted quadratics, from the patch's centre.
fn largest_moment(plate: &Plate, patch: &Patch, poissons_ratio: f64) -> Peak {
    let value = |x: f64, y: f64| plate.at(x, y).principal_moment(poissons_ratio);
    let (half_x, half_y) = (0.5 * (patch.x2 - patch.x1), 0.5 * (patch.y2 - patch.y1));
    let (mid_x, mid_y) = (0.5 * (patch.x1 + patch.x2), 0.5 * (patch.y1 + patch.y2));
    // Places on the patch by −1..1 both ways.
    let on_patch = |u: f64, v: f64| value(mid_x + u * half_x, mid_y + v * half_y);
    let (mut u, mut v) = (0.0, 0.0);
    let mut best = (on_patch(u, v), u, v);
    let mut step = 0.3;
    for _ in 0..4 {
        let middle = best.0;
        let (east, west) = (on_patch(u + step, v), on_patch(u - step, v));
        let (north, south) = (on_patch(u, v + step), on_patch(u, v - step));
        let corner = on_patch(u + step, v + step);
        let (gx, gy) = (0.5 * (east - west), 0.5 * (north - south));
        let (hxx, hyy) = (east - 2.0 * middle + west, north - 2.0 * middle + south);
        let hxy = corner - east - north + middle;
        let determinant = hxx * hyy - hxy * hxy;
        let (mut du, mut dv) = if determinant > 0.0 && hxx < 0.0 {
            (step * (hxy * gy - hyy * gx) / determinant, step * (hxy * gx - hxx * gy) / determinant)
        } else {
            (2.0 * step * gx.signum(), 2.0 * step * gy.signum())
        };
        // Keep the fit's own arms on the patch.
        let room = 0.98 - step * 0.3;
        du = (u + du).clamp(-room, room) - u;
        dv = (v + dv).clamp(-room, room) - v;
        for (m, tu, tv) in [
            (on_patch(u + du, v + dv), u + du, v + dv),
            (east, u + step, v),
            (west, u - step, v),
            (north, u, v + step),
            (south, u, v - step),
        ] {
            if m > best.0 && tu.abs() <= room && tv.abs() <= room {
                best = (m, tu, tv);
            }
        }
        if (best.1, best.2) == (u, v) && du.abs().max(dv.abs()) < 1e-4 {
            break;
        }
        (_, u, v) = best;
        step *= 0.3;
    }
    Peak { value: best.0, x: mid_x + best.1 * half_x, y: mid_y + best.2 * half_y }
}

/// Moment of the largest size across an edge: at the foot of the patch on each, then along the worst.
fn largest_edge_moment(
    normal_x: &ClampedPatch,
    normal_y: &ClampedPatch,
    patch: &Patch,
    x: f64,
    y: f64,
) -> Peak {
    let Patch { a, b, .. } = *patch;
    let moment = |edge: usize, place: f64| match edge {
        0 => -normal_x.at(0.0, place).wxx,
        1 => -normal_x.at(a, place).wxx,
        2 => -normal_y.at(place, 0.0).wyy,
        _ => -normal_y.at(place, b).wyy,
    };
    let mut worst = (0.0, 0, 0.0);
    for edge in 0..4 {
        let foot = if edge < 2 { y } else { x };
        let here = moment(edge, foot);
        if here < worst.0 {
            worst = (here, edge, foot);
        }
    }
    let (mut value, edge, mut place) = worst;
    let side = if edge < 2 { b } else { a };
    let mut step = 0.1 * side;
    for _ in 0..5 {
        let (low, high) = (place - step, place + step);
        if low <= 0.0 || high >= side {
            step *= 0.4;
            continue;
        }
        let (below, above) = (moment(edge, low), moment(edge, high));
        let bend = below - 2.0 * value + above;
        let shift = if bend > 0.0 { (0.5 * step * (below - above) / bend).clamp(-step, step) } else { 0.0 };
        for (m, at) in [(moment(edge, place + shift), place + shift), (below, low), (above, high)] {
            if m < value {
                (value, place) = (m, at);
            }
        }
        step *= 0.3;
    }
    let (x, y) = match edge {
        0 => (0.0, place),
        1 => (a, place),
        2 => (place, 0.0),
        _ => (place, b),
    };
    Peak { value, x, y }
}
