//! The schema's own shape. That a general-purpose validator takes the demonstration covers and refuses broken ones is
//! tested from Python.

use std::collections::BTreeMap;

use serde_json::Value as Json;

use super::*;

fn of(described: Described) -> Json {
    serde_json::from_str(&schema(described).unwrap()).unwrap()
}

fn names(list: &Json) -> Vec<&str> {
    list.as_array().unwrap().iter().map(|name| name.as_str().unwrap()).collect()
}

#[test]
fn the_structural_keys_are_required_and_no_other() {
    let cover = of(Described::Cover);
    assert_eq!(cover["$schema"], "https://json-schema.org/draft/2020-12/schema");
    assert_eq!(names(&cover["required"]), ["version", "title", "opening", "layers"]);
    assert_eq!(names(&cover["$defs"]["Layer"]["required"]), ["name", "role", "outline"]);
    assert_eq!(names(&cover["$defs"]["Opening"]["required"]), ["outline"]);
    assert!(cover["$defs"]["Limits"]["required"].is_null());
    let panel = of(Described::Panel);
    assert_eq!(names(&panel["required"]), ["version", "title", "outline", "layers", "load_cases"]);
}

#[test]
fn a_field_tells_its_doc_line_unit_and_range() {
    let cover = of(Described::Cover);
    let thickness = &cover["$defs"]["Layer"]["properties"]["thickness"];
    assert_eq!(
        thickness["description"],
        "Thickness, bare or coated as the document says. A length with its unit, shown in mm: greater than 0 mm."
    );
    assert_eq!((&thickness["type"], &thickness["examples"][0]), (&Json::from("string"), &Json::from("3 mm")));
    let humidity = &cover["$defs"]["Bay"]["properties"]["humidity"];
    assert_eq!((&humidity["minimum"], &humidity["maximum"]), (&Json::from(0), &Json::from(1)));
    let modulus = &cover["$defs"]["MaterialOverride"]["properties"]["youngs_modulus"]["description"];
    assert!(modulus.as_str().unwrap().contains("shown in GPa"), "{modulus}");
    let role = &cover["$defs"]["LayerRole"];
    assert_eq!(names(&role["enum"]), ["skin", "pane", "frame", "stiffener", "liner"]);
    assert!(role["description"].as_str().unwrap().contains("- pane: A window."));
}

/// Two conventions for one field exclude each other, as the reader has it.
#[test]
fn the_included_angle_stands_beside_the_bend_angle() {
    let bend = &of(Described::Cover)["$defs"]["Bend"];
    assert!(bend["properties"]["included_angle"].is_object());
    assert_eq!(names(&bend["allOf"][0]["not"]["required"]), ["bend_angle", "included_angle"]);
}

/// Every object refuses unknown keys, and every reference leads to a definition.
#[test]
fn every_record_is_closed_and_every_reference_leads_somewhere() {
    fn walk(node: &Json, root: &Json, objects: &mut usize) {
        if node["type"] == "object" {
            *objects += 1;
            assert_eq!(node["additionalProperties"], false, "{node}");
        }
        if let Some(target) = node["$ref"].as_str() {
            assert!(root.pointer(target.trim_start_matches('#')).is_some(), "{target}");
        }
        match node {
            Json::Object(entries) => entries.values().for_each(|entry| walk(entry, root, objects)),
            Json::Array(entries) => entries.iter().for_each(|entry| walk(entry, root, objects)),
            _ => {}
        }
    }
    for described in [Described::Cover, Described::Panel] {
        let (root, mut objects) = (of(described), 0);
        walk(&root, &root, &mut objects);
        assert!(objects > 20, "{objects}");
    }
}

/// A definition is found by its type's name alone, so no two types of one document may bear the same.
#[test]
fn no_two_types_of_a_document_share_a_name() {
    fn walk(kind: Kind, known: &mut BTreeMap<&'static str, Kind>) {
        let name = match kind {
            Kind::Optional(inner) | Kind::List(inner) => return walk(*inner, known),
            Kind::Choice(choices) => choices.name,
            Kind::OneOf(alternatives) => alternatives.name,
            Kind::Record(record) => record.name,
            _ => return,
        };
        match known.insert(name, kind) {
            Some(earlier) => assert_eq!(earlier, kind, "{name}"),
            None => match kind {
                Kind::Record(record) => record.fields.iter().for_each(|field| walk(field.kind, known)),
                Kind::OneOf(of) => of.options.iter().for_each(|option| walk(option.2, known)),
                _ => {}
            },
        }
    }
    for record in [Cover::RECORD, PanelProblem::RECORD] {
        walk(Kind::Record(record), &mut BTreeMap::new());
    }
}
