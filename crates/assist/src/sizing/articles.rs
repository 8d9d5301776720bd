//! What has to have a price for sizes to be chosen by cost: every wire and every rating that is weighed.

use super::speakers::Leads;
use super::things::Things;
use super::{Ask, By, Prices};
use model::quantity::Amps;
use model::thread::Money;
use model::{PartKind, Settings, Sheet, Wire};
use std::cell::RefCell;

/// Something whose price decides.
#[derive(Clone, Debug)]
pub enum Article {
    /// A metre of this wire.
    Wire(Box<Wire>),
    /// A fuse of this rating for this part.
    Device(Box<PartKind>, Amps),
}

/// Asks for the price of everything, and remembers what it was.
#[derive(Default)]
struct Asked(RefCell<Vec<Article>>);

impl Prices for Asked {
    fn wire(&self, wire: &Wire) -> Option<f64> {
        self.0.borrow_mut().push(Article::Wire(Box::new(wire.clone())));
        Some(0.0)
    }
    fn device(&self, kind: &PartKind, rating: Amps) -> Option<Money> {
        let it = Article::Device(Box::new(kind.clone()), rating);
        self.0.borrow_mut().push(it);
        Some(Money(0))
    }
}

/// All wires and ratings that sizing weighs against one another on a sheet, each run in its own series. Some come several times.
#[must_use]
pub fn articles(sheet: &Sheet, settings: &Settings) -> Vec<Article> {
    let asked = Asked::default();
    let ask = Ask {
        by: By::Cost(&asked),
        ..Ask::default()
    };
    let laid = body::lay(sheet, settings);
    let study = circuit::study_laid(&laid, settings);
    let asks = checks::asks(&laid, settings, &study);
    super::steps::at_once(Leads::of(&laid, settings, &study, &asks, &ask));
    Things::new(&laid, settings, &study, &asks, &ask);
    asked.0.into_inner()
}
