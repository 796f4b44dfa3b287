//! Topics: what the library calculates, in the order of the trade's own work, each with its short id.

/// Declares [`Topic`]: each id with its plain words.
macro_rules! topics {
    ($( $id:ident $words:literal; )+) => {
        /// What a calculation belongs to. The letter is the module: sheet, plate, thermal, fastener, gasket, latch.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
        #[non_exhaustive]
        pub enum Topic { $( #[doc = concat!("The topic ", $words, ".")] $id, )+ }

        impl Topic {
            /// Every topic, in order.
            pub const ALL: &'static [Self] = &[ $( Self::$id, )+ ];

            /// Its short id, such as `S2`.
            pub const fn id(self) -> &'static str { match self { $( Self::$id => stringify!($id), )+ } }
            /// What it is, in plain words.
            pub const fn words(self) -> &'static str { match self { $( Self::$id => $words, )+ } }
        }
    };
}

topics! {
    S1 "neutral axis of a bend";
    S2 "bend allowance and deduction";
    S3 "springback";
    S4 "smallest inside radius";
    S5 "press brake";
    S6 "holes, slots and reliefs beside a bend";
    S7 "profile of several bends";
    S8 "folded panel";
    S9 "spread of a bent part";
    S10 "sheet as bought";
    P1 "deflection, moments and reactions of plates";
    P2 "natural frequencies of plates";
    P3 "stiffness of layers and laminates";
    P4 "heated plates and their buckling";
    P5 "creep of plates";
    P6 "large deflection of plates";
    P7 "vibration";
    P9 "dent of thin sheet";
    T1 "growth and movement at holes";
    T2 "floating and restrained layers";
    T3 "bow of bonded layers";
    T4 "bonded and sealed joints";
    T5 "temperatures, dew and pressure of a closed bay";
    T6 "lapped pane";
    F1 "threads";
    F2 "strength of screws";
    F3 "tightening";
    F4 "screwed joint under load";
    F5 "stripping of threads";
    F6 "inserts in plastic";
    F7 "heads and bearing";
    F8 "clearance holes and edge distance";
    F9 "screw length";
    F10 "pattern of fasteners";
    F11 "stress at a hole";
    G1 "sponge";
    G2 "solid rubber and hollow sections";
    G3 "set of a gasket";
    G4 "gap and compression";
    G5 "spacing of latches along a gasket";
    G6 "tightness";
    G7 "gasket strip";
    L1 "latches";
    L2 "hinge, stay and swing";
}

#[cfg(test)]
mod tests {
    #[test]
    fn every_calculation_stands_under_the_letter_of_its_module() {
        for entry in crate::ALL {
            let letter = entry.module().chars().next().map(|c| c.to_ascii_uppercase());
            assert_eq!(entry.topic.id().chars().next(), letter, "{}", entry.name);
        }
    }
}
