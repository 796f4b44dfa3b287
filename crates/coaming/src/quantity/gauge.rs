//! Sheet gauges: one number means three thicknesses, so the metal must be named.

use super::exact::Exact;

/// Manufacturers' standard gauge for carbon steel, 3 to 30: pounds per square foot of the United States standard
/// gauge at 41.82 lb/ft² per inch of thickness, printed to four decimals (weights as in the Act of 3 March 1893,
/// 15 U.S.C. 206; table computed and rounded as it is commonly printed).
const STEEL: [&str; 28] = [
    "0.2391", "0.2242", "0.2092", "0.1943", "0.1793", "0.1644", "0.1495", "0.1345", "0.1196", "0.1046",
    "0.0897", "0.0747", "0.0673", "0.0598", "0.0538", "0.0478", "0.0418", "0.0359", "0.0329", "0.0299",
    "0.0269", "0.0239", "0.0209", "0.0179", "0.0164", "0.0149", "0.0135", "0.0120",
];

/// United States standard gauge, 3 to 30, as used for stainless steel: the fractions of the Act of 3 March 1893
/// (15 U.S.C. 206), in 640ths of an inch.
const STAINLESS_640THS: [i64; 28] = [
    160, 150, 140, 130, 120, 110, 100, 90, 80, 70, 60, 50, 45, 40, 36, 32, 28, 24, 22, 20, 18, 16, 14, 12,
    11, 10, 9, 8,
];

/// American wire gauge (Brown & Sharpe), 3 to 30, as used for aluminium: 0.005 in × 92^((36 − n)/39), printed to
/// four decimals (ASTM B258).
const ALUMINIUM: [&str; 28] = [
    "0.2294", "0.2043", "0.1819", "0.1620", "0.1443", "0.1285", "0.1144", "0.1019", "0.0907", "0.0808",
    "0.0720", "0.0641", "0.0571", "0.0508", "0.0453", "0.0403", "0.0359", "0.0320", "0.0285", "0.0253",
    "0.0226", "0.0201", "0.0179", "0.0159", "0.0142", "0.0126", "0.0113", "0.0100",
];

/// Thickness in metres of a gauge such as `ga steel`, `ga stainless`, `ga aluminium`, exactly; `None` where the text
/// does not begin with `ga`.
pub(crate) fn thickness(number: &Exact, text: &str) -> Option<Result<Exact, String>> {
    let metal = text.strip_prefix("gauge").or_else(|| text.strip_prefix("ga"))?;
    if metal.starts_with(|c: char| c.is_alphanumeric()) {
        return None;
    }
    Some(of_metal(number, metal.trim()))
}

fn of_metal(number: &Exact, metal: &str) -> Result<Exact, String> {
    let place = (3..=30i64)
        .position(|gauge| *number == Exact::whole(gauge))
        .ok_or_else(|| "gauges 3 to 30, as whole numbers, are known".to_owned())?;
    let inches = match metal {
        "" => return Err("a gauge needs its metal: `ga steel`, `ga stainless` or `ga aluminium`".to_owned()),
        "steel" => STEEL.get(place).and_then(|digits| Exact::decimal(digits)),
        "stainless" => STAINLESS_640THS.get(place).and_then(|n| Exact::whole(*n).over(&Exact::whole(640))),
        "aluminium" | "aluminum" => ALUMINIUM.get(place).and_then(|digits| Exact::decimal(digits)),
        other => return Err(format!("no gauge for `{other}`; use steel, stainless or aluminium")),
    };
    let inch = Exact::decimal("0.0254");
    inches.zip(inch).map(|(n, inch)| n.times(&inch)).ok_or_else(|| "gauge table".to_owned())
}

#[cfg(test)]
mod tests {
    use super::{ALUMINIUM, STAINLESS_640THS, STEEL};

    #[test]
    fn aluminium_is_the_geometric_series_of_astm_b258() {
        for (place, printed) in ALUMINIUM.iter().enumerate() {
            let n = place as f64 + 3.0;
            let inches = 0.005 * crate::math::pow(92.0, (36.0 - n) / 39.0);
            assert_eq!(format!("{inches:.4}"), **printed, "{n} ga");
        }
    }

    #[test]
    fn steel_is_the_weight_of_the_standard_gauge_at_41_82_pounds() {
        // The Act gives 40 lb/ft² per inch of iron: its fraction × 40 is the weight.
        for (printed, fraction) in STEEL.iter().zip(STAINLESS_640THS) {
            let inches = fraction as f64 / 640.0 * 40.0 / 41.82;
            let printed: f64 = printed.parse().unwrap_or(0.0);
            assert!((inches - printed).abs() <= 0.000_051, "{printed}: {inches}");
        }
    }
}
