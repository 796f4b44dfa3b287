//! Lids that are thrown along their plane: what tips them, what keeps them from sliding.

use super::all_round::noted;
use super::held_warm::PLATE;
use super::*;

/// By hand: plates of 4 mm at 2700 and 2 mm at 7850 kg/m³ on 440 by 340 mm, and four latches of 50 g at the sheet's inner face.
const MASS: f64 = 0.44 * 0.34 * (10.8 + 15.7) + 0.2;
const HEIGHT: f64 = 0.44 * 0.34 * (10.8 * 2e-3 - 15.7 * 1e-3) / MASS;
const G: f64 = 9.80665;
/// Push of the gasket: 3 kPa on 10 mm by 1.4 m.
const PUSH: f64 = 3e3 * 10e-3 * 1.4;

/// The two plates so stiff that they stay flat, on a gasket that keeps the latches drawn.
fn firm() -> String {
    gasket("3 kPa", "8 kPa")
}

fn gasket(first: &str, second: &str) -> String {
    let text = PLATE
        .replace("\"0.03 kPa\"", &format!("\"{first}\""))
        .replace("\"0.08 kPa\"", &format!("\"{second}\""));
    text.replace("\"70 GPa\"", "\"7000 GPa\"")
}

/// Statics: the lid is stiff, and the latches at x = ±200 mm and y = ±150 mm take the moment; the seal stays as it was.
#[test]
fn inertia_tips_the_lid_on_its_latches() {
    let review = reviewed(&firm());
    for (key, gees, arm, [first, second]) in [
        ("seal_acceleration_x", 3.0, 0.2, [1, 2]),
        // Along y its weight goes with it.
        ("seal_acceleration_y", 4.0, 0.15, [1, 3]),
    ] {
        let demand = review.row(key).unwrap().outcome.unwrap();
        let moment = MASS * gees * G * (HEIGHT + 7e-3);
        close(noted(&demand, "moment that tips the lid")[0], moment, 1e-9 * moment);
        let pull =
            |nth: usize, way: &str| noted(&demand, &format!("pull of latch {nth}, sheet alone, {way}"))[0];
        for (way, sign) in [("one way", 1.0), ("the other way", -1.0)] {
            let there = pull(first, way) + pull(second, way);
            let all: f64 = (1..=4).map(|nth| pull(nth, way)).sum();
            close((2.0 * there - all) * arm, sign * moment, 1e-3 * moment);
            close(all, PUSH, 2e-3 * PUSH);
        }
        let (low, high) = super::demand(&review, key);
        close(low, 3e-3, 3e-5);
        close(high, 3e-3, 3e-5);
        let at = |flatness: f64| {
            let flatness = format!("flatness = \"{flatness} mm\"");
            verdict(&changed(&firm(), "flatness = \"0.1 mm\"", &flatness), key)
        };
        assert_eq!((at(2.0), at(2.6)), (Verdict::Pass, Verdict::Fail), "{key}");
    }
}

/// By hand: a gasket of 3.92 N in all does not keep both sides down; the latches of one side hold as a hinge, about which its push and
/// its stiffness take the moment, and the other side goes down until they do.
#[test]
fn a_soft_gasket_lets_the_lid_tip() {
    let review = reviewed(&gasket("0.28 kPa", "0.7467 kPa"));
    let demand = review.row("seal_acceleration_x").unwrap().outcome.unwrap();
    let moment = noted(&demand, "moment that tips the lid")[0];
    let stiffness = 0.28e3 * 10e-3 / 3e-3;
    let turn = (moment - 0.2 * 0.28e3 * 10e-3 * 1.4) / (stiffness * (0.3 * 0.16 + 2.0 * 0.064 / 3.0));
    let down = noted(&demand, "largest compression, sheet alone, one way")[0] - 3e-3;
    close(down, 0.4 * turn, 0.02 * 0.4 * turn);
    assert!(down > 0.3e-3, "{down}");
}

fn sliding(text: &str) -> Row {
    reviewed(text).row("seal_sliding_x").unwrap()
}

/// A document with locators, one a line.
fn located(lines: &str) -> String {
    firm().replace("[service]\n", &format!("{lines}\n[service]\n"))
}

fn locator(name: &str, (x, y): (f64, f64), load: f64) -> String {
    format!(
        "[[locators]]\nname = \"{name}\"\nat = {{ x = \"{x} mm\", y = \"{y} mm\" }}\ndirection = \"along_x\"\nworking_load = \"{load} N\"\n"
    )
}

/// By hand: 3 g along x and its own weight across want `m g √10`; the gasket holds 0.3 to 0.8 of its push.
#[test]
fn friction_alone_is_judged_where_nothing_locates_the_lid() {
    let none = firm().replace("good_face", "locators = []\ngood_face");
    let review = reviewed(&none);
    let (low, high) = demand(&review, "seal_sliding_x");
    close(low, 0.3 * PUSH, 5e-3 * PUSH);
    close(high, 0.8 * PUSH, 5e-3 * PUSH);
    close(limit(&review, "seal_sliding_x"), MASS * G * 10.0_f64.sqrt(), 1e-9);
    close(limit(&review, "seal_sliding_y"), MASS * G * 4.0, 1e-9);
    let at = |gees: f64| {
        let text = none.replace("acceleration = \"3 gn\"", &format!("acceleration = \"{gees} gn\""));
        verdict(
            &reviewed(
                &text
                    .replace("friction_low = 0.3", "friction_low = 1.2")
                    .replace("friction_high = 0.8", "friction_high = 1.8"),
            ),
            "seal_sliding_x",
        )
    };
    // 50.4 to 75.6 N against √(gees² + 1) × 40.8 N.
    assert_eq!((at(0.2), at(1.0), at(3.0)), (Verdict::Pass, Verdict::NeedsTest, Verdict::Fail));
    let key = "seal_sliding_y";
    let along = |gees: f64| {
        let text = none.replace("acceleration = \"3 gn\"", &format!("acceleration = \"{gees} gn\""));
        verdict(
            &reviewed(
                &text
                    .replace("friction_low = 0.3", "friction_low = 1.2")
                    .replace("friction_high = 0.8", "friction_high = 1.8"),
            ),
            key,
        )
    };
    assert_eq!((along(0.1), along(0.5), along(3.0)), (Verdict::Pass, Verdict::NeedsTest, Verdict::Fail));
}

/// By hand: of two pins one may bear all of 122 N, or each half of what friction leaves.
#[test]
fn locators_bear_what_friction_does_not() {
    let pins =
        |load: f64| located(&(locator("a", (200.0, 100.0), load) + &locator("b", (-200.0, -100.0), load)));
    let force = MASS * 3.0 * G;
    let (low, high) = demand(&reviewed(&pins(200.0)), "seal_sliding_x");
    close(low, 0.5 * (force - 0.8 * PUSH), 0.01 * force);
    close(high, force, 1e-9);
    for (load, expected) in [(200.0, Verdict::Pass), (100.0, Verdict::NeedsTest), (40.0, Verdict::Fail)] {
        assert_eq!(sliding(&pins(load)).verdict, expected, "{load}");
    }
    // Both above the centre of mass, 100 and 200 mm over it: the nearer bears twice the force, by moments about the other.
    let above = located(&(locator("a", (200.0, 100.0), 300.0) + &locator("b", (-200.0, 200.0), 300.0)));
    close(demand(&reviewed(&above), "seal_sliding_x").1, 2.0 * force, 1e-6);
    // One in line with the centre of mass holds it; one that is not lets it turn.
    let one = |y: f64| located(&locator("a", (200.0, y), 300.0));
    assert_eq!(sliding(&one(0.0)).verdict, Verdict::Pass);
    not_calculated(&reviewed(&one(100.0)), "seal_sliding_x");
    // What holds along x alone does nothing along y.
    assert_eq!(verdict(&reviewed(&pins(1000.0)), "seal_sliding_y"), Verdict::Fail);
    let either = pins(1000.0).replace("\"along_x\"", "\"either_way\"");
    assert_eq!(verdict(&reviewed(&either), "seal_sliding_y"), Verdict::Pass);
}

#[test]
fn what_is_missing_is_named() {
    let pin = located(&locator("a", (200.0, 0.0), 300.0));
    for (piece, path) in [
        ("friction_low = 0.3\n", "seal.friction_low"),
        ("friction_high = 0.8\n", "seal.friction_high"),
        ("gravity = { x = 0, y = -1, z = 0 }\n", "service.gravity"),
        ("acceleration = \"3 gn\"\n", "load_cases.acceleration_x.acceleration"),
        ("mass = \"50 g\"\n", "latches.mass"),
        ("at = { x = \"200 mm\", y = \"0 mm\" }\n", "locators.a.at"),
        ("direction = \"along_x\"\n", "locators.a.direction"),
        ("working_load = \"300 N\"\n", "locators.a.working_load"),
    ] {
        needs(&without(&pin, piece), "seal_sliding_x", path);
    }
    needs(&reviewed(&firm()), "seal_sliding_x", "locators");
    needs(&without(PLATE, "gravity = { x = 0, y = -1, z = 0 }\n"), "seal_acceleration_y", "service.gravity");
    let twice = located(&(locator("a", (0.0, 0.0), 1.0) + &locator("a", (0.0, 0.0), 1.0)));
    assert!(read(&twice, Form::Toml).is_err());
}
