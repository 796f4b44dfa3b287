//! The cautions that close every output.

/// What `pass` means, and what the cover is not for: on every review, order sheet and page.
pub const CAUTIONS: &[&str] = &[
    "`pass` means: passed this screening with the inputs given. It is not a certificate.",
    "A cover that opens without a tool is never a fixed guard (ISO 14120). Over a hazard it is a movable guard that needs interlocking (ISO 14119) and distance (ISO 13855, ISO 13857), decided by a risk assessment (ISO 12100).",
    "Stop the machine, isolate and lock out every energy source before opening (ISO 14118 and the local lockout rule).",
    "Hot surfaces: see ISO 13732-1.",
    "Before opening: release pressure, expect hot vapour; the lid may spring or fall.",
    "The cover is no shield against bursting parts or fragments, and not for people to stand on.",
    "It is not for occupant protection or vehicle glazing, fire or fuel separation, gas separation, pressure vessels, immersion or rated ingress protection (by test only), explosive atmospheres, or lifting.",
    "Flammability of plastics, foams and adhesives is flagged and referred to a specialist, never judged.",
    "Where failure could injure: local law and codes hold, and a competent engineer decides, licensed where the law asks.",
];

/// What workshop sheets carry besides: order sheets and test sheets.
pub const WORKSHOP_CAUTIONS: &[&str] = &[
    "Sharp edges: deburr, wear gloves. Wear eye protection for drilling and pull tests.",
    "Carbon and glass dust: extraction and mask.",
    "Adhesives, solvents, sealants: follow the safety data sheet, ventilate.",
    "The press brake has guarding rules of its own: follow them.",
];
