//! The pane as it is held, under a hand, wind and acceleration.

use super::*;

#[test]
fn explore() {
    for (name, text) in [("first", FIRST_GUESS), ("revised", REVISED)] {
        let review = reviewed(text);
        for key in [
            "pane_hand(pane)",
            "pane_hand_stress(pane)",
            "pane_wind_in(pane)",
            "pane_wind_in_stress(pane)",
            "pane_acceleration_z_stress(pane)",
            "pane_frequency(pane)",
            "pane_stress_at_holes_lean(pane_screws, pane)",
        ] {
            let start = std::time::Instant::now();
            let row = review.row(key).unwrap();
            println!("== {name} {key} {:?} {:?}", row.verdict, start.elapsed());
            match &row.outcome {
                Ok(demand) => {
                    println!("{:?} {:?}", demand.finding, demand.place);
                    for input in &demand.inputs {
                        if let InputValue::Amount(amount) = &input.value {
                            println!("   {} {:.5e}", input.label, amount.si)
                        }
                    }
                }
                Err(why) => println!("{why:?}"),
            }
        }
    }
}

#[test]
fn explore_bows() {
    for (name, text) in [("first", FIRST_GUESS), ("revised", REVISED)] {
        let review = reviewed(text);
        for key in [
            "critical_rise(pane_screws, pane)",
            "pressed_sheet_hot(pane_screws, frame)",
            "pressed_sheet_cold(pane_screws, frame)",
            "pressed_sheet_cold(pane_screws, pane)",
            "bond_strip_hot(strip_bond)",
            "bond_strip_cold(strip_bond)",
            "bond_strip_sun(strip_bond)",
        ] {
            let start = std::time::Instant::now();
            let Some(row) = review.row(key) else { continue };
            println!("== {name} {key} {:?} {:?}", row.verdict, start.elapsed());
            match &row.outcome {
                Ok(demand) => {
                    println!("{:?}", demand.finding);
                    for input in &demand.inputs {
                        if let InputValue::Amount(amount) = &input.value {
                            println!("   {} {:.5e}", input.label, amount.si)
                        }
                    }
                }
                Err(why) => println!("{why:?}"),
            }
        }
    }
}
