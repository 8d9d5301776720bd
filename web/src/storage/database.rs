//! The browser's database: opening it, and transactions whose outcome can be awaited.
//!
//! A transaction is begun, filled and sent off within one call, before anything is awaited. Whatever happens to the tab
//! after that call, the browser has the data; and transactions take effect in the order of the calls.

use super::error::StoreError;
use super::js;
use js_sys::{Array, Promise};
use wasm_bindgen::prelude::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{
    IdbDatabase, IdbFactory, IdbKeyRange, IdbObjectStore, IdbOpenDbRequest, IdbRequest, IdbTransaction,
};
use words::{Saying, say};

/// What the list of jobs shows, by job.
pub(super) const JOBS: &str = "jobs";
/// The last full text, by job.
pub(super) const TEXTS: &str = "texts";
/// What was done since that text, by job and revision.
pub(super) const JOURNAL: &str = "journal";
/// Damaged states as they were found, by job and revision.
pub(super) const ORIGINALS: &str = "originals";
/// File handles, by job.
pub(super) const HANDLES: &str = "handles";
/// Whatever belongs to the page and no job, by name.
pub(super) const PAGE: &str = "page";

const ALL: [&str; 6] = [JOBS, TEXTS, JOURNAL, ORIGINALS, HANDLES, PAGE];

/// Raised with each change of the stores above.
const VERSION: u32 = 1;

/// An open database.
pub(super) struct Database {
    inner: IdbDatabase,
    /// Closes it when another tab needs to change it; without that the other would wait for ever.
    _on_version_change: Closure<dyn FnMut()>,
}

impl Database {
    pub(super) async fn open(name: &str) -> Result<Self, StoreError> {
        let request = factory()?
            .open_with_u32(name, VERSION)
            .map_err(|error| StoreError::of(&error))?;
        let upgrading = request.clone();
        let on_upgrade = Closure::<dyn FnMut()>::new(move || {
            // Failing here fails the opening, which reports it.
            if let Ok(database) = upgrading.result().map(JsCast::unchecked_into::<IdbDatabase>) {
                let there = database.object_store_names();
                for store in ALL.iter().filter(|store| !there.contains(store)) {
                    let _ = database.create_object_store(store);
                }
            }
        });
        request.set_onupgradeneeded(Some(on_upgrade.as_ref().unchecked_ref()));
        let opened = answer(opening(&request)).await;
        request.set_onupgradeneeded(None);
        // Refusal comes under many names, by browser and by setting; whatever it is, nothing can be kept.
        let inner: IdbDatabase = opened
            .map_err(|error| match error {
                StoreError::Failed { reason } => StoreError::Refused { reason },
                other => other,
            })?
            .unchecked_into();
        let closing = inner.clone();
        let on_version_change = Closure::<dyn FnMut()>::new(move || closing.close());
        inner.set_onversionchange(Some(on_version_change.as_ref().unchecked_ref()));
        Ok(Self {
            inner,
            _on_version_change: on_version_change,
        })
    }

    pub(super) fn reading(&self, stores: &[&str]) -> Result<Transaction, StoreError> {
        self.transaction(stores, "readonly")
    }

    pub(super) fn writing(&self, stores: &[&str]) -> Result<Transaction, StoreError> {
        self.transaction(stores, "readwrite")
    }

    fn transaction(&self, stores: &[&str], mode: &str) -> Result<Transaction, StoreError> {
        let names: Array = stores.iter().map(|store| JsValue::from(*store)).collect();
        // Strict: on the disk when it says so, not only on its way there. A browser that knows no such option ignores it.
        let options = js::object(&[("durability", &"strict".into())]);
        js::call(&self.inner, "transaction", &[&names, &mode.into(), &options])
            .map(|inner| Transaction {
                inner: inner.unchecked_into(),
            })
            .map_err(|error| StoreError::of(&error))
    }
}

impl Drop for Database {
    fn drop(&mut self) {
        self.inner.set_onversionchange(None);
        self.inner.close();
    }
}

fn factory() -> Result<IdbFactory, StoreError> {
    let refused = |reason: Saying| StoreError::Refused { reason };
    let window = web_sys::window().ok_or_else(|| refused(say!("store-no-window")))?;
    window
        .indexed_db()
        .map_err(|error| refused(js::error_message(&error)))?
        .ok_or_else(|| refused(say!("store-no-database")))
}

/// Several reads or writes that happen together or not at all.
pub(super) struct Transaction {
    inner: IdbTransaction,
}

impl Transaction {
    fn store(&self, name: &str) -> Result<IdbObjectStore, StoreError> {
        self.inner
            .object_store(name)
            .map_err(|error| StoreError::of(&error))
    }

    /// Puts a value, over one that is there.
    pub(super) fn put(&self, store: &str, key: &JsValue, value: &JsValue) -> Result<(), StoreError> {
        self.store(store)?
            .put_with_key(value, key)
            .map(drop)
            .map_err(|error| StoreError::of(&error))
    }

    /// Adds a value; when one is there under that key, all of the transaction fails.
    pub(super) fn add(&self, store: &str, key: &JsValue, value: &JsValue) -> Result<(), StoreError> {
        self.store(store)?
            .add_with_key(value, key)
            .map(drop)
            .map_err(|error| StoreError::of(&error))
    }

    /// Deletes what stands under a key, or within a range of keys.
    pub(super) fn delete(&self, store: &str, key: &JsValue) -> Result<(), StoreError> {
        self.store(store)?
            .delete(key)
            .map(drop)
            .map_err(|error| StoreError::of(&error))
    }

    /// The value under a key; undefined for none.
    pub(super) fn get(&self, store: &str, key: &JsValue) -> Result<Answer, StoreError> {
        self.store(store)?
            .get(key)
            .map(answer)
            .map_err(|error| StoreError::of(&error))
    }

    /// All values within a range of keys, in the order of their keys.
    pub(super) fn get_all(&self, store: &str, keys: &JsValue) -> Result<Answer, StoreError> {
        self.store(store)?
            .get_all_with_key(keys)
            .map(answer)
            .map_err(|error| StoreError::of(&error))
    }

    /// Sends the transaction off: nothing more can be added, and it needs this tab no more. Its outcome is awaited
    /// after that.
    pub(super) fn send(self) -> Answer {
        let outcome = settled(&self.inner);
        // A browser without explicit commit sends it as soon as this call ends.
        let _ = js::call(&self.inner, "commit", &[]);
        outcome
    }

    /// Takes everything back: tests make a transaction fail as a full disk does.
    #[cfg(test)]
    pub(super) fn abort(self) -> Answer {
        let outcome = settled(&self.inner);
        let _ = self.inner.abort();
        outcome
    }
}

/// Keys from `[job, from]` up to `[job, to]`, both included.
pub(super) fn keys(job: &str, from: u64, to: u64) -> JsValue {
    let range = IdbKeyRange::bound(&key(job, from), &key(job, to));
    range.map_or(JsValue::UNDEFINED, JsValue::from)
}

/// Names that begin so. No name has the last of all characters in it.
pub(super) fn names(begin: &str) -> JsValue {
    let range = IdbKeyRange::bound(&begin.into(), &format!("{begin}\u{ffff}").into());
    range.map_or(JsValue::UNDEFINED, JsValue::from)
}

/// The key `[job, revision]`. Revisions count edits: they stay far below the 2^53 that a number holds exactly.
pub(super) fn key(job: &str, revision: u64) -> JsValue {
    Array::of2(&job.into(), &(revision as f64).into()).into()
}

/// The largest revision a key can have.
pub(super) const LAST: u64 = 1 << 53;

/// The outcome of a request or a transaction, listened for since it was made.
pub(super) type Answer = std::pin::Pin<Box<dyn Future<Output = Result<JsValue, StoreError>>>>;

/// Takes the listeners off when nobody waits any more.
struct Listening {
    off: Box<dyn Fn()>,
    _closures: Vec<Closure<dyn FnMut()>>,
}

impl Drop for Listening {
    fn drop(&mut self) {
        (self.off)();
    }
}

/// A promise, and the two functions that settle it.
fn promise(begin: &mut dyn FnMut(js_sys::Function, js_sys::Function)) -> JsFuture {
    JsFuture::from(Promise::new(&mut |resolve, reject| begin(resolve, reject)))
}

fn opening(request: &IdbOpenDbRequest) -> IdbRequest {
    request.clone().into()
}

fn answer(request: IdbRequest) -> Answer {
    let mut closures = Vec::new();
    let future = promise(&mut |resolve, reject| {
        let good = request.clone();
        closures.push(Closure::new(move || {
            let result = good.result().unwrap_or(JsValue::UNDEFINED);
            let _ = resolve.call1(&JsValue::NULL, &result);
        }));
        let bad = request.clone();
        closures.push(Closure::new(move || {
            let error = bad
                .error()
                .ok()
                .flatten()
                .map_or(JsValue::UNDEFINED, JsValue::from);
            let _ = reject.call1(&JsValue::NULL, &error);
        }));
    });
    if let [good, bad] = closures.as_slice() {
        request.set_onsuccess(Some(good.as_ref().unchecked_ref()));
        request.set_onerror(Some(bad.as_ref().unchecked_ref()));
    }
    let off = Box::new(move || {
        request.set_onsuccess(None);
        request.set_onerror(None);
    });
    awaited(
        future,
        Listening {
            off,
            _closures: closures,
        },
    )
}

fn settled(transaction: &IdbTransaction) -> Answer {
    let mut closures = Vec::new();
    let future = promise(&mut |resolve, reject| {
        closures.push(Closure::new(move || {
            let _ = resolve.call0(&JsValue::NULL);
        }));
        let failed = transaction.clone();
        closures.push(Closure::new(move || {
            let error = failed.error().map_or(JsValue::UNDEFINED, JsValue::from);
            let _ = reject.call1(&JsValue::NULL, &error);
        }));
    });
    if let [complete, abort] = closures.as_slice() {
        transaction.set_oncomplete(Some(complete.as_ref().unchecked_ref()));
        // Every failure ends in an abort, which is heard after all of the transaction is taken back.
        transaction.set_onabort(Some(abort.as_ref().unchecked_ref()));
    }
    let transaction = transaction.clone();
    let off = Box::new(move || {
        transaction.set_oncomplete(None);
        transaction.set_onabort(None);
    });
    awaited(
        future,
        Listening {
            off,
            _closures: closures,
        },
    )
}

fn awaited(future: JsFuture, listening: Listening) -> Answer {
    Box::pin(async move {
        let result = future.await.map_err(|error| StoreError::of(&error));
        drop(listening);
        result
    })
}
