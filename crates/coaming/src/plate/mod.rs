//! Plates: deflection, moments and natural frequencies of flat panels in closed form or by converged series.
