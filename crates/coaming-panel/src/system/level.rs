//! One mesh with all that belongs to it: stacks, freedoms, stiffness, attachments.

use super::analysis::Analysis;
use super::assemble::assemble_stiffness;
use super::attach::{Attachments, attach};
use super::contact::contact;
use super::equilibrium::State;
use super::freedoms::Freedoms;
use super::ground::Ground;
use super::hold::hold_supports;
use super::sparse::FreePart;
use super::symmetric::Symmetric;
use super::touched::Touched;
use crate::error::PanelError;
use crate::mesh::Mesh;
use crate::model::load::Load;
use crate::model::prepare::Prepared;
use crate::model::stack::Stack;
use crate::result::recover::Patches;
use std::sync::Arc;

/// The distinct stacks of a mesh.
#[derive(Debug, Clone)]
pub(crate) struct Stacks {
    stacks: Vec<Stack>,
    membrane: Vec<Vec<usize>>,
    index: Vec<usize>,
}

impl Stacks {
    /// Finds the distinct stacks, and which groups need membrane freedoms.
    fn new(mesh: &Mesh, prepared: &Prepared, every_group: bool) -> Result<(Self, Vec<usize>), PanelError> {
        let panel = &prepared.panel;
        let mut stacks: Vec<Stack> = Vec::new();
        let mut index = Vec::with_capacity(mesh.cover.len());
        for (t, &cover) in mesh.cover.iter().enumerate() {
            let known = stacks.iter().position(|s| s.cover == cover);
            index.push(match known {
                Some(k) => k,
                None => {
                    let [a, b, c] = mesh.corners(t);
                    let at = (a + b + c) * (1.0 / 3.0);
                    stacks.push(Stack::new(cover, &panel.layers, &panel.joints, &prepared.groups, at)?);
                    stacks.len() - 1
                }
            });
        }
        let needed: Vec<usize> = (0..prepared.groups.height.len())
            .filter(|&g| every_group || needs_membrane(g, &stacks, prepared))
            .collect();
        let membrane = stacks
            .iter()
            .map(|s| needed.iter().copied().filter(|&g| s.groups.iter().any(|p| p.group == g)).collect())
            .collect();
        Ok((Self { stacks, membrane, index }, needed))
    }

    /// The stack on a triangle.
    pub(crate) fn of(&self, triangle: usize) -> &Stack {
        &self.stacks[self.index[triangle]]
    }

    /// The groups on a triangle that have membrane freedoms.
    pub(crate) fn membrane(&self, triangle: usize) -> &[usize] {
        &self.membrane[self.index[triangle]]
    }
}

/// A group needs freedoms in the plane where bending alone would strain it there, or where it is held there.
fn needs_membrane(group: usize, stacks: &[Stack], prepared: &Prepared) -> bool {
    let panel = &prepared.panel;
    let members: Vec<usize> =
        (0..panel.layers.len()).filter(|&l| prepared.groups.of_layer[l] == group).collect();
    let coupled = stacks
        .iter()
        .flat_map(|s| &s.groups)
        .any(|p| p.group == group && p.b.iter().flatten().any(|&v| v != 0.0));
    let slips = stacks.iter().flat_map(|s| &s.slips).any(|s| s.lower == group || s.upper == group);
    let thickness = members.iter().map(|&l| panel.layers[l].thickness).fold(f64::INFINITY, f64::min);
    let eccentric = panel.beams.iter().any(|b| {
        members.contains(&b.layer)
            && b.area > 0.0
            && (b.centroid_height - prepared.groups.height[group]).abs() > 1e-9 * thickness
    });
    let held = panel.line_supports.iter().any(|s| s.in_plane_along || s.in_plane_across)
        || panel.point_supports.iter().any(|s| s.in_plane);
    // Layers of one group may grow differently.
    coupled || slips || eccentric || held || members.len() > 1
}

/// Most equilibria that a mesh keeps: what is solved for together, and about what modes and opening are asked.
const STATES: usize = 24;
/// Fewer where they have more freedoms than this together.
const FREEDOMS_OF_STATES: usize = 2_000_000;

/// Factors of a stiffness that no contact changes: which latches hold their points, the matrix, its factors.
type KeptFactor = (Vec<bool>, Arc<Symmetric>, Arc<Vec<f64>>);
/// Matrices whose factors a mesh keeps for the same latches: of two gaskets, new and after a season.
const FACTORS: usize = 4;
/// Fewer where the factors have more entries than this together.
const ENTRIES_OF_FACTORS: usize = 8_000_000;

/// The equations of a mesh that follow from the panel's numbers.
pub(crate) struct Equations {
    stacks: Stacks,
    freedoms: Freedoms,
    attachments: Attachments,
    stiffness: Symmetric,
}

impl Equations {
    fn new(mesh: &Mesh, prepared: &Prepared, every_group: bool) -> Result<Self, PanelError> {
        let (stacks, membrane) = Stacks::new(mesh, prepared, every_group)?;
        let attachments = attach(mesh, prepared)?;
        let covers = |group: usize, t: usize| stacks.membrane(t).contains(&group);
        let mut freedoms = Freedoms::new(mesh, membrane, covers);
        hold_supports(&mut freedoms, mesh, prepared)?;
        let stiffness = assemble_stiffness(mesh, prepared, &stacks, &freedoms, &attachments);
        Ok(Self { stacks, freedoms, attachments, stiffness })
    }
}

/// One mesh with all that belongs to it.
#[derive(Debug)]
pub(crate) struct Level {
    pub mesh: Mesh,
    pub stacks: Stacks,
    pub freedoms: Freedoms,
    pub attachments: Attachments,
    pub stiffness: Symmetric,
    /// Whether every group has freedoms in the plane, whether bending alone would move it there or not.
    pub every_group: bool,
    analysis: Option<Arc<Analysis>>,
    parts: Vec<(Vec<bool>, Arc<FreePart>)>,
    factors: Vec<KeptFactor>,
    patches: Option<Arc<Patches>>,
    ground: Option<Arc<Ground>>,
    touched: Option<Arc<Touched>>,
    /// The matrix of the panel lying flat and closed.
    closed: Option<Arc<Symmetric>>,
    /// Equilibria found on this mesh, the latest last.
    states: Vec<(Load, State)>,
    /// The latest that are only compared with others.
    rough: Vec<(Load, State)>,
    /// Where the panel lay when its latches were let go, on this gasket or on another.
    let_go: Vec<(Load, State)>,
}

impl Level {
    /// Builds the equations on a mesh.
    pub(crate) fn new(mesh: Mesh, prepared: &Prepared) -> Result<Self, PanelError> {
        Self::build(mesh, prepared, false)
    }

    /// Builds the equations on a mesh with freedoms in the plane for every group, whether bending alone would move it there or not.
    pub(crate) fn in_plane(mesh: Mesh, prepared: &Prepared) -> Result<Self, PanelError> {
        Self::build(mesh, prepared, true)
    }

    /// The same on the mesh of another level, of which all is taken that is the same.
    pub(crate) fn in_plane_from(other: &Self, prepared: &Prepared) -> Result<Self, PanelError> {
        if other.freedoms.membrane.len() < prepared.groups.height.len() {
            return Self::in_plane(other.mesh.clone(), prepared);
        }
        Ok(Self {
            mesh: other.mesh.clone(),
            stacks: other.stacks.clone(),
            freedoms: other.freedoms.clone(),
            attachments: other.attachments.clone(),
            stiffness: other.stiffness.clone(),
            every_group: true,
            analysis: other.analysis.clone(),
            parts: other.parts.clone(),
            factors: Vec::new(),
            patches: other.patches.clone(),
            ground: other.ground.clone(),
            touched: other.touched.clone(),
            closed: None,
            states: Vec::new(),
            rough: Vec::new(),
            let_go: Vec::new(),
        })
    }

    fn build(mesh: Mesh, prepared: &Prepared, every_group: bool) -> Result<Self, PanelError> {
        let Equations { stacks, freedoms, attachments, stiffness } =
            Equations::new(&mesh, prepared, every_group)?;
        Ok(Self {
            mesh,
            stacks,
            freedoms,
            attachments,
            stiffness,
            every_group,
            analysis: None,
            parts: Vec::new(),
            factors: Vec::new(),
            patches: None,
            ground: None,
            touched: None,
            closed: None,
            states: Vec::new(),
            rough: Vec::new(),
            let_go: Vec::new(),
        })
    }

    /// The equations of another panel of the same shape on this mesh.
    pub(crate) fn equations(&self, prepared: &Prepared) -> Result<Equations, PanelError> {
        Equations::new(&self.mesh, prepared, self.every_group)
    }

    /// Takes other equations on. What was analysed of the matrix stays where its pattern and what is held do.
    pub(crate) fn take_on(&mut self, equations: Equations) {
        let Equations { stacks, freedoms, attachments, stiffness } = equations;
        let same = freedoms.membrane == self.freedoms.membrane
            && freedoms.held == self.freedoms.held
            && freedoms.used == self.freedoms.used
            && stiffness.rows == self.stiffness.rows;
        if !same {
            self.analysis = None;
            self.parts.clear();
            self.factors.clear();
            self.ground = None;
            self.touched = None;
            self.let_go.clear();
        }
        self.closed = None;
        self.states.clear();
        self.rough.clear();
        (self.stacks, self.freedoms, self.attachments, self.stiffness) =
            (stacks, freedoms, attachments, stiffness);
    }

    /// The factors of a matrix that no contact changes, kept for the next load. `None` when it is not positive definite.
    pub(crate) fn constant_factor(
        &mut self,
        part: &FreePart,
        matrix: &Arc<Symmetric>,
        latched: &[bool],
    ) -> Option<Arc<Vec<f64>>> {
        let same = |other: &Arc<Symmetric>| Arc::ptr_eq(other, matrix) || other.values == matrix.values;
        let known = self.factors.iter().find(|(key, other, _)| key == latched && same(other));
        if let Some((_, _, factors)) = known {
            return Some(Arc::clone(factors));
        }
        let made = part.factor(matrix)?.values();
        let most = (ENTRIES_OF_FACTORS / made.len().max(1)).clamp(1, FACTORS);
        let mut alike = self.factors.iter().filter(|(key, _, _)| key == latched).count();
        self.factors.retain(|(key, _, _)| {
            let drop = key == latched && alike >= most;
            alike -= usize::from(drop);
            !drop
        });
        self.factors.push((latched.to_vec(), Arc::clone(matrix), Arc::clone(&made)));
        Some(made)
    }

    /// The matrix of the panel lying flat and closed, with contact and springs as they are there.
    pub(crate) fn closed_matrix(&mut self, prepared: &Prepared) -> Arc<Symmetric> {
        let known = self.closed.take();
        let made = known.unwrap_or_else(|| {
            let mut matrix = self.stiffness.clone();
            contact(self, prepared, &Load::default(), &vec![0.0; self.freedoms.size()], Some(&mut matrix));
            Arc::new(matrix)
        });
        Arc::clone(self.closed.insert(made))
    }

    /// Where contact changes the stiffness.
    pub(crate) fn touched(&mut self, prepared: &Prepared) -> Arc<Touched> {
        let known = self.touched.take();
        let made = known.unwrap_or_else(|| Arc::new(Touched::new(self, prepared)));
        Arc::clone(self.touched.insert(made))
    }

    /// The free part of the equations when some latches hold their points at a height.
    pub(crate) fn free_part(&mut self, latched: &[bool]) -> Result<Arc<FreePart>, PanelError> {
        if let Some((_, part)) = self.parts.iter().find(|(key, _)| key == latched) {
            return Ok(Arc::clone(part));
        }
        let freedoms = &self.freedoms;
        let analysis = match &self.analysis {
            Some(known) => Arc::clone(known),
            None => {
                let made = Analysis::new(&self.stiffness, |d| freedoms.used[d] && !freedoms.held[d])?;
                Arc::clone(self.analysis.insert(Arc::new(made)))
            }
        };
        let points: Vec<usize> = (self.attachments.latches.iter().zip(latched))
            .filter(|(_, held)| **held)
            .map(|(&vertex, _)| freedoms.deflection(vertex))
            .collect();
        let part = Arc::new(FreePart::new(analysis, |d| points.contains(&d)));
        self.parts.push((latched.to_vec(), Arc::clone(&part)));
        Ok(part)
    }

    /// The equilibrium under a load, where it was found on this mesh not long ago.
    pub(crate) fn state(&self, load: &Load) -> Option<State> {
        self.states.iter().find(|(known, _)| known == load).map(|(_, state)| state.clone())
    }

    /// The equilibrium under a load as far as it was found to be compared with others.
    pub(crate) fn rough_state(&self, load: &Load) -> Option<State> {
        self.rough.iter().find(|(known, _)| known == load).map(|(_, state)| state.clone())
    }

    /// Where the panel lay under a load when its latches were let go.
    pub(crate) fn let_go(&self, load: &Load) -> Option<State> {
        self.let_go.iter().find(|(known, _)| known == load).map(|(_, state)| state.clone())
    }

    /// Keeps where it lay.
    pub(crate) fn keep_let_go(&mut self, load: &Load, state: &State) {
        self.let_go.retain(|(known, _)| known != load);
        keep(&mut self.let_go, self.freedoms.size(), load, state);
    }

    /// Keeps one that is only compared with others.
    pub(crate) fn keep_rough(&mut self, load: &Load, state: &State) {
        keep(&mut self.rough, self.freedoms.size(), load, state);
    }

    /// Lets go of the equilibria found, and of the matrix of the closed panel: the gaskets are others.
    pub(crate) fn forget_states(&mut self) {
        self.closed = None;
        self.states.clear();
        self.rough.clear();
    }

    /// Keeps an equilibrium.
    pub(crate) fn keep(&mut self, load: &Load, state: &State) {
        keep(&mut self.states, self.freedoms.size(), load, state);
    }

    /// How strains are recovered on this mesh.
    pub(crate) fn patches(&mut self) -> Arc<Patches> {
        let mesh = &self.mesh;
        Arc::clone(self.patches.get_or_insert_with(|| Arc::new(Patches::new(mesh))))
    }

    /// What large deflection needs of this mesh.
    pub(crate) fn ground(&mut self) -> Arc<Ground> {
        let known = self.ground.take();
        let made = known.unwrap_or_else(|| Arc::new(Ground::new(self)));
        Arc::clone(self.ground.insert(made))
    }
}

/// Keeps a state, and lets go of the oldest where there are too many.
fn keep(states: &mut Vec<(Load, State)>, freedoms: usize, load: &Load, state: &State) {
    let most = (FREEDOMS_OF_STATES / freedoms.max(1)).clamp(2, STATES);
    if states.len() >= most {
        states.remove(0);
    }
    states.push((load.clone(), state.clone()));
}
