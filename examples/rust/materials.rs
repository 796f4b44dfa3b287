//! Prints the material table: every figure with basis and source, and the shares of each standing.
//! `cargo run --release --example materials [-- KEY...]`

use coaming::material::{Material, all, find, shares};
use coaming::prelude::*;

fn main() -> Result<(), Error> {
    let keys: Vec<String> = std::env::args().skip(1).collect();
    let materials: Vec<Material> = match keys.is_empty() {
        true => all(),
        false => keys.iter().map(|key| find(key)).collect::<Result<_, _>>()?,
    };
    for material in &materials {
        println!("{} ({})", material.name, material.key);
        for figure in material.figures() {
            let unverified = if figure.figure.is_unverified() { ", unverified" } else { "" };
            let place = if figure.place.is_empty() { String::new() } else { format!(" at {}", figure.place) };
            let basis = Choice::name(figure.figure.basis);
            println!(
                "  {}{place}: {}  [{basis}{unverified}; {}]",
                figure.property, figure.shown, figure.figure.source
            );
        }
    }
    let shares = shares(&materials);
    let percent = |count: usize| format!("{count} ({} %)", rounded(100.0 * shares.of_total(count), 3));
    println!(
        "{} records, {} figures: minimum {}, typical {}, estimate {}; unverified {}",
        materials.len(),
        shares.total,
        percent(shares.minimum),
        percent(shares.typical),
        percent(shares.estimate),
        percent(shares.unverified)
    );
    Ok(())
}
