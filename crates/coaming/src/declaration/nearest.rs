//! The known word that is spelt most like an unknown one.

/// The nearest of the known words, if any is near enough to be meant.
pub fn nearest<'a>(word: &str, known: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let word = word.to_lowercase();
    known
        .into_iter()
        .map(|candidate| (strsim::jaro_winkler(&word, &candidate.to_lowercase()), candidate))
        .filter(|(likeness, _)| *likeness >= 0.75)
        .max_by(|left, right| left.0.total_cmp(&right.0))
        .map(|(_, candidate)| candidate)
}

/// `; did you mean …?`, or nothing.
pub(crate) fn suggestion(nearest: &Option<String>) -> String {
    nearest.as_ref().map_or_else(String::new, |near| format!("; did you mean `{near}`?"))
}
