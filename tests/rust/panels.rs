//! Panels drawn from bytes: shapes on a coarse grid, so that sides coincide, cross and touch as often as not, with now and
//! then a coordinate that is off by next to nothing, or enormous.

use serde_json::{Value, json};

use crate::drawing::Bytes;

/// The document of a panel. Most lists are empty and most numbers fit: a document of many parts would be refused nearly always.
pub fn panel(bytes: &mut Bytes<'_>) -> Value {
    let mut document = json!({
        "version": 1,
        "title": "drawn",
        "outline": outline(bytes),
        "layers": numbered(layers(bytes)),
        "settings": { "tolerance": 0.5, "first_triangles": 16, "most_triangles": 64 + 8 * u32::from(bytes.byte()) },
    });
    document["holes"] = few(bytes, shape);
    document["line_supports"] = few(bytes, line_support);
    if !bytes.byte().is_multiple_of(4) {
        let all_round = json!({ "line": { "edge": {} }, "deflection": "fixed", "slope": "free" });
        document["line_supports"].as_array_mut().into_iter().for_each(|list| list.push(all_round.clone()));
    }
    document["point_supports"] = few(bytes, point_support);
    document["joints"] = few(bytes, joint);
    if document["layers"].as_array().is_some_and(|layers| layers.len() == 1)
        && !bytes.byte().is_multiple_of(16)
    {
        document["joints"] = json!([]);
    }
    document["beams"] = few(bytes, beam);
    document["gaskets"] = few(bytes, gasket);
    document["latches"] = numbered(few(bytes, latch));
    document["stops"] = few(bytes, stop);
    document["load_cases"] = many(bytes, 1, 2, load_case);
    in_plane(bytes, &mut document);
    document
}

/// Now and then what is held, moved and pressed in the plane, and what is asked about it; nothing once the bytes are used up.
fn in_plane(bytes: &mut Bytes<'_>, document: &mut Value) {
    for support in document["line_supports"].as_array_mut().into_iter().flatten() {
        match bytes.byte() % 8 {
            1 | 2 => support["held_in_plane"] = json!(true),
            3 => support["held_along_in_plane"] = json!(true),
            4 => support["held_across_in_plane"] = json!(true),
            5 => support["straight_in_plane"] = json!(true),
            _ => {}
        }
    }
    document["masses"] = few(bytes, |bytes| json!({ "at": point(bytes), "mass": "0.2 kg" }));
    for case in document["load_cases"].as_array_mut().into_iter().flatten() {
        match bytes.byte() % 8 {
            1 => {
                case["growths"] = json!([{ "layer": "0", "strain": bytes.share() / 100.0 - 0.005 }]);
                if bytes.byte() % 4 == 1 {
                    case["growths"][0]["gradient"] = json!(bytes.share() / 100.0);
                }
            }
            2 => {
                let force = ["-1 N/mm", "1 N/m", "1e-9 N/m", "-1e6 N/mm"][usize::from(bytes.byte() % 4)];
                case["edge_forces"] =
                    json!([{ "edge": { "edge": bytes.byte() % 6 }, "layer": "0", "outward": force }]);
            }
            3 => {
                case["edge_forces"] = json!([
                    { "edge": { "hole": bytes.byte() % 3 }, "layer": "0", "along_x": "1 N/mm", "along_y": "-1 N/mm" },
                ]);
            }
            4 => {
                case["support_movements"] =
                    json!([{ "support": bytes.byte() % 3, "along_x": length(bytes), "along_y": "0.01 mm" }]);
            }
            _ => {}
        }
        match bytes.byte() % 8 {
            1 => case["buckling"] = json!(1 + bytes.byte() % 2),
            2 => case["critical_rise"] = json!(true),
            3 => case["large_deflection"] = json!(true),
            _ => {}
        }
    }
}

fn many(bytes: &mut Bytes<'_>, least: u8, most: u8, of: fn(&mut Bytes<'_>) -> Value) -> Value {
    let count = least + bytes.byte() % (most - least + 1);
    (0..count).map(|_| of(bytes)).collect()
}

/// Mostly none, seldom more than one.
fn few(bytes: &mut Bytes<'_>, of: fn(&mut Bytes<'_>) -> Value) -> Value {
    let count = [0, 0, 0, 0, 0, 1, 1, 3][usize::from(bytes.byte() % 8)];
    (0..count).map(|_| of(bytes)).collect()
}

/// Layers that lie on each other, unless a byte moves one.
fn layers(bytes: &mut Bytes<'_>) -> Value {
    let count = 1 + bytes.byte() % 3;
    let layer = |nth: u8| {
        let mut layer = layer(bytes);
        let moved = bytes.byte().is_multiple_of(8);
        layer["inner_face"] = json!(format!("{} mm", if moved { 1.0 } else { 3.0 * f64::from(nth) }));
        // The first covers the panel, so that all of it has material.
        if nth == 0 && !bytes.byte().is_multiple_of(8) {
            layer["region"] = Value::Null;
        }
        layer
    };
    (0..count).map(layer).collect()
}

/// Entries with the names `0`, `1` and so on.
fn numbered(mut list: Value) -> Value {
    for (nth, entry) in list.as_array_mut().into_iter().flatten().enumerate() {
        entry["name"] = json!(nth.to_string());
    }
    list
}

/// A coordinate or size in millimetres.
fn millimetres(bytes: &mut Bytes<'_>) -> f64 {
    let drawn = bytes.byte();
    let on_grid = 25.0 * f64::from(i16::from(bytes.byte() % 33) - 16);
    match drawn {
        0..=219 => on_grid,
        220..=235 => 800.0 * bytes.share() - 400.0,
        236..=247 => {
            let off = [1e-13, 1e-10, 1e-8, 1e-6, 1e-4, 1e-3, 1e-2, 0.1][usize::from(bytes.byte() % 8)];
            on_grid + off
        }
        248..=249 => 1e6,
        250..=251 => 1e-7,
        252 => 1e300,
        253 => -1e-300,
        _ => 0.0,
    }
}

fn length(bytes: &mut Bytes<'_>) -> Value {
    json!(format!("{:?} mm", millimetres(bytes)))
}

/// A size, mostly one that fits.
fn size(bytes: &mut Bytes<'_>) -> Value {
    json!(format!("{:?} mm", millimetres(bytes).abs() / 4.0))
}

/// A point, mostly on a panel of 800 mm by 600 mm, now and then on its edge.
fn point(bytes: &mut Bytes<'_>) -> Value {
    let (x, y) = (millimetres(bytes), 0.75 * millimetres(bytes));
    json!({ "x": format!("{x:?} mm"), "y": format!("{y:?} mm") })
}

/// The outline: half of the time one that certainly stands, so that what lies on it is reached.
fn outline(bytes: &mut Bytes<'_>) -> Value {
    match bytes.byte() % 4 {
        0 => json!({ "rectangle": { "width": "800 mm", "height": "600 mm" } }),
        1 => json!({ "circle": { "diameter": "800 mm" } }),
        2 => json!({ "rectangle": { "width": "800 mm", "height": "600 mm", "corner_radius": "40 mm" } }),
        _ => shape(bytes),
    }
}

fn shape(bytes: &mut Bytes<'_>) -> Value {
    let side = |bytes: &mut Bytes<'_>| {
        let least = if bytes.byte().is_multiple_of(16) { 0.0 } else { 20.0 };
        json!(format!("{:?} mm", least + millimetres(bytes).abs() / 4.0))
    };
    let radius = if bytes.byte().is_multiple_of(8) { size(bytes) } else { json!("4 mm") };
    match bytes.byte() % 5 {
        0 => json!({ "rectangle": { "width": side(bytes), "height": side(bytes), "centre": point(bytes) } }),
        1 => json!({ "rectangle": {
            "width": side(bytes), "height": side(bytes), "corner_radius": radius, "centre": point(bytes),
        } }),
        2 | 3 => json!({ "circle": { "diameter": side(bytes), "centre": point(bytes) } }),
        4 if bytes.byte().is_multiple_of(2) => json!({ "polygon": { "points": many(bytes, 2, 7, point) } }),
        _ => path(bytes),
    }
}

fn path(bytes: &mut Bytes<'_>) -> Value {
    json!({ "path": { "start": point(bytes), "segments": many(bytes, 0, 5, segment) } })
}

fn segment(bytes: &mut Bytes<'_>) -> Value {
    match bytes.byte() % 3 {
        0 => json!({ "to": point(bytes), "through": point(bytes) }),
        _ => json!({ "to": point(bytes) }),
    }
}

fn line(bytes: &mut Bytes<'_>) -> Value {
    match bytes.byte() % 16 {
        0..=3 => json!({ "edge": {} }),
        4..=6 => json!({ "edge": { "edge": bytes.byte() % 6 } }),
        7 => json!({ "edge": { "hole": bytes.byte() % 3, "edge": bytes.byte() % 4 } }),
        8 => json!({ "edge": { "hole": bytes.byte() % 3 } }),
        9..=11 => path(bytes),
        _ => shape(bytes),
    }
}

fn layer(bytes: &mut Bytes<'_>) -> Value {
    let thickness = ["1 mm", "2.5 mm", "3 mm", "1e-6 mm", "100 mm"][usize::from(bytes.byte() % 5)];
    let modulus = ["70 GPa", "2 GPa", "1 Pa", "1e15 Pa"][usize::from(bytes.byte() % 4)];
    let mut layer = json!({
        "thickness": thickness,
        "density": "2700 kg/m^3",
        "material": { "isotropic": { "youngs_modulus": modulus, "poissons_ratio": 0.3 } },
    });
    if bytes.byte().is_multiple_of(3) {
        layer["region"] = json!({ "outline": shape(bytes), "holes": many(bytes, 0, 2, shape) });
    }
    if bytes.byte().is_multiple_of(3) {
        layer["expansion"] = json!("23e-6 1/K");
    }
    layer
}

fn hold(bytes: &mut Bytes<'_>) -> &'static str {
    ["fixed", "free", "fixed", "elastic"][usize::from(bytes.byte() % 4)]
}

fn line_support(bytes: &mut Bytes<'_>) -> Value {
    let mut support = json!({ "line": line(bytes), "deflection": hold(bytes), "slope": hold(bytes) });
    if support["deflection"] == "elastic" {
        support["deflection_stiffness"] =
            json!(["1 MPa", "1e-9 Pa", "1e15 Pa"][usize::from(bytes.byte() % 3)]);
    }
    if support["slope"] == "elastic" {
        support["slope_stiffness"] = json!("100 N");
    }
    support
}

fn point_support(bytes: &mut Bytes<'_>) -> Value {
    let mut support = json!({ "at": point(bytes), "deflection": hold(bytes), "slope": "free" });
    if support["deflection"] == "elastic" {
        support["deflection_stiffness"] = json!("10 N/mm");
    }
    if bytes.byte().is_multiple_of(3) {
        support["washer_radius"] = size(bytes);
    }
    support
}

fn joint(bytes: &mut Bytes<'_>) -> Value {
    let any = bytes.byte();
    let (lower, upper) = if any.is_multiple_of(8) { (any / 8 % 3, any / 32 % 3) } else { (0, 1) };
    let (lower, upper) = (lower.to_string(), upper.to_string());
    match bytes.byte() % 2 {
        0 => json!({ "bonded": { "lower": lower, "upper": upper } }),
        _ => json!({ "slipping": { "lower": lower, "upper": upper, "shear_stiffness": "1e9 N/m^3" } }),
    }
}

fn beam(bytes: &mut Bytes<'_>) -> Value {
    json!({
        "line": line(bytes), "layer": (bytes.byte() / 120).to_string(),
        "youngs_modulus": "70 GPa", "shear_modulus": "26 GPa", "area": "60 mm^2",
        "second_moment_of_area": "3000 mm^4", "torsion_constant": "130 mm^4",
        "centroid_height": length(bytes), "density": "2700 kg/m^3",
    })
}

fn gasket(bytes: &mut Bytes<'_>) -> Value {
    let law = match bytes.byte() % 3 {
        0 => json!({ "linear": { "stiffness": "0.1 MPa" } }),
        _ => json!({ "measured": { "points": [
            { "compression": "0 mm", "force": "0 N/mm" },
            { "compression": "2 mm", "force": format!("{} N/mm", f64::from(bytes.byte()) / 256.0) },
            { "compression": size(bytes), "force": format!("{} N/mm", f64::from(bytes.byte()) / 64.0) },
        ] } }),
    };
    json!({ "line": line(bytes), "law": law, "free_height": "10 mm", "closed_gap": size(bytes) })
}

fn latch(bytes: &mut Bytes<'_>) -> Value {
    let action = match bytes.byte() % 4 {
        0 => json!({ "spring": { "stiffness": "100 N/mm", "draw": length(bytes) } }),
        1 => json!({ "force": { "pull": "100 N" } }),
        2 => json!({ "height": { "deflection": length(bytes) } }),
        _ => json!({ "height": { "deflection": "0 mm" } }),
    };
    json!({ "at": point(bytes), "action": action })
}

fn stop(bytes: &mut Bytes<'_>) -> Value {
    json!({ "at": point(bytes), "deflection": length(bytes), "stiffness": "1 kN/mm" })
}

fn load_case(bytes: &mut Bytes<'_>) -> Value {
    let mut case = json!({ "name": "drawn", "pressures": [{ "pressure": "1 kPa" }] });
    match bytes.byte() % 8 {
        0 => case["pressures"][0]["region"] = shape(bytes),
        1 => case["patches"] = json!([{ "patch": shape(bytes), "force": "-400 N" }]),
        2 => case["point_forces"] = json!([{ "at": point(bytes), "force": "-400 N" }]),
        3 => case["line_forces"] = json!([{ "line": line(bytes), "force": "1 N/mm" }]),
        4 => case["edge_moments"] = json!([{ "edge": { "edge": bytes.byte() % 6 }, "moment": "1 N" }]),
        5 => case["temperatures"] = json!([{ "layer": "0", "rise": "50 K", "gradient": "5 K" }]),
        6 => case["missing_latches"] = json!(["0"]),
        _ => case["normal_acceleration"] = json!("-29.4 m/s^2"),
    }
    if bytes.byte().is_multiple_of(8) {
        case["modes"] = json!(2);
    }
    if bytes.byte().is_multiple_of(8) {
        case["opening"] = json!(true);
    }
    case
}
