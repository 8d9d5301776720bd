//! The same work in steps: a page goes on with other things between two of them, and drops what nobody waits for any more.
//!
//! The search is written as one piece that pauses wherever it asks the engine or the checks. Each poll goes on to the next pause, and
//! nothing ever wakes it: who wants the answer asks for the next step. Done at one go or in steps it is the same search, and so the same
//! answer.

use super::{Ask, By, Prices, Series, Sizing, search};
use model::{Settings, Sheet};
use std::pin::{Pin, pin};
use std::rc::Rc;
use std::task::{Context, Poll, Waker};

/// A place where the work may be left.
struct Pause {
    is_over: bool,
}

impl Future for Pause {
    type Output = ();
    fn poll(mut self: Pin<&mut Self>, _: &mut Context<'_>) -> Poll<()> {
        if self.is_over {
            return Poll::Ready(());
        }
        self.is_over = true;
        Poll::Pending
    }
}

/// Leaves the work until the next step.
pub(super) fn pause() -> impl Future<Output = ()> {
    Pause { is_over: false }
}

fn step<T>(work: Pin<&mut (impl Future<Output = T> + ?Sized)>) -> Option<T> {
    match work.poll(&mut Context::from_waker(Waker::noop())) {
        Poll::Ready(done) => Some(done),
        Poll::Pending => None,
    }
}

/// All of the work at one go.
pub(super) fn at_once<T>(work: impl Future<Output = T>) -> T {
    let mut work = pin!(work);
    loop {
        if let Some(done) = step(work.as_mut()) {
            return done;
        }
    }
}

/// Sizes on their way: what [`super::size`] does at one go. Dropped, it leaves nothing behind.
pub struct Sizer {
    /// Nothing once it is done.
    work: Option<Pin<Box<dyn Future<Output = Sizing>>>>,
}

impl Sizer {
    /// Of a sheet, as [`Ask`] has it: cost is least by `prices`, metal where there are none.
    #[must_use]
    pub fn new(
        sheet: Sheet,
        settings: Settings,
        series: Option<Series>,
        prices: Option<Rc<dyn Prices>>,
        as_set: bool,
    ) -> Self {
        let work = async move {
            let by = prices.as_deref().map_or(By::Metal, By::Cost);
            let ask = Ask { series, by, as_set };
            search::search(&sheet, &settings, &ask).await
        };
        Self {
            work: Some(Box::pin(work)),
        }
    }

    /// One step: a moment's work. The sizes once they are found, and then nothing any more.
    pub fn step(&mut self) -> Option<Sizing> {
        let done = step(self.work.as_mut()?.as_mut());
        if done.is_some() {
            self.work = None;
        }
        done
    }
}

impl std::fmt::Debug for Sizer {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let is_done = self.work.is_none();
        out.debug_struct("Sizer").field("is_done", &is_done).finish()
    }
}
