//! What several rows will ask the panel solver about, solved before the rows are made: loads together, and panels of different
//! shapes side by side.

use std::sync::OnceLock;

use coaming_panel::Load;

use crate::checks::bow;
use crate::checks::latches::pulls;
use crate::checks::latches::warm;
use crate::checks::lid::lean;
use crate::checks::lid::{factor, pressure};
use crate::checks::orders;
use crate::checks::seal::loads as seal_loads;
use crate::checks::seal::recovery;
use crate::checks::seal::sliding;
use crate::checks::solved::past_half;
use crate::demand::NotChecked;
use crate::document::{LayerRole, LoadKind};
use crate::held::{self, Firmness, Joined, Lines, Setup};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// Solves what the rows will ask for. All that is asked of panels of one shape is asked in a fixed order by one thread, so that the
/// meshes, and the numbers, do not depend on which thread is the faster.
///
/// What cannot be solved for want of an input is left out: the row that needs it says what is missing.
pub(crate) fn solve_ahead(prepared: &Prepared<'_>) {
    // Where a hand, or the want of a latch, does most is looked for on the sheet alone.
    let worst = OnceLock::new();
    let bowed = bow::all_limits(prepared);
    let mut lines = Lines::new(prepared);
    let searched = lines.add(softest(Joined::SheetAlone), || {
        let _told = Told(&worst);
        whole_lid(prepared, Joined::SheetAlone);
        worst.get_or_init(|| worst_loads(prepared));
    });
    if !searched {
        drop(Told(&worst));
    }
    lines.add(softest(Joined::OnePiece), || whole_lid(prepared, Joined::OnePiece));
    for (setup, loads) in &bowed {
        lines.add(*setup, || held::find_all(prepared, *setup, loads));
    }
    for (setup, loads) in sliding::all_limits(prepared) {
        lines.add(setup, move || held::find_all(prepared, setup, &loads));
    }
    for joined in [Joined::SheetAlone, Joined::OnePiece] {
        let worst = &worst;
        lines.add(softest(joined), move || {
            for setup in limits(joined) {
                held::find_all(prepared, setup, worst.wait());
            }
            bent(prepared, joined);
        });
    }
    for (setup, loads) in &bowed {
        lines.add(*setup, || loads.iter().for_each(|load| bent_far(prepared, *setup, load)));
    }
    for (setup, load) in warm::all_travels(prepared) {
        lines.add(setup, move || drop(held::rebound(prepared, setup, &load, None)));
    }
    lines.work_off();
}

/// Sees to it that no line waits for loads that nobody finds any more.
struct Told<'a>(&'a OnceLock<Vec<Load>>);

impl Drop for Told<'_> {
    fn drop(&mut self) {
        self.0.get_or_init(Vec::new);
    }
}

const fn softest(joined: Joined) -> Setup {
    Setup::new(joined, Firmness::Softest)
}

fn limits(joined: Joined) -> impl Iterator<Item = Setup> {
    [Firmness::Firmest, Firmness::Softest].into_iter().map(move |firmness| Setup::new(joined, firmness))
}

/// The loads that bend the lid past half its thickness, by large deflection: one load after the other, each on both gaskets, for which its
/// meshes serve.
fn bent(prepared: &Prepared<'_>, joined: Joined) {
    for load in winds(prepared, joined).into_iter().chain(lean::worst_load(prepared)) {
        for setup in limits(joined) {
            bent_far(prepared, setup, &load);
        }
    }
}

/// A lid under a load by large deflection, where that bends it past half its thickness.
fn bent_far(prepared: &Prepared<'_>, setup: Setup, load: &Load) {
    let skin = prepared.cover.layers.iter().find(|layer| layer.role == LayerRole::Skin);
    let Some(thickness) = skin.and_then(|skin| skin.thickness) else { return };
    let linear = held::under(prepared, setup, load, None);
    if linear.is_ok_and(|found| past_half(&found, thickness.value)) {
        drop(held::stretched(prepared, setup, load));
    }
}

/// Wind that presses and wind that lifts, as far as they are given.
fn winds(prepared: &Prepared<'_>, joined: Joined) -> Vec<Load> {
    let blows = [(LoadKind::WindIn, 1.0), (LoadKind::WindOut, -1.0)];
    let wind = |(kind, inward): (LoadKind, f64)| {
        let size = pressure(prepared, kind, &mut Worksheet::new()).ok()?;
        Some(held::wind(prepared, joined, inward * size))
    };
    blows.into_iter().filter_map(wind).collect()
}

/// The loads that act on all of the lid, the gasket after a season, the lid let go and its lowest mode.
fn whole_lid(prepared: &Prepared<'_>, joined: Joined) {
    let mut loads = vec![Load::default()];
    loads.extend(winds(prepared, joined));
    loads.extend(thrown(prepared, &mut Worksheet::new()));
    for setup in limits(joined) {
        held::find_all(prepared, setup, &loads);
        if orders::excitations(prepared).is_ok() {
            drop(held::first_mode(prepared, setup, None));
        }
        drop(held::rebound(prepared, setup, &Load::default(), None));
    }
    let Ok(season) = recovery::season(prepared, &mut Worksheet::new(), None) else { return };
    for setup in limits(joined) {
        let set = setup.recovered_to(season.outcome.recovered_height.value);
        held::find_all(prepared, set, &[Load::default()]);
    }
}

/// A hand where it does most, and the latches whose want does most.
fn worst_loads(prepared: &Prepared<'_>) -> Vec<Load> {
    let found = [lean::worst_load(prepared), pulls::worst_load(prepared), seal_loads::worst_load(prepared)];
    found.into_iter().flatten().collect()
}

/// The lid thrown outward by the acceleration across it.
///
/// # Errors
/// [`NotChecked::Needs`] with the path of what the document does not give.
pub(super) fn thrown(prepared: &Prepared<'_>, sheet: &mut Worksheet) -> Result<Load, NotChecked> {
    let case = prepared.load_case(LoadKind::AccelerationZ)?;
    let path = "load_cases.acceleration_z.acceleration";
    let acceleration = sheet.given("acceleration", path, case.acceleration)?.value;
    Ok(Load { normal_acceleration: acceleration * factor(sheet, case.factor), ..Load::default() })
}
