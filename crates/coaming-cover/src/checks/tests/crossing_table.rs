//! What carries each check over its limit, and each rule into both its states.

use super::{FIRST_GUESS, REVISED};
use crate::verdict::Verdict;

/// One entry of a document that carries a row over its limit: the row, the document, the entry's text with `{}` where
/// its number stands, the number where the row holds, and one where it fails.
pub(super) struct Lever(
    pub(super) &'static str,
    pub(super) &'static str,
    pub(super) &'static str,
    pub(super) &'static str,
    pub(super) f64,
    pub(super) f64,
);

/// Limits that are no common practice, each with the entry that crosses it.
pub(super) const LEVERS: &[Lever] = &[
    Lever(
        "adhesive_cold(strip_bond)",
        REVISED,
        STRIP_COLD,
        "layer = \"strip\", temperature = \"{} degC\"",
        -15.0,
        -80.0,
    ),
    Lever(
        "adhesive_temperature(strip_bond)",
        REVISED,
        STRIP_WARM,
        "layer = \"strip\", temperature = \"{} degC\"",
        75.0,
        120.0,
    ),
    Lever("backing_temperature", REVISED, "highest = \"40 degC\"", "highest = \"{} degC\"", 40.0, 140.0),
    Lever(
        "clamp_friction(pane_screws, pane)",
        FIRST_GUESS,
        "torque = \"1.6 N·m\"",
        "torque = \"{} N·m\"",
        0.1,
        1.6,
    ),
    Lever(
        "closed_bay_latch",
        FIRST_GUESS,
        "travel = \"6 mm\"",
        "travel = \"6 mm\"\nworking_load = \"{} N\"",
        5000.0,
        100.0,
    ),
    Lever("critical_rise(pane_screws, pane)", FIRST_GUESS, PANE_HOLE, PANE_HOLE_OF, 8.0, 4.5),
    Lever("dew", REVISED, "humidity = 0.9\nfilm", "humidity = {}\nfilm", 0.05, 0.9),
    Lever("dew_pane(pane)", REVISED, "humidity = 0.9\nfilm", "humidity = {}\nfilm", 0.05, 0.9),
    Lever("flat_pattern(lid)", REVISED, "width = \"620.6 mm\"", "width = \"{} mm\"", 620.6, 625.0),
    Lever("frame_growth(frame)", REVISED, "piece_gap = \"2 mm\"", "piece_gap = \"{} mm\"", 2.0, 1.0),
    Lever("gasket_temperature", REVISED, "highest = \"40 degC\"", "highest = \"{} degC\"", 40.0, 140.0),
    Lever(
        "hole_movement_cold(pane_screws, pane)",
        REVISED,
        "hole = \"8.0 mm\"",
        "hole = \"{} mm\"",
        8.0,
        6.6,
    ),
    Lever("hole_movement_hot(pane_screws, pane)", REVISED, "hole = \"8.0 mm\"", "hole = \"{} mm\"", 8.0, 6.6),
    Lever(
        "insert_jack_out(pane_screws)",
        FIRST_GUESS,
        "outside_diameter = \"4.2 mm\"",
        "outside_diameter = \"{} mm\"",
        6.0,
        4.2,
    ),
    Lever(
        "joint_closed_hot(pane_screws)",
        REVISED,
        "embedding_low = \"0.001 mm\"",
        "embedding_low = \"{} mm\"",
        0.001,
        0.0085,
    ),
    Lever(
        "joint_closed_cold(pane_screws)",
        REVISED,
        "embedding_low = \"0.001 mm\"",
        "embedding_low = \"{} mm\"",
        0.001,
        0.0085,
    ),
    Lever("joint_slip(pane_screws)", REVISED, "friction_low = 0.15", "friction_low = {}", 0.15, 0.001),
    Lever("joint_screw(pane_screws)", REVISED, "torque = \"0.45 N·m\"", "torque = \"{} N·m\"", 0.45, 1.5),
    Lever("latch_hold", REVISED, "acceleration = \"3 gn\"", "acceleration = \"{} gn\"", 3.0, 300.0),
    Lever(
        "keeper_pull_out",
        REVISED,
        "thickness = \"3 mm\" # chosen here\nfasteners = 2",
        "thickness = \"3 mm\"\npull_out = \"{} N\"\nfasteners = 2",
        5000.0,
        10.0,
    ),
    Lever(
        "keeper_pull_through",
        REVISED,
        "thickness = \"3 mm\" # chosen here\nfasteners",
        "thickness = \"{} mm\"\nfasteners",
        3.0,
        0.01,
    ),
    Lever(
        "latch_pull_out",
        REVISED,
        "layer = \"lid\"\nfasteners",
        "layer = \"lid\"\npull_out = \"{} N\"\nfasteners",
        5000.0,
        10.0,
    ),
    Lever("latch_pull_through", REVISED, "head_diameter = \"9 mm\"", "head_diameter = \"{} mm\"", 9.0, 0.01),
    Lever("latch_travel", REVISED, "travel = \"12 mm\"", "travel = \"{} mm\"", 12.0, 2.0),
    Lever(
        "layer_cold(pane)",
        REVISED,
        "layer = \"pane\", temperature = \"-10 degC\"",
        "layer = \"pane\", temperature = \"{} degC\"",
        -10.0,
        -80.0,
    ),
    Lever(
        "layer_temperature(pane)",
        REVISED,
        "layer = \"pane\", temperature = \"55 degC\"",
        "layer = \"pane\", temperature = \"{} degC\"",
        55.0,
        200.0,
    ),
    Lever("sealant_joint(pane_seal)", REVISED, "width = \"3 mm\"", "width = \"{} mm\"", 3.0, 1.0),
    Lever("tether", REVISED, "free_fall = \"50 mm\"", "free_fall = \"{} mm\"", 50.0, 500.0),
    Lever(
        "screw_tightening(pane_screws)",
        REVISED,
        "torque = \"0.45 N·m\"",
        "torque = \"{} N·m\"",
        0.45,
        3.0,
    ),
    Lever("screw_pull_lean(pane_screws)", REVISED, "force = \"400 N\"", "force = \"{} N\"", 400.0, 9000.0),
    Lever(
        "screw_pull_wind(pane_screws)",
        REVISED,
        "pressure = \"1.0 kPa\"",
        "pressure = \"{} kPa\"",
        1.0,
        400.0,
    ),
    Lever(
        "screw_shake(pane_screws)",
        REVISED,
        "acceleration = \"3 gn\"",
        "acceleration = \"{} gn\"",
        3.0,
        2000.0,
    ),
    Lever(
        "skin_temperature(lid)",
        REVISED,
        "\"aluminium_5052_h32\"\noutline = { rectangle = { width = \"580 mm\", height = \"440 mm\" } }\nthickness = \"2.5 mm\"\nthickness_tolerance = \"0.1 mm\" # chosen here\nsolar_absorptance = 0.5",
        "\"pa12_powder_bed\"\noutline = { rectangle = { width = \"580 mm\", height = \"440 mm\" } }\nthickness = \"2.5 mm\"\nthickness_tolerance = \"0.1 mm\"\nsolar_absorptance = {}",
        0.1,
        1.0,
    ),
    Lever("screw_engagement(pane_screws)", REVISED, "length = \"16 mm\"", "length = \"{} mm\"", 16.0, 10.0),
];

const STRIP_COLD: &str = "layer = \"strip\", temperature = \"-15 degC\"";
const STRIP_WARM: &str = "layer = \"strip\", temperature = \"75 degC\"";

/// A state of a rule: the row, the document, what is changed in it, and what the row then says.
pub(super) struct State(
    pub(super) &'static str,
    pub(super) &'static str,
    pub(super) &'static [(&'static str, &'static str)],
    pub(super) Verdict,
);

/// Rules kept and broken, where the four covers do not show both.
pub(super) const STATES: &[State] = &[
    State(
        "inside_radius(lid, left)",
        REVISED,
        &[("inside_radius = \"3.2 mm\"", "inside_radius = \"4 mm\"")],
        Verdict::Pass,
    ),
    State(
        "leak_path_screws(pane_screws, lid)",
        REVISED,
        &[("countersunk = true\nsealed_by = \"sealant\"", "countersunk = true\nsealed_by = \"nothing\"")],
        Verdict::Fail,
    ),
    State(
        "leak_path_cut_out(lid, 1)",
        REVISED,
        &[("} }, sealed_by = \"sealant\" }]", "} }, sealed_by = \"nothing\" }]")],
        Verdict::Fail,
    ),
    State("bond_strip_cold(strip_bond)", REVISED, &[], Verdict::Pass),
    State("bond_strip_hot(strip_bond)", REVISED, &[], Verdict::Pass),
    State("bond_strip_sun(strip_bond)", REVISED, &[], Verdict::Pass),
    State("bond_strip_cold(strip_bond)", REVISED, THIN_COLD, Verdict::Fail),
    State("bond_strip_hot(strip_bond)", REVISED, THIN_HOT, Verdict::Fail),
    State("bond_strip_sun(strip_bond)", REVISED, THIN_SUN, Verdict::Fail),
    State("pane_stress_at_holes_closed(pane_screws, pane)", FIRST_GUESS, &[PANE_SUNK], Verdict::Fail),
    State(
        "pane_stress_at_holes_lean(pane_screws, pane)",
        REVISED,
        &[MILD, ("force = \"400 N\"", "force = \"20 N\"")],
        Verdict::Pass,
    ),
    State("countersunk_float(pane_screws, pane)", REVISED, &[FLOAT_SUNK], Verdict::Fail),
    State("countersink_in_plastic(pane_screws, pane)", FIRST_GUESS, &[PANE_SUNK], Verdict::Fail),
    State(
        "bush_length(pane_screws)",
        REVISED,
        &[("length = \"5.4 mm\"", "length = \"5.1 mm\"")],
        Verdict::Fail,
    ),
    State(
        "insert_pull_out(pane_screws)",
        REVISED,
        &[("hole_depth = \"9.5 mm\"", "hole_depth = \"9.5 mm\"\npull_out = \"3 kN\"")],
        Verdict::Pass,
    ),
    State(
        "insert_pull_out(pane_screws)",
        REVISED,
        &[("hole_depth = \"9.5 mm\"", "hole_depth = \"9.5 mm\"\npull_out = \"0.2 kN\"")],
        Verdict::Fail,
    ),
    State(
        "insert_torque_out(pane_screws)",
        REVISED,
        &[("hole_depth = \"9.5 mm\"", "hole_depth = \"9.5 mm\"\ntorque_out = \"1.6 N·m\"")],
        Verdict::Pass,
    ),
    State(
        "insert_torque_out(pane_screws)",
        REVISED,
        &[("hole_depth = \"9.5 mm\"", "hole_depth = \"9.5 mm\"\ntorque_out = \"1.3 N·m\"")],
        Verdict::Fail,
    ),
    State(
        "insert_estimate(pane_screws)",
        REVISED,
        &[("torque = \"0.45 N·m\"", "torque = \"1.7 N·m\"")],
        Verdict::Fail,
    ),
    State(
        "gasket_agent(hypochlorite)",
        REVISED,
        &[("epdm_sponge_2a1", "neoprene_sponge_2c1")],
        Verdict::Fail,
    ),
    State("gasket_weather", REVISED, &[("epdm_sponge_2a1", "nitrile_sponge_2b1")], Verdict::Fail),
    State("weather(pane)", REVISED, &[("\"polycarbonate\"", "\"acrylic_cast\"")], Verdict::Pass),
    State(
        "gasket_neighbour(lid)",
        REVISED,
        &[PLASTIC_LID, ("epdm_sponge_2a1", "silicone_sponge_2d1")],
        Verdict::Pass,
    ),
    State(
        "gasket_neighbour(lid)",
        REVISED,
        &[PLASTIC_LID, ("epdm_sponge_2a1", "nitrile_sponge_2b1")],
        Verdict::Fail,
    ),
    State("adhesive_neighbour(strip_bond, lid)", REVISED, &[PLASTIC_LID], Verdict::NeedsTest),
    State(
        "adhesive_neighbour(strip_bond, lid)",
        REVISED,
        &[PLASTIC_LID, ("polyurethane_flexible", "adhesive_backing_acrylic")],
        Verdict::Pass,
    ),
    State("gasket_cold", REVISED, &[("epdm_sponge_2a1", "silicone_sponge_2d1")], Verdict::Pass),
    State(
        "gasket_cold",
        REVISED,
        &[("epdm_sponge_2a1", "silicone_sponge_2d1"), ("lowest = \"-15 degC\"", "lowest = \"-90 degC\"")],
        Verdict::Fail,
    ),
    State(
        "screw_stripping(pane_screws)",
        REVISED,
        &[
            OWN_BRASS,
            (
                "[hazard]",
                "[[materials]]\nname = \"brass\"\nlike = \"brass_insert\"\nbasis = \"measured\"\nshear_strength = \"200 MPa\"\n\n[hazard]",
            ),
        ],
        Verdict::Pass,
    ),
    State(
        "screw_stripping(pane_screws)",
        REVISED,
        &[
            OWN_BRASS,
            (
                "[hazard]",
                "[[materials]]\nname = \"brass\"\nlike = \"brass_insert\"\nbasis = \"measured\"\nshear_strength = \"20 MPa\"\n\n[hazard]",
            ),
        ],
        Verdict::Fail,
    ),
    State("head_bearing(pane_screws, lid)", REVISED, &[FLAT_HEAD], Verdict::NeedsTest),
    State(
        "head_bearing(pane_screws, lid)",
        REVISED,
        &[FLAT_HEAD, ("torque = \"0.45 N·m\"", "torque = \"1.5 N·m\"")],
        Verdict::Fail,
    ),
    State("guard", REVISED, &[("guard_needs_tool = true", "guard_needs_tool = false")], Verdict::Fail),
];

const PANE_HOLE: &str = "layer = \"pane\"\nhole = \"4.5 mm\"";
const PANE_HOLE_OF: &str = "layer = \"pane\"\nhole = \"{} mm\"";
// A film on a thick soft bond line, so narrow that this draws in.
const FILM: (&str, &str) = ("thickness = \"1 mm\"\nat", "thickness = \"0.05 mm\"\nat");
const SOFT: (&str, &str) = (
    "thickness = \"1.0 mm\"\nlength = \"240 mm\"\nwidth = \"40 mm\"",
    "thickness = \"20 mm\"\nlength = \"20 m\"\nwidth = \"2 mm\"",
);
const THIN_COLD: &[(&str, &str)] = &[
    FILM,
    SOFT,
    ("layer = \"lid\", temperature = \"-15 degC\"", "layer = \"lid\", temperature = \"-200 degC\""),
];
const THIN_HOT: &[(&str, &str)] = &[
    FILM,
    SOFT,
    ("layer = \"lid\", temperature = \"55 degC\"", "layer = \"lid\", temperature = \"-200 degC\""),
];
const THIN_SUN: &[(&str, &str)] = &[
    FILM,
    SOFT,
    ("layer = \"lid\", temperature = \"75 degC\"", "layer = \"lid\", temperature = \"-200 degC\""),
];
const PLASTIC_LID: (&str, &str) = ("\"aluminium_5052_h32\"", "\"polycarbonate\"");
const FLAT_HEAD: (&str, &str) = ("countersunk_head = \"iso_7046_1\"", "flat_head = \"iso_7045\"");
const OWN_BRASS: (&str, &str) = ("material = \"brass_insert\"", "material = \"brass\"");
const MILD: (&str, &str) = ("\"neutral_detergent\", \"hypochlorite\"", "\"neutral_detergent\"");
const PANE_SUNK: (&str, &str) = (
    "layer = \"pane\"\nhole = \"4.5 mm\"\nrole = \"fixed\"\ncountersunk = false",
    "layer = \"pane\"\nhole = \"4.5 mm\"\nrole = \"fixed\"\ncountersunk = true",
);
const FLOAT_SUNK: (&str, &str) =
    ("role = \"oversize\"\ncountersunk = false", "role = \"oversize\"\ncountersunk = true");
