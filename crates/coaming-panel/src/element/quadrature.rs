//! Points and weights for integrals over a triangle (area coordinates, weights add to 1) and over a line.

/// Exact for polynomials of degree 2. Source: the midside rule (Strang and Fix, An Analysis of the Finite Element Method, 1973).
pub(crate) const MIDSIDE: [([f64; 3], f64); 3] =
    [([0.5, 0.5, 0.0], 1.0 / 3.0), ([0.0, 0.5, 0.5], 1.0 / 3.0), ([0.5, 0.0, 0.5], 1.0 / 3.0)];

const A: f64 = 0.445_948_490_915_965;
const B: f64 = 0.091_576_213_509_771;
const WA: f64 = 0.223_381_589_678_011;
const WB: f64 = 0.109_951_743_655_322;

/// Exact for degree 4. Source: Dunavant, Int. J. Num. Meth. Eng. 21 (1985) 1129-1148, six points.
pub(crate) const DEGREE_4: [([f64; 3], f64); 6] = [
    ([1.0 - 2.0 * A, A, A], WA),
    ([A, 1.0 - 2.0 * A, A], WA),
    ([A, A, 1.0 - 2.0 * A], WA),
    ([1.0 - 2.0 * B, B, B], WB),
    ([B, 1.0 - 2.0 * B, B], WB),
    ([B, B, 1.0 - 2.0 * B], WB),
];

const C: f64 = 0.249_286_745_170_910;
const D: f64 = 0.063_089_014_491_502;
const E1: f64 = 0.310_352_451_033_785;
const E2: f64 = 0.053_145_049_844_816;
const WC: f64 = 0.116_786_275_726_379;
const WD: f64 = 0.050_844_906_370_207;
const WE: f64 = 0.082_851_075_618_374;
const E3: f64 = 1.0 - E1 - E2;

/// Exact for degree 6. Source: Dunavant as above, twelve points.
pub(crate) const DEGREE_6: [([f64; 3], f64); 12] = [
    ([1.0 - 2.0 * C, C, C], WC),
    ([C, 1.0 - 2.0 * C, C], WC),
    ([C, C, 1.0 - 2.0 * C], WC),
    ([1.0 - 2.0 * D, D, D], WD),
    ([D, 1.0 - 2.0 * D, D], WD),
    ([D, D, 1.0 - 2.0 * D], WD),
    ([E1, E2, E3], WE),
    ([E1, E3, E2], WE),
    ([E2, E1, E3], WE),
    ([E2, E3, E1], WE),
    ([E3, E1, E2], WE),
    ([E3, E2, E1], WE),
];

/// Gauss points on 0..1 with weights that add to 1; four points, exact for degree 7.
pub(crate) const GAUSS_4: [(f64, f64); 4] = [
    (0.069_431_844_202_973_71, 0.173_927_422_568_726_92),
    (0.330_009_478_207_571_87, 0.326_072_577_431_273_08),
    (0.669_990_521_792_428_1, 0.326_072_577_431_273_08),
    (0.930_568_155_797_026_3, 0.173_927_422_568_726_92),
];

/// Points and weights on 0..1 for what has kinks, as the push of a gasket where it loses contact: the four points on each quarter.
pub(crate) fn gauss_on_quarters() -> impl Iterator<Item = (f64, f64)> {
    (0..4).flat_map(|k| GAUSS_4.map(|(s, weight)| (0.25 * (f64::from(k) + s), 0.25 * weight)))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Integral of L1^a L2^b L3^c over a triangle of unit area is 2 a! b! c! / (a + b + c + 2)!.
    #[test]
    fn rules_are_exact_to_their_degree() {
        let factorial = |n: i32| (1..=n).map(f64::from).product::<f64>();
        let power = |x: f64, n: i32| (0..n).map(|_| x).product::<f64>();
        let check = |rule: &[([f64; 3], f64)], degree: i32| {
            for a in 0..=degree {
                for b in 0..=(degree - a) {
                    let c = degree - a - b;
                    let sum: f64 =
                        rule.iter().map(|&(l, w)| w * power(l[0], a) * power(l[1], b) * power(l[2], c)).sum();
                    let exact = 2.0 * factorial(a) * factorial(b) * factorial(c) / factorial(degree + 2);
                    assert!((sum - exact).abs() < 2e-14, "{degree} {a} {b} {c}: {sum} {exact}");
                }
            }
        };
        check(&MIDSIDE, 2);
        check(&DEGREE_4, 4);
        check(&DEGREE_6, 6);
        let line: f64 = GAUSS_4.iter().map(|&(x, w)| w * power(x, 7)).sum();
        assert!((line - 0.125).abs() < 1e-15);
        let line: f64 = gauss_on_quarters().map(|(x, w)| w * power(x, 7)).sum();
        assert!((line - 0.125).abs() < 1e-15);
    }
}
