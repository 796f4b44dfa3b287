//! How layers that grow apart bow the lid: what drives it, and the limits between which it bows.

use coaming_panel::Load;

use crate::amount::Measure;
use crate::checks::climate::faces::face_difference;
use crate::checks::movement::growth;
use crate::checks::solved::{State, each};
use crate::demand::NotChecked;
use crate::document::LoadKind;
use crate::held::{self, Firmness, Grows, Joined, Setup};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// A limit of the bowed lid: its name, the lid and what bows it.
type Limit = (String, Setup, Load);

/// The limits between which warmth and damp of a load case bow the lid.
///
/// No layer joined in: nothing bows it but the sheet's own faces. What is glued on as one piece, and with it what is screwed on
/// without room: all that grows acts at once, and, where some of it bows the lid outward and some inward, each alone, for a
/// screwed layer may slip and a bond line give. A layer with room at its screws does not drive.
///
/// # Errors
/// [`NotChecked::Needs`] with the path of what the document does not give.
pub(super) fn limits(
    prepared: &Prepared<'_>,
    kind: LoadKind,
    sheet: &mut Worksheet,
) -> Result<Vec<Limit>, NotChecked> {
    prepared.load_case(kind)?;
    let (skin, thickness) = held::skin(prepared)?;
    let material = prepared.material_of(skin)?;
    let expansion = sheet.property(&material, "expansion", &material.expansion)?;
    let difference = face_difference(prepared, kind, sheet)?;
    sheet.note("outer face over inner face of the sheet", difference, Measure::DIFFERENCE);
    sheet.reckon("curvature of a sheet that nothing holds = expansion × difference of its faces / thickness");
    let free = expansion.value * difference / thickness;
    sheet.note("curvature of the sheet by its faces, in 1/m", free, Measure::Number);
    let (width, height) = skin.outline.box_size();
    let bow = free.abs() * (width * width + height * height) / 8.0;
    sheet.note("bow of the free sheet by its faces, corner to corner", bow, Measure::LENGTH);
    // Compressions are wanted to a hundredth of a millimetre.
    let by_faces = if bow > LEAST_BOW { expansion.value * difference } else { 0.0 };
    let mut limits: Vec<Limit> = Vec::new();
    let mut stiff = Vec::new();
    for joined in [Joined::SheetAlone, Joined::Bonded, Joined::Driving] {
        let setup = Setup::new(joined, Firmness::Softest).warmed(kind);
        let all = held::growing(prepared, setup, by_faces, |layer| {
            growth(prepared, layer, &*prepared.material_of(layer)?, kind, sheet)
        })?;
        // What is joined at one limit already needs no second.
        if stiff.contains(&all) {
            continue;
        }
        for (words, load) in loads(joined, &all) {
            for firmness in [Firmness::Softest, Firmness::Firmest] {
                let setup = Setup::new(joined, firmness).warmed(kind);
                limits.push((format!("{}, {words}", setup.joined_name()), setup, load.clone()));
            }
        }
        stiff.push(all);
    }
    Ok(limits)
}

/// A sheet that nothing holds and that its faces bow by less than this, in metres, is taken as flat: it is a hundredth of a
/// millimetre.
const LEAST_BOW: f64 = 1e-5;

/// What acts at once at a limit, in words and as a load.
fn loads(joined: Joined, all: &[Grows]) -> Vec<(&'static str, Load)> {
    let whole = Grows::together(all.iter());
    if joined == Joined::SheetAlone {
        let mut loads = vec![("nothing grows apart", Load::default())];
        if !all.is_empty() {
            loads.push(("its own faces", whole));
        }
        return loads;
    }
    let mut loads = vec![("all that grows", whole)];
    if all.iter().any(|one| one.outward) && all.iter().any(|one| !one.outward) {
        loads.push(("what bows it outward", Grows::together(all.iter().filter(|one| one.outward))));
        loads.push(("what bows it inward", Grows::together(all.iter().filter(|one| !one.outward))));
    }
    loads
}

/// The closed lid at every limit between which warmth and damp of a load case bow it.
///
/// # Errors
/// As [`limits`].
pub(super) fn bowed(
    prepared: &Prepared<'_>,
    kind: LoadKind,
    sheet: &mut Worksheet,
) -> Result<Vec<State>, NotChecked> {
    let limits = limits(prepared, kind, sheet)?;
    let states = each(prepared, sheet, limits)?;
    tell(sheet);
    Ok(states)
}

/// What was taken to bow the lid.
pub(super) fn tell(sheet: &mut Worksheet) {
    sheet.say("What a layer grows more than the sheet, by warmth and damp, bows the lid where the layer is joined to it: not at all where none is, most where it is one piece with the sheet. A layer with room at its screws does not drive, and whether it has room enough is for the rows of its holes.");
    sheet.say("Where some of it bows the lid outward and some inward, all together and each alone are looked at. Seat and flanges are taken to grow with the sheet, and a bond or a plastic that creeps to lose nothing.");
    sheet.say("Layers are as stiff as their materials are at these temperatures where that is known; the gasket is taken as new, and as firm as at room temperature. A bow of less than a hundredth of a millimetre by the sheet's own faces is left out.");
}

/// The limits of every load case, those of one lid together, for all to be solved at once.
pub(super) fn all_limits(prepared: &Prepared<'_>) -> Vec<(Setup, Vec<Load>)> {
    let mut all: Vec<(Setup, Vec<Load>)> = Vec::new();
    for kind in [LoadKind::Hot, LoadKind::Cold, LoadKind::Sun] {
        for (_, setup, load) in limits(prepared, kind, &mut Worksheet::new()).into_iter().flatten() {
            match all.iter_mut().find(|(known, _)| *known == setup) {
                Some((_, loads)) => loads.push(load),
                None => all.push((setup, vec![load])),
            }
        }
    }
    all
}
