//! What a voltage throws: contacts of relays, and isolators that sense. Where they stand follows from the voltages and from how they
//! stood; who asks decides how often they may change.

use crate::network::Closes;

/// Most times that one contact changes before it is left alone.
pub(crate) const MOST_TOGGLES: u8 = 4;
/// By how much the voltage may fall after a sensing isolator has closed before it opens again, in volts. From memory: such
/// relays open about half a volt below the voltage at which they close.
const SENSING_HYSTERESIS: f64 = 0.5;

/// Whether a contact that stands so wants to be closed; `None` where no voltage throws it.
///
/// `falls_off` is the share of its pull-in voltage below which a relay that is held falls off: 1 where it is asked how it stands
/// of itself. `coil` gives the volts across the branch of a coil, `sensed` those of the contact's first node against another.
pub(crate) fn wants(
    closes: Closes,
    closed: bool,
    falls_off: f64,
    coil: impl Fn(usize) -> f64,
    sensed: impl Fn(usize) -> f64,
) -> Option<bool> {
    match closes {
        Closes::Relay {
            coil: at,
            pull_in,
            energised,
        } => {
            let held = closed == energised;
            let least = if held { pull_in * falls_off } else { pull_in };
            Some((coil(at).abs() >= least) == energised)
        }
        Closes::Sensing { minus, closes_at } => {
            let least = if closed {
                closes_at - SENSING_HYSTERESIS
            } else {
                closes_at
            };
            Some(sensed(minus) >= least)
        }
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_held_relay_falls_off_later_than_it_pulls_in_and_an_isolator_opens_later_than_it_closes() {
        let relay = |energised| Closes::Relay {
            coil: 0,
            pull_in: 8.0,
            energised,
        };
        let at = |closes, closed, falls_off, volts: f64| {
            wants(closes, closed, falls_off, |_| volts, |_| volts).expect("thrown by a voltage")
        };
        // The make contact, then the break contact; the sign of the coil's voltage says nothing.
        assert!(!at(relay(true), false, 0.5, 6.0) && at(relay(true), true, 0.5, -6.0));
        assert!(at(relay(false), true, 0.5, 6.0) && !at(relay(false), false, 0.5, 6.0));
        assert!(!at(relay(true), true, 1.0, 6.0), "of itself");
        let sensing = Closes::Sensing {
            minus: 1,
            closes_at: 13.3,
        };
        assert!(!at(sensing, false, 1.0, 13.0) && at(sensing, true, 1.0, 13.0));
        assert!(wants(Closes::Always, true, 1.0, |_| 0.0, |_| 0.0).is_none());
    }
}
