//! Gaskets: what a compressed strip pushes back with, and whether the gap keeps it within its window.
