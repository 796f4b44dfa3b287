//! The Rust source of one module of the registry.

use std::collections::BTreeSet;

use coaming::Entry;
use coaming::declaration::{Choices, Kind, Record};

use super::member::plain;
use super::{NOTICE, claim, names, record};

/// The flat calculations of a module, with what stands in its file.
pub(super) struct Module {
    /// The module's name.
    pub(super) name: &'static str,
    /// Its flat calculations.
    entries: Vec<&'static Entry>,
    /// Choices that no module before it has.
    choices: Vec<&'static Choices>,
    /// Records that no module before it has, and whether each is an outcome.
    pub(super) records: Vec<(&'static Record, bool)>,
    /// Structs of other modules that its calculations use.
    imports: Vec<String>,
}

impl Module {
    /// Every module that has a flat calculation, in the order of the registry.
    pub(super) fn all() -> Result<Vec<Self>, String> {
        let (mut modules, mut taken) = (Vec::<Self>::new(), BTreeSet::new());
        for entry in coaming::ALL.iter().filter(|entry| entry.is_flat()) {
            let place = match modules.iter().position(|module| module.name == entry.module()) {
                Some(place) => place,
                None => {
                    modules.push(Self {
                        name: entry.module(),
                        entries: Vec::new(),
                        choices: Vec::new(),
                        records: Vec::new(),
                        imports: Vec::new(),
                    });
                    modules.len() - 1
                }
            };
            claim(&mut taken, format!("coaming_{}", entry.name))?;
            for (record, is_outcome) in [(entry.input, false), (entry.outcome, true)] {
                Self::add_record(&mut modules, place, record, is_outcome, &mut taken)?;
            }
            modules[place].entries.push(entry);
        }
        Ok(modules)
    }

    fn add_record(
        modules: &mut [Self],
        place: usize,
        record: &'static Record,
        is_outcome: bool,
        taken: &mut BTreeSet<String>,
    ) -> Result<(), String> {
        // An outcome may belong to several calculations: its struct is written once.
        let owner = modules.iter().position(|module| module.records.contains(&(record, is_outcome)));
        if let Some(owner) = owner {
            if owner != place {
                let import = format!("use super::{}::{};\n", modules[owner].name, names::structure(record));
                if !modules[place].imports.contains(&import) {
                    modules[place].imports.push(import);
                }
            }
            return Ok(());
        }
        claim(taken, names::structure(record))?;
        for field in record.fields {
            if field.kind.is_scalar() {
                claim(taken, names::place(record, field))?;
            }
            if let Kind::Choice(choices) = plain(&field.kind)
                && !modules.iter().any(|module| module.choices.contains(choices))
            {
                for option in choices.options {
                    claim(taken, names::option(choices.name, option.0))?;
                }
                modules[place].choices.push(choices);
            }
        }
        modules[place].records.push((record, is_outcome));
        Ok(())
    }

    /// The source.
    pub(super) fn text(&self) -> String {
        let mut body = String::new();
        for choices in &self.choices {
            for (number, (option, doc)) in choices.options.iter().enumerate() {
                let constant = names::option(choices.name, option);
                let doc = record::for_c(&format!("{} `{option}`: {doc}", choices.name));
                body.push_str(&format!(
                    "{}pub const {constant}: u32 = {number};\n\n",
                    record::doc_lines(&doc)
                ));
            }
        }
        for (record, is_outcome) in &self.records {
            body.push_str(&record::structure(record, *is_outcome));
            if *is_outcome {
                body.push_str(&self.outcome_conversion(record));
            }
        }
        for entry in &self.entries {
            body.push_str(&input_conversion(entry));
            body.push_str(&functions(entry));
        }
        format!("//! {NOTICE}\n\n{}{}\n{body}", self.uses(&body), self.imports.concat())
    }

    fn uses(&self, body: &str) -> String {
        let mut from_boundary =
            vec!["CoamingBatch", "CoamingFault", "Input", "Outcome", "call", "call_batch"];
        from_boundary
            .extend(["choice", "optional_choice"].iter().filter(|name| body.contains(&format!(" {name}("))));
        let mut from_core = ["Calculation", "Caveats", "Error", self.name];
        from_core.sort_unstable();
        let mut uses = format!(
            "use core::mem::offset_of;\n\nuse calculations::{{{}}};\nuse crate::boundary::{{{}}};\n",
            from_core.join(", "),
            from_boundary.join(", ")
        );
        for (used, import) in [
            ("Choice::number", "use calculations::declaration::Choice;\n"),
            ("si(", "use calculations::quantity::si;\n"),
        ] {
            if body.contains(used) {
                uses.push_str(import);
            }
        }
        uses
    }

    fn outcome_conversion(&self, record: &'static Record) -> String {
        let name = names::structure(record);
        // The outcome's own type is found through a calculation that has it.
        let owner = self.entries.iter().find(|entry| entry.outcome == record).map_or("", |entry| entry.path);
        let members: String = record.fields.iter().map(record::to_c).collect();
        format!(
            "impl Outcome<<{owner} as Calculation>::Outcome> for {name} {{
                fn of(outcome: &<{owner} as Calculation>::Outcome, caveats: Caveats) -> Self {{
                    Self {{ {members} caveats: caveats.bits() }}
                }}
            }}\n\n"
        )
    }
}

fn input_conversion(entry: &Entry) -> String {
    let fields = entry.input.fields.iter();
    let fields: String =
        fields.map(|field| format!("{}: {},\n", field.name, record::from_c(field))).collect();
    format!(
        "impl Input for {} {{
            type Calculation = {path};
            type Outcome = {};

            fn to_calculation(&self) -> Result<{path}, Error> {{
                Ok({path} {{ {fields} }})
            }}
        }}\n\n",
        names::structure(entry.input),
        names::structure(entry.outcome),
        path = entry.path,
    )
}

fn functions(entry: &Entry) -> String {
    let (name, input, outcome) = (entry.name, names::structure(entry.input), names::structure(entry.outcome));
    let title = record::for_c(entry.input.doc.lines().next().unwrap_or(name));
    format!(
        "/// {title}
        ///
        /// Gives COAMING_OK, or the code of the error; `*outcome` is written only on success. `fault` may be NULL.
        ///
        /// # Safety
        /// Each pointer is NULL or points to a value of its type.
        #[unsafe(no_mangle)]
        pub unsafe extern \"C\" fn coaming_{name}(
            input: *const {input},
            outcome: *mut {outcome},
            fault: *mut CoamingFault,
        ) -> u32 {{
            // SAFETY: the contract is the same.
            unsafe {{ call(input, outcome, fault) }}
        }}

        /// {title} Many rows at once.
        ///
        /// `*input` holds what no column gives. Gives COAMING_OK, or the code of the error of the lowest row that fails:
        /// `fault->index` is that row, and the columns wanted are then unspecified. `*caveats` is the union over all
        /// rows; `caveats` and `fault` may be NULL.
        ///
        /// # Safety
        /// Each pointer is NULL or points to what its type says, with as many values as the counts and strides say.
        #[unsafe(no_mangle)]
        pub unsafe extern \"C\" fn coaming_{name}_batch(
            input: *const {input},
            batch: *const CoamingBatch,
            caveats: *mut u64,
            fault: *mut CoamingFault,
        ) -> u32 {{
            // SAFETY: the contract is the same.
            unsafe {{ call_batch(input, batch, caveats, fault) }}
        }}\n\n"
    )
}
