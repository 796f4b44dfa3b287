//! The limits between which the real lid lies.

use crate::document::LoadKind;

/// How firmly the other layers join in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Joined {
    /// Not at all: the sheet alone, its cut-outs open.
    SheetAlone,
    /// What is glued on as one piece with the sheet; what is screwed on not at all.
    Bonded,
    /// What its hold makes follow the sheet as one piece with it: what is glued on, and what its screws leave no room.
    Driving,
    /// All of them as one piece with the sheet.
    OnePiece,
}

/// The end of the gasket's band.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Firmness {
    /// The least that its grade allows.
    Softest,
    /// The most.
    Firmest,
}

/// One limit of the lid on its seal.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Setup {
    /// How the layers join in.
    pub joined: Joined,
    /// How firm the gasket is.
    pub firmness: Firmness,
    /// Height to which the gasket recovers after a season, in metres; none where it is new.
    pub recovered: Option<f64>,
    /// True where the mass of all layers must be known: under acceleration, and where they ring.
    pub weighed: bool,
    /// The load case whose temperatures the layers' stiffness is taken at; none for room temperature.
    pub warm: Option<LoadKind>,
}

impl Setup {
    /// All limits of a lid on its new gasket, whether or not its mass is known.
    pub(crate) const ALL: [Self; 4] = [
        Self::new(Joined::SheetAlone, Firmness::Softest),
        Self::new(Joined::SheetAlone, Firmness::Firmest),
        Self::new(Joined::OnePiece, Firmness::Softest),
        Self::new(Joined::OnePiece, Firmness::Firmest),
    ];

    /// One limit of a lid on its new gasket, whether or not its mass is known.
    pub(crate) const fn new(joined: Joined, firmness: Firmness) -> Self {
        Self { joined, firmness, recovered: None, weighed: false, warm: None }
    }

    /// The same on the gasket as it recovers to this height.
    pub(crate) const fn recovered_to(self, height: f64) -> Self {
        Self { recovered: Some(height), ..self }
    }

    /// The same with the mass of all layers.
    pub(crate) const fn weighed(self) -> Self {
        Self { weighed: true, ..self }
    }

    /// The same with the layers as stiff as they are in a load case.
    pub(crate) const fn warmed(self, kind: LoadKind) -> Self {
        Self { warm: Some(kind), ..self }
    }

    /// What is said of how the layers join in.
    pub(crate) const fn joined_name(self) -> &'static str {
        match self.joined {
            Joined::SheetAlone => "sheet alone",
            Joined::Bonded => "bonded layers as one piece",
            Joined::Driving => "bonded and tightly screwed layers as one piece",
            Joined::OnePiece => "one piece",
        }
    }

    /// What is said of the gasket, where its law is not known.
    pub(crate) const fn firmness_name(self) -> &'static str {
        match self.firmness {
            Firmness::Softest => "softest gasket",
            Firmness::Firmest => "firmest gasket",
        }
    }
}
