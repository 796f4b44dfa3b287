//! Bands whose least end lies above their greatest.

use coaming::prelude::*;

use super::Cover;

impl Cover {
    /// Each band of which both ends are given the wrong way round, with the path of both.
    pub(super) fn ends(&self, problems: &mut Vec<Error>) {
        let mut band = |path: String, name: &str, ends: (Option<f64>, Option<f64>)| {
            let (Some(least), Some(greatest)) = ends else { return };
            if least > greatest {
                let fields = format!("{path}.{name}_low, {path}.{name}_high");
                problems.push(Error::inconsistent(fields, "the least is no more than the greatest"));
            }
        };
        for pattern in self.screws.iter().flatten() {
            let path = format!("screws.{}", pattern.name);
            let embedding = (pattern.embedding_low, pattern.embedding_high);
            let embedding = (embedding.0.map(|low| low.value), embedding.1.map(|high| high.value));
            band(path.clone(), "embedding", embedding);
            band(path, "friction", (pattern.friction_low, pattern.friction_high));
        }
        if let Some(seal) = &self.seal {
            band("seal".to_owned(), "friction", (seal.friction_low, seal.friction_high));
        }
        for (nth, given) in self.materials.iter().flatten().enumerate() {
            let (low, high) = (given.compression_deflection_low, given.compression_deflection_high);
            let ends = (low.map(|low| low.value), high.map(|high| high.value));
            band(format!("materials[{nth}]"), "compression_deflection", ends);
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::document::tests::REVISED;
    use crate::document::{Form, read};

    fn fault(text: &str) -> Option<String> {
        read(text, Form::Toml).err().map(|error| error.field().to_owned())
    }

    fn changed(from: &str, to: &str) -> String {
        let text = REVISED.replacen(from, to, 1);
        assert_ne!(text, REVISED, "{from}");
        text
    }

    /// Ends that are equal are a number; the wrong way round each is named once, with both paths.
    #[test]
    fn the_least_is_no_more_than_the_greatest() {
        for (from, to, found) in [
            ("friction_low = 0.15", "friction_low = 0.3", None),
            ("friction_low = 0.15", "friction_low = 0.31", Some("screws.pane_screws.friction")),
            ("embedding_low = \"0.001 mm\"", "embedding_low = \"0.0085 mm\"", None),
            (
                "embedding_low = \"0.001 mm\"",
                "embedding_low = \"9 um\"",
                Some("screws.pane_screws.embedding"),
            ),
            ("friction_low = 0.3 # chosen here, wet", "friction_low = 0.8", None),
            ("friction_low = 0.3 # chosen here, wet", "friction_low = 0.81", Some("seal.friction")),
        ] {
            let due = found.map(|at| format!("{at}_low, {at}_high"));
            assert_eq!(fault(&changed(from, to)), due, "{to}");
        }
        let sponge = |low: &str| {
            let of = "name = \"own_sponge\"\nkind = \"sponge\"";
            let band =
                format!("compression_deflection_low = \"{low}\"\ncompression_deflection_high = \"63 kPa\"");
            fault(&format!("{REVISED}\n[[materials]]\n{of}\n{band}\n"))
        };
        let both = "materials[2].compression_deflection_low, materials[2].compression_deflection_high";
        assert_eq!(sponge("63 kPa"), None);
        assert_eq!(sponge("64 kPa").as_deref(), Some(both));
    }
}
