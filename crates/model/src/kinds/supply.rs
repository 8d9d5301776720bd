//! Kinds on the supply side: sources, the vehicle's own wiring, protection, distribution, switching, grounds, loads.

use crate::fact::Fact::{self, Assumed, Given, Unknown};
use crate::quantity::*;
use crate::{choice, properties};

choice! {
    /// A metric thread, as of studs that rings land on.
    pub enum Thread {
        M4 = "M4", "M4";
        M5 = "M5", "M5";
        M6 = "M6", "M6";
        M8 = "M8", "M8";
        M10 = "M10", "M10";
        M12 = "M12", "M12";
    }
}

choice! {
    /// What a battery is made of.
    pub enum Chemistry {
        Flooded = "flooded", "flooded lead-acid";
        Agm = "agm", "AGM lead-acid";
        Lithium = "lithium", "lithium iron phosphate";
    }
}

choice! {
    /// Which test a cold-cranking current was measured by.
    pub enum CrankingStandard {
        En = "en", "EN 50342-1 (7.5 V after 10 s)";
        Sae = "sae", "SAE J537 (7.2 V after 30 s)";
    }
}

properties! {
    /// A battery. Terminals `+` and `-`.
    pub struct Battery {
        /// What it is made of: decides the resting voltage and how it discharges.
        chemistry as "chemistry": Chemistry = Chemistry::Agm;
        /// Charge it holds at the 20-hour rate.
        capacity as "capacity": Fact<AmpHours> = Assumed(AmpHours(70.0)), 0.5 to 2000.0;
        /// Cold-cranking current: the internal resistance follows from it.
        cranking as "cranking": Fact<Amps> = Assumed(Amps(640.0)), 10.0 to 5000.0;
        /// The test behind the cold-cranking current.
        standard as "standard": CrankingStandard = CrankingStandard::En;
        /// Internal resistance, when it was measured or stated; it then wins over the cranking current.
        resistance as "resistance": Fact<Ohms> = Unknown, 0.0001 to 1.0;
        /// How full it is: decides the resting voltage.
        charge as "charge": Fact<Share> = Assumed(Share(0.9)), 0.0 to 1.0;
        /// Thread of the studs or bolts that rings land on.
        stud as "stud": Fact<Thread> = Assumed(Thread::M8);
    }
}

properties! {
    /// An alternator, its rectifier and regulator. Terminals `B+` and `case`.
    pub struct Alternator {
        /// Voltage that the regulator holds while the current limit is not reached.
        voltage as "voltage": Fact<Volts> = Assumed(Volts(14.2)), 10.0 to 16.5;
        /// Most current at cruising speed, cold.
        current as "current": Fact<Amps> = Assumed(Amps(120.0)), 5.0 to 600.0;
        /// Most current with the engine idling, cold.
        idle_current as "idle-current": Fact<Amps> = Assumed(Amps(60.0)), 0.0 to 600.0;
        /// What is left of either when it is hot.
        hot_share as "hot-share": Fact<Share> = Assumed(Share(0.8)), 0.2 to 1.0;
        /// Thread of the studs or bolts that rings land on.
        stud as "stud": Fact<Thread> = Assumed(Thread::M8);
    }
}

properties! {
    /// The vehicle's own wiring, as its maker fitted it: battery lead to the starter and the fuse panel, straps from
    /// battery and engine to the body, charge lead, factory feeds and the base load of the vehicle itself.
    /// Terminals: `+` and `-` (to the battery), `B+` (charge lead) and `engine` (engine block), `30` (permanent feed),
    /// `15` (feed switched by the ignition), `31` (maker's ground).
    pub struct Vehicle {
        /// What the vehicle itself draws with the engine running.
        running_load as "running-load": Fact<Amps> = Assumed(Amps(25.0)), 0.0 to 300.0;
        /// What the vehicle itself draws parked, for ever.
        standing_load as "standing-load": Fact<Amps> = Assumed(Amps(0.03)), 0.0 to 10.0;
        /// Factory fuse in the permanent feed `30`.
        permanent_fuse as "permanent-fuse": Fact<Amps> = Assumed(Amps(20.0)), 1.0 to 100.0;
        /// Factory fuse in the switched feed `15`.
        switched_fuse as "switched-fuse": Fact<Amps> = Assumed(Amps(15.0)), 1.0 to 100.0;
        /// Factory main fuse between battery and panel.
        main_fuse as "main-fuse": Fact<Amps> = Assumed(Amps(100.0)), 10.0 to 500.0;
        /// Resistance of the maker's lead from battery positive to the panel.
        lead_resistance as "lead-resistance": Fact<Ohms> = Assumed(Ohms(0.002)), 0.0 to 1.0;
        /// Resistance of the charge lead from the alternator to battery positive.
        charge_lead as "charge-lead": Fact<Ohms> = Assumed(Ohms(0.002)), 0.0 to 1.0;
        /// Resistance of the strap from battery negative to the body.
        body_strap as "body-strap": Fact<Ohms> = Assumed(Ohms(0.0008)), 0.0 to 1.0;
        /// Resistance of the strap from the engine to the body.
        engine_strap as "engine-strap": Fact<Ohms> = Assumed(Ohms(0.0008)), 0.0 to 1.0;
        /// Current that the strap from battery negative to the body carries for long.
        strap_current as "strap-current": Fact<Amps> = Assumed(Amps(200.0)), 5.0 to 2000.0;
        /// Whether a current sensor sits on the battery's negative clamp; returns must then join on its body side.
        current_sensor as "current-sensor": bool = false;
    }
}

choice! {
    /// How a fuse is built; decides its operating times, ratings and breaking capacity.
    pub enum FuseForm {
        Mini = "mini", "mini blade (ISO 8820-3 type F)";
        Regular = "regular", "regular blade (ISO 8820-3 type C)";
        Maxi = "maxi", "large blade (ISO 8820-3 type E)";
        Strip30 = "strip30", "bolt-in strip, 30 mm (ISO 8820-5 SF30)";
        Strip51 = "strip51", "bolt-in strip, 51 mm (ISO 8820-5 SF51)";
        Strip61 = "strip61", "bolt-in strip, about 61 mm";
        Glass = "glass", "glass tube";
    }
}

choice! {
    /// State of a fuse or breaker.
    pub enum DeviceState {
        Intact = "intact", "in place";
        Open = "open", "blown or tripped";
        Missing = "missing", "taken out";
        Bridged = "bridged", "bridged by something that is no fuse";
    }
}

properties! {
    /// A fuse in its holder. Terminals `in` and `out`; either may face the source.
    pub struct Fuse {
        /// How it is built.
        form as "form": FuseForm = FuseForm::Strip61;
        /// Rated current.
        rating as "rating": Fact<Amps> = Assumed(Amps(60.0)), 0.1 to 1000.0;
        /// State it is in.
        state as "state": DeviceState = DeviceState::Intact;
        /// Most current it can break; taken from its form when not known.
        breaking as "breaking": Fact<Amps> = Unknown, 10.0 to 200000.0;
        /// Its own operating times, as multiple of the rating and seconds, separated by commas; empty where only those of its form are known.
        curve as "curve": Curve = Curve::default();
        /// Whether its rating stays when all runs and fuses are sized.
        rating_locked as "rating-locked": bool = false;
    }
}

choice! {
    /// How a breaker closes again.
    pub enum BreakerReset {
        Manual = "manual", "by hand";
        Automatic = "automatic", "by itself when it has cooled";
    }
}

properties! {
    /// A circuit breaker. Terminals `in` and `out`.
    pub struct Breaker {
        /// Rated current.
        rating as "rating": Fact<Amps> = Assumed(Amps(60.0)), 0.1 to 1000.0;
        /// How it closes again.
        reset as "reset": BreakerReset = BreakerReset::Manual;
        /// State it is in.
        state as "state": DeviceState = DeviceState::Intact;
        /// Most current it can break.
        breaking as "breaking": Fact<Amps> = Unknown, 10.0 to 200000.0;
        /// Its own operating times, as multiple of the rating and seconds, separated by commas; empty where only those of its form are known.
        curve as "curve": Curve = Curve::default();
        /// Thread of the studs or bolts that rings land on.
        stud as "stud": Fact<Thread> = Assumed(Thread::M6);
        /// Whether its rating stays when all runs and fuses are sized.
        rating_locked as "rating-locked": bool = false;
    }
}

properties! {
    /// A distribution block: inputs on one bar, outputs from it, each through a fuse when it is a fused block.
    /// Terminals `in`, `in2`, … and `out1`, `out2`, ….
    pub struct Block {
        /// Number of inputs.
        inputs as "inputs": u8 = 1, 1 to 4;
        /// Number of outputs.
        outputs as "outputs": u8 = 4, 1 to 12;
        /// Rating of the fuse in each output, in order, separated by commas; `-` is an output without one. Empty for a plain block.
        fuses as "fuses": Ratings = Ratings::default();
        /// How its fuses are built.
        form as "form": FuseForm = FuseForm::Strip30;
        /// Largest cross-section that an output takes.
        output_takes as "output-takes": Fact<SquareMm> = Unknown, 0.5 to 150.0;
        /// Largest cross-section that an input takes.
        input_takes as "input-takes": Fact<SquareMm> = Unknown, 0.5 to 150.0;
        /// Thread of the studs or bolts that rings land on.
        stud as "stud": Fact<Thread> = Unknown;
        /// Whether the ratings of its fuses stay when all runs and fuses are sized.
        rating_locked as "rating-locked": bool = false;
    }
}

properties! {
    /// A bus bar or stud: everything on it is one point. Terminals `1`, `2`, ….
    pub struct Bus {
        /// Number of places for wires.
        places as "places": u8 = 4, 2 to 24;
        /// Thread of the studs or bolts that rings land on.
        stud as "stud": Fact<Thread> = Assumed(Thread::M8);
    }
}

choice! {
    /// What a ground point is made on.
    pub enum GroundSurface {
        BareMetal = "bare", "bare body metal, paint removed";
        MakersPoint = "makers-point", "ground stud of the vehicle's maker";
        Painted = "painted", "painted metal";
        SeatRail = "seat-rail", "seat rail or seat fixing";
        BeltAnchor = "belt-anchor", "seat-belt anchor";
        Hinge = "hinge", "hinge, door or lid";
        Trim = "trim", "trim or bracket";
        Steering = "steering", "steering part";
        BrakeOrFuel = "brake-fuel", "brake or fuel fastener";
        Engine = "engine", "engine block";
    }
}

properties! {
    /// A ground point on the body. Terminal `stud`.
    pub struct Ground {
        /// What it is made on.
        surface as "surface": Fact<GroundSurface> = Given(GroundSurface::BareMetal);
        /// Resistance of the contact itself; taken from the surface when not known.
        contact as "contact": Fact<Ohms> = Unknown, 0.0 to 100.0;
        /// Resistance of the body metal from here to where the battery strap joins it.
        body as "body": Fact<Ohms> = Assumed(Ohms(0.001)), 0.0 to 1.0;
        /// Thread of the studs or bolts that rings land on.
        stud as "stud": Fact<Thread> = Assumed(Thread::M8);
    }
}

properties! {
    /// A relay. Terminals `30` (common), `87` (made when energised), `87a` (broken when energised), `85` and `86` (coil).
    pub struct Relay {
        /// Current its contacts carry for long.
        rating as "rating": Fact<Amps> = Assumed(Amps(30.0)), 1.0 to 500.0;
        /// Resistance of the coil.
        coil as "coil": Fact<Ohms> = Assumed(Ohms(85.0)), 5.0 to 2000.0;
        /// Voltage at which it pulls in.
        pull_in as "pull-in": Fact<Volts> = Assumed(Volts(7.2)), 1.0 to 24.0;
    }
}

properties! {
    /// A switch. Terminals `in` and `out`.
    pub struct Switch {
        /// Whether it is closed.
        closed as "closed": bool = true;
        /// Current it carries for long.
        rating as "rating": Fact<Amps> = Assumed(Amps(10.0)), 0.1 to 500.0;
    }
}

choice! {
    /// How a battery isolator decides.
    pub enum IsolatorKind {
        Sensing = "sensing", "voltage-sensing relay";
        Ignition = "ignition", "relay, closed with the engine running";
        Diode = "diode", "diodes";
        Manual = "manual", "switch turned by hand";
    }
}

properties! {
    /// A battery isolator or split-charge device. Terminals `main` (starter battery side) and `aux`.
    pub struct Isolator {
        /// How it decides.
        kind as "kind": IsolatorKind = IsolatorKind::Sensing;
        /// Voltage on the main side at which a sensing one closes.
        closes_at as "closes-at": Fact<Volts> = Assumed(Volts(13.3)), 10.0 to 16.0;
        /// Voltage lost in the diodes of a diode type.
        drop as "drop": Fact<Volts> = Assumed(Volts(0.7)), 0.1 to 1.5;
        /// Whether a manual one is closed.
        closed as "closed": bool = false;
        /// Current it carries for long.
        rating as "rating": Fact<Amps> = Assumed(Amps(100.0)), 1.0 to 1000.0;
        /// Thread of the studs or bolts that rings land on.
        stud as "stud": Fact<Thread> = Assumed(Thread::M8);
    }
}

properties! {
    /// A battery-to-battery charger or converter: draws from `in`, gives at `out`, common negative `-`.
    pub struct Converter {
        /// Voltage it gives while below its current limit.
        voltage as "voltage": Fact<Volts> = Assumed(Volts(14.4)), 3.0 to 30.0;
        /// Most current it gives.
        current as "current": Fact<Amps> = Assumed(Amps(30.0)), 0.1 to 300.0;
        /// Share of the power it takes that it gives.
        efficiency as "efficiency": Fact<Share> = Assumed(Share(0.9)), 0.3 to 1.0;
        /// Runs only with the engine running.
        with_engine as "with-engine": bool = true;
    }
}

properties! {
    /// A stiffening capacitor across the supply. Terminals `+` and `-`.
    pub struct Capacitor {
        /// Capacitance.
        capacitance as "capacitance": Fact<Farads> = Assumed(Farads(1.0)), 0.000001 to 1000.0;
        /// Resistance in series with it.
        resistance as "resistance": Fact<Ohms> = Assumed(Ohms(0.002)), 0.0 to 10.0;
        /// What it and its display draw, for ever.
        leakage as "leakage": Fact<Amps> = Assumed(Amps(0.005)), 0.0 to 5.0;
    }
}

choice! {
    /// What a load draws by.
    pub enum LoadLaw {
        Current = "current", "constant current";
        Power = "power", "constant power";
        Resistance = "resistance", "resistance";
    }
}

choice! {
    /// When a load draws.
    pub enum LoadTime {
        Always = "always", "always, parked too";
        EngineOn = "engine", "with the engine running";
        InUse = "in-use", "when in use, engine off or on, not parked";
    }
}

properties! {
    /// A general load: lights, a pump, a heater, an inverter. Terminals `+` and `-`.
    pub struct Load {
        /// Which law it draws by.
        law as "law": LoadLaw = LoadLaw::Power;
        /// Current, for the current law.
        current as "current": Fact<Amps> = Assumed(Amps(5.0)), 0.0 to 1000.0;
        /// Power, for the power law.
        power as "power": Fact<Watts> = Assumed(Watts(60.0)), 0.0 to 10000.0;
        /// Resistance, for the resistance law.
        resistance as "resistance": Fact<Ohms> = Assumed(Ohms(2.4)), 0.01 to 1000000.0;
        /// When it draws.
        when as "when": LoadTime = LoadTime::InUse;
        /// Share of the time it draws while in use.
        share as "share": Fact<Share> = Assumed(Share(1.0)), 0.0 to 1.0;
        /// Voltage below which it switches itself off.
        cut_off as "cut-off": Fact<Volts> = Unknown, 0.0 to 24.0;
    }
}

choice! {
    /// How a splice was made.
    pub enum SpliceMethod {
        Crimped = "crimped", "crimped";
        Soldered = "soldered", "soldered";
        Screwed = "screwed", "screw terminal";
        Tap = "tap", "insulation-piercing tap";
        Twisted = "twisted", "twisted by hand";
    }
}

properties! {
    /// A joint of several wires. Terminals `1`, `2`, ….
    pub struct Splice {
        /// Number of wires it joins.
        places as "places": u8 = 3, 2 to 8;
        /// How it was made.
        method as "method": SpliceMethod = SpliceMethod::Crimped;
    }
}

/// When a fuse or breaker opens, as its data sheet has it: current over rating, and the time. Both above zero; the current rises, the
/// time does not. Empty where it is not told.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Curve(pub Vec<(f64, Seconds)>);

/// Ratings of the fuses of a block, output by output; `None` is an output without a fuse.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Ratings(pub Vec<Option<Amps>>);
