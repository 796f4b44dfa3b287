//! Clamped functions on −1..1: twice-integrated Legendre polynomials, scaled so that their second
//! derivatives are orthonormal. ψ_j'' = P_j (j = 2, 3, ...), ψ_j = α P_(j+2) − (α + γ) P_j + γ P_(j−2),
//! α = 1/((2j + 1)(2j + 3)), γ = 1/((2j + 1)(2j − 1)); value and slope vanish at both ends.
//! The even (j = 2, 4, ...) and the odd (j = 3, 5, ...) functions do not mix.

/// Even or odd functions: the first degree j.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Parity {
    Even,
    Odd,
}

impl Parity {
    pub(crate) const BOTH: [Self; 2] = [Self::Even, Self::Odd];

    /// Degree j of function `i`, as a number.
    pub(crate) fn degree(self, i: usize) -> f64 {
        (2 * i) as f64 + if self == Self::Even { 2.0 } else { 3.0 }
    }
}

/// Scale of the function of degree `j`.
pub(crate) fn norm(j: f64) -> f64 {
    (j + 0.5).sqrt()
}

fn alpha(j: f64) -> f64 {
    1.0 / ((2.0 * j + 1.0) * (2.0 * j + 3.0))
}

fn gamma(j: f64) -> f64 {
    1.0 / ((2.0 * j + 1.0) * (2.0 * j - 1.0))
}

/// ∫ φ_i' φ_(i+s)' for s = 0, 1.
pub(crate) fn slopes(parity: Parity, i: usize) -> [f64; 2] {
    let j = parity.degree(i);
    let c = 2.0 * j + 1.0;
    let same = norm(j) * norm(j) / (c * c) * (2.0 / (2.0 * j + 3.0) + 2.0 / (2.0 * j - 1.0));
    let next = -norm(j) * norm(j + 2.0) / (c * (2.0 * j + 5.0)) * 2.0 / (2.0 * j + 3.0);
    [same, next]
}

/// ∫ φ_i φ_(i+s) for s = 0, 1, 2.
pub(crate) fn products(parity: Parity, i: usize) -> [f64; 3] {
    let j = parity.degree(i);
    let weight = |l: f64| 2.0 / (2.0 * l + 1.0);
    let (a0, g0) = (alpha(j), gamma(j));
    let (a1, g1) = (alpha(j + 2.0), gamma(j + 2.0));
    let g2 = gamma(j + 4.0);
    let (b0, b1) = (-a0 - g0, -a1 - g1);
    let same = a0 * a0 * weight(j + 2.0) + b0 * b0 * weight(j) + g0 * g0 * weight(j - 2.0);
    let next = a0 * b1 * weight(j + 2.0) + b0 * g1 * weight(j);
    let after = a0 * g2 * weight(j + 2.0);
    [same * norm(j) * norm(j), next * norm(j) * norm(j + 2.0), after * norm(j) * norm(j + 4.0)]
}

/// ∫ φ_0 of the even functions; the others have none.
pub(crate) fn first_integral() -> f64 {
    2.0 * gamma(2.0) * norm(2.0)
}

/// Values and the first three derivatives of the first functions of one parity at a place.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Values {
    pub value: f64,
    pub first: f64,
    pub second: f64,
    pub third: f64,
}

/// Functions 0 .. count of one parity at t.
pub(crate) fn at(parity: Parity, count: usize, t: f64) -> Vec<Values> {
    // P_j and P_j' by recurrence: (l + 1) P_(l+1) = (2 l + 1) t P_l − l P_(l−1), P_(l+1)' = P_(l−1)' + (2 l + 1) P_l.
    let mut values = Vec::with_capacity(count);
    // p[s] holds P_(l−4+s) with l the last degree computed; slope of P_(l-2) follows behind.
    let mut p = [0.0, 0.0, 0.0, 1.0, t];
    let mut d = [0.0, 0.0, 0.0, 0.0, 1.0];
    let mut l = 1.0;
    let mut i = 0;
    while i < count {
        let j = parity.degree(i);
        while l < j + 2.0 {
            let [_, p1, p2, p3, p4] = p;
            let [_, d1, d2, d3, d4] = d;
            let up = ((2.0 * l + 1.0) * t * p4 - l * p3) / (l + 1.0);
            p = [p1, p2, p3, p4, up];
            d = [d1, d2, d3, d4, d3 + (2.0 * l + 1.0) * p4];
            l += 1.0;
        }
        let [below, before, here, after, above] = p;
        let [_, _, slope, _, _] = d;
        let (a, g) = (alpha(j), gamma(j));
        let n = norm(j);
        values.push(Values {
            value: n * (a * (above - here) - g * (here - below)),
            first: n * (after - before) / (2.0 * j + 1.0),
            second: n * here,
            third: n * slope,
        });
        i += 1;
    }
    values
}

/// The function of one parity with unit slope at 1 and zero ends, h = (t² − 1)/2 or (t³ − t)/2: value and two
/// derivatives.
pub(crate) fn lift(parity: Parity, t: f64) -> [f64; 3] {
    match parity {
        Parity::Even => [0.5 * (t * t - 1.0), t, 1.0],
        Parity::Odd => [0.5 * t * (t * t - 1.0), 1.5 * t * t - 0.5, 3.0 * t],
    }
}

/// ∫ h φ_0'' (no other function has any), and ∫ h φ_i for i = 0, 1 (likewise).
pub(crate) fn lift_products(parity: Parity) -> (f64, [f64; 2]) {
    // h is (P_2 − P_0)/3 or (P_3 − P_1)/5.
    let (j, part, weight, low) = match parity {
        Parity::Even => (2.0, 1.0 / 3.0, 2.0 / 5.0, 2.0),
        Parity::Odd => (3.0, 1.0 / 5.0, 2.0 / 7.0, 2.0 / 3.0),
    };
    let first = -norm(j) * part * ((alpha(j) + gamma(j)) * weight + gamma(j) * low);
    (norm(j) * part * weight, [first, norm(j + 2.0) * gamma(j + 2.0) * part * weight])
}

/// Calls `use_it(entry, P_j(t), P_j''(t))` for the degrees j of one parity, one for each entry.
pub(crate) fn for_each_legendre<T>(
    parity: Parity,
    t: f64,
    entries: &mut [T],
    mut use_it: impl FnMut(&mut T, f64, f64),
) {
    let mut before = [1.0, 0.0, 0.0];
    let mut here = [t, 1.0, 0.0];
    let mut l = 1.0;
    for (i, entry) in entries.iter_mut().enumerate() {
        while l < parity.degree(i) {
            let [p0, d0, c0] = before;
            let [p1, d1, _] = here;
            let f = 2.0 * l + 1.0;
            before = here;
            here = [(f * t * p1 - l * p0) / (l + 1.0), d0 + f * p1, c0 + f * d1];
            l += 1.0;
        }
        let [p, _, c] = here;
        use_it(entry, p, c);
    }
}
