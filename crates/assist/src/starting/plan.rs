//! From a wish to a whole planned sheet.

use super::hookup::HookUp;
use super::places::Places;
use super::planner::{Planner, Trouble};
use super::signal;
use super::sizes;
use super::sketch::Sketch;
use super::sound;
use super::speakers;
use super::supply;
use super::vehicle;
use super::wish::{
    AmplifierWish, ChannelsWish, MOST_AMPLIFIERS, PowerAt, ProcessorWish, SecondWish, Where, Wish,
};
use checks::{Analysis, Grade};
use model::body::BatteryPlace;
use model::conductor::FittedBy;
use model::job::{Duty, VehicleInfo, VehicleState};
use model::laying::Guard;
use model::quantity::{Amps, Metres, Ohms, Watts};
use model::{Change, Edit, Fact, Job, RunId, Settings, Sheet, SheetKind};
use words::{Saying, Words, say};

/// A system as it was started.
#[derive(Clone, Debug)]
pub struct Started {
    /// The edit that draws it, as one step.
    pub edit: Edit,
    /// The sheet as it then is.
    pub sheet: Sheet,
    /// The settings that it was judged by.
    pub settings: Settings,
    /// What the checks say of it.
    pub analysis: Analysis,
    /// What was chosen, and why.
    pub choices: Vec<Saying>,
    /// What was taken for granted, since nothing was told.
    pub assumed: Vec<Saying>,
    /// What is not met: findings of grade Stop or Fix that are left.
    pub troubles: Vec<Trouble>,
}

/// A system in four numbers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sums {
    /// Parts on the sheet.
    pub parts: usize,
    /// Runs on the sheet.
    pub runs: usize,
    /// What everything draws on average under the settings' duty, the vehicle's own load with it.
    pub draw: Amps,
    /// What the alternator gives for it, hot.
    pub available: Amps,
    /// Wire to be laid, the vehicle maker's left out.
    pub wire: Metres,
    /// Copper in it, in kilograms.
    pub copper: f64,
}

/// Mass of a cubic metre of copper, in kg (IEC 60028: 8.89 at 20 °C, in g/cm³).
const COPPER_DENSITY: f64 = 8890.0;

impl Started {
    /// The system in a few numbers.
    #[must_use]
    pub fn sums(&self) -> Sums {
        let laid = body::lay(&self.sheet, &self.settings);
        let ours = || laid.runs.values().filter(|run| run.fitted_by == FittedBy::Us);
        let length = |run: &model::Run| run.wire.length.value().map_or(0.0, |it| it.0);
        let copper = ours().map(|run| {
            let area = run.wire.size.value().map_or(0.0, |size| size.area().0);
            area * 1e-6 * length(run) * COPPER_DENSITY
        });
        Sums {
            parts: self.sheet.parts.len(),
            runs: self.sheet.runs.len(),
            draw: self.analysis.study.energy.draw,
            available: self.analysis.study.energy.available,
            wire: Metres(ours().map(length).sum()),
            copper: copper.sum(),
        }
    }
}

/// A change of a wish that would do.
#[derive(Clone, Debug)]
pub struct Offer {
    /// What is changed.
    pub what: Saying,
    /// The wish with it.
    pub wish: Wish,
}

/// Plans what a wish asks for. It is drawn on the sheet of the job that is named, which should be empty.
///
/// Labels are in the language of `words`, sizes of the series that its reader buys. Same wish, same job, same sheet.
///
/// # Errors
/// Why nothing can be drawn: nothing was told, or there is no hook-up that the outputs can drive.
pub fn start(wish: &Wish, job: &Job, on: SheetKind, words: &Words) -> Result<Started, Vec<Trouble>> {
    if wish.is_empty() {
        return Err(vec![Trouble::new(
            say!("start-empty"),
            say!("start-empty-instead"),
        )]);
    }
    let mut settings = job.settings.clone();
    settings.conditions.state = VehicleState::Cruise;
    settings.conditions.duty = Duty::Loud;
    if let Some(form) = wish.body {
        settings.body.shape.form = Fact::Given(form);
        if let Some(side) = wish.drive {
            settings.body.shape.drive = Fact::Given(side);
        }
        settings.body.shape.battery = match wish.battery_at {
            Some(at) => Fact::Given(at),
            None => Fact::Assumed(BatteryPlace::Front),
        };
    }
    let (wish, assumed) = &filled(wish);
    // One main feed, unless too much is lost or too warm on it and several do better; a battery's stud takes no more.
    let mut best: Option<Started> = None;
    for feeds in 1..=MOST_FEEDS {
        let mut it = plan(wish, job, on, words, &settings, feeds)?;
        it.assumed.extend(assumed.iter().cloned());
        let shared = it.troubles.iter().any(|it| it.shared);
        if best
            .as_ref()
            .is_none_or(|best| it.troubles.len() < best.troubles.len())
        {
            best = Some(it);
        }
        if !shared || wish.amplifiers.len() + wish.loads.len() < feeds + 1 {
            break;
        }
    }
    best.ok_or_else(Vec::new)
}

/// Changes of a wish that is not met, with which it would be, each tried out: a return by wire, a second battery, a larger
/// alternator. At most two. It costs several times what [`start`] does.
#[must_use]
pub fn offers(wish: &Wish, job: &Job, on: SheetKind, words: &Words) -> Vec<Offer> {
    let wired = |wish: Wish| Wish {
        wired_return: Some(true),
        ..wish
    };
    let second = |wish: Wish| Wish {
        second: Some(SecondWish::default()),
        ..wish
    };
    let mut tried: Vec<(Saying, Wish)> = Vec::new();
    if wish.wired_return != Some(true) {
        tried.push((say!("start-offer-wired"), wired(wish.clone())));
    }
    if wish.second.is_none() {
        tried.push((say!("start-offer-second"), second(wish.clone())));
    }
    if tried.len() == 2 {
        tried.push((say!("start-offer-both"), second(wired(wish.clone()))));
    }
    for current in sizes::ALTERNATORS {
        if wish.alternator.is_some_and(|told| told.0 < current) {
            let alternator = Some(Amps(current));
            let current = words::figure(current, words::Unit::Plain("A"));
            tried.push((
                say!("start-offer-alternator", current = current),
                Wish {
                    alternator,
                    ..wish.clone()
                },
            ));
        }
    }
    let does = |wish: &Wish| start(wish, job, on, words).is_ok_and(|it| it.troubles.is_empty());
    tried
        .into_iter()
        .filter(|(_, wish)| does(wish))
        .take(2)
        .map(|(what, wish)| Offer { what, wish })
        .collect()
}

/// What a wish needs besides what it tells: a processor where drivers have an output each, the amplifier within an active
/// subwoofer. With what is said of it.
fn filled(wish: &Wish) -> (Wish, Vec<Saying>) {
    let (mut wish, mut assumed) = (wish.clone(), Vec::new());
    let divided = wish.speakers.iter().any(|it| it.at.is_stereo() && it.active);
    if divided && wish.processor.is_none() {
        wish.processor = Some(ProcessorWish::default());
        assumed.push(say!("start-assumed-processor"));
    }
    let Wish {
        speakers, amplifiers, ..
    } = &mut wish;
    for it in speakers.iter_mut().filter(|it| it.at == Where::Bass && it.active) {
        // What such boxes usually hold (common practice; 100 W to 300 W considered).
        let power = *it.power.get_or_insert(Watts(150.0));
        let load = *it.impedance.get_or_insert(Ohms(4.0));
        let mut own = ChannelsWish::new(1);
        own.power.push(PowerAt {
            power,
            load: Some(load),
        });
        own.minimum = Some(load);
        let own = AmplifierWish {
            channels: vec![own],
            class: None,
        };
        let room = MOST_AMPLIFIERS.saturating_sub(amplifiers.len()).max(1);
        let count = usize::from(it.count.unwrap_or(1).max(1)).min(room);
        amplifiers.extend(std::iter::repeat_n(own, count));
        assumed.push(say!(
            "start-assumed-built-in",
            power = words::figure(power.0, words::Unit::Plain("W"))
        ));
    }
    (wish, assumed)
}

/// What the job is called: what comes into the vehicle, in a few words.
fn title(wish: &Wish, words: &Words) -> String {
    let mut things = Vec::new();
    if wish.has_sound() {
        let channels = wish.amplifiers.iter().flat_map(|it| &it.channels);
        let power: Vec<String> = channels
            .filter_map(|it| {
                let power = words.figure(words::figure(it.power.first()?.power.0, words::Unit::Plain("W")));
                Some(format!("{}\u{a0}×\u{a0}{power}", it.count))
            })
            .collect();
        let power = if power.is_empty() {
            "none".to_owned()
        } else {
            power.join(" + ")
        };
        things.push(words.say(&say!("start-job-sound", power = power)));
    }
    if wish.second.is_some() {
        things.push(words.text("start-job-second"));
    }
    if !wish.loads.is_empty() {
        things.push(words.text("start-job-loads"));
    }
    capital(&things.join(", "))
}

/// With a capital at its head.
fn capital(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next();
    first
        .into_iter()
        .flat_map(char::to_uppercase)
        .chain(letters)
        .collect()
}

/// Most main feeds to what stands behind.
const MOST_FEEDS: usize = 3;

/// Plans with so many main feeds.
fn plan(
    wish: &Wish,
    job: &Job,
    on: SheetKind,
    words: &Words,
    settings: &Settings,
    feeds: usize,
) -> Result<Started, Vec<Trouble>> {
    let mut planner = Planner {
        wish,
        sketch: Sketch::new(Places::of(wish), words, job.free_part_id(), job.free_run_id()),
        limbs: Vec::new(),
        choices: Vec::new(),
        assumed: Vec::new(),
        alternator: None,
        hookup: HookUp::default(),
        feeds,
    };
    let mut sound = sound::choose(&mut planner)?;
    let vehicle = vehicle::vehicle(&mut planner);
    let consumers = signal::equipment(&mut planner, &vehicle, &mut sound)?;
    supply::feeds(&mut planner, &vehicle, consumers);
    speakers::speakers(&mut planner, &sound);
    let Planner {
        mut sketch,
        limbs,
        choices,
        mut assumed,
        alternator,
        hookup,
        ..
    } = planner;
    speakers::tunings(&mut sketch.sheet, &sound, &hookup);
    let mut sheet = sketch.sheet;
    lay(&mut sheet, settings, on);
    let told = wish.alternator.is_some();
    let (mut sheet, analysis, current) = sizes::settle(sheet, settings, on, &limbs, alternator, told);
    if let Some(Amps(current)) = current {
        assumed.push(say!(
            "start-assumed-alternator",
            current = words::figure(current, words::Unit::Plain("A"))
        ));
    }
    // Two sections of one amplifier take the same for granted: that is said once.
    let mut once: Vec<Saying> = Vec::new();
    for it in assumed {
        if !once.contains(&it) {
            once.push(it);
        }
    }
    let assumed = once;
    let troubles = troubles(&analysis);
    // Places on the board are left open: whoever shows the sheet arranges it.
    for part in sheet.parts.values_mut() {
        part.at = None;
    }
    let edit = edit(wish, job, on, words, &sheet, settings);
    Ok(Started {
        edit,
        sheet,
        settings: settings.clone(),
        analysis,
        choices,
        assumed,
        troubles,
    })
}

/// What the checks leave, as what is not met.
fn troubles(analysis: &Analysis) -> Vec<Trouble> {
    analysis
        .findings
        .iter()
        .filter(|finding| finding.grade != Grade::Tidy)
        .map(|finding| Trouble {
            what: finding.what.clone(),
            instead: finding.remedy.clone(),
            shared: matches!(
                finding.check,
                "voltage-drop" | "hot-joint" | "overloaded-run" | "fuse-undersized" | "supply-collapse"
            ),
        })
        .collect()
}

/// One edit that puts the whole sheet. What the title block says already stays.
fn edit(wish: &Wish, job: &Job, on: SheetKind, words: &Words, sheet: &Sheet, settings: &Settings) -> Edit {
    let mut changes = Vec::new();
    if job.title.is_empty() {
        changes.push(Change::Title(title(wish, words)));
    }
    if let (true, Some(form)) = (job.vehicle.name.is_empty(), wish.body) {
        let name = capital(&words.say(&form.said()));
        let vehicle = VehicleInfo {
            name,
            ..job.vehicle.clone()
        };
        changes.push(Change::Vehicle(Box::new(vehicle)));
    }
    if job.settings != *settings {
        changes.push(Change::Settings(Box::new(settings.clone())));
    }
    changes.extend(sheet.parts.iter().map(|(id, part)| Change::Part {
        sheet: on,
        id: *id,
        to: Some(Box::new(part.clone())),
    }));
    changes.extend(sheet.runs.iter().map(|(id, run)| Change::Run {
        sheet: on,
        id: *id,
        to: Some(Box::new(run.clone())),
    }));
    if !sheet.tunings.is_empty() {
        changes.push(Change::Tunings {
            sheet: on,
            to: sheet.tunings.clone(),
        });
    }
    Edit::new(say!("edit-start"), changes)
}

/// Gives all runs their routes and what guards and holds them there.
fn lay(sheet: &mut Sheet, settings: &Settings, on: SheetKind) {
    let Some(plan) = body::Plan::of(&settings.body) else {
        return;
    };
    let routed = body::route_all(&plan, sheet, on);
    for change in routed.edit.changes {
        if let Change::Run {
            id, to: Some(run), ..
        } = change
        {
            sheet.runs.insert(id, *run);
        }
    }
    let guards: Vec<(RunId, Vec<(String, Guard)>)> = sheet
        .runs
        .iter()
        .filter_map(|(id, run)| {
            let walk = plan.walk(sheet, run).ok()?;
            (!walk.steps.is_empty()).then(|| (*id, guards(&plan, &walk)))
        })
        .collect();
    for (id, guards) in guards {
        if let Some(run) = sheet.runs.get_mut(&id) {
            run.laying.guards.0.extend(guards);
            run.laying.support_spacing = Fact::Given(Metres(0.3));
        }
    }
}

/// What guards a run on its way, by what it comes through.
fn guards(plan: &body::Plan, walk: &body::Walk) -> Vec<(String, Guard)> {
    use model::body::PassageKind;
    let mut all = Vec::new();
    for (number, step) in walk.steps.iter().enumerate() {
        if let Some(passage) = plan.passages.get(step.passage) {
            let moves = |at: usize| plan.places.get(at).is_some_and(|it| it.facts.moving.or(false));
            let [a, b] = passage.ends.map(moves);
            let kind = passage.kind.value();
            let is_joint = kind != Some(PassageKind::SeatRail) && (passage.facts.moving.or(false) || a != b);
            let guard = match kind {
                Some(PassageKind::Gaiter) if is_joint => Some(Guard::Gaiter),
                _ if is_joint => Some(Guard::Loom),
                _ if passage.facts.crush.or(false) => Some(Guard::Tube),
                Some(PassageKind::Grommet | PassageKind::Hole) => Some(Guard::Grommet),
                _ if passage.facts.sharp.or(false) => Some(Guard::Sleeve),
                _ => None,
            };
            all.extend(guard.map(|guard| (passage.name.clone(), guard)));
        }
        if number + 1 < walk.steps.len()
            && let Some(place) = plan.places.get(step.to)
        {
            let guard = if place.facts.crush.or(false) {
                Some(Guard::Tube)
            } else {
                place.facts.sharp.or(false).then_some(Guard::Sleeve)
            };
            all.extend(guard.map(|guard| (place.name.clone(), guard)));
        }
    }
    all
}
