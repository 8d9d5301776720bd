//! How everything looks at a moment.

use super::run::Run;
use super::scenario::{DeviceFrame, Frame, RunFrame};
use model::quantity::{Amps, Celsius, Seconds, Share, Volts};

impl Run<'_> {
    pub(super) fn frame(&self) -> Frame {
        let mut runs = vec![RunFrame::default(); self.base.net.runs.len()];
        for run in &mut runs {
            run.temperature = Celsius(f64::NEG_INFINITY);
        }
        for wire in &self.wires {
            let run = &mut runs[wire.run];
            run.current = run.current.max(Amps(wire.current.abs()));
            run.temperature = run.temperature.max(Celsius(wire.temperature));
        }
        for (run, heat) in runs.iter_mut().zip(&self.base.heats) {
            if !run.temperature.0.is_finite() {
                run.temperature = heat.ambient();
            }
        }
        let devices = (0..self.ages.len())
            .map(|device| {
                let item = self.device_items[device];
                let open = item == usize::MAX || !self.closed[item];
                DeviceFrame {
                    current: Amps(if open { 0.0 } else { self.current(item).abs() }),
                    age: Share(self.ages[device].min(1.0)),
                    open,
                }
            })
            .collect();
        let volts = |node: usize| self.system.voltages().get(node).copied().unwrap_or(0.0);
        let source = self
            .base
            .net
            .sources
            .iter()
            .map(|it| volts(it.plus) - volts(it.minus));
        Frame {
            time: Seconds(self.time),
            runs,
            devices,
            off: self
                .consumers
                .iter()
                .filter(|it| !it.on)
                .map(|it| self.part_id(it.part))
                .collect(),
            fault: (!self.circuit.touches.is_empty()).then(|| Amps(self.fault())),
            source: Volts(source.fold(0.0, f64::max)),
        }
    }
}
