//! A solved panel as Python's objects: quantities as SI floats, values over the mesh as arrays that cannot be written to.

use coaming::prelude::*;
use coaming::quantity::Quantity;
use coaming_cover::document::Point;
use coaming_cover::panel::{
    BalanceLeft, Buckling, BucklingMode, CaseSolution, CriticalRise, CriticalTemperature, GasketState,
    LatchState, LayerStresses, LengthAt, MembraneForceAt, MeshError, MeshField, MomentAt, NaturalMode,
    NaturalModes, OpeningTravel, StressAt, SupportReaction,
};
use numpy::{Element, IntoPyArray, PyArray1, PyArray2, PyArrayMethods};
use pyo3::IntoPyObjectExt;
use pyo3::prelude::*;
use pyo3::types::{PyDict, PyList};

/// What goes over to Python.
pub(crate) trait Handed {
    /// As a Python object; what is absent as None.
    fn handed(self, py: Python<'_>) -> PyResult<Bound<'_, PyAny>>;
}

impl<T: Handed> Handed for Option<T> {
    fn handed(self, py: Python<'_>) -> PyResult<Bound<'_, PyAny>> {
        self.map_or_else(|| Ok(py.None().into_bound(py)), |found| found.handed(py))
    }
}

impl<T: Handed> Handed for Vec<T> {
    fn handed(self, py: Python<'_>) -> PyResult<Bound<'_, PyAny>> {
        let list = PyList::empty(py);
        self.into_iter().try_for_each(|entry| list.append(entry.handed(py)?))?;
        Ok(list.into_any())
    }
}

macro_rules! plain {
    ($($of:ty),+) => { $(
        impl Handed for $of {
            fn handed(self, py: Python<'_>) -> PyResult<Bound<'_, PyAny>> {
                self.into_bound_py_any(py)
            }
        }
    )+ };
}

macro_rules! quantities {
    ($($of:ty),+) => { $(
        impl Handed for $of {
            fn handed(self, py: Python<'_>) -> PyResult<Bound<'_, PyAny>> {
                self.to_si().into_bound_py_any(py)
            }
        }
    )+ };
}

/// Records by the names of their fields: values; then arrays; then three indices of vertices for each triangle.
macro_rules! records {
    ($($of:ident { $($value:ident)* $(; $($array:ident)* $(; $($triangles:ident)*)?)? })+) => { $(
        impl Handed for $of {
            fn handed(self, py: Python<'_>) -> PyResult<Bound<'_, PyAny>> {
                let record = PyDict::new(py);
                $(record.set_item(stringify!($value), self.$value.handed(py)?)?;)*
                $($(record.set_item(stringify!($array), array(py, self.$array)?)?;)*
                $($(record.set_item(stringify!($triangles), triangles(py, self.$triangles)?)?;)*)?)?
                Ok(record.into_any())
            }
        }
    )+ };
}

plain!(bool, f64, u32, String);
quantities!(Length, Force, ForcePerLength, Pressure, Torque, Frequency, TemperatureDifference);

records! {
    Point { x y }
    LengthAt { value at }
    StressAt { value at }
    MomentAt { value at }
    MembraneForceAt { value at }
    MeshError { deflection latch_force compression moment membrane_force triangles met }
    BalanceLeft { force moment in_plane }
    SupportReaction { force moment_along_x moment_along_y in_plane_x in_plane_y }
    LatchState { name pull deflection }
    GasketState {
        smallest largest force open_length beyond_law;
        along_m x_m y_m compression_m force_n_per_m
    }
    LayerStresses {
        layer inner outer;
        triangles inner_larger_pa inner_smaller_pa outer_larger_pa outer_smaller_pa
    }
    MeshField {
        ;
        x_m y_m deflection_m slope_x slope_y moment_xx_n moment_yy_n moment_xy_n
        membrane_xx_n_per_m membrane_yy_n_per_m membrane_xy_n_per_m;
        triangles
    }
    NaturalMode { frequency error met; shape_m }
    NaturalModes { modes; x_m y_m; triangles }
    OpeningTravel { travel travels }
    BucklingMode { factor error; shape }
    Buckling { modes met; x_m y_m; triangles }
    CriticalTemperature { layer rise gradient }
    CriticalRise { factor error met temperatures }
    CaseSolution {
        name largest_deflection large_deflection largest_moment largest_membrane_force error balance
        line_reactions point_reactions latches gaskets stops stresses
        modes opening buckling critical_rise field
    }
}

/// An array without a copy.
fn array<T: Element>(py: Python<'_>, values: Vec<T>) -> PyResult<Bound<'_, PyArray1<T>>> {
    let array = values.into_pyarray(py);
    array.try_readwrite()?.make_nonwriteable();
    Ok(array)
}

/// Three indices in each row.
fn triangles(py: Python<'_>, indices: Vec<u32>) -> PyResult<Bound<'_, PyArray2<u32>>> {
    let rows = indices.len() / 3;
    let array = indices.into_pyarray(py).reshape([rows, 3])?;
    array.try_readwrite()?.make_nonwriteable();
    Ok(array)
}
