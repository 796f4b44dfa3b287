//! Gathers reactions, latch forces, compression and the balance from a state.

use super::answer::{Balance, Extreme, GasketAnswer, GasketSample, LatchAnswer, NodalReaction, Reaction};
use crate::element::quadrature::{GAUSS_4, gauss_on_quarters};
use crate::geometry::point::Point;
use crate::model::latch::LatchAction;
use crate::model::load::Load;
use crate::model::prepare::{Prepared, Role};
use crate::model::support::Hold;
use crate::system::equilibrium::State;
use crate::system::level::Level;
use crate::system::loads::{Applied, Resultant};

/// All that is gathered besides the field.
#[derive(Debug, Clone, Default)]
pub(crate) struct Collected {
    pub vertices: usize,
    pub largest_deflection: Extreme,
    pub line_reactions: Vec<Reaction>,
    pub point_reactions: Vec<Reaction>,
    pub nodal_reactions: Vec<NodalReaction>,
    pub latches: Vec<LatchAnswer>,
    pub gaskets: Vec<GasketAnswer>,
    /// Gasket, vertex and compression at the ends of every edge of a gasket.
    pub seats: Vec<(usize, usize, f64)>,
    pub stops: Vec<f64>,
    pub balance: Balance,
}

struct Gather<'a> {
    level: &'a Level,
    prepared: &'a Prepared,
    load: &'a Load,
    state: &'a State,
    sum: Resultant,
}

/// Gathers everything from a state.
pub(crate) fn collect(
    level: &Level,
    prepared: &Prepared,
    load: &Load,
    state: &State,
    applied: &Applied,
) -> Collected {
    let mut gather = Gather { level, prepared, load, state, sum: applied.resultant };
    let mut found = Collected {
        vertices: level.mesh.vertices.len(),
        largest_deflection: gather.largest_deflection(),
        ..Collected::default()
    };
    gather.supports(&mut found);
    found.latches = gather.latches();
    found.stops = gather.stops();
    found.gaskets = gather.gaskets();
    for edge in &level.attachments.gaskets {
        for (v, along) in [(edge.ends[0], edge.from), (edge.ends[1], edge.to)] {
            let compression = prepared.panel.gaskets[edge.gasket].compression(along, gather.deflection(v));
            found.seats.push((edge.gasket, v, compression));
        }
    }
    let sum = gather.sum;
    let in_plane = super::in_plane::gather(level, prepared, state, applied.in_plane);
    for (reaction, force) in found.line_reactions.iter_mut().zip(in_plane.lines) {
        reaction.in_plane = force;
    }
    for (reaction, force) in found.point_reactions.iter_mut().zip(in_plane.points) {
        reaction.in_plane = force;
    }
    let reach = sum.moment_size.max(sum.size * level.mesh.size);
    let share = |part: f64, whole: f64| if whole > 0.0 { part / whole } else { part };
    found.balance = Balance {
        force: share(sum.force.abs() * level.mesh.size, reach),
        moment: share(sum.moment.length(), reach),
        in_plane: in_plane.balance,
    };
    found
}

impl Gather<'_> {
    fn deflection(&self, vertex: usize) -> f64 {
        self.state.plane[self.level.freedoms.deflection(vertex)]
    }

    fn largest_deflection(&self) -> Extreme {
        let mesh = &self.level.mesh;
        let mut best = Extreme { value: 0.0, at: mesh.vertices[0] };
        for v in 0..mesh.vertices.len() {
            if self.deflection(v).abs() > best.value.abs() {
                best = Extreme { value: self.deflection(v), at: mesh.vertices[v] };
            }
        }
        for edge in &mesh.edges {
            let [a, b] = edge.ends.map(|v| mesh.vertices[v]);
            let shape = crate::element::hermite::EdgeLine::new(a, b).deflection(0.5);
            let list = self.level.freedoms.of_ends(edge.ends);
            let value: f64 = list.iter().zip(shape).map(|(&d, n)| n * self.state.plane[d]).sum();
            if value.abs() > best.value.abs() {
                best = Extreme { value, at: (a + b) * 0.5 };
            }
        }
        best
    }

    fn supports(&mut self, found: &mut Collected) {
        let (level, prepared) = (self.level, self.prepared);
        let (mesh, freedoms) = (&level.mesh, &level.freedoms);
        let panel = &prepared.panel;
        let holds = |support: usize| {
            let s = &panel.line_supports[support];
            s.deflection == Hold::Fixed || s.slope_across == Hold::Fixed
        };
        let mut holders: Vec<Vec<usize>> = vec![Vec::new(); mesh.vertices.len()];
        for edge in &mesh.edges {
            for along in &edge.uses {
                if let Role::Support(i) = prepared.roles[along.feature] {
                    for v in edge.ends.into_iter().filter(|_| holds(i)) {
                        if !holders[v].contains(&i) {
                            holders[v].push(i);
                        }
                    }
                }
            }
        }
        let lines = panel.line_supports.len();
        for (i, support) in panel.point_supports.iter().enumerate() {
            let reach = support.washer_radius * (1.0 + 1e-6);
            for (v, p) in mesh.vertices.iter().enumerate() {
                if v == mesh.marks[i] || (support.washer_radius > 0.0 && p.distance(support.at) <= reach) {
                    holders[v].push(lines + i);
                }
            }
        }
        let mut reactions = vec![Reaction::default(); lines + panel.point_supports.len()];
        let latched: Vec<usize> = (level.attachments.latches.iter().zip(&self.state.latched))
            .filter(|(_, l)| **l)
            .map(|(&v, _)| v)
            .collect();
        for (v, &at) in mesh.vertices.iter().enumerate() {
            let [x, y] = freedoms.pair(freedoms.slopes(v));
            let force = self.state.reactions[freedoms.deflection(v)];
            let moment = Point::new(self.state.reactions[x], self.state.reactions[y]);
            if force == 0.0 && moment == Point::default() {
                continue;
            }
            self.sum.add(force, at);
            self.sum.add_moment(moment);
            if latched.contains(&v) {
                continue;
            }
            found.nodal_reactions.push(NodalReaction { at, force, moment });
            let share = 1.0 / holders[v].len().max(1) as f64;
            for &i in &holders[v] {
                reactions[i].force += share * force;
                reactions[i].moment = reactions[i].moment + (at * force + moment) * share;
            }
        }
        self.springs(&mut reactions);
        self.in_plane_moments();
        found.point_reactions = reactions.split_off(lines);
        found.line_reactions = reactions;
    }

    /// Supports that hold a group in its plane, off the common datum, apply moments to the panel: height times force.
    fn in_plane_moments(&mut self) {
        let freedoms = &self.level.freedoms;
        for &group in &freedoms.membrane {
            let height = self.prepared.groups.height[group];
            for pair in (0..freedoms.vertices + freedoms.edges).filter_map(|n| freedoms.at_vertex(group, n)) {
                let [x, y] = freedoms.pair(pair).map(|d| self.state.reactions[d]);
                if x != 0.0 || y != 0.0 {
                    self.sum.add_moment(Point::new(x, y) * -height);
                }
            }
        }
    }

    fn springs(&mut self, reactions: &mut [Reaction]) {
        let (level, u) = (self.level, &self.state.plane);
        let lines = self.prepared.panel.line_supports.len();
        for spring in &level.attachments.springs {
            let list = level.freedoms.of_ends(spring.ends);
            let [a, b] = spring.ends.map(|v| level.mesh.vertices[v]);
            let value = |row: [f64; 6]| list.iter().zip(row).map(|(&d, n)| n * u[d]).sum::<f64>();
            for (s, weight) in GAUSS_4 {
                let factor = weight * spring.length;
                let force = -factor * spring.deflection * value(spring.line.deflection(s));
                let turn = -factor * spring.turning * value(spring.line.slope_across(s));
                let (at, moment) = (a.toward(b, s), spring.line.along.left() * turn);
                self.sum.add(force, at);
                self.sum.add_moment(moment);
                let r = &mut reactions[spring.support];
                r.force += force;
                r.moment = r.moment + at * force + moment;
            }
        }
        for point in &level.attachments.point_springs {
            let at = level.mesh.vertices[point.vertex];
            let [x, y] = level.freedoms.pair(level.freedoms.slopes(point.vertex));
            let force = -point.deflection * u[level.freedoms.deflection(point.vertex)];
            let moment = Point::new(u[x], u[y]) * -point.turning;
            self.sum.add(force, at);
            self.sum.add_moment(moment);
            let r = &mut reactions[lines + point.support];
            r.force += force;
            r.moment = r.moment + at * force + moment;
        }
    }

    fn latches(&mut self) -> Vec<LatchAnswer> {
        let mut answers = Vec::new();
        for (i, (latch, &vertex)) in
            self.prepared.panel.latches.iter().zip(&self.level.attachments.latches).enumerate()
        {
            let deflection = self.deflection(vertex);
            let missing = self.load.missing_latches.contains(&i);
            let pull = match latch.action {
                _ if missing => 0.0,
                LatchAction::Height(_) if self.state.latched[i] => {
                    -self.state.reactions[self.level.freedoms.deflection(vertex)]
                }
                LatchAction::Height(_) => 0.0,
                LatchAction::Spring { stiffness, draw } => stiffness * (deflection + draw).max(0.0),
                LatchAction::Force(force) => force,
            };
            if matches!(latch.action, LatchAction::Spring { .. }) {
                self.sum.add(-pull, self.level.mesh.vertices[vertex]);
            }
            answers.push(LatchAnswer { pull, deflection });
        }
        answers
    }

    fn stops(&mut self) -> Vec<f64> {
        let mut pushes = Vec::new();
        for (stop, &vertex) in self.prepared.panel.stops.iter().zip(&self.level.attachments.stops) {
            let push = stop.stiffness * (stop.height - self.deflection(vertex)).max(0.0);
            self.sum.add(push, self.level.mesh.vertices[vertex]);
            pushes.push(push);
        }
        pushes
    }

    fn gaskets(&mut self) -> Vec<GasketAnswer> {
        let mut answers: Vec<GasketAnswer> = (self.prepared.panel.gaskets.iter())
            .map(|_| GasketAnswer {
                smallest: Extreme { value: f64::INFINITY, ..Extreme::default() },
                largest: Extreme { value: f64::NEG_INFINITY, ..Extreme::default() },
                ..GasketAnswer::default()
            })
            .collect();
        for edge in &self.level.attachments.gaskets {
            let gasket = &self.prepared.panel.gaskets[edge.gasket];
            let law = &self.prepared.laws[edge.gasket];
            let list = self.level.freedoms.of_ends(edge.ends);
            let [a, b] = edge.ends.map(|v| self.level.mesh.vertices[v]);
            let compression = |s: f64| {
                let w: f64 =
                    list.iter().zip(edge.line.deflection(s)).map(|(&d, n)| n * self.state.plane[d]).sum();
                gasket.compression(edge.along(s), w)
            };
            let answer = &mut answers[edge.gasket];
            for (s, weight) in gauss_on_quarters() {
                let c = compression(s);
                let value = law.at(c);
                let force = weight * edge.length() * value.force;
                answer.force += force;
                answer.beyond_law |= value.beyond;
                self.sum.add(force, a.toward(b, s));
            }
            answer.open_length += edge.length() * open_share(&compression);
            for k in 0..=4 {
                let s = if edge.from <= edge.to { f64::from(k) / 4.0 } else { 1.0 - f64::from(k) / 4.0 };
                let (c, at) = (compression(s), a.toward(b, s));
                if c < answer.smallest.value {
                    answer.smallest = Extreme { value: c, at };
                }
                if c > answer.largest.value {
                    answer.largest = Extreme { value: c, at };
                }
                answer.samples.push(GasketSample {
                    along: edge.along(s),
                    at,
                    compression: c,
                    force: law.at(c).force,
                });
            }
        }
        answers
    }
}

/// Share of an edge along which the compression is not above zero: straight between samples.
fn open_share(compression: &impl Fn(f64) -> f64) -> f64 {
    const PIECES: u32 = 16;
    let mut share = 0.0;
    let mut before = compression(0.0);
    for k in 1..=PIECES {
        let after = compression(f64::from(k) / f64::from(PIECES));
        share += match (before > 0.0, after > 0.0) {
            (true, true) => 0.0,
            (false, false) => 1.0,
            (true, false) => after / (after - before),
            (false, true) => before / (before - after),
        };
        before = after;
    }
    share / f64::from(PIECES)
}
