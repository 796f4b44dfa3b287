//! Kernel: large deflection of a rectangle under uniform pressure (von Kármán), by Ritz with u, v and w.
//!
//! Scales: lengths by the short side s, w by t, u and v by t²/s, energies by D t²/s². Then the energy is
//! ½ ∫(∇²w)² + 6 ∫(e_x² + e_y² + 2 ν e_x e_y + ½ (1 − ν) g²) − Q ∫ w, Q = q s⁴/(D t), with
//! e_x = u_x + ½ w_x², e_y = v_y + ½ w_y², g = u_y + v_x + w_x w_y. Everything is even about the middle: a quarter
//! is integrated, by Gauss's rule.

use super::band::Band;
use super::legendre_bubble::{self as bubble, Parity};
use super::quadrature::gauss_legendre;

/// How the edges are held in the plane of the plate.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum InPlane {
    /// Not at all.
    Free,
    /// They stay straight and parallel, and may move in.
    Straight,
    /// They stay straight where they are, and the sheet may slide along them.
    Held,
    /// No point of the edge moves.
    Fixed,
}

/// What the plate does, in the scales above; x along the first side.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Stretched {
    pub deflection: f64,
    /// −w_xx, −w_yy at the centre: curvatures.
    pub centre_bend: [f64; 2],
    /// e_x, e_y at the centre: stretches.
    pub centre_stretch: [f64; 2],
    /// −w_xx at the middle of the edge x = ±a/2 and −w_yy at that of y = ±b/2.
    pub edge_bend: [f64; 2],
    /// e_x, e_y at the middle of the edge normal to x, then normal to y.
    pub edge_stretch: [[f64; 2]; 2],
    pub settled: bool,
}

/// One function: value, first and second derivative.
type Local = [f64; 3];

/// Function lists along one side at one place: even ones for w, odd for the displacement along the side, even for the
/// displacement across it.
struct Place {
    w: Vec<Local>,
    odd: Vec<Local>,
    even: Vec<Local>,
    weight: f64,
}

/// The plate and its functions.
struct Plate {
    /// 2/a and 2/b.
    sx: f64,
    sy: f64,
    nu: f64,
    q: f64,
    clamped: bool,
    in_plane: InPlane,
    nx: usize,
    ny: usize,
}

/// Integrated Legendre functions (P_(k+1) − P_(k−1))/(2 k + 1), which vanish at ±1, or Legendre polynomials, of one
/// parity, at t.
fn legendre(t: f64, count: usize, first: usize, vanish: bool) -> Vec<Local> {
    let top = first + 2 * count + 2;
    let mut p: Vec<Local> = Vec::with_capacity(top + 1);
    p.push([1.0, 0.0, 0.0]);
    p.push([t, 1.0, 0.0]);
    for l in 1..top {
        let (Some([b, b1, b2]), Some([h, h1, _])) = (p.get(l - 1).copied(), p.get(l).copied()) else { break };
        let f = (2 * l + 1) as f64;
        p.push([(f * t * h - l as f64 * b) / (l + 1) as f64, b1 + f * h, b2 + f * h1]);
    }
    (0..count)
        .filter_map(|i| {
            let k = first + 2 * i;
            if !vanish {
                return p.get(k).copied();
            }
            // Vanishing: the pair k + 2 and k, of the same parity as k.
            let ([a, a1, a2], [b, b1, b2]) = (p.get(k + 2).copied()?, p.get(k).copied()?);
            let scale = 1.0 / (2.0 * (k as f64 + 1.0) + 1.0);
            Some([scale * (a - b), scale * (a1 - b1), scale * (a2 - b2)])
        })
        .collect()
}

impl Plate {
    /// Functions along a side of `count` at t.
    fn place(&self, t: f64, weight: f64, count: usize) -> Place {
        let w = if self.clamped {
            bubble::at(Parity::Even, count, t).iter().map(|v| [v.value, v.first, v.second]).collect()
        } else {
            legendre(t, count, 0, true)
        };
        let odd = legendre(t, count, 1, self.in_plane != InPlane::Free);
        let even = legendre(t, count, 0, self.in_plane == InPlane::Fixed);
        Place { w, odd, even, weight }
    }

    /// Number of displacements along x (and, alike, along y).
    fn in_plane_count(&self) -> usize {
        self.nx * self.ny + usize::from(self.in_plane == InPlane::Straight)
    }

    fn bending_count(&self) -> usize {
        self.nx * self.ny
    }

    /// Rows of the shape functions at a point: w, w_x, w_y, w_xx, w_yy of the bending functions; u_x, u_y; v_x, v_y.
    fn shapes(&self, x: &Place, y: &Place) -> Shapes {
        let (sx, sy) = (self.sx, self.sy);
        let mut bending = Vec::with_capacity(self.bending_count());
        let mut along_x = Vec::with_capacity(self.in_plane_count());
        let mut along_y = Vec::with_capacity(self.in_plane_count());
        for [f, f1, f2] in &x.w {
            for [g, g1, g2] in &y.w {
                bending.push([f * g, sx * f1 * g, sy * f * g1, sx * sx * f2 * g, sy * sy * f * g2]);
            }
        }
        for [f, f1, _] in &x.odd {
            for [g, g1, _] in &y.even {
                along_x.push([sx * f1 * g, sy * f * g1]);
            }
        }
        for [f, f1, _] in &x.even {
            for [g, g1, _] in &y.odd {
                along_y.push([sx * f1 * g, sy * f * g1]);
            }
        }
        if self.in_plane == InPlane::Straight {
            along_x.push([sx, 0.0]);
            along_y.push([0.0, sy]);
        }
        Shapes { bending, along_x, along_y, weight: x.weight * y.weight }
    }
}

/// Shape functions at a Gauss point.
struct Shapes {
    bending: Vec<[f64; 5]>,
    along_x: Vec<[f64; 2]>,
    along_y: Vec<[f64; 2]>,
    weight: f64,
}

/// Strains, slopes and curvatures from the unknowns.
struct State {
    w: f64,
    wx: f64,
    wy: f64,
    wxx: f64,
    wyy: f64,
    ex: f64,
    ey: f64,
    g: f64,
}

impl Shapes {
    fn state(&self, unknowns: &[f64]) -> State {
        let (bending, rest) = unknowns.split_at(self.bending.len().min(unknowns.len()));
        let (along_x, along_y) = rest.split_at(self.along_x.len().min(rest.len()));
        let mut s = [0.0; 5];
        for (c, row) in bending.iter().zip(&self.bending) {
            s.iter_mut().zip(row).for_each(|(s, r)| *s += c * r);
        }
        let mut u = [0.0; 2];
        for (c, row) in along_x.iter().zip(&self.along_x) {
            u.iter_mut().zip(row).for_each(|(s, r)| *s += c * r);
        }
        let mut v = [0.0; 2];
        for (c, row) in along_y.iter().zip(&self.along_y) {
            v.iter_mut().zip(row).for_each(|(s, r)| *s += c * r);
        }
        let [w, wx, wy, wxx, wyy] = s;
        let ([ux, uy], [vx, vy]) = (u, v);
        State { w, wx, wy, wxx, wyy, ex: ux + 0.5 * wx * wx, ey: vy + 0.5 * wy * wy, g: uy + vx + wx * wy }
    }
}

/// Adds each Gauss point to residual and tangent.
fn assemble(plate: &Plate, points: &[Shapes], unknowns: &[f64], tangent: &mut Band, residual: &mut [f64]) {
    let nu = plate.nu;
    let shear = 0.5 * (1.0 - nu);
    // Each unknown's first variation of ∇²w, e_x, e_y and g, and the slopes of the bending functions.
    let [mut of_l, mut of_x, mut of_y, mut of_g, mut slope_x, mut slope_y]: [Vec<f64>; 6] =
        Default::default();
    for p in points {
        let s = p.state(unknowns);
        // Forces: 12 times the stretches by Hooke's law.
        let (nx, ny, nxy) = (12.0 * (s.ex + nu * s.ey), 12.0 * (s.ey + nu * s.ex), 12.0 * shear * s.g);
        for list in [&mut of_l, &mut of_x, &mut of_y, &mut of_g, &mut slope_x, &mut slope_y] {
            list.clear();
        }
        let mut push = |[l, x, y, g]: [f64; 4]| {
            of_l.push(l);
            of_x.push(x);
            of_y.push(y);
            of_g.push(g);
        };
        for [_, fx, fy, fxx, fyy] in &p.bending {
            push([fxx + fyy, s.wx * fx, s.wy * fy, s.wx * fy + s.wy * fx]);
        }
        p.along_x.iter().for_each(|[fx, fy]| push([0.0, *fx, 0.0, *fy]));
        p.along_y.iter().for_each(|[fx, fy]| push([0.0, 0.0, *fy, *fx]));
        slope_x.extend(p.bending.iter().map(|[_, fx, ..]| fx));
        slope_y.extend(p.bending.iter().map(|[_, _, fy, ..]| fy));
        let laplace = s.wxx + s.wyy;
        for (i, (((l, x), y), g)) in of_l.iter().zip(&of_x).zip(&of_y).zip(&of_g).enumerate() {
            let bent = p.bending.get(i);
            let load = bent.map_or(0.0, |[f, ..]| plate.q * f);
            if let Some(r) = residual.get_mut(i) {
                *r += p.weight * (laplace * l + nx * x + ny * y + nxy * g - load);
            }
            let (mx, my, mg) = (12.0 * (x + nu * y), 12.0 * (y + nu * x), 12.0 * shear * g);
            let entries = tangent.row(i).iter_mut();
            let others = entries.zip(&of_l).zip(&of_x).zip(&of_y).zip(&of_g);
            match bent {
                // Of bending functions no other comes before.
                Some([_, fx, fy, ..]) => {
                    let (px, py) = (nx * fx, ny * fy);
                    for (((((e, l2), x2), y2), g2), (gx, gy)) in others.zip(slope_x.iter().zip(&slope_y)) {
                        let value = l * l2 + mx * x2 + my * y2 + mg * g2;
                        *e += p.weight * (value + (px * gx + py * gy + nxy * (fx * gy + fy * gx)));
                    }
                }
                None => {
                    for ((((e, l2), x2), y2), g2) in others {
                        *e += p.weight * (l * l2 + mx * x2 + my * y2 + mg * g2);
                    }
                }
            }
        }
    }
}

/// Large deflection of a rectangle of sides `a` and `b`, the shorter of them 1.
pub(crate) fn rectangle(
    (a, b): (f64, f64),
    load: f64,
    poissons_ratio: f64,
    clamped: bool,
    in_plane: InPlane,
    (nx, ny): (usize, usize),
) -> Stretched {
    if load == 0.0 {
        return Stretched { settled: true, ..Stretched::default() };
    }
    let plate = Plate { sx: 2.0 / a, sy: 2.0 / b, nu: poissons_ratio, q: load, clamped, in_plane, nx, ny };
    // Everything is even: the upper half of a rule of twice as many points.
    let half = |count: usize| gauss_legendre(2 * count + 6).into_iter().skip(count + 3);
    let xs: Vec<Place> = half(nx).map(|(t, w)| plate.place(t, 0.5 * a * w, nx)).collect();
    let ys: Vec<Place> = half(ny).map(|(t, w)| plate.place(t, 0.5 * b * w, ny)).collect();
    let points: Vec<Shapes> = xs.iter().flat_map(|x| ys.iter().map(|y| plate.shapes(x, y))).collect();
    let order = plate.bending_count() + 2 * plate.in_plane_count();
    let mut unknowns = vec![0.0; order];
    let mut settled = false;
    // Newton's rule; the first step is the linear plate, then shortened by the cubic of one shape.
    for step in 0..60 {
        let mut tangent = Band::zero(order, order.saturating_sub(1));
        let mut residual = vec![0.0; order];
        assemble(&plate, &points, &unknowns, &mut tangent, &mut residual);
        tangent.factor();
        tangent.solve(&mut residual);
        if step == 0 {
            // Only bending so far. The stretching of that shape is found on the way.
            unknowns.iter_mut().zip(&residual).for_each(|(u, r)| *u -= r);
            let shrink = first_share(&plate, &points, &mut unknowns);
            let count = plate.bending_count();
            for (i, u) in unknowns.iter_mut().enumerate() {
                *u *= if i < count { shrink } else { shrink * shrink };
            }
            continue;
        }
        let size = unknowns.iter().fold(0.0, |m: f64, u| m.max(u.abs()));
        let change = residual.iter().fold(0.0, |m: f64, r| m.max(r.abs()));
        unknowns.iter_mut().zip(&residual).for_each(|(u, r)| *u -= r);
        if !change.is_finite() {
            break;
        }
        if change <= 1e-11 * size {
            settled = true;
            break;
        }
    }
    let at = |tx: f64, ty: f64| {
        let (x, y) = (plate.place(tx, 1.0, nx), plate.place(ty, 1.0, ny));
        plate.shapes(&x, &y).state(&unknowns)
    };
    let (centre, edge_x, edge_y) = (at(0.0, 0.0), at(1.0, 0.0), at(0.0, 1.0));
    Stretched {
        deflection: centre.w,
        centre_bend: [-centre.wxx, -centre.wyy],
        centre_stretch: [centre.ex, centre.ey],
        edge_bend: [-edge_x.wxx, -edge_y.wyy],
        edge_stretch: [[edge_x.ex, edge_x.ey], [edge_y.ex, edge_y.ey]],
        settled,
    }
}

/// For the shape just found: its in-plane displacements by one linear solve, then the share s of it that balances,
/// s K + s³ M = K.
fn first_share(plate: &Plate, points: &[Shapes], unknowns: &mut [f64]) -> f64 {
    let order = unknowns.len();
    let count = plate.bending_count();
    // In-plane only: hold the shape by a stiff diagonal.
    let mut tangent = Band::zero(order, order.saturating_sub(1));
    let mut residual = vec![0.0; order];
    assemble(plate, points, unknowns, &mut tangent, &mut residual);
    for i in 0..count {
        tangent.add(i, i, 1e30);
        if let Some(r) = residual.get_mut(i) {
            *r = 0.0;
        }
    }
    tangent.factor();
    tangent.solve(&mut residual);
    for (u, r) in unknowns.iter_mut().zip(&residual).skip(count) {
        *u -= r;
    }
    let (mut bend, mut stretch) = (0.0, 0.0);
    for p in points {
        let s = p.state(unknowns);
        let laplace = s.wxx + s.wyy;
        bend += p.weight * laplace * laplace;
        let energy =
            s.ex * s.ex + s.ey * s.ey + 2.0 * plate.nu * s.ex * s.ey + 0.5 * (1.0 - plate.nu) * s.g * s.g;
        // The stretching energy is 6 s⁴ of this: its derivative 24 s³.
        stretch += p.weight * 24.0 * energy;
    }
    let ratio = stretch / bend;
    // s + ratio s³ = 1, by Newton from above.
    let mut s = 1.0_f64.min(crate::math::cbrt(1.0 / ratio));
    for _ in 0..40 {
        let step = (s + ratio * s * s * s - 1.0) / (1.0 + 3.0 * ratio * s * s);
        s -= step;
        if step.abs() < 1e-14 {
            break;
        }
    }
    s
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn more_functions_change_little() {
        for clamped in [false, true] {
            for in_plane in [InPlane::Free, InPlane::Straight, InPlane::Held, InPlane::Fixed] {
                for (b, ny) in [(1.0, 5), (2.0, 6)] {
                    if b > 1.0 && (clamped || in_plane != InPlane::Straight) {
                        continue;
                    }
                    let load = 12.0 * 0.91 * 100.0;
                    let found = rectangle((1.0, b), load, 0.3, clamped, in_plane, (5, ny));
                    let fine = rectangle((1.0, b), load, 0.3, clamped, in_plane, (6, ny + 2));
                    assert!(found.settled && fine.settled);
                    let change = (found.deflection / fine.deflection - 1.0).abs();
                    assert!(change < 2e-3, "{clamped} {in_plane:?} {b}: {found:?} {fine:?}");
                }
            }
        }
    }
}
