//! The bend allowance of one bend: the first of the U-channel in FAA-H-8083-31A, ch. 4.

use coaming::prelude::*;
use coaming::sheet::{BendAllowance, LegReference};

fn main() -> Result<(), Error> {
    let bend = BendAllowance {
        bend_angle: deg(90.0),
        inside_radius: inch(0.16),
        thickness: inch(0.04),
        k_factor: 0.4467,
        leg_reference: LegReference::ToVirtualSharp,
    };
    let (outcome, caveats) = bend.calculate()?;
    let inches = |length: Length| length.value / inch(1.0).value;
    println!("bend allowance {:.4} in", inches(outcome.bend_allowance));
    println!("bend deduction {:.4} in", inches(outcome.bend_deduction));
    if let Some(setback) = outcome.setback {
        println!("setback        {:.4} in", inches(setback));
        // Step 2 of the handbook prints a setback of 0.2 in.
        assert!((setback - inch(0.2)).abs() < inch(0.0005));
    }
    for caveat in caveats.iter() {
        println!("{} {}", caveat.text(), caveat.cure());
    }
    Ok(())
}
