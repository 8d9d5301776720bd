//! The store: what is kept comes back, whatever happened in between.

use super::help::{done, job, part, store, tags};
use crate::storage::{Store, StoreError};
use model::history::History;
use model::{Change, Edit};
use wasm_bindgen_test::wasm_bindgen_test;

#[wasm_bindgen_test]
async fn a_job_comes_back_byte_for_byte() {
    let (store, name) = store("round-trip").await;
    let estate = job("Estate, ×2 “Ω”");
    let (key, written) = store.create(&estate);
    written.await.unwrap();
    drop(store);
    let again = Store::open_named(&name).await.unwrap();
    let loaded = again.load(&key).await.unwrap();
    assert_eq!(model::file::write(&loaded.job), model::file::write(&estate));
    assert!(loaded.problems.is_empty() && !loaded.damaged);
}

#[wasm_bindgen_test]
async fn every_gesture_is_kept_without_a_save() {
    let (store, name) = store("journal").await;
    let (mut van, mut history) = (job("Van"), History::new());
    let (key, written) = store.create(&van);
    written.await.unwrap();
    for id in 2..6 {
        let entry = done(&mut history, &mut van, part(id, &format!("B{id}")));
        store.append(&key, &entry, &van).await.unwrap();
    }
    let entry = history.undo(&mut van).unwrap();
    store.append(&key, &entry, &van).await.unwrap();
    // Nothing is closed or saved: another opening sees what a reload after a crash sees.
    let after_crash = Store::open_named(&name).await.unwrap();
    let loaded = after_crash.load(&key).await.unwrap();
    assert_eq!(tags(&loaded.job), ["B1", "B2", "B3", "B4"]);
    assert_eq!(model::file::write(&loaded.job), model::file::write(&van));
}

#[wasm_bindgen_test]
async fn a_gesture_is_kept_even_when_nobody_waits_for_it() {
    let (store, name) = store("unawaited").await;
    let (mut van, mut history) = (job("Van"), History::new());
    let (key, created) = store.create(&van);
    drop(created);
    for id in 2..40 {
        let entry = done(&mut history, &mut van, part(id, &format!("B{id}")));
        drop(store.append(&key, &entry, &van));
    }
    drop(store);
    let loaded = Store::open_named(&name).await.unwrap().load(&key).await.unwrap();
    assert_eq!(loaded.job, van);
}

#[wasm_bindgen_test]
async fn a_long_journal_becomes_a_text() {
    let (store, name) = store("long").await;
    let (mut van, mut history) = (job("Van"), History::new());
    let (key, created) = store.create(&van);
    created.await.unwrap();
    for turn in 0..450 {
        let entry = done(
            &mut history,
            &mut van,
            Edit::new("Title", vec![Change::Title(format!("Van {turn}"))]),
        );
        store.append(&key, &entry, &van).await.unwrap();
    }
    let again = Store::open_named(&name).await.unwrap();
    let loaded = again.load(&key).await.unwrap();
    assert_eq!(loaded.job.title, "Van 449");
    // One for the creation, one for each edit.
    assert_eq!(loaded.revision, 451);
    // And it goes on from there.
    let entry = done(&mut history, &mut van, part(7, "B7"));
    again.append(&key, &entry, &van).await.unwrap();
    assert_eq!(again.load(&key).await.unwrap().job, van);
}

#[wasm_bindgen_test]
async fn the_list_has_titles_and_the_latest_first() {
    let (store, _) = store("list").await;
    let (first, written) = store.create(&job("First"));
    written.await.unwrap();
    gloo_timers::future::TimeoutFuture::new(5).await;
    let (second, written) = store.create(&job("Second"));
    written.await.unwrap();
    let titles =
        |list: Vec<crate::storage::JobInfo>| list.into_iter().map(|info| info.title).collect::<Vec<_>>();
    assert_eq!(titles(store.list().await.unwrap()), ["Second", "First"]);
    gloo_timers::future::TimeoutFuture::new(5).await;
    store.rename(&first, "First, renamed").await.unwrap();
    assert_eq!(titles(store.list().await.unwrap()), ["First, renamed", "Second"]);
    assert_eq!(store.load(&first).await.unwrap().job.title, "First, renamed");
    store.remove(&second).await.unwrap();
    assert_eq!(titles(store.list().await.unwrap()), ["First, renamed"]);
    assert_eq!(store.load(&second).await.unwrap_err(), StoreError::Missing);
}

#[wasm_bindgen_test]
async fn the_job_that_was_open_last_is_known() {
    let (store, name) = store("last").await;
    assert_eq!(store.last_open().await.unwrap(), None);
    let (key, written) = store.create(&job("Van"));
    written.await.unwrap();
    store.set_last_open(&key).await.unwrap();
    assert_eq!(
        Store::open_named(&name).await.unwrap().last_open().await.unwrap(),
        Some(key)
    );
}

#[wasm_bindgen_test]
async fn of_a_damaged_text_the_rest_is_read_and_the_original_kept() {
    let (store, _) = store("damaged").await;
    let mut van = job("Van");
    van.apply(part(2, "B2"));
    let (key, written) = store.create(&van);
    written.await.unwrap();
    let damaged = model::file::write(&van).replace("\"tag\": \"B2\"", "\"tag\": 17");
    assert_ne!(damaged, model::file::write(&van));
    store.damage(&key, Some(&damaged), &[]).await.unwrap();
    let loaded = store.load(&key).await.unwrap();
    assert!(loaded.damaged);
    assert_eq!(loaded.job.title, "Van");
    assert!(tags(&loaded.job).contains(&"B1".to_owned()));
    assert!(
        loaded.problems[0].place.starts_with("sheets.plan.parts.p2"),
        "{}",
        loaded.problems[0].place
    );
    // Writing it now does not destroy what was found.
    store.save(&key, &loaded.job).await.unwrap();
    let originals = store.originals(&key).await.unwrap();
    assert_eq!(originals.len(), 1);
    assert_eq!(originals[0].text, damaged);
}

#[wasm_bindgen_test]
async fn a_text_that_cannot_be_read_is_handed_out_and_left_as_it_is() {
    let (store, _) = store("unreadable").await;
    let (key, written) = store.create(&job("Van"));
    written.await.unwrap();
    let cut_short = "{ \"format\": \"loomwright-job\", \"version\": 1, \"she";
    store.damage(&key, Some(cut_short), &[]).await.unwrap();
    for _ in 0..2 {
        match store.load(&key).await.unwrap_err() {
            StoreError::Unreadable { original, reason } => {
                assert_eq!(original, cut_short);
                assert!(reason.to_string().contains("line 1"), "{reason}");
            }
            other => panic!("{other}"),
        }
    }
    // It is kept as it was found, once, for the list of damaged jobs.
    let originals = store.originals(&key).await.unwrap();
    assert_eq!(originals.len(), 1);
    assert_eq!(originals[0].text, cut_short);
    assert_eq!(originals[0].whole(), cut_short);
}

#[wasm_bindgen_test]
async fn a_journal_with_a_gap_is_played_up_to_it() {
    let (store, name) = store("gap").await;
    let (mut van, mut history) = (job("Van"), History::new());
    let (key, written) = store.create(&van);
    written.await.unwrap();
    for id in 2..5 {
        let entry = done(&mut history, &mut van, part(id, &format!("B{id}")));
        store.append(&key, &entry, &van).await.unwrap();
    }
    // The creation is revision 1, so B3 came with revision 3.
    store.damage(&key, None, &[(3, "{\"did\":{\"na")]).await.unwrap();
    let again = Store::open_named(&name).await.unwrap();
    let mut loaded = again.load(&key).await.unwrap();
    assert_eq!(tags(&loaded.job), ["B1", "B2"]);
    assert_eq!(loaded.problems[0].place, "journal.3");
    let originals = again.originals(&key).await.unwrap();
    assert_eq!(originals[0].journal.len(), 2);
    assert!(originals[0].journal[1].contains("B4"));
    // What is done next must not stand behind the gap.
    let entry = done(&mut History::new(), &mut loaded.job, part(9, "B9"));
    again.append(&key, &entry, &loaded.job).await.unwrap();
    let after = again.load(&key).await.unwrap();
    assert!(!after.damaged);
    assert_eq!(tags(&after.job), ["B1", "B2", "B9"]);
}

#[wasm_bindgen_test]
async fn a_full_disk_loses_nothing_and_the_next_write_catches_up() {
    let (store, name) = store("full").await;
    let (mut van, mut history) = (job("Van"), History::new());
    let (key, written) = store.create(&van);
    written.await.unwrap();
    store.fill_disk_for(2);
    for id in 2..4 {
        let entry = done(&mut history, &mut van, part(id, &format!("B{id}")));
        assert_eq!(store.is_behind(&key), id > 2);
        let error = store.append(&key, &entry, &van).await.unwrap_err();
        assert_eq!(error, StoreError::Full);
        assert!(
            error.to_string().contains("save the job to a file now"),
            "{error}"
        );
    }
    // What was there before is whole.
    let before = Store::open_named(&name).await.unwrap().load(&key).await.unwrap();
    assert_eq!(tags(&before.job), ["B1"]);
    assert!(!before.damaged);
    // Room again: the next gesture brings the missed ones with it.
    let entry = done(&mut history, &mut van, part(4, "B4"));
    store.append(&key, &entry, &van).await.unwrap();
    assert!(!store.is_behind(&key));
    let after = Store::open_named(&name).await.unwrap().load(&key).await.unwrap();
    assert_eq!(after.job, van);
}

#[wasm_bindgen_test]
async fn a_job_for_which_there_was_no_room_when_it_was_made_is_stored_by_the_next_gesture() {
    let (store, name) = store("full-at-first").await;
    let (mut van, mut history) = (job("Van"), History::new());
    store.fill_disk_for(1);
    let (key, written) = store.create(&van);
    assert_eq!(written.await.unwrap_err(), StoreError::Full);
    assert!(store.is_behind(&key));
    let entry = done(&mut history, &mut van, part(2, "B2"));
    store.append(&key, &entry, &van).await.unwrap();
    assert!(!store.is_behind(&key));
    let after = Store::open_named(&name).await.unwrap().load(&key).await.unwrap();
    assert_eq!((after.job, after.damaged), (van, false));
}

#[wasm_bindgen_test]
async fn a_gesture_that_was_sent_before_the_disk_was_known_to_be_full_is_not_played_alone() {
    let (store, name) = store("full-in-flight").await;
    let (mut van, mut history) = (job("Van"), History::new());
    let (key, written) = store.create(&van);
    written.await.unwrap();
    store.fill_disk_for(1);
    let two = done(&mut history, &mut van, part(2, "B2"));
    let fails = store.append(&key, &two, &van);
    let three = done(&mut history, &mut van, part(3, "B3"));
    let goes = store.append(&key, &three, &van);
    assert_eq!(fails.await.unwrap_err(), StoreError::Full);
    goes.await.unwrap();
    let loaded = Store::open_named(&name).await.unwrap().load(&key).await.unwrap();
    assert_eq!(tags(&loaded.job), ["B1"]);
    assert!(loaded.damaged);
}

#[wasm_bindgen_test]
async fn a_stale_tab_cannot_overwrite_another() {
    let (here, name) = store("stale").await;
    let (mut van, mut history) = (job("Van"), History::new());
    let (key, written) = here.create(&van);
    written.await.unwrap();
    let there = Store::open_named(&name).await.unwrap();
    let mut other = there.load(&key).await.unwrap().job;
    let entry = done(&mut History::new(), &mut other, part(8, "THERE"));
    there.append(&key, &entry, &other).await.unwrap();
    there.save(&key, &other).await.unwrap();

    let entry = done(&mut history, &mut van, part(9, "HERE"));
    assert_eq!(
        here.append(&key, &entry, &van).await.unwrap_err(),
        StoreError::ChangedElsewhere
    );
    // Neither does trying again, nor a full text.
    assert_eq!(
        here.save(&key, &van).await.unwrap_err(),
        StoreError::ChangedElsewhere
    );
    assert_eq!(there.load(&key).await.unwrap().job, other);
    // As a new job it can be kept.
    let (new, written) = here.create(&van);
    written.await.unwrap();
    assert_eq!(here.load(&new).await.unwrap().job, van);
}

#[wasm_bindgen_test]
async fn a_job_that_was_removed_elsewhere_is_not_brought_back_in_part() {
    let (here, name) = store("removed").await;
    let (mut van, mut history) = (job("Van"), History::new());
    let (key, written) = here.create(&van);
    written.await.unwrap();
    Store::open_named(&name)
        .await
        .unwrap()
        .remove(&key)
        .await
        .unwrap();
    let entry = done(&mut history, &mut van, part(9, "HERE"));
    assert_eq!(
        here.append(&key, &entry, &van).await.unwrap_err(),
        StoreError::ChangedElsewhere
    );
    assert!(here.list().await.unwrap().is_empty());
}

#[wasm_bindgen_test]
async fn a_page_older_than_the_storage_says_so() {
    let (store, name) = store("newer").await;
    drop(store);
    let factory = web_sys::window().unwrap().indexed_db().unwrap().unwrap();
    let request = factory.open_with_u32(&name, 99).unwrap();
    super::help::until("the newer version is there", || {
        request.ready_state() == web_sys::IdbRequestReadyState::Done
    })
    .await;
    let error = Store::open_named(&name).await.err().unwrap();
    assert_eq!(error, StoreError::NewerPage);
}
