//! Names in C: a prefix, a suffix for the unit, another case; the words stay the same.

use coaming::declaration::{Field, Kind, Record};

/// The struct of a record: `CoamingBendAllowance`.
pub(crate) fn structure(record: &Record) -> String {
    format!("Coaming{}", record.name)
}

/// The member of a field, with the suffix of its unit: `thickness_m`.
pub(crate) fn member(field: &Field) -> String {
    match field.kind.dimension() {
        Some(dimension) => format!("{}_{}", field.name, dimension.suffix),
        None => field.name.to_owned(),
    }
}

/// The member that tells whether an optional field is given: `has_setback`.
pub(crate) fn has(field: &Field) -> Option<String> {
    matches!(field.kind, Kind::Optional(_)).then(|| format!("has_{}", field.name))
}

/// The constant of an option: `COAMING_LEG_REFERENCE_TO_TANGENT`.
pub(crate) fn option(choice: &str, option: &str) -> String {
    constant(&[&snake(choice), option])
}

/// The constant of a field's place: `COAMING_PLACE_BEND_ALLOWANCE_THICKNESS`.
pub(crate) fn place(record: &Record, field: &Field) -> String {
    constant(&["place", &snake(record.name), field.name])
}

/// Parts of a constant's name, joined and in capitals; whatever C does not allow becomes `_`.
pub(crate) fn constant(parts: &[&str]) -> String {
    let letters = parts.join("_");
    let letters = letters.chars().map(|letter| match letter.is_ascii_alphanumeric() {
        true => letter.to_ascii_uppercase(),
        false => '_',
    });
    format!("COAMING_{}", letters.collect::<String>())
}

/// `LegReference` as `leg_reference`, `ISOClass` as `iso_class`.
fn snake(name: &str) -> String {
    let letters: Vec<char> = name.chars().collect();
    let mut snake = String::new();
    for (place, letter) in letters.iter().enumerate() {
        let before = place.checked_sub(1).and_then(|place| letters.get(place));
        let after = letters.get(place + 1);
        let starts_word = letter.is_uppercase()
            && before.is_some_and(|before| {
                !before.is_uppercase() || after.is_some_and(|after| after.is_lowercase())
            });
        if starts_word {
            snake.push('_');
        }
        snake.extend(letter.to_lowercase());
    }
    snake
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_stay_whole() {
        assert_eq!(snake("LegReference"), "leg_reference");
        assert_eq!(snake("ISOClass"), "iso_class");
        assert_eq!(snake("Din6935"), "din6935");
        assert_eq!(option("ThreadSize", "1/4-20"), "COAMING_THREAD_SIZE_1_4_20");
    }
}
