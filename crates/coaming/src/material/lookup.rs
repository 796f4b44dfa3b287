//! A record by its key.

use std::sync::{LazyLock, OnceLock};

use super::record::Material;
use super::{adhesive, clear_plastic, laminate, metal, printed_plastic, rubber, sponge};
use crate::prelude::*;

/// One row of a table: the key, and the function that makes the record under that key.
pub(super) type Row = (&'static str, fn(&'static str) -> Material);

/// The tables, in the order in which they are printed.
const TABLES: [&[Row]; 7] = [
    metal::TABLE,
    clear_plastic::TABLE,
    printed_plastic::TABLE,
    laminate::TABLE,
    sponge::TABLE,
    rubber::TABLE,
    adhesive::TABLE,
];

/// Each record, made when it is first asked for: its figures are read with exact factors, which takes longer than many a calculation.
static RECORDS: LazyLock<Vec<Record>> = LazyLock::new(|| {
    let unmade = |&(key, make): &Row| Record { key, make, made: OnceLock::new() };
    TABLES.into_iter().flatten().map(unmade).collect()
});

struct Record {
    key: &'static str,
    make: fn(&'static str) -> Material,
    made: OnceLock<Material>,
}

impl Record {
    fn material(&self) -> Material {
        self.made.get_or_init(|| (self.make)(self.key)).clone()
    }
}

/// The keys of all records, in the order of the tables.
pub fn keys() -> Vec<&'static str> {
    RECORDS.iter().map(|record| record.key).collect()
}

/// All records, in the order of the tables.
pub fn all() -> Vec<Material> {
    RECORDS.iter().map(Record::material).collect()
}

/// The record of a material by its key. Capitals, blanks and hyphens do not matter: `Aluminium 5052-H32` finds
/// `aluminium_5052_h32`.
///
/// # Errors
/// [`Error::UnknownMaterial`] with the known keys that are spelt most like it.
///
/// # Example
/// ```
/// use coaming::material;
/// use coaming::prelude::*;
///
/// // MIL-HDBK-5J, table 3.5.1.0(b1): tensile strength of 5052-H32 sheet 31 ksi.
/// let sheet = material::find("aluminium_5052_h32")?;
/// let strength = sheet.ultimate_strength.ok_or("absent")?;
/// assert!((strength.value.value - 213.7e6).abs() < 0.05e6);
/// assert_eq!(strength.basis, material::Basis::Minimum);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn find(name: &str) -> Result<Material, Error> {
    let key: String = name
        .trim()
        .chars()
        .map(|c| if matches!(c, ' ' | '-') { '_' } else { c.to_ascii_lowercase() })
        .collect();
    let known = RECORDS.iter().find(|record| record.key == key);
    known.map(Record::material).ok_or_else(|| Error::UnknownMaterial {
        field: "material".to_owned(),
        name: name.to_owned(),
        nearest: most_alike(&key, RECORDS.iter().map(|record| record.key)),
    })
}

/// The up to three known words that are spelt most like `word`, joined by `, `; `None` where none comes near.
pub(super) fn most_alike<'a>(word: &str, known: impl Iterator<Item = &'a str>) -> Option<String> {
    let mut scored: Vec<(f64, &str)> = known
        .map(|candidate| (strsim::jaro_winkler(word, candidate), candidate))
        .filter(|(likeness, _)| *likeness >= 0.75)
        .collect();
    scored.sort_by(|left, right| right.0.total_cmp(&left.0));
    let words: Vec<&str> = scored.into_iter().take(3).map(|(_, candidate)| candidate).collect();
    (!words.is_empty()).then(|| words.join(", "))
}
