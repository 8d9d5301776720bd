//! `no-high-pass`: a small driver that gets the bass.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::registry::{Check, CheckGroup};
use crate::wording::HZ;
use model::kinds::sound::Band;
use model::{PartId, PartKind};
use ordered::OrderedMap;
use words::{figure, say, told};

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
        out.add(finding.parts(drivers.into_iter().map(|(id, _)| id)));
    }
}
