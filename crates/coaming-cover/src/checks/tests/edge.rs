//! The edge between two latches, one latch missing, and what a gasket recovers.

use super::*;
use crate::checks::screws::spacing::longest_pitch;

/// A straight measured curve: as stiff in its slope as from the beginning, so that the band closes.
pub(super) const STRAIGHT: &str = "curve = [{ compression = 0, pressure = \"0 kPa\" }, { compression = 0.1, pressure = \"10 kPa\" }, { compression = 0.2, pressure = \"20 kPa\" }, { compression = 0.3, pressure = \"30 kPa\" }, { compression = 0.4, pressure = \"40 kPa\" }]\npressure_at_25_percent = \"24 kPa\"";

#[test]
fn latches_too_far_apart_fail() {
    let key = "seal_spacing";
    assert_eq!(verdict(&reviewed(FIRST_GUESS), key), Verdict::Fail);
    assert_eq!(verdict(&reviewed(REVISED), key), Verdict::Pass);
    // By hand: 0.12 N/mm2 under 6535 mm4 of 69.637 GPa, 360 mm apart: beta s = 1.025797.
    let straight = changed(REVISED, "pressure_at_25_percent = \"24 kPa\"", STRAIGHT);
    let (low, high) = demand(&straight, key);
    close(low, 1.025_797, 1e-5);
    close(high, 1.025_797, 1e-5);
    let soft = changed(REVISED, "edge_second_moment = \"6535 mm^4\"", "edge_second_moment = \"300 mm^4\"");
    assert_eq!(verdict(&soft, key), Verdict::Fail);
    needs(
        &changed(REVISED, "edge_second_moment", "# edge_second_moment"),
        key,
        "layers.lid.edge_second_moment",
    );
    needs(
        &changed(REVISED, "positions = [{ x = \"-180", "# positions = [{ x = \"-180"),
        key,
        "latches.positions",
    );
}

#[test]
fn the_way_between_latches_goes_round_the_corners() {
    let cover = reviewed(FIRST_GUESS).0;
    let path = cover.seal.unwrap().path.unwrap();
    let positions = cover.latches.unwrap().positions.unwrap();
    // By hand: 270 + 200 - (2 - pi/2) 40 = 452.832 mm; with one latch alone the whole line, 1880 - (8 - 2 pi) 40 mm.
    close(longest_pitch(&path, &positions).unwrap(), 452.832e-3, 1e-6);
    close(longest_pitch(&path, &positions[..1]).unwrap(), 1811.327e-3, 1e-6);
    assert!(longest_pitch(&path, &[]).is_err());
}

#[test]
fn a_gasket_follows_a_flat_seat() {
    // By hand: half of 3.0 mm comes back; 1.5 x (0.1 + 0.2 + 0.5/2) = 0.825 mm; 1.275 mm on a seat flat
    // to 0.5 mm, 1.575 mm on one flat to 0.7 mm.
    let flat = changed(REVISED, "flatness = \"0.5 mm\"", "flatness = \"0.2 mm\"");
    assert_eq!(verdict(&flat, "seal_recovery"), Verdict::Pass);
    close(limit(&flat, "seal_recovery"), 0.825e-3, 1e-9);
    assert_eq!(verdict(&reviewed(REVISED), "seal_recovery"), Verdict::Pass);
    close(limit(&reviewed(REVISED), "seal_recovery"), 1.275e-3, 1e-9);
    let rough = changed(REVISED, "flatness = \"0.5 mm\"", "flatness = \"0.7 mm\"");
    assert_eq!(verdict(&rough, "seal_recovery"), Verdict::Fail);
    close(limit(&rough, "seal_recovery"), 1.575e-3, 1e-9);
    // By hand, with a set of 0.15 of the thickness: 10 x 0.85 - 7 = 1.5 mm, against 1.5 x (0.1 + 0.5 + 0.85 x 0.5).
    let thickness = changed(REVISED, "set_of_deflection = 0.5", "set_of_thickness = 0.15");
    close(demand(&thickness, "seal_recovery").0, 1.5e-3, 1e-9);
    close(limit(&thickness, "seal_recovery"), 1.5375e-3, 1e-9);
    needs(&changed(REVISED, "set_temperature", "# set_temperature"), "seal_recovery", "seal.set_temperature");
}
