//! What happens when something fails, and in which order: the time course of breaks.
//!
//! At each step the network is solved with the breaks in it. Each fuse ages by Σ dt / t_open(I), t_open being its published
//! operating time, straight on doubly logarithmic paper between gates; each conductor warms by [`crate::heat`]; each event (a fuse opens, insulation passes its
//! limit, a conductor melts, equipment drops out, a relay falls off) changes the network, until nothing changes any more. A
//! capacitor discharges into the fault, a breaker that closes by itself does so after [`reference::breakers::SELF_RESET`], an alternator
//! gives its limit and no more.
//!
//! Two things are known only as a band: the operating times of fuses, and the resistance of batteries. So everything is run four times:
//! devices at either edge of their times, all sources at their strongest (batteries warm and full, least
//! credible resistance; alternators cold) and at their weakest. What happens in all four is [`Certainty::Certain`], what happens in some
//! is [`Certainty::Possible`], and times are told from the soonest to the latest.
//!
//! Steps follow the fastest conductor (a few per cent of its absolute resistance each) and end on events, so that there are few; within
//! one the linear equation of heat is solved exactly, with the mean of I² at both its ends. *Invariants:* pure, never panics, ends: at
//! most [`MOST_STEPS`] steps of each run, [`MOST_EVENTS`] events, [`HORIZON`] seconds.
//!
//! Not simulated: inductance, arcs, speaker outputs as sources, over-voltage of an alternator without its battery, which is told as
//! an event.

mod base;
mod circuit;
mod deck;
mod device;
mod frame;
mod laws;
mod outcome;
mod run;
mod scenario;
mod shorts;
mod steps;
mod switching;
mod told;

pub(crate) use device::Device;
pub use device::{Edge, operating_band, operating_band_of};
pub use outcome::{Certainty, Course, Event, LetThrough, Outcome, RunCourse, Within};
pub use scenario::{DeviceFrame, Frame, Happening, Moment, RunFrame, Scenario};
pub use told::time_said;

pub use shorts::{FarShort, Prospect};
pub(crate) use shorts::{Solved, far_shorts};

use base::Base;
use circuit::{Circuit, on_network};
use model::breaks::Break;
use model::{PartId, RunId, Settings, Sheet};
use words::Saying;

/// Longest time that is looked at, in seconds: two hours.
pub const HORIZON: f64 = 7200.0;
/// Most steps of one run through time.
pub const MOST_STEPS: usize = 800;
/// Most events of one run through time.
pub const MOST_EVENTS: usize = 80;

/// A sheet made ready to be broken, so that dragging a fault along a wire does not study the sheet anew at each step.
#[derive(Clone, Debug)]
pub struct Faults {
    base: Base,
}

impl Faults {
    /// Of a sheet under these settings, laid in the vehicle's body where the settings tell one.
    #[must_use]
    pub fn new(sheet: &Sheet, settings: &Settings) -> Self {
        Self {
            base: Base::new(&body::lay(sheet, settings), settings),
        }
    }

    /// The runs, in the order in which frames tell of them.
    pub fn runs(&self) -> impl Iterator<Item = RunId> {
        self.base.net.runs.iter().map(|run| run.id)
    }

    /// The devices, in the order in which frames tell of them.
    pub fn devices(&self) -> impl Iterator<Item = &crate::DeviceRef> {
        self.base.net.devices.iter().map(|device| &device.name)
    }

    /// The parts, in the order in which frames tell of them.
    pub fn parts(&self) -> impl Iterator<Item = PartId> {
        self.base.net.parts.iter().copied()
    }

    /// What follows from breaks that are all thrown at once.
    ///
    /// # Errors
    /// When the sheet has no such thing, or the thing cannot break in this way; the text says what would do.
    pub fn course(&self, breaks: &[Break]) -> Result<Course, Saying> {
        let ready = self.ready(breaks)?;
        let base = ready.base(self);
        let mut scenarios = Vec::with_capacity(4);
        for strong in [true, false] {
            for edge in [Edge::Slowest, Edge::Fastest] {
                scenarios.push(run::run(base, &ready.circuit, &ready.unloaded, edge, strong));
            }
        }
        Ok(outcome::course(
            base,
            &self.base,
            ready.circuit.is_short,
            scenarios,
        ))
    }

    /// The network with breaks in it.
    fn ready(&self, breaks: &[Break]) -> Result<Ready, Saying> {
        let (here, on_sheet): (Vec<&Break>, Vec<&Break>) =
            breaks.iter().partition(|broken| on_network(&self.base, broken));
        // What cannot be done by opening and adding branches is done to the sheet first.
        let mut sheet = None;
        for broken in on_sheet {
            sheet = Some(broken.thrown(sheet.as_ref().unwrap_or(&self.base.sheet))?);
        }
        let rebuilt = sheet.map(|sheet| Box::new(self.base.on(sheet)));
        let mut circuit = Circuit::whole(rebuilt.as_deref().unwrap_or(&self.base));
        // Before anything broke.
        let unloaded = match &rebuilt {
            Some(_) => switching::unloaded_at_first(&self.base, &Circuit::whole(&self.base)),
            None => switching::unloaded_at_first(&self.base, &circuit),
        };
        for broken in here {
            circuit.throw(rebuilt.as_deref().unwrap_or(&self.base), broken)?;
        }
        Ok(Ready {
            rebuilt,
            circuit,
            unloaded,
        })
    }
}

/// A network with breaks in it, ready to be run through time.
struct Ready {
    /// What is known of the sheet, where breaks have changed that.
    rebuilt: Option<Box<Base>>,
    circuit: Circuit,
    /// Alternators that had no battery before.
    unloaded: Vec<usize>,
}

impl Ready {
    fn base<'a>(&'a self, faults: &'a Faults) -> &'a Base {
        self.rebuilt.as_deref().unwrap_or(&faults.base)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use model::breaks::Contact;
    use model::quantity::{Ohms, Share};

    /// Two ways that share nothing but the run through time: a branch put into the network, and a sheet changed by the break's own
    /// edit and built anew.
    #[test]
    fn a_break_in_the_network_is_the_break_on_the_sheet() {
        let sheet = testkit::sheet(
            "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 80A
block D1 inputs=1 outputs=2 fuses=30A,-
load L1 power=150W
load L2 power=60W
ground E1
run W1 B1.+ F1.in 16mm2 0.3m
run W2 F1.out D1.in 16mm2 4m
run W3 D1.out1 L1.+ 4mm2 2m
run W4 D1.out2 L2.+ 2.5mm2 3m
run W5 L1.- E1.stud 4mm2 0.5m
run W6 L2.- E1.stud 2.5mm2 0.5m
run W7 B1.- E1.stud 25mm2 0.5m",
        );
        let faults = Faults::new(&sheet, &Settings::default());
        let base = &faults.base;
        let run = |tag: &str| sheet.run_by_tag(tag).expect("a run").0;
        for broken in [
            Break::Cut {
                run: run("W4"),
                at: Share(0.3),
            },
            Break::Off {
                run: run("W3"),
                far: false,
            },
            Break::Grounded {
                run: run("W2"),
                at: Share(0.7),
                through: Ohms(0.004),
            },
            Break::Grounded {
                run: run("W4"),
                at: Share(0.2),
                through: Ohms(0.02),
            },
            Break::Resistive {
                run: run("W3"),
                more: Ohms(0.3),
            },
            Break::Joined {
                points: [
                    Contact::Along(run("W2"), Share(0.8)),
                    Contact::Along(run("W7"), Share(0.4)),
                ],
                through: Ohms(0.01),
            },
            Break::Joined {
                points: [
                    Contact::Along(run("W4"), Share(0.2)),
                    Contact::Along(run("W4"), Share(0.9)),
                ],
                through: Ohms(0.001),
            },
            Break::Joined {
                points: [
                    Contact::Terminal(model::TerminalRef::new(
                        sheet.part_by_tag("L1").expect("a part").0,
                        "+",
                    )),
                    Contact::Body,
                ],
                through: Ohms(0.004),
            },
        ] {
            assert!(on_network(base, &broken));
            let mut circuit = Circuit::whole(base);
            circuit.throw(base, &broken).expect("throws");
            let rebuilt = base.on(broken.thrown(&sheet).expect("breaks"));
            let other = Circuit::whole(&rebuilt);
            let one = run::run(base, &circuit, &[], Edge::Slowest, true);
            let two = run::run(&rebuilt, &other, &[], Edge::Slowest, true);
            for (at, id) in faults.runs().enumerate() {
                let place = rebuilt.net.runs.iter().position(|it| it.id == id).expect("kept");
                // The edit puts splices and a piece of wire in, of a few ten microhms each; and it tells of the piece nearest to `from`.
                let [a, b] = [&one.frames[0].runs[at], &two.frames[0].runs[place]].map(|it| it.current.0);
                let in_pieces = matches!(&broken, Break::Grounded { .. } | Break::Joined { .. })
                    && broken.on().0.contains(&id);
                assert!(
                    (a - b).abs() < 0.02 * a.max(0.1) || in_pieces,
                    "{broken:?}, run {id}: {a} A, {b} A"
                );
            }
            let seen = |scenario: &Scenario| -> Vec<Happening> {
                scenario.moments.iter().map(|it| it.happening.clone()).collect()
            };
            assert_eq!(seen(&one), seen(&two), "{broken:?}");
            for (a, b) in one.moments.iter().zip(&two.moments) {
                assert!(
                    (a.time.0 - b.time.0).abs() < 0.05 * a.time.0.max(1e-3),
                    "{broken:?}"
                );
            }
        }
    }
}
