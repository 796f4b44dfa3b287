//! The solution of a panel as text and JSON.

use coaming::declaration::Field;
use coaming::prelude::*;

use super::layout::wrapped;
use crate::amount::Measure;
use crate::document::Point;
use crate::panel::{Buckling, CaseSolution, CriticalRise, GasketState, PanelSolution};

/// The solution as JSON text: quantities as text that reads back to the same bits, values over the mesh as SI numbers.
///
/// # Errors
/// [`Error::Unreadable`] where it cannot be written.
pub fn panel_json(solution: &PanelSolution) -> Result<String, Error> {
    serde_json::to_string(&solution.write(&Field::ROOT))
        .map_err(|error| Error::Unreadable { reason: error.to_string() })
}

/// The solution as text of 80 columns, in shop or inch units.
pub fn panel_text(solution: &PanelSolution, system: System) -> String {
    let mut text = wrapped("", "", &format!("{}: the panel solved", solution.title));
    for case in &solution.cases {
        text.push('\n');
        case_text(&mut text, case, system);
    }
    text.push_str("\nWhat this rests on\n");
    for words in [
        format!("coaming {}.", solution.version),
        "Linear theory of thin plates for small deflections, where a load case does not say that large ones were counted: past about half the thickness a panel that is held at its edges is stiffer than linear theory has it.".to_owned(),
        "Large deflections: slopes up to about 0.3; how the edges are held in the plane decides by up to a factor of two, and is what the supports say.".to_owned(),
        "Deflections and forces are positive outward, compression closing, stress in tension.".to_owned(),
    ] {
        text.push_str(&wrapped("  - ", "    ", &words));
    }
    text.push_str("\nCautions\n");
    for caution in &solution.cautions {
        text.push_str(&wrapped("  - ", "    ", caution));
    }
    text
}

fn shown<Q: Quantity>(quantity: Q, system: System) -> String {
    Measure::of::<Q>().shown(quantity.to_si(), system)
}

fn place(at: &Point, system: System) -> String {
    format!("({}, {})", shown(at.x, system), shown(at.y, system))
}

fn case_text(text: &mut String, case: &CaseSolution, system: System) {
    text.push_str(&wrapped("", "", &format!("Load case {}", case.name)));
    let mut line = |label: &str, words: &str| {
        text.push_str(&wrapped(&format!("  {label:<12}"), "              ", words))
    };
    let largest = &case.largest_deflection;
    line(
        "deflection",
        &format!("largest {} at {}", shown(largest.value, system), place(&largest.at, system)),
    );
    line(
        "moment",
        &format!(
            "largest {} per length at {}",
            shown(case.largest_moment.value, system),
            place(&case.largest_moment.at, system)
        ),
    );
    let force = &case.largest_membrane_force;
    if force.value.to_si() != 0.0 {
        let words =
            format!("largest {} in the plane at {}", shown(force.value, system), place(&force.at, system));
        line("membrane", &words);
    }
    line(
        "theory",
        match case.large_deflection {
            true => "large deflections: the stretching that they bring is counted",
            false => "linear: small deflections",
        },
    );
    line("mesh", &mesh(case, system));
    let left = case.balance.force.abs().max(case.balance.moment.abs()).max(case.balance.in_plane.abs());
    line("balance", &format!("{left:.1e} of the forces and moments is left when all are added"));
    for (nth, gasket) in case.gaskets.iter().enumerate() {
        line(&format!("gasket {nth}"), &gasket_words(gasket, system));
    }
    for latch in &case.latches {
        let words = format!(
            "{} pulls {}; the panel there deflects {}",
            latch.name,
            shown(latch.pull, system),
            shown(latch.deflection, system)
        );
        line("latch", &words);
    }
    for (nth, stop) in case.stops.iter().enumerate() {
        line(&format!("stop {nth}"), &format!("pushes {}", shown(*stop, system)));
    }
    for (list, reactions) in [("line", &case.line_reactions), ("point", &case.point_reactions)] {
        for (nth, reaction) in reactions.iter().enumerate() {
            let mut words = format!("the {list} support's force is {}", shown(reaction.force, system));
            let (x, y) = (reaction.in_plane_x, reaction.in_plane_y);
            // Below a micronewton there is rounding alone.
            if x.to_si().abs().max(y.to_si().abs()) > 1e-6 {
                words.push_str(&format!("; in the plane ({}, {})", shown(x, system), shown(y, system)));
            }
            line(&format!("support {nth}"), &words);
        }
    }
    for stress in &case.stresses {
        for (face, found) in [("inner", &stress.inner), ("outer", &stress.outer)] {
            let words = format!(
                "{}, {face} face: largest principal {} at {}",
                stress.layer,
                Measure::STRESS.shown(found.value.to_si(), system),
                place(&found.at, system)
            );
            line("stress", &words);
        }
    }
    for (nth, mode) in case.modes.iter().flat_map(|found| &found.modes).enumerate() {
        let error = estimated(mode.error);
        let met = if mode.met { "" } else { "; THE TOLERANCE IS NOT MET" };
        let words = format!("{}, {error}{met}", shown(mode.frequency, system));
        line(&format!("mode {}", nth + 1), &words);
    }
    if let Some(found) = &case.buckling {
        buckling_lines(&mut line, found);
    }
    if let Some(found) = &case.critical_rise {
        rise_lines(&mut line, found, system);
    }
    if let Some(opening) = &case.opening {
        line("opening", &format!("{} of travel frees every latch", shown(opening.travel, system)));
    }
}

/// What the factors of buckling are not: printed wherever one is.
const NEVER_FLAT: &str = "a factor is that of a perfectly flat panel by linear theory; a real one bows from the start, more and more: keep well below it";

fn buckling_lines(line: &mut impl FnMut(&str, &str), found: &Buckling) {
    if found.modes.is_empty() {
        line("buckling", "nothing presses the panel together: it does not buckle");
        return;
    }
    for mode in &found.modes {
        let words =
            format!("at {} times what acts in the plane, {}", rounded(mode.factor, 4), estimated(mode.error));
        line("buckling", &words);
    }
    line("buckling", if found.met { NEVER_FLAT } else { "THE TOLERANCE IS NOT MET" });
    if !found.met {
        line("buckling", NEVER_FLAT);
    }
}

fn rise_lines(line: &mut impl FnMut(&str, &str), found: &CriticalRise, system: System) {
    let Some(factor) = found.factor else {
        line("critical", "the temperatures press nothing together: it does not buckle");
        return;
    };
    let met = if found.met { "" } else { "; THE TOLERANCE IS NOT MET" };
    let words = format!(
        "buckles at {} times the temperature rises given, {}{met}; counted from where the supports begin to hold in the plane",
        rounded(factor, 4),
        estimated(found.error)
    );
    line("critical", &words);
    for layer in &found.temperatures {
        line("critical", &format!("{}: a rise of {}", layer.layer, shown(layer.rise, system)));
    }
    line("critical", NEVER_FLAT);
}

fn estimated(error: Option<f64>) -> String {
    match error {
        Some(share) => format!("estimated error {} %", rounded(share * 100.0, 2)),
        None => "error unknown".to_owned(),
    }
}

fn mesh(case: &CaseSolution, system: System) -> String {
    let error = &case.error;
    let Some(share) = error.deflection else {
        return format!("{} triangles; no finer mesh was allowed: error unknown", error.triangles);
    };
    let mut words = format!(
        "{} triangles; estimated error {} % of the largest deflection",
        error.triangles,
        rounded(share * 100.0, 2)
    );
    if let (false, Some(share)) = (case.latches.is_empty(), error.latch_force) {
        words.push_str(&format!(", {} % of the largest latch force", rounded(share * 100.0, 2)));
    }
    if let (false, Some(length)) = (case.gaskets.is_empty(), error.compression) {
        words.push_str(&format!(", {} of compression", shown(length, system)));
    }
    if let Some(share) = error.moment {
        words.push_str(&format!(", {} % of the largest moment", rounded(share * 100.0, 2)));
    }
    if let Some(share) = error.membrane_force.filter(|_| case.largest_membrane_force.value.to_si() != 0.0) {
        words.push_str(&format!(", {} % of the largest force in the plane", rounded(share * 100.0, 2)));
    }
    if !error.met {
        words.push_str("; THE TOLERANCE IS NOT MET");
    }
    words
}

fn gasket_words(gasket: &GasketState, system: System) -> String {
    let mut words = format!(
        "compressed {} at {} to {} at {}; pushes {}",
        shown(gasket.smallest.value, system),
        place(&gasket.smallest.at, system),
        shown(gasket.largest.value, system),
        place(&gasket.largest.at, system),
        shown(gasket.force, system)
    );
    if gasket.open_length.to_si() > 0.0 {
        words.push_str(&format!("; OPEN over {}", shown(gasket.open_length, system)));
    }
    if gasket.beyond_law {
        words.push_str("; compressed past the last measured point of its law");
    }
    words
}
