//! Which tab may write a job. The first to claim it may; others read, and hear when it becomes theirs. Taking over is
//! explicit, and the tab it is taken from hears of it.
//!
//! A lock of the browser stands behind each claim: it goes when the tab does, however that ends. Where the browser
//! offers no locks (a page that came over plain http from another machine), every tab may write, and the store's own
//! check keeps one from overwriting the other: see [`crate::storage`].

use crate::storage::js;
use js_sys::{Function, Promise};
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen::prelude::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{AbortController, BroadcastChannel, MessageEvent};

/// How a tab stands to a job.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Hold {
    /// It may write. When this comes after [`Hold::Elsewhere`] or [`Hold::TakenAway`], another tab has written
    /// meanwhile: load the job again first.
    Ours,
    /// Another tab has it: reading only.
    Elsewhere,
    /// Another tab has just taken it over: reading only from now on.
    TakenAway,
}

impl Hold {
    /// Whether this tab may write the job.
    pub(crate) fn may_write(self) -> bool {
        self == Self::Ours
    }
}

/// This tab's claim on a job, for as long as it lives.
pub(crate) struct Claim(Rc<Inner>);

struct Inner {
    /// Name of the lock.
    name: String,
    hold: Cell<Hold>,
    on_change: Box<dyn Fn(Hold)>,
    /// Gives the lock back, when it is held.
    release: RefCell<Option<Function>>,
    /// Ends waiting for the lock, while it is waited for.
    waiting: RefCell<Option<AbortController>>,
    dropped: Cell<bool>,
}

/// How a lock is asked for.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Asking {
    /// Now, or not at all.
    Now,
    /// Once it is free.
    Waiting,
    /// Now, from whoever has it.
    Taking,
}

impl Claim {
    /// Claims a job, by its key. [`Claim::hold`] tells how that went; `on_change` is called for each change after it.
    pub(crate) async fn make(job: &str, on_change: impl Fn(Hold) + 'static) -> Self {
        let inner = Inner::new(job, Hold::Elsewhere, on_change);
        if inner.ask(Asking::Now).await {
            inner.hold.set(Hold::Ours);
        } else {
            inner.wait();
        }
        Self(inner)
    }

    /// Claims a job that was made in this tab just now. No other can know of it yet: it is ours before the browser has
    /// answered.
    pub(crate) fn of_new(job: &str, on_change: impl Fn(Hold) + 'static) -> Self {
        let inner = Inner::new(job, Hold::Ours, on_change);
        let asking = Rc::clone(&inner);
        spawn_local(async move {
            if !asking.ask(Asking::Now).await && !asking.dropped.get() {
                asking.turn(Hold::Elsewhere);
                asking.wait();
            }
        });
        Self(inner)
    }

    /// How this tab stands to the job now.
    pub(crate) fn hold(&self) -> Hold {
        self.0.hold.get()
    }

    /// Takes the job over, as the user asked for. Afterwards it is ours: load it again before writing.
    pub(crate) async fn take_over(&self) {
        if self.hold().may_write() {
            return;
        }
        self.0.stop_waiting();
        if self.0.ask(Asking::Taking).await {
            self.0.turn(Hold::Ours);
        } else {
            // The browser would not: go on as before.
            self.0.wait();
        }
    }
}

impl Drop for Claim {
    fn drop(&mut self) {
        self.0.dropped.set(true);
        self.0.stop_waiting();
        if let Some(release) = self.0.release.take() {
            let _ = release.call0(&JsValue::NULL);
        }
    }
}

impl Inner {
    fn new(job: &str, hold: Hold, on_change: impl Fn(Hold) + 'static) -> Rc<Self> {
        Rc::new(Self {
            name: format!("loomwright:{job}"),
            hold: Cell::new(hold),
            on_change: Box::new(on_change),
            release: RefCell::default(),
            waiting: RefCell::default(),
            dropped: Cell::new(false),
        })
    }

    fn turn(&self, hold: Hold) {
        if self.hold.replace(hold) != hold && !self.dropped.get() {
            (self.on_change)(hold);
        }
    }

    fn stop_waiting(&self) {
        if let Some(waiting) = self.waiting.take() {
            waiting.abort();
        }
    }

    /// Waits in the background until the lock is free.
    fn wait(self: &Rc<Self>) {
        if self.dropped.get() {
            return;
        }
        let inner = Rc::clone(self);
        spawn_local(async move {
            if inner.ask(Asking::Waiting).await {
                inner.waiting.take();
                inner.turn(Hold::Ours);
            }
        });
    }

    /// Asks for the lock, and tells whether it is held now. It is held until `release` is called or it is taken away.
    async fn ask(self: &Rc<Self>, asking: Asking) -> bool {
        let Some(locks) = locks() else { return true };
        let signal = AbortController::new().ok();
        let options = match (asking, &signal) {
            (Asking::Now, _) => js::object(&[("ifAvailable", &JsValue::TRUE)]),
            (Asking::Taking, _) => js::object(&[("steal", &JsValue::TRUE)]),
            (Asking::Waiting, Some(signal)) => js::object(&[("signal", &signal.signal())]),
            (Asking::Waiting, None) => return false,
        };
        if asking == Asking::Waiting {
            self.waiting.replace(signal);
        }
        // Settled by the browser when it is known whether we have the lock: true, false, or the request's failure.
        let inner = Rc::clone(self);
        let granted = Promise::new(&mut |resolve, reject| {
            let here = Rc::clone(&inner);
            // Called by the browser with the lock, or null. The lock is held until the promise it returns is settled.
            let on_answer = Closure::once_into_js(move |lock: JsValue| -> Promise {
                let ours = !lock.is_null() && !here.dropped.get();
                let held = Promise::new(&mut |release, _| {
                    if ours {
                        here.release.replace(Some(release));
                    } else {
                        let _ = release.call0(&JsValue::NULL);
                    }
                });
                let _ = resolve.call1(&JsValue::NULL, &ours.into());
                held
            });
            let request = js::call(
                &locks,
                "request",
                &[&inner.name.as_str().into(), &options, &on_answer],
            );
            match request.and_then(JsCast::dyn_into::<Promise>) {
                Ok(request) => {
                    let here = Rc::clone(&inner);
                    let reject = reject.clone();
                    spawn_local(async move { here.until_ended(request, &reject).await });
                }
                Err(error) => {
                    let _ = reject.call1(&JsValue::NULL, &error);
                }
            }
        });
        JsFuture::from(granted).await.is_ok_and(|ours| ours.is_truthy())
    }

    /// Waits for the end of a request: given back (nothing to do), never granted, or taken away by another tab.
    async fn until_ended(self: Rc<Self>, request: Promise, reject: &Function) {
        let Err(error) = JsFuture::from(request).await else {
            return;
        };
        // Without effect when it was granted before: then it was taken away.
        let _ = reject.call1(&JsValue::NULL, &error);
        if self.hold.get().may_write() && self.release.take().is_some() {
            self.turn(Hold::TakenAway);
            self.wait();
        }
    }
}

/// The browser's locks, where it offers them.
fn locks() -> Option<JsValue> {
    let locks = js::get(&web_sys::window()?.navigator(), "locks");
    js::has_method(&locks, "request").then_some(locks)
}

/// Tells other tabs what was written, so that one that only reads can show it.
pub(crate) struct News {
    channel: Option<BroadcastChannel>,
    _on_message: Closure<dyn FnMut(MessageEvent)>,
}

impl News {
    /// Listens for what other tabs wrote: the job's key, once for each write.
    pub(crate) fn listen(on_written: impl Fn(String) + 'static) -> Self {
        let on_message = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
            if let Some(job) = event.data().as_string() {
                on_written(job);
            }
        });
        let channel = BroadcastChannel::new("loomwright").ok();
        if let Some(channel) = &channel {
            channel.set_onmessage(Some(on_message.as_ref().unchecked_ref()));
        }
        Self {
            channel,
            _on_message: on_message,
        }
    }

    /// Tells that a job was written.
    pub(crate) fn tell_written(&self, job: &str) {
        if let Some(channel) = &self.channel {
            let _ = channel.post_message(&job.into());
        }
    }
}

impl Drop for News {
    fn drop(&mut self) {
        if let Some(channel) = &self.channel {
            channel.set_onmessage(None);
            channel.close();
        }
    }
}
