//! Kinds on the sound side: head unit, amplifier, processor, converter, speaker, crossover, plugs.

use crate::fact::Fact::{self, Assumed, Unknown};
use crate::kinds::supply::Thread;
use crate::quantity::*;
use crate::written::{Cavities, Loops, Sections};
use crate::{choice, properties};

choice! {
    /// Class of an amplifier's output stage; decides its efficiency.
    pub enum AmplifierClass {
        Ab = "ab", "AB";
        D = "d", "D";
    }
}

choice! {
    /// How an amplifier is told to turn on.
    pub enum TurnOn {
        Lead = "lead", "by a turn-on lead";
        Sensing = "sensing", "by sensing a signal";
        Either = "either", "by a lead or a signal";
    }
}

choice! {
    /// Level of signal that an input takes.
    pub enum InputLevel {
        Line = "line", "line level";
        Speaker = "speaker", "speaker level";
        Both = "both", "line or speaker level";
    }
}

choice! {
    /// How the ground of a line input is tied to the supply ground.
    pub enum InputGround {
        Joined = "joined", "joined to the supply ground";
        Isolated = "isolated", "isolated through a resistance";
        Balanced = "balanced", "balanced";
    }
}

choice! {
    /// How an amplifier takes its power as the supply falls.
    pub enum SupplyLaw {
        Regulated = "regulated", "regulated: same power at any voltage";
        Unregulated = "unregulated", "unregulated: power follows the square of the voltage";
    }
}

properties! {
    /// An amplifier. Terminals `+`, `-`, `rem` (turn-on), `in1`, … (line), `hi1+`, `hi1-`, … (speaker level),
    /// `out1+`, `out1-`, … (channels, numbered through all sections).
    pub struct Amplifier {
        /// Its channels: `4x 75W@4ohm 110W@2ohm min 2ohm bridged 220W@4ohm min 4ohm hp 80Hz; 1x 300W@2ohm min 2ohm lp 80Hz`.
        sections as "sections": Sections = Sections::four_channel();
        /// Class of its output stage.
        class as "class": AmplifierClass = AmplifierClass::D;
        /// Efficiency at full power; taken from the class when not known.
        efficiency as "efficiency": Fact<Share> = Unknown, 0.1 to 0.98;
        /// What it draws with no signal.
        idle_current as "idle-current": Fact<Amps> = Assumed(Amps(1.2)), 0.0 to 20.0;
        /// What it draws turned off.
        standby_current as "standby-current": Fact<Amps> = Assumed(Amps(0.002)), 0.0 to 2.0;
        /// Supply voltage below which it turns itself off.
        cut_off as "cut-off": Fact<Volts> = Assumed(Volts(10.0)), 5.0 to 13.0;
        /// Supply voltage at which its power is stated.
        rated_voltage as "rated-voltage": Fact<Volts> = Assumed(Volts(14.4)), 10.0 to 16.0;
        /// How it takes its power as the supply falls.
        supply as "supply": SupplyLaw = SupplyLaw::Regulated;
        /// Sum of the fuses on its own board.
        own_fuse as "own-fuse": Fact<Amps> = Unknown, 1.0 to 600.0;
        /// How it is told to turn on.
        turn_on as "turn-on": TurnOn = TurnOn::Lead;
        /// Level its inputs take.
        input_level as "input-level": InputLevel = InputLevel::Both;
        /// Number of inputs; channel n takes input n, starting again from the first.
        inputs as "inputs": u8 = 4, 1 to 8;
        /// How the ground of its line inputs is tied.
        input_ground as "input-ground": InputGround = InputGround::Isolated;
        /// What its turn-on input draws.
        turn_on_current as "turn-on-current": Fact<Amps> = Assumed(Amps(0.01)), 0.0 to 1.0;
        /// Whether its speaker outputs float: neither leg of a channel is ground.
        floating as "floating": bool = true;
        /// Largest cross-section that its supply terminals take.
        takes as "takes": Fact<SquareMm> = Unknown, 0.5 to 150.0;
        /// Thread of the studs or bolts that rings land on.
        stud as "stud": Fact<Thread> = Unknown;
    }
}

properties! {
    /// A head unit. Terminals `30`, `15`, `31`, `rem`, speaker outputs `fl+` … `rr-`, line outputs `front-l` … `sub`.
    pub struct HeadUnit {
        /// Number of its own speaker outputs: 0, 2 (front) or 4.
        speaker_outputs as "speaker-outputs": u8 = 4, 0 to 4;
        /// Power of each of its own outputs, into its rated load.
        power as "power": Fact<Watts> = Assumed(Watts(20.0)), 1.0 to 100.0;
        /// Load at which that power is stated.
        rated_load as "rated-load": Fact<Ohms> = Assumed(Ohms(4.0)), 1.0 to 16.0;
        /// Least load its outputs may drive.
        minimum_load as "minimum-load": Fact<Ohms> = Assumed(Ohms(4.0)), 1.0 to 16.0;
        /// Number of pairs of line outputs: front, rear, and a single `sub` as third.
        line_outputs as "line-outputs": u8 = 2, 0 to 3;
        /// Current that its turn-on output can carry.
        turn_on_capacity as "turn-on-capacity": Fact<Amps> = Assumed(Amps(0.3)), 0.0 to 5.0;
        /// What it draws on `15` and `30` together, turned on, without its outputs.
        on_current as "on-current": Fact<Amps> = Assumed(Amps(1.0)), 0.0 to 20.0;
        /// What it draws on `30` turned off.
        standby_current as "standby-current": Fact<Amps> = Assumed(Amps(0.003)), 0.0 to 2.0;
        /// Its own fuse.
        own_fuse as "own-fuse": Fact<Amps> = Assumed(Amps(10.0)), 1.0 to 40.0;
        /// Whether a filter in it keeps bass from its front and rear outputs, and from where; unknown means none.
        high_pass as "high-pass": Fact<Hertz> = Unknown, 20.0 to 1000.0;
    }
}

properties! {
    /// A signal processor. Terminals `+`, `-`, `rem` (in), `rem-out`, `in1` …, `hi1+`, `hi1-` …, `line1` ….
    pub struct Processor {
        /// Number of inputs.
        inputs as "inputs": u8 = 4, 1 to 8;
        /// Level its inputs take.
        input_level as "input-level": InputLevel = InputLevel::Both;
        /// Number of line outputs.
        outputs as "outputs": u8 = 6, 1 to 12;
        /// What it draws turned on.
        on_current as "on-current": Fact<Amps> = Assumed(Amps(0.6)), 0.0 to 10.0;
        /// What it draws turned off.
        standby_current as "standby-current": Fact<Amps> = Assumed(Amps(0.002)), 0.0 to 2.0;
        /// How it is told to turn on.
        turn_on as "turn-on": TurnOn = TurnOn::Either;
        /// Current that its turn-on output can carry.
        turn_on_capacity as "turn-on-capacity": Fact<Amps> = Assumed(Amps(0.5)), 0.0 to 5.0;
        /// How the ground of its inputs is tied.
        input_ground as "input-ground": InputGround = InputGround::Isolated;
    }
}

properties! {
    /// A line-level converter: takes speaker level, gives line level. Terminals `hi1+`, `hi1-` …, `line1` …, `+`, `-`, `rem-out`.
    pub struct LineConverter {
        /// Number of channels.
        channels as "channels": u8 = 2, 1 to 4;
        /// Whether it has electronics that need a supply; a passive one has none and gives no turn-on.
        powered as "powered": bool = false;
        /// What it draws turned on.
        on_current as "on-current": Fact<Amps> = Assumed(Amps(0.1)), 0.0 to 5.0;
        /// Current that its turn-on output can carry.
        turn_on_capacity as "turn-on-capacity": Fact<Amps> = Assumed(Amps(0.2)), 0.0 to 5.0;
    }
}

choice! {
    /// Range of sound that a driver is made for.
    pub enum Band {
        Sub = "sub", "subwoofer";
        Woofer = "woofer", "woofer";
        Mid = "mid", "midrange";
        Tweeter = "tweeter", "tweeter";
        Full = "full", "full range or coaxial";
    }
}

choice! {
    /// Where a speaker plays.
    pub enum Position {
        FrontLeft = "front-left", "front left";
        FrontRight = "front-right", "front right";
        RearLeft = "rear-left", "rear left";
        RearRight = "rear-right", "rear right";
        Centre = "centre", "centre";
        Bass = "bass", "bass";
    }
}

properties! {
    /// A speaker. Terminals `+` and `-`; with two voice coils `a+`, `a-`, `b+`, `b-`.
    pub struct Speaker {
        /// Rated impedance of one voice coil.
        impedance as "impedance": Fact<Ohms> = Assumed(Ohms(4.0)), 0.5 to 64.0;
        /// Number of voice coils.
        coils as "coils": u8 = 1, 1 to 2;
        /// DC resistance of one voice coil; taken as a typical share of the rated impedance when not known.
        dc_resistance as "dc-resistance": Fact<Ohms> = Unknown, 0.3 to 64.0;
        /// Inductance of one voice coil.
        inductance as "inductance": Fact<Henries> = Unknown, 0.0 to 0.1;
        /// Power it bears for long.
        power as "power": Fact<Watts> = Assumed(Watts(80.0)), 0.5 to 10000.0;
        /// Range of sound it is made for.
        band as "band": Band = Band::Full;
        /// Where it plays; decides whether left and right are crossed.
        position as "position": Fact<Position> = Unknown;
    }
}

properties! {
    /// A passive crossover. Terminals `in+`, `in-`, `low+`, `low-`, `high+`, `high-`.
    pub struct Crossover {
        /// Frequency at which it divides.
        frequency as "frequency": Fact<Hertz> = Assumed(Hertz(3500.0)), 20.0 to 20000.0;
        /// Order of both filters: 1 is one coil and one capacitor, 2 two of each (Butterworth).
        order as "order": u8 = 2, 1 to 2;
        /// Load it is made for.
        load as "load": Fact<Ohms> = Assumed(Ohms(4.0)), 1.0 to 16.0;
    }
}

properties! {
    /// A capacitor in a speaker lead, which keeps bass from a small driver. Terminals `1` and `2`.
    pub struct InlineCapacitor {
        /// Capacitance.
        capacitance as "capacitance": Fact<Farads> = Assumed(Farads(0.000047)), 0.0000001 to 0.01;
    }
}

properties! {
    /// A plug of the factory harness, its two halves mated or apart. Each cavity n has the terminals `na` (on the
    /// harness side) and `nb` (on the equipment side). Loops join harness-side cavities while it is mated, as where
    /// one speaker is fed through another's connector.
    pub struct Plug {
        /// Its cavities: `1 YE permanent; 2 RD switched; 3 BK ground`.
        cavities as "cavities": Cavities = Cavities::numbered(4);
        /// Cavities joined inside the mating half: `1-3 2-4`.
        loops as "loops": Loops = Loops::default();
        /// Whether the halves are mated.
        mated as "mated": bool = true;
    }
}

properties! {
    /// A harness adapter: cavity n passes straight from `na` to `nb`.
    pub struct Adapter {
        /// Its cavities: `1 YE permanent; 2 RD switched; 3 BK ground`.
        cavities as "cavities": Cavities = Cavities::numbered(8);
    }
}
