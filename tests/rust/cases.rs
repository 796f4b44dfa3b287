//! Every case of `tests/cases`, through the registry.

use coaming_tests::comparing::run;

#[test]
fn every_case_holds() {
    let cases = coaming_tests::all();
    let faults: Vec<String> = cases
        .iter()
        .filter_map(|(module, case)| {
            let fault = run(case).err()?;
            Some(format!(
                "{module}: {} ({})\n  input {:?}\n  {fault}",
                case.calculation, case.source, case.input
            ))
        })
        .collect();
    assert!(!cases.is_empty());
    assert!(faults.is_empty(), "{} of {} cases fail:\n{}", faults.len(), cases.len(), faults.join("\n"));
}

#[test]
fn cases_stand_in_the_file_of_their_module() {
    for (module, case) in coaming_tests::all() {
        let entry = coaming::entry(&case.calculation).unwrap_or_else(|error| panic!("{module}: {error}"));
        assert_eq!(entry.module(), module, "{}", case.calculation);
    }
}
