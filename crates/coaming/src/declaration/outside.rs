//! Names the fields behind the caveat `outside_tested`, from a record's table and its written values.

use super::kind::{Field, Kind, Record};
use super::node::Node;

/// The paths of the numbers that lie outside their tested ranges, in the order of the table.
pub fn outside_tested(record: &Record, written: &Node) -> Vec<String> {
    let mut paths = Vec::new();
    in_record(record, written, "", &mut paths);
    paths
}

fn in_record(record: &Record, written: &Node, path: &str, paths: &mut Vec<String>) {
    for field in record.fields {
        if let Some(value) = written.entry(field.name) {
            let path = if path.is_empty() { field.name.to_owned() } else { format!("{path}.{}", field.name) };
            in_value(field, &field.kind, value, &path, paths);
        }
    }
}

fn in_value(field: &Field, kind: &Kind, value: &Node, path: &str, paths: &mut Vec<String>) {
    match (kind, value) {
        (Kind::Optional(inner), _) => in_value(field, inner, value, path, paths),
        (Kind::List(inner), Node::List(entries)) => {
            for (place, entry) in entries.iter().enumerate() {
                in_value(field, inner, entry, &format!("{path}[{place}]"), paths);
            }
        }
        (Kind::Record(record), _) => in_record(record, value, path, paths),
        (Kind::OneOf(alternatives), Node::Record(_)) => {
            for (key, _, behind) in alternatives.options {
                if let Some(held) = value.entry(key) {
                    in_value(field, behind, held, &format!("{path}.{key}"), paths);
                }
            }
        }
        (Kind::Count, Node::Count(count)) => note(field, *count as f64, path, paths),
        _ => {
            if let Some(si) = value.si() {
                note(field, si, path, paths);
            }
        }
    }
}

fn note(field: &Field, si: f64, path: &str, paths: &mut Vec<String>) {
    if si < field.tested.0 || si > field.tested.1 {
        paths.push(path.to_owned());
    }
}
