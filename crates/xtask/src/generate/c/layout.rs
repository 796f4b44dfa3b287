//! The layout of a C struct: where each member stands, as every C compiler of the platform places it.

use super::member::Member;

/// Size and offsets of a struct.
pub(super) struct Layout {
    /// The size, padding included.
    pub(super) size: usize,
    /// The offset of each member.
    pub(super) offsets: Vec<usize>,
}

/// Places members one after another, each at a multiple of its own size.
pub(super) fn of(members: &[Member]) -> Layout {
    let mut offsets = Vec::new();
    let (mut end, mut widest) = (0usize, 1);
    for member in members {
        let size = member.of.size();
        let offset = end.next_multiple_of(size);
        offsets.push(offset);
        end = offset + size;
        widest = widest.max(size);
    }
    Layout { size: end.next_multiple_of(widest), offsets }
}
