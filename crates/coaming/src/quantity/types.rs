//! The quantity types: `uom`'s, under the trade's names, and their constructors, which round once.

use uom::si::{ISQ, Quantity as Uom, SI};
use uom::typenum::{N1, N2, N3, P1, P2, P4, Z0};

use super::dimension::Dimension;
use super::exact::Exact;
use super::{read, unit, write};

/// A quantity type: an SI `f64` that knows its dimension.
pub trait Quantity: Copy + Send + Sync + core::fmt::Debug + 'static {
    /// Its dimension.
    const DIMENSION: &'static Dimension;
    /// From a value in SI units.
    fn from_si(si: f64) -> Self;
    /// The value in SI units.
    fn to_si(self) -> f64;

    /// Reads it as people write it: `3 mm`, `1/8 in`.
    ///
    /// # Errors
    /// [`Error::NotAQuantity`](crate::Error::NotAQuantity), as [`read`](super::read()) gives it.
    fn read(text: &str) -> Result<Self, crate::Error> {
        read::read(text, Self::DIMENSION).map(Self::from_si)
    }

    /// For people: four figures in the shop unit.
    fn shown(self) -> String {
        write::for_people(self.to_si(), Self::DIMENSION, Self::DIMENSION.shop, write::System::Shop)
    }
}

/// Any quantity from its SI value; the type is inferred.
pub fn si<Q: Quantity>(value: f64) -> Q {
    Q::from_si(value)
}

macro_rules! quantities {
    ($( $name:ident = $uom:ty, $dimension:ident; )+) => { $(
        #[doc = concat!("A quantity of the dimension [`", stringify!($dimension), "`](Dimension::", stringify!($dimension), "), held in SI units.")]
        pub type $name = $uom;
        impl Quantity for $name {
            const DIMENSION: &'static Dimension = &Dimension::$dimension;
            #[inline]
            fn from_si(si: f64) -> Self {
                Self { dimension: core::marker::PhantomData, units: core::marker::PhantomData, value: si }
            }
            #[inline]
            fn to_si(self) -> f64 { self.value }
        }
        $crate::declaration::quantity_value!($name);
    )+ };
}

quantities! {
    Length = uom::si::f64::Length, LENGTH;
    Area = uom::si::f64::Area, AREA;
    Volume = uom::si::f64::Volume, VOLUME;
    SecondMomentOfArea = Uom<ISQ<P4, Z0, Z0, Z0, Z0, Z0, Z0>, SI<f64>, f64>, SECOND_MOMENT_OF_AREA;
    Angle = uom::si::f64::Angle, ANGLE;
    Mass = uom::si::f64::Mass, MASS;
    Force = uom::si::f64::Force, FORCE;
    Pressure = uom::si::f64::Pressure, PRESSURE;
    Torque = uom::si::f64::Torque, TORQUE;
    Power = uom::si::f64::Power, POWER;
    MassDensity = uom::si::f64::MassDensity, MASS_DENSITY;
    MassPerArea = uom::si::f64::ArealMassDensity, MASS_PER_AREA;
    Frequency = uom::si::f64::Frequency, FREQUENCY;
    Acceleration = uom::si::f64::Acceleration, ACCELERATION;
    AccelerationSpectralDensity = Uom<ISQ<P2, Z0, N3, Z0, Z0, Z0, Z0>, SI<f64>, f64>, ACCELERATION_SPECTRAL_DENSITY;
    Velocity = uom::si::f64::Velocity, VELOCITY;
    Time = uom::si::f64::Time, TIME;
    Temperature = uom::si::f64::ThermodynamicTemperature, TEMPERATURE;
    TemperatureDifference = uom::si::f64::TemperatureInterval, TEMPERATURE_DIFFERENCE;
    Expansion = uom::si::f64::TemperatureCoefficient, EXPANSION;
    ForcePerLength = uom::si::f64::SurfaceTension, FORCE_PER_LENGTH;
    ForcePerVolume = Uom<ISQ<N2, P1, N2, Z0, Z0, Z0, Z0>, SI<f64>, f64>, FORCE_PER_VOLUME;
    ThermalConductivity = uom::si::f64::ThermalConductivity, THERMAL_CONDUCTIVITY;
    HeatTransferCoefficient = uom::si::f64::HeatTransfer, HEAT_TRANSFER;
    HeatFlux = Uom<ISQ<Z0, P1, N3, Z0, Z0, Z0, Z0>, SI<f64>, f64>, HEAT_FLUX;
    Curvature = Uom<ISQ<N1, Z0, Z0, Z0, Z0, Z0, Z0>, SI<f64>, f64>, CURVATURE;
}

/// The value of a decimal number of a unit, rounded once: equal, bit for bit, to reading the same text.
fn of(value: f64, symbol: &'static str, dimension: &'static Dimension) -> f64 {
    match (Exact::shortest(value), unit::read(symbol, dimension)) {
        (Some(number), Ok(unit)) => number.plus(&unit.offset).times(&unit.factor).rounded(),
        _ => f64::NAN, // an infinite or absent number: refused, with its field, by the calculation that it is given to
    }
}

macro_rules! constructors {
    ($( $name:ident = $symbol:literal: $quantity:ty; )+) => { $(
        #[doc = concat!("That many ", $symbol, ": `", stringify!($name), "(0.07)` has the bits of the text `0.07 ", $symbol, "`.")]
        pub fn $name(value: f64) -> $quantity {
            <$quantity>::from_si(of(value, $symbol, <$quantity as Quantity>::DIMENSION))
        }
    )+ };
}

constructors! {
    mm = "mm": Length;
    cm = "cm": Length;
    m = "m": Length;
    inch = "in": Length;
    square_mm = "mm^2": Area;
    deg = "deg": Angle;
    rad = "rad": Angle;
    kilogram = "kg": Mass;
    gram = "g": Mass;
    pound = "lb": Mass;
    newton = "N": Force;
    kilonewton = "kN": Force;
    pound_force = "lbf": Force;
    pascal = "Pa": Pressure;
    kilopascal = "kPa": Pressure;
    megapascal = "MPa": Pressure;
    gigapascal = "GPa": Pressure;
    psi = "psi": Pressure;
    newton_meter = "N·m": Torque;
    pound_force_inch = "lbf in": Torque;
    kilogram_per_cubic_meter = "kg/m^3": MassDensity;
    kilogram_per_square_meter = "kg/m^2": MassPerArea;
    hertz = "Hz": Frequency;
    rpm = "rpm": Frequency;
    meter_per_second_squared = "m/s^2": Acceleration;
    standard_gravity = "gn": Acceleration;
    standard_gravity_squared_per_hertz = "gn^2/Hz": AccelerationSpectralDensity;
    meter_per_second = "m/s": Velocity;
    second = "s": Time;
    hour = "h": Time;
    celsius = "degC": Temperature;
    fahrenheit = "degF": Temperature;
    kelvin = "K": Temperature;
    delta_kelvin = "K": TemperatureDifference;
    delta_fahrenheit = "delta_degF": TemperatureDifference;
    per_kelvin = "1/K": Expansion;
    newton_per_mm = "N/mm": ForcePerLength;
    watt_per_meter_kelvin = "W/(m K)": ThermalConductivity;
    watt_per_square_meter_kelvin = "W/(m^2 K)": HeatTransferCoefficient;
    watt_per_square_meter = "W/m^2": HeatFlux;
}

/// The difference of two temperatures, upper − lower: `uom` gives a temperature for it.
pub fn difference(upper: Temperature, lower: Temperature) -> TemperatureDifference {
    si(upper.value - lower.value)
}
