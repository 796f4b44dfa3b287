//! Deflections so large that they stretch the panel.

use super::{Solver, answer_from};
use crate::error::PanelError;
use crate::model::growth::free_strains;
use crate::model::load::Load;
use crate::progress::{Progress, Watch, Work, deaf};
use crate::refining::{Run, Solved};
use crate::result::answer::Answer;
use crate::result::collect::collect;
use crate::result::field::Field;
use crate::result::in_plane::check_pins;
use crate::result::indicator::indicate;
use crate::system::equilibrium::{Begin, Slack, State, with_latches};
use crate::system::hold::check_enough;
use crate::system::large_newton::{Problem, newton_large};
use crate::system::loads::apply;
use crate::system::prolong::prolong;
use std::ops::ControlFlow;

impl Solver {
    /// Solves for one load with the stretching that the deflection itself brings (von Karman's theory of moderate slopes), refining until the
    /// estimated error meets the tolerance or the largest mesh is reached.
    ///
    /// How edges are held in the plane decides the answer by up to a factor of two: it is what the supports say, free to draw in where
    /// they say nothing ([`LineSupport::held_in_plane`](crate::LineSupport::held_in_plane),
    /// [`straight_in_plane`](crate::LineSupport::straight_in_plane), [`PointSupport::held_in_plane`](crate::PointSupport::held_in_plane)).
    /// Stresses hold the part in the plane too.
    ///
    /// What is found is stable: a panel that heat or edge forces have buckled is found bowed. Where it can bow either way and nothing
    /// tells which, it bows outward at the middle of its bow; a small pressure given with the load chooses the other way. Of several
    /// stable shapes only the one reached downhill from flat is found. A panel within the mesh's error of its critical load may be found
    /// flat, and the estimate, which compares flat with flat, does not tell: [`buckling`](Self::buckling) does.
    ///
    /// Valid for slopes up to about 0.3 (from memory; beyond, squares of slopes no longer measure the stretch), linear elastic layers, and
    /// pressures that keep their direction. The balance of moments holds to the error of the mesh only.
    ///
    /// Source: Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. (1959), arts. 96 to 101.
    pub fn solve_large(&mut self, load: &Load) -> Result<Answer, PanelError> {
        self.solve_large_with(load, &mut deaf)
    }

    /// As [`solve_large`](Self::solve_large), refining no mesh past `most_triangles`, where that is fewer than the settings allow: each
    /// mesh takes several times as long as for a linear answer.
    pub fn solve_large_within(&mut self, load: &Load, most_triangles: usize) -> Result<Answer, PanelError> {
        let settings = self.settings;
        self.settings.most_triangles = most_triangles.min(settings.most_triangles);
        let answer = self.solve_large(load);
        self.settings = settings;
        answer
    }

    /// As [`solve_large`](Self::solve_large) on the first mesh alone, to compare loads with each other: what is out of balance is no more
    /// than a ten-thousandth of the forces. No error is estimated: the estimate of the answer is infinite and says that nothing is met.
    pub fn solve_large_on_first_mesh(&mut self, load: &Load) -> Result<Answer, PanelError> {
        load.check(self.prepared.panel.layers.len(), self.prepared.panel.latches.len())?;
        let solved = self.solve_large_level(0, load, None, true, &mut Watch::new(&mut deaf))?;
        let triangles = self.in_plane_level(0)?.0.mesh.triangles.len();
        self.large_answer(load, Run::first(solved, triangles))
    }

    /// As [`solve_large`](Self::solve_large), telling how far it has come; [`ControlFlow::Break`] stops it with [`PanelError::Cancelled`].
    pub fn solve_large_with(
        &mut self,
        load: &Load,
        tell: &mut dyn FnMut(Progress) -> ControlFlow<()>,
    ) -> Result<Answer, PanelError> {
        load.check(self.prepared.panel.layers.len(), self.prepared.panel.latches.len())?;
        let watch = &mut Watch::new(tell);
        let run = self.run_in_plane(load, &mut |solver, at, before| {
            solver.solve_large_level(at, load, before, false, watch)
        })?;
        self.large_answer(load, run)
    }

    /// The answer of what was found on the last mesh.
    fn large_answer(&mut self, load: &Load, run: Run) -> Result<Answer, PanelError> {
        let (level, prepared) = self.in_plane_level(run.level)?;
        let layers = &prepared.panel.layers;
        let grown = free_strains(load, layers);
        let field = Field::large(level, &run.solved.state, layers, &prepared.groups, grown);
        answer_from(field, run.solved, run.error)
    }

    /// Equilibrium on one mesh, begun from that on the coarser, or from what is known of it roughly; if `roughly`, to be compared with others
    /// alone.
    fn solve_large_level(
        &mut self,
        at: usize,
        load: &Load,
        coarse: Option<&State>,
        roughly: bool,
        watch: &mut Watch<'_>,
    ) -> Result<Solved, PanelError> {
        let levels = &self.in_plane()?.0.levels;
        let begin = coarse.and_then(|state| {
            let (from, to) = (levels.get(at.checked_sub(1)?)?, levels.get(at)?);
            let mut values = prolong(from, to, &state.plane);
            to.freedoms.displacements_to_axes(&mut values);
            Some(Begin { latched: state.latched.clone(), values: Some(values) })
        });
        let (level, prepared) = self.in_plane_level(at)?;
        watch.mesh(Work::LargeDeflection, at, level.mesh.triangles.len())?;
        let rough = level.rough_state(load);
        let known = level.state(load).or_else(|| rough.clone().filter(|_| roughly));
        let from_rough = |state: State| Begin { latched: state.latched, values: Some(state.values) };
        let begin = begin.or_else(|| rough.map(from_rough));
        check_enough(&level.freedoms, &level.mesh, prepared, &level.attachments, load)?;
        // Growth strains the stretched panel: it is counted there, not among the forces.
        let growth = free_strains(load, &prepared.panel.layers);
        let cold = Load { temperatures: Vec::new(), growths: Vec::new(), ..load.clone() };
        let applied = apply(level, prepared, &cold)?;
        let state = match known {
            Some(known) => {
                watch.step()?;
                known
            }
            None => {
                let found = with_latches(
                    level,
                    prepared,
                    load,
                    &applied,
                    begin,
                    if roughly { Slack::ROUGH } else { Slack::ROUNDING },
                    &mut |level, heights, latched, start| {
                        let (growth, applied) = (&growth, &applied);
                        let problem =
                            Problem { prepared, load, growth, applied, heights, latched, start, roughly };
                        newton_large(level, &problem, watch)
                    },
                )?;
                match roughly {
                    true => level.keep_rough(load, &found),
                    false => level.keep(load, &found),
                }
                found
            }
        };
        check_pins(level, prepared, &state, applied.in_plane)?;
        let found = collect(level, prepared, load, &state, &applied);
        let indicator = indicate(level, prepared, load, &state.plane, true);
        Ok(Solved { state, found, indicator })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::system::large::{internal_large, tangent};
    use crate::{
        Beam, Joint, JointKind, Layer, LayerTemperature, Line, LineSupport, Material, Outline, Panel,
    };
    use crate::{Path, Point, Settings};

    /// A warm panel of bonded and slipping layers with a beam, so that every term takes part.
    fn everything() -> Result<(Solver, Load), PanelError> {
        let aluminium = Material::isotropic(70e9, 0.3, 2700.0, 23e-6);
        let plastic = Material {
            axis_angle: 0.3,
            youngs_modulus_2: 2e9,
            ..Material::isotropic(3e9, 0.3, 1200.0, 65e-6)
        };
        let mut panel = Panel::new(Outline::rectangle(0.0, 0.0, 0.5, 0.3), Layer::whole(0.001, aluminium));
        panel.layers.push(Layer { region: None, lower_face: 0.001, thickness: 0.003, material: plastic });
        panel.layers.push(Layer { region: None, lower_face: 0.004, thickness: 0.002, material: plastic });
        panel.joints = vec![
            Joint { lower: 0, upper: 1, kind: JointKind::Bonded },
            Joint { lower: 1, upper: 2, kind: JointKind::Slipping { shear_stiffness: 1e9 } },
        ];
        panel.beams = vec![Beam {
            line: Line::Path(Path::polyline(&[Point::new(0.1, 0.0), Point::new(0.4, 0.3)])),
            layer: 0,
            youngs_modulus: 70e9,
            shear_modulus: 26e9,
            area: 4e-5,
            second_moment_of_area: 2e-9,
            torsion_constant: 1e-11,
            centroid_height: -0.005,
            density: 2700.0,
        }];
        panel.line_supports = vec![LineSupport::supported(Line::Outline).held_in_plane()];
        let temperatures = (0..3)
            .map(|layer| LayerTemperature { layer, rise: 10.0 + layer as f64, difference: 5.0 })
            .collect();
        let settings = Settings { first_triangles: 20, ..Settings::default() };
        Ok((Solver::new(&panel, settings)?, Load { temperatures, ..Load::uniform_pressure(3000.0) }))
    }

    /// Forces are the slope of the energy, and the tangent that of the forces, by central differences about a crooked state.
    #[test]
    fn energy_forces_and_tangent_agree() -> Result<(), PanelError> {
        let (mut solver, load) = everything()?;
        let (level, prepared) = solver.in_plane_level(0)?;
        let ground = level.ground();
        let level: &crate::system::level::Level = level;
        let growth = free_strains(&load, &prepared.panel.layers);
        let n = level.freedoms.size();
        let wave = |k: usize, seed: usize| ((k * (7 + seed) + 3 * seed) as f64 * 0.618_034).fract() - 0.5;
        let scale = |d: usize| match d {
            d if d < level.freedoms.vertices => 4e-3,
            d if d < 3 * level.freedoms.vertices => 5e-2,
            _ => 2e-5,
        };
        let state: Vec<f64> = (0..n).map(|d| scale(d) * wave(d, 1)).collect();
        let way: Vec<f64> = (0..n).map(|d| scale(d) * wave(d, 4)).collect();
        let at = |h: f64| -> Vec<f64> { state.iter().zip(&way).map(|(s, w)| s + h * w).collect() };
        let dot = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(x, y)| x * y).sum::<f64>();
        let h = 1e-5;
        let here = internal_large(level, &ground, prepared, &growth, &state);
        let (ahead, behind) = (
            internal_large(level, &ground, prepared, &growth, &at(h)),
            internal_large(level, &ground, prepared, &growth, &at(-h)),
        );
        let slope = (ahead.energy - behind.energy) / (2.0 * h);
        let exact = dot(&here.forces, &way);
        assert!((slope / exact - 1.0).abs() < 1e-6, "{slope} {exact}");
        // The tangent is in the axes of the pairs; no pair is turned unless it is held.
        let mut turned = way.clone();
        level.freedoms.displacements_to_axes(&mut turned);
        let stiff = tangent(level, &ground, prepared, &growth, &state).times(&turned);
        let curve: f64 = dot(&stiff, &turned);
        let change: f64 = ahead
            .forces
            .iter()
            .zip(&behind.forces)
            .zip(&way)
            .map(|((a, b), w)| (a - b) / (2.0 * h) * w)
            .sum();
        assert!((curve / change - 1.0).abs() < 1e-6, "{curve} {change}");
        Ok(())
    }

    /// Energy balance: the work of a pressure that grows in steps, by Simpson's rule over the pressure, is the energy stored.
    #[test]
    fn work_is_stored() -> Result<(), PanelError> {
        let (mut solver, mut load) = everything()?;
        load.temperatures.clear();
        let full = load.pressures[0].at_origin;
        // Volume swept is the work per pressure: dW = p dV, so W = p V - integral of V dp.
        let mut swept = |pressure: f64| -> Result<(f64, f64), PanelError> {
            let load = Load::uniform_pressure(pressure);
            let solved = solver.solve_large_level(0, &load, None, false, &mut Watch::new(&mut deaf))?;
            let (level, prepared) = solver.in_plane_level(0)?;
            let ground = level.ground();
            let applied = apply(level, prepared, &load)?;
            let work: f64 = applied.vector.iter().zip(&solved.state.plane).map(|(f, u)| f * u).sum();
            let energy = internal_large(level, &ground, prepared, &[], &solved.state.plane).energy;
            Ok((work / pressure, energy))
        };
        let n = 40;
        let mut integral = 0.0;
        for i in 1..=n {
            let weight = if i == n {
                1.0
            } else if i % 2 == 1 {
                4.0
            } else {
                2.0
            };
            integral += weight * swept(full * i as f64 / n as f64)?.0 * full / n as f64 / 3.0;
        }
        let (volume, energy) = swept(full)?;
        let work = full * volume - integral;
        assert!((energy / work - 1.0).abs() < 1e-4, "{energy} {work}");
        Ok(())
    }
}
