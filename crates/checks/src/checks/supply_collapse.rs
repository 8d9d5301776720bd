//! `supply-collapse`: the network cannot give what is asked, or an amplifier is starved below its cut-off.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::batteries::larger;
use crate::registry::{Check, CheckGroup};
use crate::wires::{thicken, thicken_to_share};
use crate::wording::{V, and_then};
use circuit::{Circuit, Outcome};
use model::kinds::supply::Battery;
use model::quantity::Share;
use model::{Edit, PartId, PartKind, RunId};
use ordered::Sort as _;
use reference::audio::efficiency;
use reference::battery::{internal_resistance, open_circuit_voltage};
use words::{Unit, figure, say, told};

pub(crate) static CHECK: Check = Check {
    name: "supply-collapse",
    grade: Grade::Fix,
    group: CheckGroup::Conductors,
    example: "\
conditions duty=tone
battery B1 agm 7Ah cranking=70A
fuse F1 strip61 100A
amplifier A1 sections=\"1x 700W@2ohm min 2ohm\" turn-on=sensing input-level=speaker inputs=1 #~ supply-collapse
head H1 speaker-outputs=2 line-outputs=0
speaker LS1 2ohm power=1500W sub bass
run W1 B1.+ F1.in 70mm2 0.3m RD
run W2 F1.out A1.+ 70mm2 1m RD
run W3 A1.- B1.- 70mm2 0.4m BK
fuse F2 strip61 35A
run W4 B1.+ F2.in 6mm2 0.2m RD
run W5 F2.out H1.30 6mm2 1m RD
run W6 F2.out H1.15 6mm2 1m RD
run W7 H1.31 B1.- 6mm2 1m BK
run W8 H1.fl+ A1.hi1+ 1mm2 1m WH
run W9 H1.fl- A1.hi1- 1mm2 1m WHBK
run W10 A1.out1+ LS1.+ 6mm2 1m WH
run W11 A1.out1- LS1.- 6mm2 1m WHBK",
    instead: "\
conditions duty=tone
battery B1 agm 100Ah cranking=900A
fuse F1 strip61 80A
amplifier A1 sections=\"1x 300W@2ohm min 2ohm\" turn-on=sensing input-level=speaker inputs=1
head H1 speaker-outputs=2 line-outputs=0
speaker LS1 2ohm power=1500W sub bass
run W1 B1.+ F1.in 70mm2 0.3m RD
run W2 F1.out A1.+ 70mm2 1m RD
run W3 A1.- B1.- 70mm2 0.4m BK
fuse F2 strip61 35A
run W4 B1.+ F2.in 6mm2 0.2m RD
run W5 F2.out H1.30 6mm2 1m RD
run W6 F2.out H1.15 6mm2 1m RD
run W7 H1.31 B1.- 6mm2 1m BK
run W8 H1.fl+ A1.hi1+ 1mm2 1m WH
run W9 H1.fl- A1.hi1- 1mm2 1m WHBK
run W10 A1.out1+ LS1.+ 6mm2 1m WH
run W11 A1.out1- LS1.- 6mm2 1m WHBK",
    limits: &["delivered-share", "cut-off-margin"],
    since: "0.1.0",
    run,
};

/// Checks that name the cause by themselves.
const CAUSES: &[&str] = &[
    "overloaded-run",
    "clad-feed",
    "false-size",
    "damaged-run",
    "poor-ending",
    "hot-joint",
    "ground-surface",
    "ground-forbidden",
    "return-too-long",
    "return-too-thin",
    "return-through-shield",
];

/// Wire on the way to an amplifier and back with which it gets so much more, in volts.
fn thicker(ctx: &Ctx<'_>, amplifier: PartId, circuit: &Circuit, more: f64) -> Option<Edit> {
    let drop = circuit.drop?.0;
    let sizes = super::voltage_drop::sizes_that_pass(ctx, circuit, drop, drop - more * 1.1);
    thicken(
        ctx,
        say!("mend-lay-thicker", load = ctx.part_tag(amplifier)),
        &sizes,
    )
}

/// Voltage of the sources and resistance on the way from them to the loads, about, where a network gives only a share of what is asked.
///
/// Loads of constant power P behind E and R get at most E²/4R. So a share λ of them says R = E²/4λP, and that they stay at a share v
/// of E takes R = v(1 − v)E²/P.
struct Starved {
    /// The one battery.
    battery: PartId,
    /// What it holds back cold, and what lies between it and the loads.
    inner: f64,
    way: f64,
    /// All that may be held back.
    may: f64,
}

impl Starved {
    fn of(ctx: &Ctx<'_>, deliverable: f64) -> Option<Self> {
        let batteries = ctx.sheet.parts.iter().filter_map(|(id, part)| match &part.is {
            PartKind::Battery(it) => Some((*id, it)),
            _ => None,
        });
        let all: Vec<(PartId, &Battery)> = batteries.collect();
        let [(battery, it)] = all[..] else { return None };
        let asked = ctx.study.channels.iter().filter_map(|channel| {
            let PartKind::Amplifier(amplifier) = ctx.kind(channel.part)? else {
                return None;
            };
            let usual = || efficiency(amplifier.class, Share(1.0)).usual;
            let gives = amplifier.efficiency.value().unwrap_or_else(usual);
            Some(channel.power?.0 / gives.0.max(0.1))
        });
        let asked: f64 = asked.sum();
        let margin = ctx.limit("cut-off-margin").unwrap_or(0.0);
        let cut_offs = ctx.sheet.parts.values().filter_map(|part| match &part.is {
            PartKind::Amplifier(it) => it.cut_off.value(),
            _ => None,
        });
        let least = cut_offs.map(|volts| volts.0 + margin).fold(0.0, f64::max);
        let emf = open_circuit_voltage(it.chemistry, it.charge.or(Share(0.9))).0;
        let inner = match it.resistance.value() {
            Some(stated) => stated.0,
            None => internal_resistance(it.standard, it.cranking.value()?).most.0,
        };
        if asked <= 0.0 || deliverable <= 0.0 || least >= emf {
            return None;
        }
        let kept = least / emf;
        let all = emf * emf / (4.0 * deliverable * asked);
        Some(Self {
            battery,
            inner,
            way: (all - inner).max(0.0),
            // A little less than may be, for what else hangs there.
            may: 0.9 * kept * (1.0 - kept) * emf * emf / asked,
        })
    }

    /// A battery that holds back little enough. Resistance by the test goes with one over the current.
    fn larger_battery(&self, ctx: &Ctx<'_>) -> Option<Edit> {
        let may = self.may - self.way;
        (may > 0.0)
            .then(|| larger(ctx, self.battery, self.inner / may, self.inner / may))
            .flatten()
    }

    /// Wire to the load that asks most and back with which enough gets there.
    fn thicker(&self, ctx: &Ctx<'_>, load: PartId) -> Option<Edit> {
        let share = (self.may - self.inner) / self.way.max(1e-9);
        let runs = super::voltage_drop::way(ctx.study.circuits.get(&load)?);
        let runs: Vec<RunId> = runs.into_iter().filter(|run| ctx.touched_run(*run)).collect();
        thicken_to_share(ctx, &runs, share.min(1.0))
    }
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    if let Outcome::Collapsed {
        deliverable,
        blamed_runs,
        blamed_parts,
    } = &ctx.study.outcome
    {
        let wanted = ctx.limit("delivered-share").unwrap_or(1.0);
        let is_told = blamed_runs.iter().take(1).any(|run| out.has_run(*run, CAUSES))
            || blamed_parts
                .iter()
                .take(1)
                .any(|part| out.has_part(*part, CAUSES));
        // A load whose only way back is a shield or an input makes any network collapse; it has a finding already.
        let is_told = is_told
            || ctx.ungrounded.iter().any(|load| {
                ctx.study
                    .circuits
                    .get(load)
                    .is_some_and(|circuit| !circuit.feeds.is_empty())
            })
            || ctx
                .study
                .circuits
                .keys()
                .any(|load| out.has_part(*load, &["load-too-low"]));
        if deliverable.0 < wanted && !is_told {
            // The loads that ask most are what the user can act on.
            let mut loads: Vec<(f64, PartId)> = ctx
                .study
                .circuits
                .keys()
                .filter(|load| matches!(ctx.kind(**load), Some(PartKind::Amplifier(_) | PartKind::Load(_))))
                .filter_map(|load| Some((ctx.study.parts.get(load)?.current.burst.0.abs(), *load)))
                .collect();
            loads.order_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
            let blamed: Vec<String> = blamed_runs
                .iter()
                .take(2)
                .map(|run| ctx.run_tag(*run))
                .chain(blamed_parts.iter().take(1).map(|part| ctx.part_tag(*part)))
                .collect();
            let most = (!blamed.is_empty()).then(|| say!("supply-collapse-most", things = blamed));
            let asks_most = loads.first().map(|(_, load)| *load);
            let starved = Starved::of(ctx, deliverable.0);
            let starved = starved.as_ref();
            out.add(
                CHECK
                    .finding(
                        and_then(
                            say!(
                                "supply-collapse-what",
                                share = figure(deliverable.0, Unit::Percent)
                            ),
                            most,
                        ),
                        say!("supply-collapse-remedy"),
                    )
                    .parts(asks_most)
                    .measure(deliverable.0, wanted, "", Some("delivered-share"))
                    .mend(starved.and_then(|it| it.thicker(ctx, asks_most?)))
                    .mend_by_choice(
                        starved.and_then(|it| it.larger_battery(ctx)),
                        say!("mend-choice-other"),
                    ),
            );
        }
        return;
    }
    if let Outcome::Failed { why } = &ctx.study.outcome {
        out.add(CHECK.undecided(
            say!("supply-collapse-failed", why = why),
            say!("supply-collapse-failed-find"),
        ));
        return;
    }
    let margin = ctx.limit("cut-off-margin").unwrap_or(0.0);
    for (id, part) in &ctx.sheet.parts {
        let PartKind::Amplifier(amplifier) = &part.is else {
            continue;
        };
        let (Some(flow), Some(circuit)) = (ctx.study.parts.get(id), ctx.study.circuits.get(id)) else {
            continue;
        };
        let (Some(volts), Some(cut_off)) = (flow.burst_voltage, amplifier.cut_off.value()) else {
            continue;
        };
        if volts.0 >= cut_off.0 + margin || !ctx.touched_part(*id) || circuit.feeds.is_empty() {
            continue;
        }
        let runs: Vec<RunId> = super::voltage_drop::way(circuit);
        let is_told = runs.iter().any(|run| out.has_run(*run, CAUSES))
            || ctx.ungrounded.contains(id)
            || out.has_part(
                *id,
                &["no-return", "no-feed", "return-through-shield", "load-too-low"],
            )
            || circuit
                .returns
                .iter()
                .flat_map(|back| &back.parts)
                .any(|part| out.has_part(*part, CAUSES));
        // An amplifier that is not told to turn on has nothing to lose.
        if is_told || !circuit.returns.iter().any(|back| back.complete) {
            continue;
        }
        let needs = cut_off.0 + margin;
        out.add(
            CHECK
                .finding(
                    say!(
                        "supply-collapse-cut-off",
                        amplifier = &part.tag,
                        gets = told(volts.0, needs, V),
                        needs = told(needs, volts.0, V),
                    ),
                    say!("supply-collapse-remedy"),
                )
                .parts([*id])
                .measure(volts.0, needs, "V", Some("cut-off-margin"))
                .mend(thicker(ctx, *id, circuit, needs - volts.0))
                .assumes_part(ctx, *id, &["cut-off"]),
        );
    }
}
