//! `turn-on-overloaded`: more hangs on a turn-on output than it can carry.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::adding::{Adding, moved, wire};
use crate::mends::{rating_needed, set_run};
use crate::registry::{Check, CheckGroup};
use crate::wires::size_of;
use crate::wording::{A, OHM, assumed};
use circuit::TurnOnOutput;
use model::conductor::Colour;
use model::kinds::supply::{Fuse, FuseForm, Relay};
use model::quantity::{Metres, Ohms};
use model::{Edit, Fact, PartKind, TerminalRef};
use reference::fuses::rating_not_below;
use words::{figure, say, told};

pub(crate) static CHECK: Check = Check {
    name: "turn-on-overloaded",
    grade: Grade::Fix,
    group: CheckGroup::SignalAndControl,
    example: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 40A
head H1 speaker-outputs=0 turn-on-capacity=0.1A #~ turn-on-overloaded
relay K1 coil=85ohm
ground E1
ground E2
run W1 B1.+ F1.in 6mm2 0.3m RD
run W2 F1.out H1.30 6mm2 1m YE
run W3 F1.out H1.15 6mm2 1m RD
run W4 H1.31 E1.stud 6mm2 0.3m BK
run W5 H1.rem K1.86 0.75mm2 2m BU
run W6 K1.85 E1.stud 0.75mm2 0.3m BK
run W7 B1.- E2.stud 16mm2 0.3m BK",
    instead: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 40A
head H1 speaker-outputs=0 turn-on-capacity=0.3A
relay K1 coil=85ohm
ground E1
ground E2
run W1 B1.+ F1.in 6mm2 0.3m RD
run W2 F1.out H1.30 6mm2 1m YE
run W3 F1.out H1.15 6mm2 1m RD
run W4 H1.31 E1.stud 6mm2 0.3m BK
run W5 H1.rem K1.86 0.75mm2 2m BU
run W6 K1.85 E1.stud 0.75mm2 0.3m BK
run W7 B1.- E2.stud 16mm2 0.3m BK",
    limits: &["turn-on-current"],
    since: "0.1.0",
    run,
};

/// Coil of the least thirsty relays for 12 V that switch some amperes, about, in ohms (from memory).
const MOST_COIL: f64 = 360.0;

/// A relay beside a head unit: its output pulls the relay in, and the relay feeds what hung on it, from the unit's own feed.
/// It gets a small fuse, since the leads behind it are thin.
fn by_relay(ctx: &Ctx<'_>, overloaded: &TurnOnOutput, capacity: f64) -> Option<Edit> {
    let (head, output) = (overloaded.part, overloaded.terminal.as_str());
    let mut relay = Relay::default();
    let usual = relay.coil.value()?.0;
    // Alternators regulate to 14.4 V and a little more.
    let coil = (15.0 / capacity.max(0.001) / 10.0).ceil() * 10.0;
    if coil > MOST_COIL {
        return None;
    }
    if coil > usual {
        relay.coil = Fact::Given(Ohms(coil));
    }
    let Some(PartKind::HeadUnit(_)) = ctx.kind(head) else {
        return None;
    };
    let leads = ctx.runs_on(head, output);
    let like = ctx.run(*leads.first()?)?;
    let mut adding = Adding::new(ctx);
    let (relay, tag) = adding.part(relay, head);
    let on = |name: &str| TerminalRef::new(relay, name);
    let own = TerminalRef::new(head, output);
    for lead in &leads {
        let run = ctx.run(*lead)?;
        let end = run
            .ends()
            .into_iter()
            .position(|end| end.terminal() == Some(&own))?;
        adding
            .changes
            .push(set_run(*lead, moved(ctx, run, end, on("87"))));
    }
    let (size, length) = (like.wire.size.value()?, Fact::Given(Metres(0.2)));
    let at_head = |name: &str| TerminalRef::new(head, name);
    adding.run(wire(own, on("86"), size, length, Colour::Blue));
    adding.run(wire(on("85"), at_head("31"), size, length, Colour::Black));
    let form = FuseForm::Regular;
    let rating = rating_not_below(form.into(), rating_needed(ctx, overloaded.asked))?;
    let fuse = Fuse {
        form,
        rating: Fact::Given(rating),
        ..Fuse::default()
    };
    let (fuse, _) = adding.part(fuse, head);
    let feed = size_of(ctx, *ctx.runs_on(head, "30").first()?);
    let to_fuse = TerminalRef::new(fuse, "in");
    adding.run(wire(at_head("30"), to_fuse, feed, length, Colour::Red));
    let behind = TerminalRef::new(fuse, "out");
    adding.run(wire(behind, on("30"), size, length, Colour::Red));
    let name = if coil > usual {
        say!(
            "mend-relay-coil",
            relay = tag,
            part = ctx.part_tag(head),
            coil = figure(coil, OHM)
        )
    } else {
        say!("mend-relay", relay = tag, part = ctx.part_tag(head))
    };
    Some(Edit::new(name, adding.changes))
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    for output in &ctx.study.signal.turn_on_outputs {
        if !ctx.touched_part(output.part) {
            continue;
        }
        let (capacity, key) = match output.capacity {
            Some(capacity) => (capacity.0, None),
            None => match ctx.limit("turn-on-current") {
                Some(usual) => (usual, Some("turn-on-current")),
                None => continue,
            },
        };
        if output.asked.0 <= capacity {
            continue;
        }
        let place = ctx.terminal(output.part, &output.terminal);
        let mut finding = CHECK
            .finding(
                say!(
                    "turn-on-overloaded-what",
                    asked = told(output.asked.0, capacity, A),
                    terminal = place,
                    parts = ctx.part_tags(&output.serves),
                    can = told(capacity, output.asked.0, A),
                ),
                say!("turn-on-overloaded-remedy"),
            )
            .parts([output.part])
            .measure(output.asked.0, capacity, "A", key)
            .assumes_part(ctx, output.part, &["turn-on-capacity"]);
        if key.is_some() {
            finding
                .assumed
                .insert(assumed(&ctx.part_tag(output.part), "turn-on-capacity"));
        }
        out.add(finding.mend_by_choice(by_relay(ctx, output, capacity), say!("mend-choice-buy")));
    }
}
