//! The limits by common practice: the defaults, all replaceable by the document, in this one file.
//!
//! None of them has a published source that could be named; they are what the trade does, and are labelled `common
//! practice` wherever they show. A document replaces one by giving it under `limits`.

use coaming::declaration::Field;
use coaming::prelude::*;

macro_rules! limits {
    ($( $(#[doc = $doc:literal])+ $(#[possible($($possible:tt)*)])? $name:ident: $type:ty = $default:expr; )+) => {
        /// Limits that replace those of common practice.
        #[derive(Debug, Clone, PartialEq, Fields, Default)]
        pub struct Limits { $( $(#[doc = $doc])+ $(#[possible($($possible)*)])? pub $name: Option<$type>, )+ }

        impl Limits {
            /// The limits of common practice, every one given.
            pub fn common_practice() -> Self {
                Self { $( $name: Some($default), )+ }
            }
        }

        /// One resolved limit: its value and whether the document replaced it.
        $( impl Resolved<'_> {
            $(#[doc = $doc])+
            pub fn $name(&self) -> (f64, LimitOrigin) {
                let replaced = self.given.and_then(|given| given.$name.as_ref()).and_then(|value| Value::si(value));
                let default: Option<f64> = Value::si(&$default);
                match replaced {
                    Some(value) => (value, LimitOrigin { key: stringify!($name), replaced: true }),
                    None => (default.unwrap_or(f64::NAN), LimitOrigin { key: stringify!($name), replaced: false }),
                }
            }
        } )+
    };
}

/// Where a limit comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct LimitOrigin {
    /// Its key under `limits`.
    pub key: &'static str,
    /// True where the document replaced the common practice.
    pub replaced: bool,
}

/// The limits of one review: the document's, and common practice for the rest.
#[derive(Debug, Clone, Copy)]
pub struct Resolved<'a> {
    /// What the document gives.
    pub given: Option<&'a Limits>,
}

impl Resolved<'_> {
    /// The limits that the document replaced, with the field's row: key, its value and the default, in SI units.
    pub fn replaced(&self) -> Vec<(&'static Field, f64, f64)> {
        let Some(given) = self.given else { return Vec::new() };
        let defaults = Limits::common_practice();
        let row =
            |(place, field): (usize, &'static Field)| Some((field, given.get(place)?, defaults.get(place)?));
        Limits::RECORD.fields.iter().enumerate().filter_map(row).collect()
    }
}

limits! {
    /// Separation of a natural frequency from an excitation order, over the order.
    #[possible(0.0..)]
    order_separation: f64 = 0.20;
    /// Deflection of a cover over its shorter side.
    #[possible(f64::MIN_POSITIVE..)]
    cover_deflection: f64 = 1.0 / 200.0;
    /// Deflection of a pane over its shorter span.
    #[possible(f64::MIN_POSITIVE..)]
    pane_deflection: f64 = 1.0 / 25.0;
    /// Engagement of a pane's edge.
    #[possible(0.0..)]
    pane_engagement: Length = mm(15.0);
    /// Height of the lowest drain above the low point of the opening.
    #[possible(0.0..)]
    drain_height: Length = mm(25.0);
    /// Pitch of the screws along a thin sheet that warms, over its thickness, up to which it passes.
    #[possible(f64::MIN_POSITIVE..)]
    screw_pitch_pass: f64 = 30.0;
    /// Pitch of the screws along a thin sheet that warms, over its thickness, above which it fails.
    #[possible(f64::MIN_POSITIVE..)]
    screw_pitch_fail: f64 = 40.0;
    /// Hand force on one latch.
    #[possible(f64::MIN_POSITIVE..)]
    hand_force: Force = newton(60.0);
    /// Smallest nominal compression of closed-cell sponge.
    #[possible(0.0..1.0)]
    closed_cell_nominal_least: f64 = 0.20;
    /// Largest nominal compression of closed-cell sponge.
    #[possible(0.0..1.0)]
    closed_cell_nominal_most: f64 = 0.35;
    /// Smallest compression of closed-cell sponge at the extremes.
    #[possible(0.0..1.0)]
    closed_cell_least: f64 = 0.15;
    /// Largest compression of closed-cell sponge at the extremes.
    #[possible(0.0..1.0)]
    closed_cell_most: f64 = 0.45;
    /// Smallest compression of open-cell foam.
    #[possible(0.0..1.0)]
    open_cell_least: f64 = 0.30;
    /// Largest compression of open-cell foam.
    #[possible(0.0..1.0)]
    open_cell_most: f64 = 0.60;
    /// Smallest compression of solid rubber.
    #[possible(0.0..1.0)]
    solid_least: f64 = 0.15;
    /// Largest compression of solid rubber.
    #[possible(0.0..1.0)]
    solid_most: f64 = 0.30;
    /// Countersink depth over thickness up to which it passes.
    #[possible(0.0..)]
    countersink_pass: f64 = 2.0 / 3.0;
    /// Countersink depth over thickness above which it fails.
    #[possible(0.0..)]
    countersink_fail: f64 = 0.8;
    /// Countersink depth over thickness above which it fails in a laminate.
    #[possible(0.0..)]
    countersink_laminate: f64 = 0.7;
    /// Clearance between the tip of a screw and the bottom of its hole.
    #[possible(0.0..)]
    tip_clearance: Length = mm(1.0);
    /// Engagement of a screw's thread in an insert or nut, over its diameter.
    #[possible(0.0..)]
    insert_engagement: f64 = 1.0;
    /// Factor on the pull-out and torque-out of an insert.
    #[possible(1.0..)]
    insert_factor: f64 = 3.0;
    /// Twice the distance from an insert's centre to the nearest edge, over the insert's diameter.
    #[possible(0.0..)]
    insert_boss: f64 = 2.0;
    /// Room below an insert in its hole.
    #[possible(0.0..)]
    insert_room: Length = mm(1.0);
    /// Plastic below the hole of an insert.
    #[possible(0.0..)]
    insert_floor: Length = mm(1.5);
    /// Sustained stress in polycarbonate.
    #[possible(f64::MIN_POSITIVE..)]
    polycarbonate_sustained_stress: Pressure = megapascal(7.0);
    /// Distance of a hole's centre from the edge of aluminium, over the hole's diameter.
    #[possible(0.0..)]
    edge_distance_aluminium: f64 = 2.0;
    /// Distance of a hole's centre from the edge of a plastic, over the hole's diameter.
    #[possible(0.0..)]
    edge_distance_plastic: f64 = 2.0;
    /// Distance of a hole's centre from the edge of a laminate, over the hole's diameter.
    #[possible(0.0..)]
    edge_distance_laminate: f64 = 3.0;
    /// Distance from a hole's edge to the bent-up face, in thicknesses, beyond the inside radius.
    #[possible(0.0..)]
    hole_to_bend: f64 = 2.5;
    /// Smallest flange over the die opening.
    #[possible(0.0..)]
    flange_over_die: f64 = 0.70;
    /// Recovered height of a gasket over the sum of bow, opening and tolerance.
    #[possible(0.0..)]
    recovery: f64 = 1.5;
    /// Radius of a gasket's corner over its width, down to which a strip bends round it without buckling.
    #[possible(0.0..)]
    gasket_corner: f64 = 3.0;
    /// Extra length of a gasket that keeps its joint pressed, as a part of its length.
    #[possible(0.0..=0.2)]
    gasket_extra_length: f64 = 0.01;
    /// Adhesive or sealant to order over the volume of its joints.
    #[possible(1.0..)]
    waste: f64 = 1.2;
    /// Pitch of the latches times the foundation parameter of the edge on its gasket.
    #[possible(f64::MIN_POSITIVE..)]
    pitch_parameter: f64 = 2.0;
    /// Inflation of a root-sum-square.
    #[possible(1.0..)]
    root_sum_square_inflation: f64 = 1.2;
    /// Shear strain of a flexible bond line under repeated movement.
    #[possible(f64::MIN_POSITIVE..)]
    flexible_bond_strain: f64 = 0.15;
    /// Shear strain of a rigid bond line.
    #[possible(f64::MIN_POSITIVE..)]
    rigid_bond_strain: f64 = 0.03;
    /// Mass that one hand lifts off.
    #[possible(f64::MIN_POSITIVE..)]
    mass_one_hand: Mass = kilogram(10.0);
    /// Mass that two hands lift off.
    #[possible(f64::MIN_POSITIVE..)]
    mass_two_hands: Mass = kilogram(20.0);
}
