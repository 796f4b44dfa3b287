//! The Markdown as a general-purpose CommonMark parser reads it.

use std::sync::LazyLock;

use pulldown_cmark::{Event, Options, Parser, Tag, TagEnd};

use super::super::{order_sheet_json, order_sheet_text, review_json, review_text};
use super::*;
use crate::document::{Cover, Form, read};
use crate::order_sheet::order_sheet;

const COVERS: [&str; 4] = [
    include_str!("../../../../examples/covers/first-guess.toml"),
    include_str!("../../../../examples/covers/first-guess-flanged.toml"),
    include_str!("../../../../examples/covers/half-fix.toml"),
    include_str!("../../../../examples/covers/revised.toml"),
];

/// What Markdown, its common extensions and HTML read as markup.
const HOSTILE: &str =
    "a | b `c` *d* _e_ **f** <script>g</script> [h](http://i.example) ![j](k) &amp; # l ~~m~~ \\ n_o $p$";

/// The sheets of the demonstration covers, then of one whose words are full of marks; each with its review.
static SHEETS: LazyLock<Vec<OrderSheet>> = LazyLock::new(|| {
    let mut covers: Vec<Cover> = COVERS.iter().map(|text| read(text, Form::Toml).unwrap()).collect();
    let mut hostile = covers[3].clone();
    hostile.title = format!("{HOSTILE}\n# second line");
    hostile.revision = Some(HOSTILE.to_owned());
    for pattern in hostile.screws.iter_mut().flatten() {
        pattern.name = HOSTILE.to_owned();
    }
    covers.push(hostile);
    covers.iter().map(|cover| order_sheet(cover).unwrap()).collect()
});

/// One block as the parser reads it: its kind and its plain words.
#[derive(Debug, PartialEq)]
enum Block {
    Heading(String),
    Paragraph(String),
    Item(String),
    Row(Vec<String>),
}

/// Reads Markdown; markup that the library never writes is a failure.
fn blocks(markdown: &str) -> Vec<Block> {
    let options = Options::ENABLE_TABLES | Options::ENABLE_STRIKETHROUGH | Options::ENABLE_MATH;
    let (mut blocks, mut words, mut cells) = (Vec::new(), String::new(), Vec::new());
    for event in Parser::new_ext(markdown, options) {
        match event {
            Event::Text(text) => words.push_str(&text),
            Event::Start(
                Tag::Heading { .. }
                | Tag::Paragraph
                | Tag::List(_)
                | Tag::Item
                | Tag::Strong
                | Tag::Table(_)
                | Tag::TableHead
                | Tag::TableRow
                | Tag::TableCell,
            )
            | Event::End(TagEnd::Strong | TagEnd::List(_) | TagEnd::Table) => {}
            Event::End(TagEnd::Heading(_)) => blocks.push(Block::Heading(core::mem::take(&mut words))),
            Event::End(TagEnd::Paragraph) => blocks.push(Block::Paragraph(core::mem::take(&mut words))),
            Event::End(TagEnd::Item) => blocks.push(Block::Item(core::mem::take(&mut words))),
            Event::End(TagEnd::TableCell) => cells.push(core::mem::take(&mut words)),
            Event::End(TagEnd::TableHead | TagEnd::TableRow) => {
                blocks.push(Block::Row(core::mem::take(&mut cells)));
            }
            other => panic!("markup that was not meant: {other:?} in {markdown}"),
        }
    }
    blocks
}

/// Words as HTML shows them: every run of blanks is one.
fn shown_words(words: &str) -> String {
    words.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn item(words: &str) -> Block {
    Block::Item(shown_words(words))
}

#[test]
fn a_review_reads_back_as_its_lines_in_their_order() {
    for review in SHEETS.iter().map(|sheet| &sheet.review) {
        for (detail, system) in [(Detail::Short, System::Shop), (Detail::Full, System::Inch)] {
            let read = blocks(&review_markdown(review, detail, system));
            let first = Block::Heading(shown_words(&format!("Review: {}", words::title(review))));
            assert_eq!(read.first(), Some(&first));
            let start = read.iter().position(|block| *block == Block::Heading("Checks".to_owned())).unwrap();
            let end = read
                .iter()
                .position(|block| *block == Block::Heading("What this rests on".to_owned()))
                .unwrap();
            let mut expected = Vec::new();
            for verdict in Verdict::ALL {
                for Told { row, heading, lines } in told(&review.rows, verdict, detail, system) {
                    let case = row.case.map_or_else(String::new, |case| format!(" [{}]", words::case(case)));
                    let head = format!("{} {heading}{case}", words::verdict(row));
                    expected.push(Block::Paragraph(shown_words(&head)));
                    expected.extend(lines.iter().map(|(label, words)| item(&format!("{label}: {words}"))));
                }
            }
            assert_eq!(read[start + 1..end], expected);
        }
    }
}

#[test]
fn an_order_sheet_reads_back_as_its_tables_in_their_order() {
    for sheet in SHEETS.iter() {
        assert!(!sheet.warnings().is_empty());
        for system in [System::Shop, System::Inch] {
            let markdown = order_sheet_markdown(sheet, system);
            let read = blocks(&markdown);
            let rows: Vec<_> = read.iter().filter(|block| matches!(block, Block::Row(_))).collect();
            let mut expected = Vec::new();
            for section in &sheet.sections {
                expected.push(Block::Row(["part", "what", "value"].map(str::to_owned).to_vec()));
                for line in &section.lines {
                    for item in &line.items {
                        let cells = [line.part.as_str(), item.label, &shown(&item.value, system)];
                        expected.push(Block::Row(cells.map(shown_words).to_vec()));
                    }
                }
                // The section's heading is followed by what stands against ordering.
                let at = read.iter().position(|block| *block == Block::Heading(section.title.to_owned()));
                let warning = format!("DO NOT ORDER YET: {}", words::standing(&sheet.review));
                assert_eq!(read.get(at.unwrap() + 1), Some(&Block::Paragraph(warning)));
            }
            assert_eq!(rows, expected.iter().collect::<Vec<_>>());
        }
    }
}

fn joined(words: impl Iterator<Item = String>) -> String {
    words.map(|words| words + "\n").collect()
}

/// The cautions that each form of an output shows: text, Markdown and JSON.
fn cautions_of(text: &str, markdown: &str, json: &str) -> [String; 3] {
    let (_, closing) = text.split_once("\nCautions\n").unwrap();
    let read = blocks(markdown);
    let at = read.iter().position(|block| *block == Block::Heading("Cautions".to_owned())).unwrap();
    let items = read[at + 1..].iter().map(|block| match block {
        Block::Item(words) => words.clone(),
        other => panic!("{other:?} among the cautions"),
    });
    let json: serde_json::Value = serde_json::from_str(json).unwrap();
    let listed = json["cautions"].as_array().unwrap();
    [
        joined(format!("\n{closing}").split("\n  - ").skip(1).map(shown_words)),
        joined(items),
        joined(listed.iter().map(|caution| caution.as_str().unwrap().to_owned())),
    ]
}

#[test]
fn every_format_carries_every_caution() {
    let (general, workshop) = (CAUTIONS.iter().copied(), OrderSheet::cautions());
    let (general, workshop) = (joined(general.map(str::to_owned)), joined(workshop.map(str::to_owned)));
    for (sheet, system) in SHEETS.iter().flat_map(|sheet| [(sheet, System::Shop), (sheet, System::Inch)]) {
        let review = &sheet.review;
        for detail in [Detail::Short, Detail::Full] {
            let text = review_text(review, detail, system);
            let markdown = review_markdown(review, detail, system);
            for shown in cautions_of(&text, &markdown, &review_json(review).unwrap()) {
                assert_eq!(shown, general);
            }
        }
        let (text, markdown) = (order_sheet_text(sheet, system), order_sheet_markdown(sheet, system));
        for shown in cautions_of(&text, &markdown, &order_sheet_json(sheet).unwrap()) {
            assert_eq!(shown, workshop);
        }
    }
}

/// Units that inch output must not show after a number.
const METRIC: &[&str] = &[
    "mm", "mm^2", "mm^3", "mm^4", "cm", "cm^3", "m", "m^2", "um", "N", "kN", "N·m", "N/mm", "N/m", "Pa",
    "kPa", "MPa", "GPa", "kg", "kg/m^3", "g", "g/m^3", "degC", "K", "m/s", "m/s^2", "J", "W/m^2", "ml", "l",
];

#[test]
fn inch_output_shows_no_metric_unit() {
    let bare =
        |word: &str| word.trim_matches(|c: char| "()[],;:\\|".contains(c)).trim_end_matches('.').to_owned();
    let mut left = Vec::new();
    for sheet in SHEETS.iter() {
        let outputs = [
            review_markdown(&sheet.review, Detail::Full, System::Inch),
            order_sheet_markdown(sheet, System::Inch),
        ];
        for line in outputs.iter().flat_map(|output| output.lines()) {
            let words: Vec<String> = line.split_whitespace().map(bare).collect();
            let metric =
                |pair: &[String]| METRIC.contains(&pair[1].as_str()) && pair[0].parse::<f64>().is_ok();
            // A citation and a formula with its constants stand as their source has them.
            let quoted = line.starts_with("- source: ") || line.starts_with("- formula: ");
            if !quoted && words.windows(2).any(metric) {
                left.push(line.to_owned());
            }
        }
    }
    left.sort();
    left.dedup();
    assert!(left.is_empty(), "{}", left.join("\n"));
}

/// 3 gn is 29.419 95 m/s^2 (the standard acceleration, ISO 80000-3), and a foot is 0.3048 m: 96.522 ft/s^2.
#[test]
fn an_acceleration_reads_in_feet() {
    use crate::amount::Measure;
    assert_eq!(Measure::of::<Acceleration>().shown(29.419_95, System::Inch), "96.52 ft/s^2");
}

/// Each row that needs a test has one line on the sheet, with what passes and room for what was measured.
#[test]
fn each_row_that_needs_a_test_is_on_the_test_sheet() {
    for sheet in SHEETS.iter() {
        let due = sheet.review.rows.iter().filter(|row| row.verdict == Verdict::NeedsTest);
        let due: Vec<&str> = due.map(|row| row.key.as_str()).collect();
        let tests = sheet.sections.iter().find(|section| section.title == "Tests to make");
        let lines = tests.map_or(&[][..], |section| section.lines.as_slice());
        let shown: Vec<String> = lines.iter().map(|line| shown(&line.items[0].value, System::Shop)).collect();
        assert_eq!(shown, due);
        for line in lines {
            let labels: Vec<&str> = line.items.iter().map(|item| item.label).collect();
            assert!(labels.iter().any(|label| label.starts_with("passes ")), "{labels:?}");
            assert!(labels.ends_with(&["measured", "date and name"]), "{labels:?}");
        }
    }
    let due = |sheet: &OrderSheet| sheet.review.count(Verdict::NeedsTest);
    assert!(SHEETS.iter().all(|sheet| due(sheet) > 0), "the covers no longer need any test");
}
