//! The classes of a calculation that has one field of every kind.

use coaming::prelude::*;
use coaming::{Entry, Topic};

use super::module::Module;
use super::names::Owners;

/// How it is held.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
enum Hold {
    /// Not at all.
    Free,
    /// Fast.
    #[option("held fast")]
    Fast,
}

/// A leg.
#[derive(Debug, Clone, PartialEq, Fields)]
struct Leg {
    /// Its length, L.
    #[possible(f64::MIN_POSITIVE..)]
    length: Length,
    /// Its lean.
    #[also(rise, |lean| PI / 2.0 - lean)]
    lean: Angle,
}

/// Many legs.
#[derive(Debug, Clone, PartialEq, Fields)]
struct Table {
    /// The legs.
    legs: Vec<Leg>,
}

/// What stands below.
#[derive(Debug, Clone, PartialEq, OneOf)]
enum Base {
    /// On one leg.
    Leg(Leg),
    /// On a table.
    Table(Table),
}

/// A stand, which is \ and """ in one.
///
/// # Formula
/// ```text
/// a  =  b
/// ```
///
/// # Example
/// ```
/// # hidden();
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
struct Stand {
    /// What stands below.
    base: Base,
    /// How it is held, see [`Hold`](Hold).
    hold: Option<Hold>,
    /// Widths.
    widths: Vec<Length>,
    /// Ratios.
    ratios: Vec<f64>,
    /// A stress.
    #[shown_in("MPa")]
    stress: Option<Pressure>,
    /// A count.
    count: u32,
}

/// Outcome of [`Stand`].
#[derive(Debug, Clone, PartialEq, Fields)]
struct StandOutcome {
    /// The leg.
    leg: Leg,
    /// The base.
    base: Option<Base>,
    /// A ratio.
    ratio: Option<f64>,
}

impl Calculation for Stand {
    const NAME: &'static str = "stand";
    const SOURCE: &'static [Source] = &[];
    type Outcome = StandOutcome;
    fn formula(&self, _: &mut Caveats) -> Result<StandOutcome, Error> {
        Err(self.impossible("count", "nothing"))
    }
}

/// Holds another calculation's input, and gives its outcome.
#[derive(Debug, Clone, PartialEq, Fields)]
struct Pair {
    /// The stands.
    stands: Vec<Stand>,
}

impl Calculation for Pair {
    const NAME: &'static str = "pair";
    const SOURCE: &'static [Source] = &[];
    type Outcome = StandOutcome;
    fn formula(&self, _: &mut Caveats) -> Result<StandOutcome, Error> {
        Err(self.impossible("stands", "nothing"))
    }
}

static PAIR: Entry = Entry::of::<Pair>(Topic::S1, "nowhere::Pair");
static STAND: Entry = Entry::of::<Stand>(Topic::S1, "nowhere::Stand");
static FAR: Entry = Entry::of::<Pair>(Topic::S1, "elsewhere::Pair");

fn text() -> String {
    let mut owners = Owners::default();
    owners.enter_calculation(&PAIR);
    owners.enter_calculation(&STAND);
    Module::new("nowhere", &[&PAIR, &STAND], &mut owners).text()
}

#[test]
fn every_kind_has_its_annotation_and_its_table() {
    let text = text();
    for line in [
        "Hold: TypeAlias = Literal[\n    \"free\",\n    \"held fast\",\n]",
        "Base: TypeAlias = Leg | Table",
        "    base: Base\n",
        "    hold: Hold | None = None\n",
        "    \"\"\"How it is held, see `Hold`.\"\"\"",
        "    widths: QuantityList\n",
        "    ratios: NumberList\n",
        "    stress: QuantityInput | None = None\n    \"\"\"A stress [MPa].\"\"\"",
        "    count: int\n",
        "    length: QuantityEntry\n    \"\"\"Its length, L [mm]. Accepted: greater than 0 mm.\"\"\"",
        "        \"base\": OneOfKind({\"leg\": Leg, \"table\": Table}),",
        "        \"widths\": ListKind(QuantityKind(\"length\", \"mm\")),",
        "        \"stress\": QuantityKind(\"pressure\", \"MPa\"),",
        "    def with_rise(\n        cls,\n        *,\n        length: QuantityEntry,\n        rise: QuantityEntry,",
        "            lean=given_as(\"rise\", rise),",
        "BaseFound: TypeAlias = LegFound | TableFound",
        "    def leg(self) -> LegFound:",
        "    def base(self) -> BaseFound | None:",
        "        leg: LegFound.Si\n",
        "    def ratio(self) -> Values:",
        "    stands: Sequence[Stand]\n",
        "    A stand, which is \\\\ and \\\"\\\"\\\" in one.".trim_start(),
        "    Formula\n    -------\n\n        a  =  b\n",
    ] {
        assert!(text.contains(line), "{line}\nis not in\n{text}");
    }
    assert!(!text.contains("hidden") && !text.contains("Example"), "{text}");
}

#[test]
fn classes_stand_behind_what_they_are_made_of() {
    let text = text();
    let at = |class: &str| text.find(class).unwrap_or_else(|| panic!("no {class}"));
    assert!(at("class Stand(Calculation)") < at("class Pair(Calculation)"));
    assert!(at("class Leg(Record)") < at("class Table(Record)"));
    assert_eq!(text.matches("class StandOutcome(Outcome)").count(), 1);
}

#[test]
fn a_type_of_another_module_is_imported() {
    let mut owners = Owners::default();
    owners.enter_calculation(&STAND);
    owners.enter_calculation(&FAR);
    let text = Module::new("elsewhere", &[&FAR], &mut owners).text();
    assert!(text.contains("from coaming.nowhere import Stand, StandOutcome\n"), "{text}");
    assert!(!text.contains("class Stand"), "{text}");
}
