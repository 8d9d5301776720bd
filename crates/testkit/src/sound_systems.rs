//! Small systems that are in order, in varied styles: no check of grade Stop or Fix may fire on any of them. They are
//! put together from the same few moves an installer makes, so that each differs from the next by a decision, not by
//! a number. All of them are invented; the practice in them is common practice of the trade.

use std::fmt::Write;

/// A system in the making, in the text form of a job.
struct Sketch {
    text: String,
    runs: u32,
    grounds: u32,
    speakers: u32,
}

/// A front-to-back system starts with a vehicle; where its battery stands decides the first metre of every feed.
#[derive(Clone, Copy)]
enum BatteryAt {
    Front,
    LoadArea,
}

impl Sketch {
    /// The vehicle as its maker left it: battery, straps, charge lead, radio plug.
    fn vehicle(title: &str, battery: &str, alternator: &str, at: BatteryAt) -> Self {
        let around = match at {
            BatteryAt::Front => "engine-bay",
            BatteryAt::LoadArea => "load-area",
        };
        let mut it = Self {
            text: format!("job \"{title}\"\nsheet plan\n"),
            runs: 0,
            grounds: 0,
            speakers: 0,
        };
        it.line("vehicle V1 by=maker");
        it.line(&format!("battery B1 {battery} by=maker"));
        it.line(&format!("alternator G1 14.2V {alternator} by=maker"));
        let lead = match at {
            BatteryAt::Front => ("35mm2", "0.5m"),
            BatteryAt::LoadArea => ("70mm2", "4.5m"),
        };
        it.run(
            "B1.+",
            "V1.+",
            &format!(
                "{} {} RD surroundings={around} ends=factory/factory by=maker",
                lead.0, lead.1
            ),
        );
        it.run(
            "V1.-",
            "B1.-",
            &format!("50mm2 0.4m BK surroundings={around} ends=factory/factory by=maker"),
        );
        it.run(
            "G1.B+",
            "V1.B+",
            "35mm2 1.2m RD surroundings=engine-bay ends=factory/factory by=maker",
        );
        it.run(
            "V1.engine",
            "G1.case",
            "35mm2 0.3m BK surroundings=engine-bay ends=factory/factory by=maker",
        );
        it.line("plug P1 cavities=\"1 YE permanent; 2 RD switched; 3 BN ground\" by=maker");
        it.run("V1.30", "P1.1a", "2.5mm2 1.8m YE ends=factory/factory by=maker");
        it.run("V1.15", "P1.2a", "1.5mm2 1.8m RD ends=factory/factory by=maker");
        it.run("V1.31", "P1.3a", "2.5mm2 1.2m BN ends=factory/factory by=maker");
        it
    }

    fn line(&mut self, line: &str) {
        self.text.push_str(line);
        self.text.push('\n');
    }

    fn run(&mut self, from: &str, to: &str, rest: &str) {
        self.runs += 1;
        let _ = writeln!(self.text, "run W{} {from} {to} {rest}", self.runs);
    }

    /// A head unit behind the radio plug.
    fn head(&mut self, properties: &str) {
        self.line(&format!("head H1 {properties}"));
        self.run("P1.1b", "H1.30", "2.5mm2 0.25m YE copper ends=factory/factory");
        self.run("P1.2b", "H1.15", "1.5mm2 0.25m RD copper ends=factory/factory");
        self.run("P1.3b", "H1.31", "2.5mm2 0.25m BK copper ends=factory/factory");
    }

    /// Main fuse near the battery and the feed to `target`.
    fn main_feed(&mut self, at: BatteryAt, fuse: &str, size: &str, length: &str, target: &str) {
        let around = match at {
            BatteryAt::Front => "engine-bay",
            BatteryAt::LoadArea => "load-area",
        };
        self.line(&format!("fuse F1 {fuse}"));
        self.run(
            "B1.+",
            "F1.in",
            &format!("{size} 0.3m RD copper surroundings={around} ends=ring/ring"),
        );
        self.run(
            "F1.out",
            target,
            &format!("{size} {length} RD copper surroundings={around} ends=ring/ferrule"),
        );
    }

    /// A ground point of its own within 0.4 m.
    fn ground(&mut self, minus: &str, size: &str) {
        self.grounds += 1;
        let stud = format!("E{}", self.grounds);
        self.line(&format!("ground {stud} bare"));
        self.run(
            minus,
            &format!("{stud}.stud"),
            &format!("{size} 0.4m BK copper surroundings=load-area ends=ferrule/ring"),
        );
    }

    /// A speaker on a pair of terminals.
    fn speaker(&mut self, plus: &str, minus: &str, properties: &str, wire: &str) -> String {
        self.speakers += 1;
        let tag = format!("LS{}", self.speakers);
        self.line(&format!("speaker {tag} {properties}"));
        self.run(
            plus,
            &format!("{tag}.+"),
            &format!("{wire} GY copper ends=ferrule/spade"),
        );
        self.run(
            minus,
            &format!("{tag}.-"),
            &format!("{wire} GYBK copper ends=ferrule/spade"),
        );
        tag
    }

    /// A dual-coil speaker; `series` joins its coils one after the other.
    fn dual(&mut self, plus: &str, minus: &str, properties: &str, series: bool) -> String {
        self.speakers += 1;
        let tag = format!("LS{}", self.speakers);
        self.line(&format!("speaker {tag} {properties} coils=2"));
        self.run(
            plus,
            &format!("{tag}.a+"),
            "4mm2 1.2m GY copper ends=ferrule/spade",
        );
        if series {
            self.run(
                &format!("{tag}.a-"),
                &format!("{tag}.b+"),
                "4mm2 0.15m GY copper ends=spade/spade",
            );
            self.run(
                &format!("{tag}.b-"),
                minus,
                "4mm2 1.2m GYBK copper ends=spade/ferrule",
            );
        } else {
            self.run(
                &format!("{tag}.a-"),
                minus,
                "4mm2 1.2m GYBK copper ends=spade/ferrule",
            );
            self.run(
                &format!("{tag}.a+"),
                &format!("{tag}.b+"),
                "4mm2 0.15m GY copper ends=spade/spade",
            );
            self.run(
                &format!("{tag}.a-"),
                &format!("{tag}.b-"),
                "4mm2 0.15m GYBK copper ends=spade/spade",
            );
        }
        tag
    }

    fn turn_on(&mut self, from: &str, to: &str) {
        self.run(from, to, "0.75mm2 4.5m BUWH copper ends=butt/ferrule");
    }

    fn signal(&mut self, from: &str, to: &str) {
        self.run(from, to, "0.35mm2 5m WH ends=plug/plug");
    }

    /// The four full-range speakers of the doors on channels of `amplifier`.
    fn doors(&mut self, amplifier: &str, channels: &[(u8, &str)]) {
        for (channel, position) in channels {
            let leg = |sign: &str| format!("{amplifier}.out{channel}{sign}");
            self.speaker(
                &leg("+"),
                &leg("-"),
                &format!("4ohm power=100W full {position}"),
                "2.5mm2 4m",
            );
        }
    }
}

const FRONT_PAIR: &[(u8, &str)] = &[(1, "front-left"), (2, "front-right")];
const FOUR_DOORS: &[(u8, &str)] = &[
    (1, "front-left"),
    (2, "front-right"),
    (3, "rear-left"),
    (4, "rear-right"),
];

const PETROL: &str = "agm 70Ah cranking=680A charge=90%";
const DIESEL: &str = "flooded 90Ah cranking=760A charge=90%";
const LITHIUM: &str = "lithium 60Ah cranking=800A charge=90%";

/// One amplifier of four channels, fed straight from the main fuse.
fn four_channel(title: &str, battery: &str, at: BatteryAt, class: &str, size: &str, fuse: &str) -> Sketch {
    let mut it = Sketch::vehicle(title, battery, "current=120A idle-current=60A", at);
    it.head("speaker-outputs=0 line-outputs=2");
    let length = match at {
        BatteryAt::Front => "5m",
        BatteryAt::LoadArea => "1.5m",
    };
    it.main_feed(at, fuse, size, length, "A1.+");
    it.line(&format!(
        "amplifier A1 sections=\"4x 60W@4ohm 90W@2ohm min 2ohm hp 80Hz\" {class} input-level=line inputs=4 own-fuse=40A"
    ));
    it.ground("A1.-", size);
    it.turn_on("H1.rem", "A1.rem");
    for (from, to) in [("front-l", 1), ("front-r", 2), ("rear-l", 3), ("rear-r", 4)] {
        it.signal(&format!("H1.{from}"), &format!("A1.in{to}"));
    }
    it.doors("A1", FOUR_DOORS);
    it
}

/// One bass amplifier of one channel and a subwoofer.
fn bass_only(title: &str, battery: &str, at: BatteryAt, section: &str, size: &str, fuse: &str) -> Sketch {
    let mut it = Sketch::vehicle(title, battery, "current=140A idle-current=70A", at);
    it.head("speaker-outputs=4 line-outputs=3 power=20W high-pass=80Hz");
    let length = match at {
        BatteryAt::Front => "5m",
        BatteryAt::LoadArea => "1.2m",
    };
    it.main_feed(at, fuse, size, length, "A1.+");
    it.line(&format!(
        "amplifier A1 sections=\"{section} lp 80Hz\" d input-level=line inputs=1 own-fuse=60A"
    ));
    it.ground("A1.-", size);
    it.turn_on("H1.rem", "A1.rem");
    it.signal("H1.sub", "A1.in1");
    for (out, position) in [
        ("fl", "front-left"),
        ("fr", "front-right"),
        ("rl", "rear-left"),
        ("rr", "rear-right"),
    ] {
        it.speaker(
            &format!("H1.{out}+"),
            &format!("H1.{out}-"),
            &format!("4ohm power=40W full {position}"),
            "1.5mm2 3m",
        );
    }
    it
}

/// A two-channel amplifier that takes its signal, at speaker level, from the head unit.
fn speaker_level(title: &str, turn_on: &str) -> Sketch {
    let mut it = Sketch::vehicle(title, PETROL, "current=120A idle-current=60A", BatteryAt::Front);
    it.head("speaker-outputs=4 line-outputs=0 power=20W");
    it.main_feed(BatteryAt::Front, "maxi 40A", "10mm2", "4m", "A1.+");
    it.line(&format!(
        "amplifier A1 sections=\"2x 60W@4ohm 90W@2ohm min 2ohm hp 80Hz\" d input-level=speaker inputs=2 own-fuse=25A turn-on={turn_on}"
    ));
    it.ground("A1.-", "10mm2");
    for (out, input) in [("fl", 1), ("fr", 2)] {
        for sign in ["+", "-"] {
            it.run(
                &format!("H1.{out}{sign}"),
                &format!("A1.hi{input}{sign}"),
                "1mm2 4.5m GY copper ends=butt/ferrule",
            );
        }
    }
    if turn_on != "sensing" {
        it.turn_on("H1.rem", "A1.rem");
    }
    it.doors("A1", FRONT_PAIR);
    it
}

/// Two amplifiers behind a fused block.
fn two_amplifiers(
    title: &str,
    battery: &str,
    at: BatteryAt,
    sub: &str,
    section: &str,
    series: bool,
) -> Sketch {
    let mut it = Sketch::vehicle(title, battery, "current=150A idle-current=80A", at);
    it.head("speaker-outputs=0 line-outputs=3");
    let length = match at {
        BatteryAt::Front => "5m",
        BatteryAt::LoadArea => "1.2m",
    };
    it.main_feed(at, "strip61 100A", "35mm2", length, "D1.in");
    it.line("block D1 outputs=2 fuses=40A,60A");
    for (output, amplifier) in [(1, "A1"), (2, "A2")] {
        it.run(
            &format!("D1.out{output}"),
            &format!("{amplifier}.+"),
            "16mm2 0.6m RD copper surroundings=load-area ends=ferrule/ferrule",
        );
    }
    it.line("amplifier A1 sections=\"4x 60W@4ohm 90W@2ohm min 2ohm hp 80Hz\" d input-level=line inputs=4 own-fuse=40A");
    it.line(&format!(
        "amplifier A2 sections=\"{section} lp 80Hz\" d input-level=line inputs=1 own-fuse=60A"
    ));
    it.ground("A1.-", "16mm2");
    it.ground("A2.-", "16mm2");
    it.line("splice J1 places=3 crimped");
    it.turn_on("H1.rem", "J1.1");
    for (place, amplifier) in [(2, "A1"), (3, "A2")] {
        it.run(
            &format!("J1.{place}"),
            &format!("{amplifier}.rem"),
            "0.75mm2 0.4m BUWH copper ends=butt/ferrule",
        );
    }
    for (from, to) in [("front-l", 1), ("front-r", 2), ("rear-l", 3), ("rear-r", 4)] {
        it.signal(&format!("H1.{from}"), &format!("A1.in{to}"));
    }
    it.signal("H1.sub", "A2.in1");
    it.doors("A1", FOUR_DOORS);
    it.dual(
        "A2.out1+",
        "A2.out1-",
        &format!("{sub} power=500W sub bass"),
        series,
    );
    it
}

/// One amplifier of five channels does it all.
fn five_channel(title: &str, at: BatteryAt) -> Sketch {
    let mut it = Sketch::vehicle(title, PETROL, "current=150A idle-current=80A", at);
    it.head("speaker-outputs=0 line-outputs=3");
    let length = match at {
        BatteryAt::Front => "5m",
        BatteryAt::LoadArea => "1.2m",
    };
    it.main_feed(at, "strip61 80A", "25mm2", length, "A1.+");
    it.line(
        "amplifier A1 sections=\"4x 60W@4ohm 90W@2ohm min 2ohm hp 80Hz; 1x 250W@4ohm 400W@2ohm min 2ohm lp 80Hz\" d input-level=line inputs=5 own-fuse=80A",
    );
    it.ground("A1.-", "25mm2");
    it.turn_on("H1.rem", "A1.rem");
    for (from, to) in [
        ("front-l", 1),
        ("front-r", 2),
        ("rear-l", 3),
        ("rear-r", 4),
        ("sub", 5),
    ] {
        it.signal(&format!("H1.{from}"), &format!("A1.in{to}"));
    }
    it.doors("A1", FOUR_DOORS);
    it.dual("A1.out5+", "A1.out5-", "2ohm power=400W sub bass", true);
    it
}

/// Two channels bridged onto one subwoofer.
fn bridged(title: &str, at: BatteryAt, coils: &str, series: bool) -> Sketch {
    let mut it = bass_only(title, PETROL, at, "1x 200W@4ohm min 4ohm", "25mm2", "strip61 80A");
    it.text = it.text.replace(
        "amplifier A1 sections=\"1x 200W@4ohm min 4ohm lp 80Hz\" d input-level=line inputs=1",
        "amplifier A1 sections=\"2x 120W@4ohm 200W@2ohm min 2ohm bridged 400W@4ohm min 4ohm lp 80Hz\" d input-level=line inputs=1",
    );
    it.dual(
        "A1.out1+",
        "A1.out2-",
        &format!("{coils} power=500W sub bass"),
        series,
    );
    it
}

/// A radio with its own four outputs and nothing else.
fn radio_only(title: &str, battery: &str) -> Sketch {
    let mut it = Sketch::vehicle(title, battery, "current=90A idle-current=45A", BatteryAt::Front);
    it.head("speaker-outputs=4 line-outputs=0 power=20W");
    for (out, position) in [
        ("fl", "front-left"),
        ("fr", "front-right"),
        ("rl", "rear-left"),
        ("rr", "rear-right"),
    ] {
        it.speaker(
            &format!("H1.{out}+"),
            &format!("H1.{out}-"),
            &format!("4ohm power=40W full {position}"),
            "1.5mm2 3m",
        );
    }
    it
}

/// A processor between head unit and amplifier.
fn processed(title: &str) -> Sketch {
    let mut it = Sketch::vehicle(title, PETROL, "current=140A idle-current=70A", BatteryAt::Front);
    it.head("speaker-outputs=0 line-outputs=2");
    it.main_feed(BatteryAt::Front, "strip61 80A", "25mm2", "5m", "D1.in");
    it.line("block D1 outputs=2 fuses=40A,5A");
    it.run(
        "D1.out1",
        "A1.+",
        "16mm2 0.6m RD copper surroundings=load-area ends=ferrule/ferrule",
    );
    it.run(
        "D1.out2",
        "N1.+",
        "1.5mm2 0.6m RD copper surroundings=load-area ends=ferrule/ferrule",
    );
    it.line("amplifier A1 sections=\"4x 60W@4ohm 90W@2ohm min 2ohm hp 80Hz\" d input-level=line inputs=4 own-fuse=40A");
    it.line("processor N1 inputs=4 outputs=4 input-level=line turn-on=lead");
    it.ground("A1.-", "16mm2");
    it.ground("N1.-", "1.5mm2");
    it.turn_on("H1.rem", "N1.rem");
    it.run(
        "N1.rem-out",
        "A1.rem",
        "0.75mm2 0.4m BUWH copper ends=ferrule/ferrule",
    );
    for (from, to) in [("front-l", 1), ("front-r", 2), ("rear-l", 3), ("rear-r", 4)] {
        it.signal(&format!("H1.{from}"), &format!("N1.in{to}"));
        it.run(
            &format!("N1.line{to}"),
            &format!("A1.in{to}"),
            "0.35mm2 0.5m WH ends=plug/plug",
        );
    }
    it.doors("A1", FOUR_DOORS);
    it
}

/// Lights and a pump behind a fused block, no sound.
fn work_lights(title: &str, relay: bool) -> Sketch {
    let mut it = Sketch::vehicle(title, DIESEL, "current=120A idle-current=60A", BatteryAt::Front);
    it.main_feed(BatteryAt::Front, "strip30 40A", "10mm2", "2m", "D1.in");
    it.line("block D1 outputs=3 fuses=20A,10A,3A form=regular");
    it.line("load L1 \"Work lights\" power power=120W when=in-use");
    it.line("load L2 \"Beacon\" power power=24W when=in-use");
    if relay {
        it.line("relay K1 rating=30A");
        it.run("D1.out1", "K1.30", "4mm2 1m RD copper ends=ferrule/spade");
        it.run("K1.87", "L1.+", "4mm2 3m RD copper ends=spade/butt");
        it.line("switch S1 closed=yes rating=5A");
        it.run("D1.out3", "S1.in", "1mm2 1m YE copper ends=ferrule/spade");
        it.run("S1.out", "K1.86", "1mm2 1m YE copper ends=spade/spade");
        it.ground("K1.85", "1mm2");
    } else {
        it.line("switch S1 closed=yes rating=20A");
        it.run("D1.out1", "S1.in", "4mm2 1m RD copper ends=ferrule/spade");
        it.run("S1.out", "L1.+", "4mm2 3m RD copper ends=spade/butt");
    }
    it.ground("L1.-", "4mm2");
    it.run("D1.out2", "L2.+", "2.5mm2 4m RD copper ends=ferrule/butt");
    it.ground("L2.-", "2.5mm2");
    it
}

/// A second battery behind an isolator, fused at both ends of the link.
fn second_battery(title: &str, isolator: &str, battery: &str) -> Sketch {
    let mut it = Sketch::vehicle(title, DIESEL, "current=150A idle-current=80A", BatteryAt::Front);
    it.main_feed(BatteryAt::Front, "strip61 80A", "25mm2", "1m", "T1.main");
    it.line(&format!("isolator T1 {isolator} rating=140A"));
    it.line("fuse F2 strip61 80A");
    it.line(&format!("battery B2 {battery}"));
    it.run("T1.aux", "F2.in", "25mm2 4m RD copper ends=ring/ring");
    it.run("F2.out", "B2.+", "25mm2 0.25m RD copper ends=ring/ring");
    it.ground("B2.-", "35mm2");
    it.ground("T1.-", "1.5mm2");
    it.line("fuse F3 maxi 30A");
    it.line("load L1 \"House lights\" power power=60W when=in-use");
    it.run("B2.+", "F3.in", "6mm2 0.2m RD copper ends=ring/spade");
    it.run("F3.out", "L1.+", "6mm2 2m RD copper ends=spade/butt");
    it.ground("L1.-", "6mm2");
    it
}

/// The systems: a name for messages, and the job in the text form.
#[must_use]
pub fn sound_systems() -> Vec<(String, String)> {
    use BatteryAt::{Front, LoadArea};
    let mut all = vec![
        four_channel(
            "four channels, class D",
            PETROL,
            Front,
            "d",
            "16mm2",
            "strip61 60A",
        ),
        four_channel(
            "four channels, class AB",
            PETROL,
            Front,
            "ab",
            "25mm2",
            "strip61 60A",
        ),
        four_channel(
            "four channels, diesel",
            DIESEL,
            Front,
            "d",
            "25mm2",
            "strip61 60A",
        ),
        four_channel(
            "four channels, battery in the load area",
            PETROL,
            LoadArea,
            "d",
            "16mm2",
            "strip61 60A",
        ),
        four_channel(
            "four channels, lithium battery in the load area",
            LITHIUM,
            LoadArea,
            "d",
            "16mm2",
            "strip61 60A",
        ),
        four_channel("four channels, AWG", PETROL, Front, "d", "4AWG", "strip61 60A"),
        speaker_level("speaker-level inputs, turn-on lead", "lead"),
        speaker_level("speaker-level inputs, turned on by the signal", "sensing"),
        speaker_level("speaker-level inputs, either turn-on", "either"),
        two_amplifiers(
            "two amplifiers, coils in series",
            PETROL,
            Front,
            "2ohm",
            "1x 300W@4ohm 480W@2ohm min 2ohm",
            true,
        ),
        two_amplifiers(
            "two amplifiers, coils in parallel",
            PETROL,
            Front,
            "4ohm",
            "1x 200W@4ohm 320W@2ohm min 2ohm",
            false,
        ),
        two_amplifiers(
            "two amplifiers, diesel",
            DIESEL,
            Front,
            "2ohm",
            "1x 300W@4ohm 480W@2ohm min 2ohm",
            true,
        ),
        two_amplifiers(
            "two amplifiers, rear battery",
            PETROL,
            LoadArea,
            "2ohm",
            "1x 300W@4ohm min 4ohm",
            true,
        ),
        two_amplifiers(
            "two amplifiers, 1 ohm stable",
            PETROL,
            Front,
            "4ohm",
            "1x 150W@4ohm 250W@2ohm 300W@1ohm min 1ohm",
            false,
        ),
        five_channel("five channels, front battery", Front),
        five_channel("five channels, rear battery", LoadArea),
        bridged("bridged, 2 ohm coils in series", Front, "2ohm", true),
        bridged(
            "bridged, 2 ohm coils in series, rear battery",
            LoadArea,
            "2ohm",
            true,
        ),
        bridged("bridged, 8 ohm coils in parallel", Front, "8ohm", false),
        radio_only("radio only, petrol", PETROL),
        radio_only("radio only, diesel", DIESEL),
        processed("processor and four channels"),
        work_lights("work lights by a switch", false),
        work_lights("work lights by a relay", true),
        second_battery(
            "second battery, sensing relay",
            "sensing closes-at=13.3V",
            "agm 95Ah cranking=700A charge=80%",
        ),
        second_battery(
            "second battery, ignition relay",
            "ignition",
            "flooded 100Ah cranking=720A charge=80%",
        ),
        second_battery(
            "second battery, manual switch",
            "manual closed=no",
            "agm 95Ah cranking=700A charge=80%",
        ),
        second_battery(
            "second battery, lithium",
            "sensing closes-at=13.4V",
            "lithium 100Ah cranking=500A charge=80%",
        ),
    ];
    for (title, section, coils, series, fuse) in [
        (
            "one subwoofer, 4 ohm by series",
            "1x 250W@4ohm 400W@2ohm min 2ohm",
            "2ohm",
            true,
            "strip61 60A",
        ),
        (
            "one subwoofer, 2 ohm by parallel",
            "1x 180W@4ohm 300W@2ohm min 2ohm",
            "4ohm",
            false,
            "strip61 60A",
        ),
        (
            "one subwoofer, 1 ohm by parallel",
            "1x 120W@4ohm 200W@2ohm 300W@1ohm min 1ohm",
            "2ohm",
            false,
            "strip61 60A",
        ),
        (
            "one subwoofer, 8 ohm by series",
            "1x 250W@4ohm min 4ohm",
            "4ohm",
            true,
            "strip61 60A",
        ),
    ] {
        let mut it = bass_only(title, PETROL, Front, section, "25mm2", fuse);
        it.dual(
            "A1.out1+",
            "A1.out1-",
            &format!("{coils} power=450W sub bass"),
            series,
        );
        all.push(it);
    }
    // A breaker in place of the fuse, and a single-coil subwoofer.
    let mut it = bass_only(
        "one subwoofer, breaker",
        DIESEL,
        Front,
        "1x 250W@4ohm min 4ohm",
        "25mm2",
        "strip61 60A",
    );
    it.text = it
        .text
        .replace("fuse F1 strip61 60A", "breaker F1 60A manual breaking=3000A");
    it.speaker("A1.out1+", "A1.out1-", "4ohm power=400W sub bass", "4mm2 1.5m");
    all.push(it);
    all.into_iter()
        .map(|sketch| {
            let title = sketch.text.split('"').nth(1).unwrap_or_default().to_owned();
            (title, sketch.text)
        })
        .collect()
}
