//! The close look at a short that no bound decides: the run is warmed step by step until a device opens, the wire is damaged, or neither.

use super::enders::{Enders, MOST_IN_LINE};
use super::{Drive, FarShort};
use crate::faults::device::Edge;
use crate::faults::outcome::{Certainty, Within};
use crate::heat::Heating;
use crate::study::DeviceRef;
use model::RunId;
use model::quantity::{Amps, Celsius, Seconds};

/// Change of temperature in a step of the close look, over the temperature above −234.5 °C.
const CLOSE_STEP: f64 = 0.08;

/// A short at one end of a run.
pub(super) struct Short<'a> {
    pub(super) at_end: usize,
    pub(super) heat: Heating,
    /// Resistance of the wire alone at 20 °C, in Ω.
    pub(super) cold: f64,
    /// Temperature at which it begins, in °C.
    pub(super) begins: f64,
    pub(super) enders: Enders<'a>,
    /// The share of the fault current that the run carries.
    pub(super) share: f64,
    /// Voltage in V and resistance in Ω behind the short, strongest and weakest.
    pub(super) behind: [(f64, f64); 2],
}

/// How one case ends.
#[derive(Clone, Copy, PartialEq)]
enum End {
    Opens,
    Damaged,
    Stays,
}

impl Short<'_> {
    /// The fault current in A while the run has this temperature, with sources at their strongest (case 0) or weakest (1).
    fn fault(&self, case: usize, temperature: f64) -> f64 {
        let (voltage, resistance) = self.behind.get(case).copied().unwrap_or((0.0, 1.0));
        let more = self.cold * (self.heat.factor(Celsius(temperature)) - 1.0);
        voltage / (resistance + self.share * self.share * more).max(1e-6)
    }

    /// Warms the run step by step until something ends it.
    fn end(&self, case: usize, edge: Edge) -> End {
        // The current falls as the wire warms: between what it is at first and what it is at the limit.
        let [most, least] = [self.begins, self.heat.limit.0].map(|at| self.fault(case, at));
        let opens = |fault: f64| {
            let devices = self.enders.devices.iter();
            self.enders
                .time(devices.map(|(device, share)| device.opens_after(share * fault, edge)))
        };
        let lasts = |fault: f64| {
            let current = self.share * fault;
            self.heat.until(self.begins, self.heat.limit.0, current * current)
        };
        if opens(least) < lasts(most) {
            return End::Opens;
        }
        if lasts(least) < opens(most) {
            return End::Damaged;
        }
        let mut temperature = self.begins;
        let devices = &self.enders.devices;
        let mut ages = [0.0_f64; MOST_IN_LINE];
        let mut paces = [0.0_f64; MOST_IN_LINE];
        for _ in 0..200 {
            let fault = self.fault(case, temperature);
            let squared = self.share * self.share * fault * fault;
            if temperature >= self.heat.limit.0 - 0.05 {
                return End::Damaged;
            }
            for (pace, (device, share)) in paces.iter_mut().zip(devices) {
                *pace = 1.0 / device.opens_after(share * fault, edge).max(1e-6);
            }
            let left = ages.iter().zip(&paces).take(devices.len()).map(|(age, pace)| {
                if *age >= 0.999 {
                    0.0
                } else if *pace > 0.0 {
                    (1.0 - age) / pace
                } else {
                    f64::INFINITY
                }
            });
            let opens = self.enders.time(left);
            if opens <= 0.0 {
                return End::Opens;
            }
            let unrest = self.heat.unrest(temperature, squared);
            let rests = unrest < 0.3;
            if opens.is_infinite() && rests {
                return End::Stays;
            }
            let pace = self.heat.pace(temperature, squared).abs().max(1e-9);
            let mut step = opens.min(self.heat.until(temperature, self.heat.limit.0, squared));
            if !rests {
                step = step
                    .min(CLOSE_STEP * (temperature + 234.5) / pace)
                    .min(0.7 * self.heat.settles_in());
            }
            if !step.is_finite() {
                return End::Stays;
            }
            let step = step.max(1e-6);
            let guess = self.heat.after_step(temperature, squared, step);
            let then = self.share * self.fault(case, guess);
            temperature = self
                .heat
                .after_step(temperature, 0.5 * (squared + then * then), step);
            for (age, pace) in ages.iter_mut().zip(&paces) {
                *age += pace * step;
            }
        }
        End::Stays
    }

    /// What it does in all four cases; nothing where it is cleared in each.
    pub(super) fn tell(&self, run: RunId, devices: impl Iterator<Item = DeviceRef>) -> Option<FarShort> {
        // What is damaged though its devices open as soon as they may is damaged when they open later.
        let cases = [0, 1].map(|case| {
            let fastest = self.end(case, Edge::Fastest);
            let told = self.enders.devices.iter().all(|(device, _)| device.is_told());
            let slowest = if told || fastest == End::Damaged {
                fastest
            } else {
                self.end(case, Edge::Slowest)
            };
            [slowest, fastest]
        });
        let count = |end: End| cases.iter().flatten().filter(|it| **it == end).count();
        let mut all: Vec<DeviceRef> = Vec::new();
        for device in devices {
            if !all.contains(&device) {
                all.push(device);
            }
        }
        // Where several devices share the current, each takes over what those carried that have opened: that is not followed here, so
        // that nothing is certain.
        let most = if all.len() > 1 {
            Certainty::Possible
        } else {
            Certainty::Certain
        };
        let [damaged, stays] = [End::Damaged, End::Stays].map(|end| Certainty::of(count(end), 4).min(most));
        if damaged == Certainty::No && stays == Certainty::No {
            return None;
        }
        let faults = [0, 1].map(|case| self.fault(case, self.begins));
        let opens = |edge: Edge, fault: f64| {
            let devices = self.enders.devices.iter();
            self.enders
                .time(devices.map(|(device, share)| device.opens_after(share * fault, edge)))
        };
        let within = |least: f64, most: f64| {
            most.is_finite().then_some(Within {
                least: Seconds(least),
                most: Seconds(most),
            })
        };
        let lasts = faults.map(|fault| {
            let squared = self.share * self.share * fault * fault;
            self.heat.until(self.begins, self.heat.limit.0, squared)
        });
        Some(FarShort {
            run,
            devices: all,
            current: Within {
                least: Amps(self.share * faults[1]),
                most: Amps(self.share * faults[0]),
            },
            opens: within(opens(Edge::Fastest, faults[0]), opens(Edge::Slowest, faults[1])),
            lasts: within(lasts[0], lasts[1]),
            damaged,
            stays,
            at_end: self.at_end,
            drives: vec![Drive {
                share: self.share,
                begins: self.begins,
                behind: self.behind,
            }],
        })
    }
}
