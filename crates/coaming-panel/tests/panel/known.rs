//! Panels with known answers, for what the estimates of the error are worth.
use crate::common::*;
use coaming_panel::*;

/// A quantity with an estimate of its own, its true value, and how far that itself may be off; compression in m, the others as shares.
pub(crate) enum Truth {
    Deflection(f64, f64),
    /// At a point, over the largest deflection.
    At(Point, f64, f64),
    Moment(f64, f64),
    Latch(usize, f64, f64),
    Smallest(f64, f64),
}

impl Truth {
    /// Error made, error estimated, and below what the reference cannot judge.
    pub(crate) fn compare(&self, answer: &Answer) -> (&'static str, f64, f64, f64) {
        let share = |found: f64, value: f64| (found.abs() / value.abs() - 1.0).abs();
        let error = &answer.error;
        match *self {
            Self::Deflection(value, off) => {
                ("deflection", share(answer.largest_deflection.value, value), error.deflection, off / value)
            }
            Self::At(at, value, off) => {
                let found = answer.field.at(at).map_or(f64::NAN, |m| m.deflection);
                let largest = answer.largest_deflection.value.abs();
                ("deflection", (found - value).abs() / largest, error.deflection, off / largest)
            }
            Self::Moment(value, off) => {
                ("moment", share(answer.largest_moment.value, value), error.moment, off / value)
            }
            Self::Latch(i, value, off) => {
                ("latch", share(answer.latches[i].pull, value), error.latch_force, off / value)
            }
            Self::Smallest(value, off) => {
                let found = answer.gaskets[0].smallest.value;
                ("compression", (found - value).abs(), error.compression, off)
            }
        }
    }
}

/// Panels with known answers. Sources as in plates.rs: Navier series (squares, with moments 0.047886 and 0.101683 q a^2), Ritz (clamped:
/// 0.0513338 q a^2 at the middle of an edge; four corners: 0.1504 q a^2), closed forms (circles: (3 + nu) / 16 and 1 / 8 q a^2). The lid and
/// the cut-out are those of reference.rs; the reference's own error is the last change of its values, for the compression with 1e-7 m more,
/// which it takes at the middles of pieces of its gasket.
pub(crate) fn known(q: f64) -> Vec<(&'static str, Panel, Load, Vec<Truth>)> {
    let held = |outline, support: fn(Line) -> LineSupport| {
        let mut panel = Panel::new(outline, sheet(0.3));
        panel.line_supports = vec![support(Line::Outline)];
        panel
    };
    let square = |side| Outline::rectangle(0.0, 0.0, side, side);
    let mut corners = Panel::new(square(1.0), sheet(0.3));
    corners.point_supports =
        [p(0.0, 0.0), p(1.0, 0.0), p(1.0, 1.0), p(0.0, 1.0)].map(PointSupport::held).to_vec();
    // A quarter of the supported square.
    let mut quarter = Panel::new(square(0.5), sheet(0.3));
    quarter.line_supports = vec![
        LineSupport::supported(Line::OutlineEdge(0)),
        LineSupport::supported(Line::OutlineEdge(3)),
        LineSupport::guided(Line::OutlineEdge(1)),
        LineSupport::guided(Line::OutlineEdge(2)),
    ];
    let w = |value: f64, digit: f64| Truth::Deflection(value * q / d(0.3), digit * q / d(0.3));
    let m = |value: f64, digit: f64| Truth::Moment(value * q, digit * q);
    let oblong = Outline::rectangle(0.0, 0.0, 1.0, 2.0);
    let circle = || Outline::circle(0.0, 0.0, 1.0);
    let pressure = || Load::uniform_pressure(q);
    vec![
        (
            "square",
            held(square(1.0), LineSupport::supported),
            pressure(),
            vec![w(0.004_062_353, 4e-9), m(0.047_886_4, 5e-7)],
        ),
        (
            "2:1",
            held(oblong, LineSupport::supported),
            pressure(),
            vec![w(0.010_128_7, 5e-8), m(0.101_683, 1e-6)],
        ),
        (
            "clamped",
            held(square(1.0), LineSupport::clamped),
            pressure(),
            vec![w(0.001_265_32, 1e-8), m(0.051_333_8, 5e-7)],
        ),
        ("corners", corners, pressure(), vec![w(0.025_511, 1e-6), m(0.150_4, 5e-5)]),
        (
            "circle",
            held(circle(), LineSupport::supported),
            pressure(),
            vec![w(5.3 / 1.3 / 64.0, 0.0), m(3.3 / 16.0, 0.0)],
        ),
        (
            "clamped circle",
            held(circle(), LineSupport::clamped),
            pressure(),
            vec![w(1.0 / 64.0, 0.0), m(0.125, 0.0)],
        ),
        ("quarter", quarter, pressure(), vec![w(0.004_062_353, 4e-9), m(0.047_886_4, 5e-7)]),
        (
            "lid",
            crate::reference::lid(),
            Load::default(),
            vec![
                Truth::Deflection(5.603_9e-3, 5.4e-7),
                Truth::Latch(0, 141.229, 0.05),
                Truth::Latch(1, 139.073, 0.05),
                Truth::Smallest(-1.054_24e-3, 4.7e-7),
            ],
        ),
        (
            "cut-out",
            crate::reference::cut_out(),
            Load::uniform_pressure(-1000.0),
            vec![Truth::Deflection(2.145_76e-3, 1e-6)],
        ),
    ]
}

/// The panels of the other files, each with the source that its own test names: closed forms of the strip, the sandwich and the ring;
/// tests/reference for skew plates, the tapered panel, the washers and the pane. Narrow lids are no
/// such case: one of a twentieth of the pitch bends across too, by more than the error.
pub(crate) fn others(q: f64) -> Vec<(&'static str, Panel, Load, Vec<Truth>)> {
    let pressure = || Load::uniform_pressure(q);
    let (strip, _, stiffness) = crate::layers::bonded_strip();
    let (sandwich, sagging) = crate::layers::sandwich(q);
    let (ring, rim) = crate::plates::open_ring(q);
    let (pane, hand) = crate::reference::pane();
    let under = pane.marks[0];
    let held = |clamped: bool| {
        let mut panel = Panel::new(crate::estimates::l_shape(), sheet(0.3));
        panel.line_supports = vec![if clamped {
            LineSupport::clamped(Line::Outline)
        } else {
            LineSupport::supported(Line::Outline)
        }];
        panel.marks = vec![p(0.3, 0.25)];
        panel
    };
    let l = |value: f64, digit: f64| vec![Truth::At(p(0.3, 0.25), value * q / d(0.3), digit * q / d(0.3))];
    let mut found = vec![
        ("strip", strip, pressure(), vec![Truth::Deflection(5.0 * q / (384.0 * stiffness), 0.0)]),
        ("sandwich", sandwich, pressure(), vec![Truth::Deflection(sagging, 1e-5 * sagging)]),
        ("ring", ring, pressure(), vec![Truth::Deflection(rim, 0.0)]),
        ("pane", pane, hand, vec![Truth::At(under, -3.654_808_7e-3, 2e-10)]),
        (
            "tapered",
            crate::rivals::tapered(),
            pressure(),
            vec![Truth::Deflection(7.755_651e-3 * q / 1e3, 1.2e-7)],
        ),
        (
            "washers",
            crate::rivals::washers(),
            pressure(),
            vec![Truth::Deflection(9.575_7e-4 * q / 1e3, 4.3e-7)],
        ),
        ("clamped L", held(true), pressure(), l(0.000_215_28, 5e-9)),
        ("supported L", held(false), pressure(), l(0.000_569_8, 5e-8)),
    ];
    for (name, degrees) in [("skew 75", 75.0), ("skew 60", 60.0), ("skew 45", 45.0), ("skew 30", 30.0)] {
        let (panel, middle) = crate::skew::supported(degrees);
        found.push((name, panel, pressure(), vec![Truth::Deflection(middle * q / d(0.3), 0.0)]));
    }
    found
}
