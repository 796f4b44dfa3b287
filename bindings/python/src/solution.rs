//! A solved panel as Python's objects: quantities as SI floats, values over the mesh as arrays that cannot be written to.

use coaming::quantity::Quantity;
use coaming_cover::document::Point;
use coaming_cover::panel::{
    Buckling, CaseSolution, CriticalRise, GasketState, LatchState, LayerStresses, LengthAt, MeshField,
    NaturalModes, OpeningTravel, StressAt, SupportReaction,
};
use numpy::{Element, IntoPyArray, PyArray1, PyArray2, PyArrayMethods};
use pyo3::prelude::*;
use pyo3::types::{PyDict, PyList};

/// A record under construction.
struct Record<'py>(Bound<'py, PyDict>);

impl<'py> Record<'py> {
    fn new(py: Python<'py>) -> Self {
        Self(PyDict::new(py))
    }

    fn with(self, name: &str, value: impl IntoPyObject<'py>) -> PyResult<Self> {
        self.0.set_item(name, value)?;
        Ok(self)
    }

    fn array<T: Element>(self, name: &str, values: Vec<T>) -> PyResult<Self> {
        let array: Bound<'py, PyArray1<T>> = values.into_pyarray(self.0.py());
        array.try_readwrite()?.make_nonwriteable();
        self.with(name, array)
    }

    /// Three indices in each row.
    fn triangles(self, name: &str, indices: Vec<u32>) -> PyResult<Self> {
        let rows = indices.len() / 3;
        let array: Bound<'py, PyArray2<u32>> = indices.into_pyarray(self.0.py()).reshape([rows, 3])?;
        array.try_readwrite()?.make_nonwriteable();
        self.with(name, array)
    }
}

/// A list of records.
fn list<'py, T>(
    py: Python<'py>,
    entries: impl IntoIterator<Item = T>,
    of: impl Fn(Python<'py>, T) -> PyResult<Record<'py>>,
) -> PyResult<Bound<'py, PyList>> {
    let list = PyList::empty(py);
    for entry in entries {
        list.append(of(py, entry)?.0)?;
    }
    Ok(list)
}

/// The solution of one load case.
pub(crate) fn case(py: Python<'_>, case: CaseSolution) -> PyResult<Bound<'_, PyDict>> {
    let error = Record::new(py)
        .with("deflection", case.error.deflection)?
        .with("latch_force", case.error.latch_force)?
        .with("compression", case.error.compression.map(|length| length.to_si()))?
        .with("moment", case.error.moment)?
        .with("membrane_force", case.error.membrane_force)?
        .with("triangles", case.error.triangles)?
        .with("met", case.error.met)?;
    let moment = Record::new(py)
        .with("value", case.largest_moment.value.to_si())?
        .with("at", point(py, &case.largest_moment.at)?.0)?;
    let membrane_force = Record::new(py)
        .with("value", case.largest_membrane_force.value.to_si())?
        .with("at", point(py, &case.largest_membrane_force.at)?.0)?;
    let balance = Record::new(py)
        .with("force", case.balance.force)?
        .with("moment", case.balance.moment)?
        .with("in_plane", case.balance.in_plane)?;
    let stops: Vec<f64> = case.stops.iter().map(|push| push.to_si()).collect();
    let modes = case.modes.map(|found| modes(py, found)).transpose()?;
    let opening = case.opening.map(|found| opening(py, &found)).transpose()?;
    let buckling = case.buckling.map(|found| buckling(py, found)).transpose()?;
    let critical_rise = case.critical_rise.map(|found| critical_rise(py, found)).transpose()?;
    let record = Record::new(py)
        .with("name", case.name)?
        .with("largest_deflection", length_at(py, &case.largest_deflection)?.0)?
        .with("large_deflection", case.large_deflection)?
        .with("largest_moment", moment.0)?
        .with("largest_membrane_force", membrane_force.0)?
        .with("error", error.0)?
        .with("balance", balance.0)?
        .with("line_reactions", list(py, &case.line_reactions, reaction)?)?
        .with("point_reactions", list(py, &case.point_reactions, reaction)?)?
        .with("latches", list(py, &case.latches, latch)?)?
        .with("gaskets", list(py, case.gaskets, gasket)?)?
        .with("stops", stops)?
        .with("stresses", list(py, case.stresses, stresses)?)?
        .with("modes", modes)?
        .with("opening", opening)?
        .with("buckling", buckling)?
        .with("critical_rise", critical_rise)?
        .with("field", field(py, case.field)?.0)?;
    Ok(record.0)
}

/// The natural modes.
pub(crate) fn modes(py: Python<'_>, found: NaturalModes) -> PyResult<Bound<'_, PyDict>> {
    let modes = list(py, found.modes, |py, mode| {
        Record::new(py)
            .with("frequency", mode.frequency.to_si())?
            .with("error", mode.error)?
            .with("met", mode.met)?
            .array("shape_m", mode.shape_m)
    })?;
    let record = Record::new(py)
        .with("modes", modes)?
        .array("x_m", found.x_m)?
        .array("y_m", found.y_m)?
        .triangles("triangles", found.triangles)?;
    Ok(record.0)
}

/// The ways to buckle.
pub(crate) fn buckling(py: Python<'_>, found: Buckling) -> PyResult<Bound<'_, PyDict>> {
    let modes = list(py, found.modes, |py, mode| {
        Record::new(py).with("factor", mode.factor)?.with("error", mode.error)?.array("shape", mode.shape)
    })?;
    let record = Record::new(py)
        .with("modes", modes)?
        .with("met", found.met)?
        .array("x_m", found.x_m)?
        .array("y_m", found.y_m)?
        .triangles("triangles", found.triangles)?;
    Ok(record.0)
}

/// The temperatures at which it buckles.
pub(crate) fn critical_rise(py: Python<'_>, found: CriticalRise) -> PyResult<Bound<'_, PyDict>> {
    let temperatures = list(py, found.temperatures, |py, layer| {
        Record::new(py)
            .with("layer", layer.layer)?
            .with("rise", layer.rise.to_si())?
            .with("gradient", layer.gradient.to_si())
    })?;
    let record = Record::new(py)
        .with("factor", found.factor)?
        .with("error", found.error)?
        .with("met", found.met)?
        .with("temperatures", temperatures)?;
    Ok(record.0)
}

/// The travel that opens it.
pub(crate) fn opening<'py>(py: Python<'py>, found: &OpeningTravel) -> PyResult<Bound<'py, PyDict>> {
    let travels: Vec<f64> = found.travels.iter().map(|travel| travel.to_si()).collect();
    Ok(Record::new(py).with("travel", found.travel.to_si())?.with("travels", travels)?.0)
}

fn point<'py>(py: Python<'py>, at: &Point) -> PyResult<Record<'py>> {
    Record::new(py).with("x", at.x.to_si())?.with("y", at.y.to_si())
}

fn length_at<'py>(py: Python<'py>, found: &LengthAt) -> PyResult<Record<'py>> {
    Record::new(py).with("value", found.value.to_si())?.with("at", point(py, &found.at)?.0)
}

fn stress_at<'py>(py: Python<'py>, found: &StressAt) -> PyResult<Record<'py>> {
    Record::new(py).with("value", found.value.to_si())?.with("at", point(py, &found.at)?.0)
}

fn reaction<'py>(py: Python<'py>, found: &SupportReaction) -> PyResult<Record<'py>> {
    Record::new(py)
        .with("force", found.force.to_si())?
        .with("moment_along_x", found.moment_along_x.to_si())?
        .with("moment_along_y", found.moment_along_y.to_si())?
        .with("in_plane_x", found.in_plane_x.to_si())?
        .with("in_plane_y", found.in_plane_y.to_si())
}

fn latch<'py>(py: Python<'py>, found: &LatchState) -> PyResult<Record<'py>> {
    Record::new(py)
        .with("name", &found.name)?
        .with("pull", found.pull.to_si())?
        .with("deflection", found.deflection.to_si())
}

fn gasket(py: Python<'_>, found: GasketState) -> PyResult<Record<'_>> {
    Record::new(py)
        .with("smallest", length_at(py, &found.smallest)?.0)?
        .with("largest", length_at(py, &found.largest)?.0)?
        .with("force", found.force.to_si())?
        .with("open_length", found.open_length.to_si())?
        .with("beyond_law", found.beyond_law)?
        .array("along_m", found.along_m)?
        .array("x_m", found.x_m)?
        .array("y_m", found.y_m)?
        .array("compression_m", found.compression_m)?
        .array("force_n_per_m", found.force_n_per_m)
}

fn stresses(py: Python<'_>, found: LayerStresses) -> PyResult<Record<'_>> {
    Record::new(py)
        .with("layer", found.layer)?
        .with("inner", stress_at(py, &found.inner)?.0)?
        .with("outer", stress_at(py, &found.outer)?.0)?
        .array("triangles", found.triangles)?
        .array("inner_larger_pa", found.inner_larger_pa)?
        .array("inner_smaller_pa", found.inner_smaller_pa)?
        .array("outer_larger_pa", found.outer_larger_pa)?
        .array("outer_smaller_pa", found.outer_smaller_pa)
}

fn field(py: Python<'_>, found: MeshField) -> PyResult<Record<'_>> {
    Record::new(py)
        .array("x_m", found.x_m)?
        .array("y_m", found.y_m)?
        .triangles("triangles", found.triangles)?
        .array("deflection_m", found.deflection_m)?
        .array("slope_x", found.slope_x)?
        .array("slope_y", found.slope_y)?
        .array("moment_xx_n", found.moment_xx_n)?
        .array("moment_yy_n", found.moment_yy_n)?
        .array("moment_xy_n", found.moment_xy_n)?
        .array("membrane_xx_n_per_m", found.membrane_xx_n_per_m)?
        .array("membrane_yy_n_per_m", found.membrane_yy_n_per_m)?
        .array("membrane_xy_n_per_m", found.membrane_xy_n_per_m)
}
