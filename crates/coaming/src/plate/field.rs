//! Deflection of a plate and its derivatives at a point: plain numbers, in the direction of the load.

/// Deflection and its derivatives at a point.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Field {
    pub w: f64,
    pub wx: f64,
    pub wy: f64,
    pub wxx: f64,
    pub wxy: f64,
    pub wyy: f64,
    pub wxxx: f64,
    pub wxxy: f64,
    pub wxyy: f64,
    pub wyyy: f64,
}

impl Field {
    /// The same field with x and y exchanged.
    pub(crate) fn turned(self) -> Self {
        Self {
            w: self.w,
            wx: self.wy,
            wy: self.wx,
            wxx: self.wyy,
            wxy: self.wxy,
            wyy: self.wxx,
            wxxx: self.wyyy,
            wxxy: self.wxyy,
            wxyy: self.wxxy,
            wyyy: self.wxxx,
        }
    }

    /// Without the third derivatives.
    pub(crate) fn bending(&self) -> Bending {
        Bending { w: self.w, wx: self.wx, wy: self.wy, wxx: self.wxx, wxy: self.wxy, wyy: self.wyy }
    }

    /// Force per length with which a straight support at x = 0 holds a plate that lies at x > 0, for unit
    /// flexural rigidity: −(wxxx + (2 − ν) wxyy).
    pub(crate) fn reaction(&self, poissons_ratio: f64) -> f64 {
        -(self.wxxx + (2.0 - poissons_ratio) * self.wxyy)
    }
}

/// Deflection, slopes and curvatures at a point.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Bending {
    pub w: f64,
    pub wx: f64,
    pub wy: f64,
    pub wxx: f64,
    pub wxy: f64,
    pub wyy: f64,
}

impl Bending {
    /// The same with x and y exchanged.
    pub(crate) fn turned(self) -> Self {
        Self { w: self.w, wx: self.wy, wy: self.wx, wxx: self.wyy, wxy: self.wxy, wyy: self.wxx }
    }

    /// Adds another.
    pub(crate) fn add(&mut self, f: &Self) {
        self.w += f.w;
        self.wx += f.wx;
        self.wy += f.wy;
        self.wxx += f.wxx;
        self.wxy += f.wxy;
        self.wyy += f.wyy;
    }

    /// Bending moments along x and y for unit flexural rigidity.
    pub(crate) fn moments(&self, poissons_ratio: f64) -> (f64, f64) {
        (-(self.wxx + poissons_ratio * self.wyy), -(self.wyy + poissons_ratio * self.wxx))
    }

    /// Principal moment of the larger size, with its sign.
    pub(crate) fn principal_moment(&self, poissons_ratio: f64) -> f64 {
        let (mx, my) = self.moments(poissons_ratio);
        let twist = (1.0 - poissons_ratio) * self.wxy;
        let (mean, half) = (0.5 * (mx + my), 0.5 * (mx - my));
        let radius = (half * half + twist * twist).sqrt();
        if mean >= 0.0 { mean + radius } else { mean - radius }
    }
}
