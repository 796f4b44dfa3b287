//! Rows that say the same of parts alike, such as four flanges: told once.

use coaming::prelude::*;

use super::Detail;
use super::words;
use crate::review::Row;
use crate::verdict::Verdict;

/// The lines of a row, each with its label.
type Lines = Vec<(&'static str, String)>;

/// Rows of one check that say the same: the heading and the lines that stand for all of them.
pub(super) struct Told<'a> {
    /// The first of them.
    pub(super) row: &'a Row,
    /// Its title with every subject.
    pub(super) heading: String,
    /// Its lines, each with its label.
    pub(super) lines: Lines,
}

/// The rows of a verdict in their order, those that follow each other and differ in nothing but the name of their part as one. In
/// full detail each stands by itself.
pub(super) fn told(rows: &[Row], verdict: Verdict, detail: Detail, system: System) -> Vec<Told<'_>> {
    let mut groups: Vec<(Vec<&Row>, Lines)> = Vec::new();
    for row in rows.iter().filter(|row| row.verdict == verdict) {
        let lines = words::row(row, detail, system);
        if let Some((known, first)) = groups.last_mut()
            && let Some(before) = known.first()
            && detail == Detail::Short
            && alike(before, row)
            && nameless(before, first) == nameless(row, &lines)
        {
            known.push(row);
            continue;
        }
        groups.push((vec![row], lines));
    }
    groups.into_iter().filter_map(|(rows, lines)| one(&rows, lines)).collect()
}

/// The part of a subject that tells rows of one check apart: its last word.
fn part(row: &Row) -> &str {
    row.subject.rsplit_once(", ").map_or(row.subject.as_str(), |(_, last)| last)
}

/// What stands before that part.
fn whole(row: &Row) -> &str {
    row.subject.rsplit_once(", ").map_or("", |(whole, _)| whole)
}

/// True for rows of one check in one load case, of parts of the same thing, that are accepted or not by the same.
fn alike(one: &Row, other: &Row) -> bool {
    let key = |row: &Row| row.key.split('(').next().map(str::to_owned);
    key(one) == key(other)
        && one.case == other.case
        && !whole(one).is_empty()
        && whole(one) == whole(other)
        && one.waiver == other.waiver
}

/// The lines with the row's own part taken out of the paths in them.
fn nameless(row: &Row, lines: &[(&'static str, String)]) -> Lines {
    with_part(row, lines, "")
}

fn with_part(row: &Row, lines: &[(&'static str, String)], name: &str) -> Lines {
    let own = format!(".{}.", part(row));
    lines.iter().map(|(label, words)| (*label, words.replace(&own, &format!(".{name}.")))).collect()
}

fn one<'a>(rows: &[&'a Row], lines: Lines) -> Option<Told<'a>> {
    let row: &'a Row = rows.first()?;
    if rows.len() == 1 {
        return Some(Told { row, heading: words::check(row), lines });
    }
    let parts = rows.iter().map(|row| part(row)).collect::<Vec<_>>().join(", ");
    let heading = format!("{} x {} ({})", rows.len(), row.title, whole(row));
    let mut told = with_part(row, &lines, &format!("({parts})"));
    told.insert(0, ("parts", parts));
    Some(Told { row, heading, lines: told })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::demand::NotChecked;
    use crate::document::LoadKind;

    fn row(key: &str, path: &str) -> Row {
        let subject = key.split_once('(').map_or("", |(_, rest)| rest.trim_end_matches(')'));
        Row {
            key: key.to_owned(),
            part: "Sheet",
            title: "Flange",
            subject: subject.to_owned(),
            case: None,
            verdict: Verdict::NotChecked,
            margin: None,
            waiver: None,
            outcome: Err(NotChecked::needs(path)),
        }
    }

    #[test]
    fn parts_alike_are_told_once_and_others_apart() {
        let mut rows: Vec<Row> = ["left", "right", "top"]
            .map(|edge| row(&format!("flange(lid, {edge})"), &format!("layers.lid.bends.{edge}.flange")))
            .into();
        rows.push(row("flange(lid, bottom)", "layers.lid.bends.bottom.die_opening"));
        rows.push(row("flange(back, bottom)", "layers.back.bends.bottom.die_opening"));
        rows.push(row("bend(back, bottom)", "layers.back.bends.bottom.die_opening"));
        rows.push(Row {
            case: Some(LoadKind::Hot),
            ..row("bend(back, top)", "layers.back.bends.top.die_opening")
        });
        rows.push(row("mass", "latches.mass"));
        rows.push(row("mass", "latches.mass"));
        let told = |detail| told(&rows, Verdict::NotChecked, detail, System::Shop);
        let short = told(Detail::Short);
        let headings: Vec<&str> = short.iter().map(|told| told.heading.as_str()).collect();
        assert_eq!(headings[..2], ["3 x Flange (lid)", "Flange (lid, bottom)"]);
        assert_eq!(headings.len(), rows.len() - 2);
        assert_eq!(short[0].lines[0], ("parts", "left, right, top".to_owned()));
        assert!(
            short[0].lines[1].1.contains("layers.lid.bends.(left, right, top).flange"),
            "{:?}",
            short[0].lines
        );
        assert!(short[1].lines[0].1.contains("layers.lid.bends.bottom.die_opening"));
        assert_eq!(told(Detail::Full).len(), rows.len());
    }
}
