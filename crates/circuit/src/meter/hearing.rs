//! What is heard with something broken, and what the parts ask because of it, told round by round beside how direct current stands.
//!
//! What works decides what is heard, what is heard what is drawn, and what is drawn what works. It begins with everything working that
//! does while nothing is broken; as a rule one round is all.

use super::alter::Altered;
use super::bench::{Foreseen, Kept, Ready};
use super::linear::{Case, Straight};
use super::scene::{MOST_HEARINGS, Scene, differ};
use crate::solve::Demand;

/// What is heard of one fault.
pub(super) struct Hearing<'b> {
    scene: &'b Scene,
    ready: &'b Ready,
    it: &'b Altered,
    works: Vec<bool>,
    tone: Case<'b>,
    protected: Vec<usize>,
    /// What the parts ask, where that is otherwise than with nothing broken.
    asked: Option<Vec<Demand>>,
    rounds: usize,
}

impl<'b> Hearing<'b> {
    pub(super) fn of(scene: &'b Scene, ready: &'b Ready, it: &'b Altered) -> Self {
        let mut works = ready.heard.works.clone();
        for part in it.dead.iter().chain(&it.reversed) {
            if let (Some(works), Some(Some(_))) = (works.get_mut(*part), scene.supply.get(*part)) {
                *works = false;
            }
        }
        let (tone, protected) = heard(scene, ready, it, &works);
        let standing = &ready.standing;
        Self {
            asked: standing.tones.asked(scene, &tone, &standing.demands),
            scene,
            ready,
            it,
            works,
            tone,
            protected,
            rounds: 0,
        }
    }

    /// What the parts ask.
    pub(super) fn demands(&self) -> &[Demand] {
        self.asked.as_deref().unwrap_or(&self.ready.standing.demands)
    }

    /// Takes note of which parts are on, and of the volts on branches. False where parts that work now ask otherwise than before, so
    /// that direct current has to be looked at again.
    pub(super) fn has_heard(&mut self, on: &[bool], volts: impl Fn(usize) -> Option<f64>) -> bool {
        let works: Vec<bool> = (0..self.works.len())
            .map(|part| {
                let on = on.get(part) == Some(&true)
                    && !self.it.dead.contains(&part)
                    && !self.it.reversed.contains(&part);
                self.scene.works(part, on, &volts) && !self.it.reversed.contains(&part)
            })
            .collect();
        self.rounds += 1;
        if works == self.works {
            return true;
        }
        self.works = works;
        (self.tone, self.protected) = heard(self.scene, self.ready, self.it, &self.works);
        let standing = &self.ready.standing;
        let asked = standing.tones.asked(self.scene, &self.tone, &standing.demands);
        let now = asked.as_deref().unwrap_or(&standing.demands);
        if self.rounds >= MOST_HEARINGS || !differ(now, self.demands(), &self.works) {
            return true;
        }
        self.asked = asked;
        false
    }

    /// All that is foreseen, with how direct current stands.
    pub(super) fn foreseen(self, direct: Kept, laws: Vec<(usize, Straight)>, opened: Vec<usize>) -> Foreseen {
        Foreseen {
            tone: Kept::of(&self.tone, &self.ready.normal.tone),
            direct,
            laws,
            works: self.works,
            opened,
            protected: self.protected,
            swapped: self.it.swapped.clone(),
        }
    }
}

/// The test tone, given which parts work, and the amplifiers that protect themselves.
fn heard<'b>(scene: &Scene, ready: &'b Ready, it: &Altered, works: &[bool]) -> (Case<'b>, Vec<usize>) {
    let mut signal = if works == ready.heard.works && it.cut.is_empty() {
        ready.heard.signal.clone()
    } else {
        scene.has_signal(works, &|run| it.cut.contains(&run))
    };
    for (signal, extra) in signal.iter_mut().zip(&scene.extras) {
        *signal &= !it.is_silent(&extra.is);
    }
    let mut case = ready.heard.tone.as_is();
    it.put(scene, &ready.heard.tone, &mut case);
    scene.silence(&mut case, &|at, _| signal.get(at) == Some(&false));
    let protected = scene.hush(&mut case, &ready.standing.tones);
    (case, protected)
}
