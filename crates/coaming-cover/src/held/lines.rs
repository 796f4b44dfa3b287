//! What is to be asked of panels, in lines: one for each shape, worked off side by side.

use std::sync::Arc;
use std::thread::{Builder, scope};

use coaming_panel::Panel;

use super::lids::made;
use super::setup::Setup;
use crate::prepared::Prepared;

/// One thing to ask.
type Ask<'a> = Box<dyn FnOnce() + Send + 'a>;

/// Things to ask, those about panels of one shape in the order in which they were added.
pub(crate) struct Lines<'a> {
    prepared: &'a Prepared<'a>,
    lines: Vec<(Arc<Panel>, Vec<Ask<'a>>)>,
}

impl<'a> Lines<'a> {
    /// Nothing to ask yet.
    pub(crate) const fn new(prepared: &'a Prepared<'a>) -> Self {
        Self { prepared, lines: Vec::new() }
    }

    /// Adds something to ask about the lid of a setup; tells whether that could be made, and leaves it out otherwise.
    pub(crate) fn add(&mut self, setup: Setup, ask: impl FnOnce() + Send + 'a) -> bool {
        let Ok(panel) = made(self.prepared, setup, None) else { return false };
        match self.lines.iter_mut().find(|(known, _)| known.other_shape(&panel).is_none()) {
            Some((_, asks)) => asks.push(Box::new(ask)),
            None => self.lines.push((panel, vec![Box::new(ask)])),
        }
        true
    }

    /// Asks all of it, a thread for each line where there are threads to be had. The first line is always asked: others may wait for what
    /// it finds, and it for none.
    pub(crate) fn work_off(self) {
        scope(|scope| {
            let work = |asks: Vec<Ask<'a>>| asks.into_iter().for_each(|ask| ask());
            let mut lines = self.lines.into_iter().map(|(_, asks)| asks);
            let first = lines.next();
            let others: Vec<_> =
                lines.map(|asks| Builder::new().spawn_scoped(scope, move || work(asks))).collect();
            first.into_iter().for_each(work);
            for other in others.into_iter().flatten() {
                // What a thread that fell, or was not to be had, leaves unasked is asked for by the rows.
                other.join().unwrap_or_default();
            }
        });
    }
}
