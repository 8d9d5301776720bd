//! Whatever a job holds: every paper comes, the same each time, and each list is whole.

use paperwork::*;
use proptest::prelude::*;
use words::Words;

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]
    #[test]
    fn every_paper_of_any_job_comes_and_comes_alike(job in testkit::any::any_job()) {
        let english = Words::english();
        for kind in job.sheets.keys() {
            let Some(work) = Work::of(&job, *kind, None) else { continue };
            let once = lists(&work, &Terms::default(), List::ALL);
            let again = lists(&work, &Terms::default(), List::ALL);
            prop_assert_eq!(&once, &again);
            for table in &once {
                prop_assert!(table.rows.iter().all(|row| row.len() == table.columns.len()), "{}", table.name);
                // What is written is read back as so many rows of so many fields.
                let read = csv::read(&csv(table, &english));
                prop_assert_eq!(read.len(), table.rows.len() + 1, "{}", table.name);
                prop_assert!(read.iter().all(|row| row.len() == table.columns.len()), "{}", table.name);
            }
            let asked = Asked { kind: Some(*kind), ..Asked::default() };
            let page = handover(&job, asked, &english).map(|(page, _)| page).unwrap_or_default();
            prop_assert!(page.ends_with("</html>\n") && !page.contains("<script"));
        }
    }
}
