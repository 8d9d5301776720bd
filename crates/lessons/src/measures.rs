//! Numbers of the engine by name and tag, as lessons ask for them: `current W3`, `drop A1`, `load A1.1`.
//!
//! | name | of | what |
//! |---|---|---|
//! | `current` | run, part | mean current, as the overlay of currents writes it, A |
//! | `burst` | run, part | the current in bursts, A |
//! | `rms` | run, part | RMS current, which is what heats, A |
//! | `drop` | run, load | voltage lost along a run, or from source to load and back, at bursts, V |
//! | `feed-drop`, `return-drop` | load | the feed's and the return's share of it, V |
//! | `volts`, `mean-volts` | part | voltage across it at bursts, and on average, V |
//! | `temperature`, `ambient`, `insulation` | run | of the conductor, around it, and what its insulation bears, °C |
//! | `allowable` | run | allowable continuous current at its place, A |
//! | `resistance`, `loss` | run | of wire and endings together, Ω; power turned to heat in them, W |
//! | `length`, `size` | run | as drawn, m, mm² |
//! | `unprotected` | run | distance from the source along wire without a device, m |
//! | `offset`, `shield` | signal lead | voltage between the grounds it joins, V; current in its shield, A |
//! | `rating`, `prospective` | fuse, breaker, `D1.out1` | rated current; what a short right behind it draws, A |
//! | `return` | load | resistance of its whole return, Ω |
//! | `load`, `least`, `minimum` | `A1.1` | nominal and least impedance of a channel, and what its maker allows, Ω |
//! | `power` | `A1.1`, speaker, part | what a channel can give, what reaches a speaker, what a part takes, W |
//! | `coil` | `LS1.1` | power into a voice coil, W |
//! | `lead-loss` | speaker | loss of level in its leads, dB |
//! | `hours`, `charge` | battery | hours until flat with the engine off; charge left after parking, % |
//! | `draw`, `available`, `standing` | — | of the whole sheet, A |
//! | `found` | check | the number its first finding holds against a limit |
//! | `limit` | limit | a limit of the profile, by its key |

use checks::Analysis;
use circuit::{ChannelLoad, Device, Driver};
use model::terminals::Role;
use model::{End, PartId, PropertyType as _, Settings, Sheet};
use words::{Figure, Saying, Unit, drawn, say};

/// A sheet, what it is judged by, and what came of it.
#[derive(Clone, Copy, Debug)]
pub struct Judged<'s> {
    /// The sheet.
    pub sheet: &'s Sheet,
    /// The settings.
    pub settings: &'s Settings,
    /// Its analysis.
    pub analysis: &'s Analysis,
}

/// A number with its unit.
pub type Number = (f64, &'static str);

/// A number as the drawing writes it, so that what is told and what is drawn read alike.
#[must_use]
pub fn as_drawn((number, unit): Number) -> Figure {
    match unit {
        "%" => drawn(number / 100.0, Unit::Percent),
        // A temperature has no tenths on the drawing.
        "°C" => drawn(number.round(), Unit::Plain(unit)),
        _ => drawn(number, Unit::of(unit)),
    }
}

/// The number of a name, of the thing of a tag.
///
/// # Errors
/// When there is no such name or thing, or the engine has no such number of it.
pub fn measure(judged: Judged<'_>, name: &str, at: &str) -> Result<Number, Saying> {
    let Judged {
        sheet,
        settings,
        analysis,
    } = judged;
    let study = &analysis.study;
    match name {
        "draw" => return Ok((study.energy.draw.0, "A")),
        "available" => return Ok((study.energy.available.0, "A")),
        "standing" => return Ok((study.energy.standing.0, "A")),
        "limit" => {
            let limits = checks::limits_in_force(settings);
            let limit = limits.iter().find(|limit| limit.key == at);
            return limit
                .map(|limit| (limit.set.unwrap_or(limit.published), limit.unit))
                .ok_or_else(|| say!("lesson-no-limit", limit = at));
        }
        "found" => {
            let found = analysis.findings.iter().find(|finding| finding.check == at);
            let number = found.and_then(|finding| finding.measure);
            return number
                .map(|number| (number.value, number.unit))
                .ok_or_else(|| say!("lesson-no-found-number", check = at));
        }
        _ => {}
    }
    let number = if let Some((id, run)) = sheet.run_by_tag(at) {
        of_run(judged, name, id, run)
    } else {
        of_part(judged, name, at)?
    };
    number.ok_or_else(|| say!("lesson-no-measure", measure = name, thing = at))
}

fn of_run(judged: Judged<'_>, name: &str, id: model::RunId, run: &model::Run) -> Option<Number> {
    let study = &judged.analysis.study;
    match name {
        "length" => return run.wire.length.value().map(|it| (it.0, "m")),
        "size" => return run.wire.size.value().map(|it| (it.area().0, "mm²")),
        "insulation" => return run.wire.insulation.value().map(|it| (it.0, "°C")),
        "offset" => return study.signal.offsets.get(&id).map(|it| (it.offset.0, "V")),
        "shield" => return study.signal.offsets.get(&id).map(|it| (it.shield_current.0, "A")),
        "unprotected" => {
            let ways = study
                .protection
                .get(&id)?
                .from
                .iter()
                .filter_map(|from| from.unprotected_to);
            return ways
                .map(|metres| metres.0)
                .reduce(f64::max)
                .map(|metres| (metres, "m"));
        }
        _ => {}
    }
    let flow = study.runs.get(&id)?;
    let endings = |each: [f64; 2]| each.iter().sum::<f64>();
    Some(match name {
        "current" => (flow.current.mean.0.abs(), "A"),
        "rms" => (flow.current.rms.0.abs(), "A"),
        "burst" => (flow.current.burst.0.abs(), "A"),
        "drop" => (flow.drop.0, "V"),
        "temperature" => (flow.temperature.0, "°C"),
        "ambient" => (flow.ambient.0, "°C"),
        "allowable" => (flow.allowable?.0, "A"),
        "resistance" => (
            flow.wire_resistance.0 + endings(flow.ending_resistance.map(|it| it.0)),
            "Ω",
        ),
        "loss" => (flow.loss.0 + endings(flow.ending_loss.map(|it| it.0)), "W"),
        _ => return None,
    })
}

/// A channel by its name: `A1.1`.
fn channel<'a>(judged: Judged<'a>, at: &str) -> Option<&'a ChannelLoad> {
    let (tag, number) = at.split_once('.')?;
    let (id, _) = judged.sheet.part_by_tag(tag)?;
    let number = u8::parse(number, None).ok()?;
    judged
        .analysis
        .study
        .channels
        .iter()
        .find(|load| load.part == id && load.channel == number)
}

/// A device by its name: `F1`, or `D1.out2` where a part holds several.
pub(crate) fn device<'a>(judged: Judged<'a>, at: &str) -> Option<&'a Device> {
    let (tag, output) = at
        .split_once('.')
        .map_or((at, None), |(tag, output)| (tag, Some(output)));
    let (id, _) = judged.sheet.part_by_tag(tag)?;
    judged.analysis.study.devices.iter().find(|device| {
        device.device.part == id && device.device.output.as_ref().map(model::TerminalName::as_str) == output
    })
}

/// The amplifier or head unit that drives a speaker and is off; none where it is on, or where the drawing does not say: it may
/// show speakers alone, with no supply wired.
pub(crate) fn driven_by_off(judged: Judged<'_>, driver: &Driver) -> Option<PartId> {
    let (id, _) = driver.channel?;
    let part = judged.sheet.parts.get(&id)?;
    let is_supply = |end: &End| {
        end.terminal()
            .filter(|at| at.part == id)
            .and_then(|at| part.role(&at.terminal))
            .is_some_and(|role| matches!(role, Role::SupplyPlus | Role::SupplyMinus))
    };
    let is_wired = judged
        .sheet
        .runs_of(id)
        .any(|(_, run)| run.ends().into_iter().any(is_supply));
    let flow = judged.analysis.study.parts.get(&id)?;
    (is_wired && flow.on == Some(false)).then_some(id)
}

/// What reaches a speaker of the power that its channel can give: nothing of it while that is off.
fn driven(judged: Judged<'_>, driver: &Driver, power: f64) -> f64 {
    match driven_by_off(judged, driver) {
        Some(_) => 0.0,
        None => power,
    }
}

fn of_part(judged: Judged<'_>, name: &str, at: &str) -> Result<Option<Number>, Saying> {
    let study = &judged.analysis.study;
    let tag = at.split_once('.').map_or(at, |(tag, _)| tag);
    let (id, _) = judged
        .sheet
        .part_by_tag(tag)
        .ok_or_else(|| say!("lesson-no-thing", thing = at))?;
    let of_channel = |pick: fn(&ChannelLoad) -> Option<Number>| channel(judged, at).and_then(pick);
    let flow = study.parts.get(&id);
    let circuit = study.circuits.get(&id);
    Ok(match name {
        "load" => of_channel(|load| Some((load.nominal?.0, "Ω"))),
        "least" => of_channel(|load| Some((load.least?.0, "Ω"))),
        "minimum" => of_channel(|load| Some((load.minimum?.0, "Ω"))),
        "power" if tag != at => of_channel(|load| Some((load.power?.0, "W"))),
        "power" => match study.drivers.get(&id) {
            Some(driver) => Some((driven(judged, driver, driver.power.0), "W")),
            None => flow.map(|flow| (flow.power.0, "W")),
        },
        "coil" => {
            let number = at
                .split_once('.')
                .and_then(|(_, number)| number.parse::<usize>().ok());
            let driver = study.drivers.get(&id);
            driver.zip(number).and_then(|(driver, number)| {
                let coil = driver.coils.get(number.checked_sub(1)?)?;
                Some((driven(judged, driver, coil.power.0), "W"))
            })
        }
        "lead-loss" => study
            .drivers
            .get(&id)
            .map(|driver| (driver.lead_loss.0.abs(), "dB")),
        "rating" => device(judged, at).and_then(|device| Some((device.rating?.0, "A"))),
        "prospective" => device(judged, at).and_then(|device| Some((device.prospective?.0, "A"))),
        "current" | "rms" | "burst" => {
            // What passes a device is told by the device, so that one output of a block can be asked for.
            let current = device(judged, at)
                .map(|it| it.current)
                .or_else(|| flow.map(|it| it.current));
            current.map(|it| {
                let level = match name {
                    "burst" => it.burst,
                    "rms" => it.rms,
                    _ => it.mean,
                };
                (level.0.abs(), "A")
            })
        }
        "mean-volts" => flow.and_then(|flow| Some((flow.voltage?.0, "V"))),
        "volts" => flow.and_then(|flow| Some((flow.burst_voltage.or(flow.voltage)?.0, "V"))),
        "drop" => circuit.and_then(|it| Some((it.drop?.0, "V"))),
        "feed-drop" => circuit.and_then(|it| Some((it.feed_drop?.0, "V"))),
        "return-drop" => circuit.and_then(|it| Some((it.return_drop?.0, "V"))),
        "return" => {
            let ways = circuit
                .iter()
                .flat_map(|it| &it.returns)
                .filter_map(|way| way.resistance);
            ways.map(|ohms| ohms.0).reduce(f64::max).map(|ohms| (ohms, "Ω"))
        }
        "hours" => study.energy.hours_to_flat.get(&id).map(|it| (it.0, "h")),
        "charge" => study
            .energy
            .charge_after_parking
            .get(&id)
            .map(|it| (it.0 * 100.0, "%")),
        _ => None,
    })
}
