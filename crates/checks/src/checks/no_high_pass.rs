//! `no-high-pass`: a small driver that gets the bass.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::adding::Adding;
use crate::mends::set_part;
use crate::registry::{Check, CheckGroup};
use crate::wording::HZ;
use model::kinds::sound::{Band, InlineCapacitor};
use model::quantity::{Farads, Hertz, Metres};
use model::written::Filter;
use model::{Edit, Fact, PartId, PartKind};
use ordered::OrderedMap;
use words::{Unit, figure, say, told};

pub(crate) static CHECK: Check = Check {
    name: "no-high-pass",
    grade: Grade::Fix,
    group: CheckGroup::Speakers,
    example: "\
amplifier A1 sections=\"1x 60W@4ohm min 4ohm\"
speaker LS1 4ohm power=80W tweeter front-left #~ no-high-pass
run W1 A1.out1+ LS1.+ 2.5mm2 3m WH
run W2 A1.out1- LS1.- 2.5mm2 3m WHBK",
    instead: "\
amplifier A1 sections=\"1x 60W@4ohm min 4ohm\"
speaker LS1 4ohm power=80W tweeter front-left
inline-capacitor CS1 10uF
run W1 A1.out1+ CS1.1 2.5mm2 3m WH
run W2 CS1.2 LS1.+ 2.5mm2 0.2m WH
run W3 A1.out1- LS1.- 2.5mm2 3m WHBK",
    limits: &["high-pass-floor"],
    since: "0.1.0",
    run,
};

/// From where such a driver is given its sound, in hertz (common practice): a tweeter from 3.5 kHz, a midrange from 100 Hz.
fn corner_for(band: Band, floor: f64) -> f64 {
    match band {
        Band::Tweeter => 3500.0_f64.max(floor),
        _ => 100.0_f64.max(floor),
    }
}

/// A capacitor in the plus lead of each driver: C = 1 / (2π f Z), the next smaller of the E6 series (IEC 60063), so that the
/// corner is no lower than asked.
fn in_line(ctx: &Ctx<'_>, drivers: &[PartId], corner: f64) -> Option<Edit> {
    let mut adding = Adding::new(ctx);
    let mut said = Vec::new();
    for id in drivers {
        let Some(PartKind::Speaker(speaker)) = ctx.kind(*id) else {
            return None;
        };
        let farads = 1.0 / (core::f64::consts::TAU * corner * speaker.impedance.value()?.0.max(0.1));
        let capacitance = e6_not_above(farads)?;
        let [run] = ctx.runs_on(*id, "+")[..] else {
            return None;
        };
        let ends = ctx.run(run)?.ends();
        let end = ends
            .iter()
            .position(|end| end.terminal().is_some_and(|at| at.part == *id))?;
        let capacitor = InlineCapacitor {
            capacitance: Fact::Given(Farads(capacitance)),
            ..InlineCapacitor::default()
        };
        let tag = adding.put_into(run, end, Metres(0.2), capacitor, ["1", "2"])?;
        said.push(say!(
            "mend-in-line",
            capacitor = tag,
            microfarads = figure(capacitance * 1e6, Unit::Plain("µF")),
            run = ctx.run_tag(run)
        ));
    }
    (!said.is_empty()).then(|| Edit::new(say!("mend-several", steps = said), adding.changes))
}

/// The greatest value of the E6 series that is not above this.
fn e6_not_above(value: f64) -> Option<f64> {
    let decades = (-9..0).rev().map(|power| libm::pow(10.0, f64::from(power)));
    let mut values = decades.flat_map(|decade| [6.8, 4.7, 3.3, 2.2, 1.5, 1.0].map(|digits| digits * decade));
    values.find(|it| *it <= value * (1.0 + 1e-9))
}

/// The filter of the amplifier's section that drives them, where nothing else hangs on it.
fn by_amplifier(ctx: &Ctx<'_>, drivers: &[PartId], corner: f64) -> Option<Edit> {
    let (part, _) = ctx.study.drivers.get(drivers.first()?)?.channel?;
    let mut amplifier = ctx.part(part)?.clone();
    let PartKind::Amplifier(it) = &mut amplifier.is else {
        return None;
    };
    let mut first = 1;
    for section in &mut it.sections.0 {
        let own = first..first + u16::from(section.channels);
        first = own.end;
        let channels = ctx.study.channels.iter();
        let hung: Vec<PartId> = channels
            .filter(|channel| channel.part == part && own.contains(&u16::from(channel.channel)))
            .flat_map(|channel| channel.drivers.iter().copied())
            .collect();
        let asked = hung.iter().any(|driver| drivers.contains(driver));
        if asked
            && (!hung.iter().all(|driver| drivers.contains(driver))
                || matches!(section.filter, Filter::LowPass(_)))
        {
            return None;
        }
        if asked {
            section.filter = Filter::HighPass(Hertz(corner));
        }
    }
    let name = say!("mend-filter", part = &amplifier.tag, from = figure(corner, HZ));
    Some(Edit::new(name, vec![set_part(part, amplifier)]))
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    let Some(floor) = ctx.limit("high-pass-floor") else {
        return;
    };
    // By amplifier and band: the drivers, each with the corner of what little keeps bass from it.
    type Bare = Vec<(PartId, Option<f64>)>;
    let mut bare: OrderedMap<(Option<PartId>, Band), Bare> = OrderedMap::new();
    for (id, driver) in &ctx.study.drivers {
        let Some(PartKind::Speaker(speaker)) = ctx.kind(*id) else {
            continue;
        };
        let channel = driver.channel.map(|(part, _)| part);
        let makers = ctx.is_makers(*id) && channel.is_none_or(|part| ctx.is_makers(part));
        if !driver.plays || makers || !matches!(speaker.band, Band::Mid | Band::Tweeter) {
            continue;
        }
        let from = driver.high_pass.map(|hertz| hertz.0);
        if from.is_none_or(|from| from < floor) {
            bare.entry((channel, speaker.band)).or_default().push((*id, from));
        }
    }
    for ((_, band), drivers) in bare {
        let tags = ctx.part_tags(drivers.iter().map(|(id, _)| id));
        let finding = match drivers.iter().find_map(|(_, from)| *from) {
            Some(from) => {
                let what = say!(
                    "no-high-pass-low",
                    speakers = tags,
                    from = told(from, floor, HZ),
                    least = told(floor, from, HZ),
                    band = band.word(),
                );
                CHECK.finding(what, say!("no-high-pass-low-remedy")).measure(
                    from,
                    floor,
                    "Hz",
                    Some("high-pass-floor"),
                )
            }
            None => CHECK.finding(
                say!("no-high-pass-what", speakers = tags, band = band.word()),
                say!("no-high-pass-remedy", least = figure(floor, HZ)),
            ),
        };
        let ids: Vec<PartId> = drivers.iter().map(|(id, _)| *id).collect();
        let corner = corner_for(band, floor);
        out.add(
            finding
                .parts(ids.iter().copied())
                .mend(in_line(ctx, &ids, corner))
                .mend_by_choice(by_amplifier(ctx, &ids, corner), say!("mend-choice-filter")),
        );
    }
}
