//! Material records: every number with its basis and its source.
