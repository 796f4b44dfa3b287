//! Wrong values, each named with its line.

use crate::SOUND;
use crate::faults::{fault, line_is_named};

/// Each fault stands at a place where a reader could lose the line: an array of tables, a table below one, an inline
/// table, an inline table in an array over several lines.
#[test]
fn a_wrong_value_is_named_with_its_line() {
    line_is_named(
        "value",
        "toml",
        SOUND,
        &[
            fault(
                "thickness = \"2.5 mm\"",
                "thickness = 1.6",
                "thickness = 1.6",
                &["layers[0].thickness: `1.6`", "it needs a unit"],
            ),
            fault(
                "thickness = \"2.5 mm\"",
                "thickness = \"1.6\"",
                "thickness = \"1.6\"",
                &["layers[0].thickness: `1.6`", "it needs a unit"],
            ),
            fault(
                "thickness = \"2.5 mm\"",
                "thickness = \"1.6 kg\"",
                "1.6 kg",
                &["layers[0].thickness", "`kg` does not measure length"],
            ),
            fault(
                "thickness = \"2.5 mm\"",
                "thickness = \"NaN mm\"",
                "NaN mm",
                &["layers[0].thickness", "it is not finite"],
            ),
            fault(
                "thickness = \"2.5 mm\"",
                "thickness = \"inf mm\"",
                "inf mm",
                &["layers[0].thickness", "it is not finite"],
            ),
            fault(
                "thickness = \"2.5 mm\"",
                "thickness = \"1e400 mm\"",
                "1e400 mm",
                &["layers[0].thickness", "larger than any number"],
            ),
            fault(
                "thickness = \"2.5 mm\"",
                "thickness = nan",
                "thickness = nan",
                &["layers[0].thickness", "it needs a unit"],
            ),
            fault(
                "thickness = \"2.5 mm\"",
                "thickness = \"-1 mm\"",
                "-1 mm",
                &["layers[0].thickness: -1 mm is not possible", "greater than 0 mm"],
            ),
            fault(
                "thickness = \"2.5 mm\"",
                "thickness = \"0 mm\"",
                "thickness = \"0 mm\"",
                &["layers[0].thickness: 0 mm is not possible"],
            ),
            fault(
                "thickness = \"2.5 mm\"",
                "thickness = \"1,6 mm\"",
                "1,6 mm",
                &["layers[0].thickness", "write `1.6 mm`"],
            ),
            fault(
                "thickness = \"2.5 mm\"",
                "thickness = \"16 ga\"",
                "16 ga",
                &["layers[0].thickness", "needs its metal"],
            ),
            fault(
                "thickness = \"2.5 mm\"",
                "thickness = [\"2.5 mm\"]",
                "[\"2.5 mm\"]",
                &["layers[0].thickness"],
            ),
            fault("thickness = \"2.5 mm\"", "thickness = 1979-05-27", "1979-05-27", &["layers[0].thickness"]),
            fault(
                "thickness = \"5 mm\"",
                "thickness = \"5 N\"",
                "5 N\"",
                &["layers[1].thickness", "`N` does not measure length"],
            ),
            fault(
                "hole = \"8.0 mm\"",
                "hole = \"8.0 s\"",
                "8.0 s",
                &["screws[0].passes[1].hole", "`s` does not measure length"],
            ),
            fault(
                "length = \"5.4 mm\"",
                "length = \"-5.4 mm\"",
                "-5.4 mm",
                &["screws[0].bush.length: -5.4 mm is not possible"],
            ),
            fault(
                "height = \"196 mm\"",
                "height = \"196 lb\"",
                "196 lb",
                &["screws[0].positions.rectangle.height"],
            ),
            fault("y = \"-150 mm\"", "y = -150", "y = -150", &["layers[3].at.y: `-150`", "it needs a unit"]),
            fault(
                "layer = \"strip\", temperature = \"75 degC\"",
                "layer = \"strip\", temperature = \"75 K/s\"",
                "75 K/s",
                &["load_cases[9].states[3].temperature"],
            ),
            fault(
                "layer = \"frame\", temperature = \"-10 degC\", humidity = 0.5",
                "layer = \"frame\", temperature = \"-10 degC\", humidity = 1.5",
                "humidity = 1.5",
                &["load_cases[10].states[2].humidity: 1.5 is not possible", "at most 1"],
            ),
            fault(
                "orders = [1, 3, 6]",
                "orders = [1,\n 3,\n -6]",
                "-6]",
                &["service.excitations[1].orders[2]: -6 is not possible"],
            ),
            fault(
                "count = 10",
                "count = 10.5",
                "count = 10.5",
                &["screws[0].count", "a whole number of things"],
            ),
            fault(
                "count = 10",
                "count = 99999999999",
                "count = 99999999999",
                &["screws[0].count", "a whole number of things"],
            ),
            fault(
                "countersunk = true",
                "countersunk = \"yes\"",
                "countersunk = \"yes\"",
                &["screws[0].passes[0].countersunk", "true or false"],
            ),
            fault("version = 1", "version = 2", "version = 2", &["version: 2 is not possible"]),
            fault(
                "edge = \"top\"",
                "edge = \"upper\"",
                "\"upper\"",
                &["layers[0].bends[2].edge: `upper` is not an option", "left, right, top, bottom"],
            ),
            fault(
                "kind = \"heat_set\"",
                "kind = \"heatset\"",
                "heatset",
                &["screws[0].insert.kind", "did you mean `heat_set`?"],
            ),
            fault(
                "kind = \"sun\"",
                "kind = \"sunshine\"",
                "sunshine",
                &["load_cases[11].kind", "did you mean `sun`?"],
            ),
            fault(
                "{ rectangle = { width = \"540 mm\"",
                "{ rektangle = { width = \"540 mm\"",
                "rektangle",
                &["seal.path: `rektangle` is not an option", "did you mean `rectangle`?"],
            ),
        ],
    );
}
