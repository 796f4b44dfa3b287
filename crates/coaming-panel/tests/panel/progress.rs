//! A caller who listens, and one who stops the work.
use crate::common::*;
use coaming_panel::*;
use std::ops::ControlFlow;

/// A square lid on a gasket, drawn down at its corners.
fn lid() -> Solver {
    let mut panel = Panel::new(Outline::rectangle(0.0, 0.0, 0.4, 0.4), sheet(0.3));
    panel.gaskets = vec![Gasket {
        line: Line::Path(Outline::rectangle(0.02, 0.02, 0.36, 0.36).0),
        law: Law::Linear { stiffness: 2e5 },
        free_height: 0.010,
        closed_gap: 0.007,
        gap_error: Vec::new(),
    }];
    let corners = [p(0.01, 0.01), p(0.39, 0.01), p(0.39, 0.39), p(0.01, 0.39)];
    panel.latches = corners.map(|at| Latch { at, action: LatchAction::Height(0.0) }).to_vec();
    solver(&panel)
}

fn bits(answer: &Answer) -> Vec<u64> {
    answer.field.deflection.iter().map(|w| w.to_bits()).collect()
}

#[test]
fn meshes_and_steps_are_told_in_order_and_change_nothing() {
    let load = Load::uniform_pressure(500.0);
    let quiet = lid().solve(&load).unwrap();
    let mut told = Vec::new();
    let answer = lid().solve_with(&load, &mut |now| {
        told.push(now);
        ControlFlow::Continue(())
    });
    let answer = answer.unwrap();
    assert_eq!(bits(&answer), bits(&quiet));
    assert_eq!((told[0].work, told[0].mesh, told[0].step), (Work::Equilibrium, 0, 0));
    for pair in told.windows(2) {
        let (before, after) = (pair[0], pair[1]);
        let next_step = after.mesh == before.mesh && after.step == before.step + 1;
        let next_mesh =
            (after.mesh, after.step) == (before.mesh + 1, 0) && after.triangles > before.triangles;
        assert!(next_step || next_mesh, "{before:?} {after:?}");
    }
    let last = told.last().unwrap();
    assert_eq!((last.triangles, last.step), (answer.error.triangles, answer.newton_steps));
    assert!(last.mesh > 0);
}

#[test]
fn a_stopped_solve_is_named_and_leaves_the_solver_as_it_was() {
    let load = Load::uniform_pressure(500.0);
    let quiet = bits(&lid().solve(&load).unwrap());
    let mut solver = lid();
    for after in [0, 1, 3, 8] {
        let mut left = after;
        let stopped = solver.solve_with(&load, &mut |_| {
            if left == 0 {
                return ControlFlow::Break(());
            }
            left -= 1;
            ControlFlow::Continue(())
        });
        assert_eq!(stopped.unwrap_err(), PanelError::Cancelled, "after {after}");
    }
    assert_eq!(bits(&solver.solve(&load).unwrap()), quiet);
    let mut stop_at = |work: Work| {
        solver.modes_with(&load, 2, &mut |now| match now.work == work && now.step == 1 {
            true => ControlFlow::Break(()),
            false => ControlFlow::Continue(()),
        })
    };
    assert_eq!(stop_at(Work::Equilibrium).unwrap_err(), PanelError::Cancelled);
    assert_eq!(stop_at(Work::Modes).unwrap_err(), PanelError::Cancelled);
    assert_eq!(solver.opening_with(&load, &mut |_| ControlFlow::Break(())), Err(PanelError::Cancelled));
    let frequencies = |solver: &mut Solver| {
        let modes = solver.modes(&load, 2).unwrap();
        modes.iter().map(|mode| mode.frequency.to_bits()).collect::<Vec<_>>()
    };
    assert_eq!(frequencies(&mut solver), frequencies(&mut lid()));
}
