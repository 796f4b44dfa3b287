//! The dimensions that quantities have, each with the units it is shown in.

/// Exponents of length, mass, time, temperature and angle.
pub type Exponents = [i8; 5];

/// A dimension: its name, its exponents, and the units that people and C see.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Dimension {
    /// Name in plain words, such as `force per length`.
    pub name: &'static str,
    /// Exponents of length, mass, time, temperature and angle.
    pub exponents: Exponents,
    /// The shop unit.
    pub shop: &'static str,
    /// The SI unit.
    pub si: &'static str,
    /// What C appends to a field's name, such as `n_per_m`.
    pub suffix: &'static str,
    /// An example in shop and inch units, for messages.
    pub example: &'static str,
    /// Absolute temperatures alone: their units carry an offset.
    pub is_absolute_temperature: bool,
}

macro_rules! dimensions {
    ($( $name:ident = $words:literal, $exponents:expr, shop $shop:literal, si $si:literal, suffix $suffix:literal, like $example:literal; )+) => {
        impl Dimension { $(
            #[doc = concat!("The dimension ", $words, ": shop unit ", $shop, ", SI unit ", $si, ".")]
            pub const $name: Self = Self {
                name: $words, exponents: $exponents, shop: $shop, si: $si, suffix: $suffix, example: $example,
                is_absolute_temperature: false,
            };
        )+ }
        impl Dimension {
            /// Every dimension.
            pub const ALL: &'static [Self] = &[$( Self::$name, )+ Self::TEMPERATURE];
        }
    };
}

dimensions! {
    //                            [ length, mass, time, temperature, angle ]
    LENGTH = "length", [1, 0, 0, 0, 0], shop "mm", si "m", suffix "m", like "3 mm or 1/8 in";
    AREA = "area", [2, 0, 0, 0, 0], shop "mm^2", si "m^2", suffix "m2", like "8.78 mm^2";
    VOLUME = "volume", [3, 0, 0, 0, 0], shop "mL", si "m^3", suffix "m3", like "310 mL";
    SECOND_MOMENT_OF_AREA = "second moment of area", [4, 0, 0, 0, 0], shop "mm^4", si "m^4", suffix "m4", like "500 mm^4";
    ANGLE = "angle", [0, 0, 0, 0, 1], shop "deg", si "rad", suffix "rad", like "90 deg";
    MASS = "mass", [0, 1, 0, 0, 0], shop "kg", si "kg", suffix "kg", like "3.2 kg or 7 lb";
    FORCE = "force", [1, 1, -2, 0, 0], shop "N", si "N", suffix "n", like "60 N or 13 lbf";
    PRESSURE = "pressure", [-1, 1, -2, 0, 0], shop "kPa", si "Pa", suffix "pa", like "35 kPa or 5 psi";
    TORQUE = "torque", [2, 1, -2, 0, 0], shop "N·m", si "N·m", suffix "n_m", like "2.4 N·m or 21 lbf in";
    POWER = "power", [2, 1, -3, 0, 0], shop "W", si "W", suffix "w", like "40 W";
    MASS_DENSITY = "mass density", [-3, 1, 0, 0, 0], shop "kg/m^3", si "kg/m^3", suffix "kg_per_m3", like "2680 kg/m^3";
    MASS_PER_AREA = "mass per area", [-2, 1, 0, 0, 0], shop "kg/m^2", si "kg/m^2", suffix "kg_per_m2", like "4.3 kg/m^2";
    FREQUENCY = "frequency", [0, 0, -1, 0, 0], shop "Hz", si "Hz", suffix "hz", like "37.5 Hz or 1500 rpm";
    ACCELERATION = "acceleration", [1, 0, -2, 0, 0], shop "m/s^2", si "m/s^2", suffix "m_per_s2", like "3 gn or 29.4 m/s^2";
    ACCELERATION_SPECTRAL_DENSITY = "acceleration spectral density", [2, 0, -3, 0, 0], shop "gn^2/Hz", si "m^2/s^3", suffix "m2_per_s3", like "0.04 gn^2/Hz";
    VELOCITY = "velocity", [1, 0, -1, 0, 0], shop "m/s", si "m/s", suffix "m_per_s", like "40 m/s";
    TIME = "time", [0, 0, 1, 0, 0], shop "s", si "s", suffix "s", like "24 h";
    TEMPERATURE_DIFFERENCE = "temperature difference", [0, 0, 0, 1, 0], shop "K", si "K", suffix "k", like "30 K or 54 delta_degF";
    EXPANSION = "expansion", [0, 0, 0, -1, 0], shop "1/K", si "1/K", suffix "per_k", like "23.6e-6 1/K or 23.6 um/(m K)";
    FORCE_PER_LENGTH = "force per length", [0, 1, -2, 0, 0], shop "N/mm", si "N/m", suffix "n_per_m", like "0.4 N/mm or 2 lbf/in";
    FORCE_PER_VOLUME = "force per volume", [-2, 1, -2, 0, 0], shop "kPa/mm", si "N/m^3", suffix "n_per_m3", like "8 kPa/mm";
    THERMAL_CONDUCTIVITY = "thermal conductivity", [1, 1, -3, -1, 0], shop "W/(m·K)", si "W/(m·K)", suffix "w_per_m_k", like "0.2 W/(m K)";
    HEAT_TRANSFER = "heat transfer coefficient", [0, 1, -3, -1, 0], shop "W/(m^2·K)", si "W/(m^2·K)", suffix "w_per_m2_k", like "15 W/(m^2 K)";
    HEAT_FLUX = "heat flux", [0, 1, -3, 0, 0], shop "W/m^2", si "W/m^2", suffix "w_per_m2", like "900 W/m^2";
    CURVATURE = "curvature", [-1, 0, 0, 0, 0], shop "1/m", si "1/m", suffix "per_m", like "0.5 1/m";
}

impl Dimension {
    /// The dimension absolute temperature: shop unit degC, SI unit K.
    pub const TEMPERATURE: Self = Self {
        name: "temperature",
        exponents: [0, 0, 0, 1, 0],
        shop: "degC",
        si: "K",
        suffix: "k",
        example: "60 degC or 140 degF",
        is_absolute_temperature: true,
    };
}
