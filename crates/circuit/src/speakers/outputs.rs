//! The outputs that drive the network: every channel of amplifiers and head units, and which of them are bridged.
//!
//! Bridging is read from the wiring: a load that lies between legs of two different channels, with no way to the other
//! leg of either. Between `outN+` and `out(N+1)-` of a pair that its maker lets be bridged, both channels work as one
//! output. Anything else of the kind is taken as what it does electrically, with a remark and no minimum, as no maker
//! states one.
//!
//! Inside an amplifier a bridged pair is closed through the two legs that are not used. In one that does not float
//! these are ground; in one that does, a tie between them stands for the closed path.

use super::element::{Impedance, What};
use super::network::{Groups, Network, SUPPLY};
use super::power::Stated;
use model::kinds::sound::Amplifier;
use model::terminals::HEAD_SPEAKER_OUTPUTS;
use model::written::Filter;
use model::{PartId, PartKind};
use ordered::{OrderedMap, OrderedSet};
use words::{Saying, say};

/// One channel, or a bridged pair.
#[derive(Clone, Debug)]
pub(crate) struct Output {
    pub(crate) part: PartId,
    pub(crate) channel: u8,
    pub(crate) bridged_with: Option<u8>,
    /// Node of the leg that is positive when the signal is.
    pub(crate) plus: usize,
    pub(crate) minus: usize,
    pub(crate) stated: Stated,
    /// Frequency below which a filter in the equipment passes nothing.
    pub(crate) high_pass: Option<f64>,
    /// Whether the maker allows this use; `false` leaves the minimum unknown.
    pub(crate) allowed: bool,
    pub(crate) remarks: Vec<Saying>,
}

/// Whether a leg of an amplifier that does not float is ground: the negative one, but in the second channel of each
/// pair the positive one, since that channel works inverted so that the pair can be bridged.
pub(crate) fn is_ground_leg(amplifier: &Amplifier, channel: u8, positive: bool) -> bool {
    if amplifier.floating {
        return false;
    }
    let second = amplifier
        .sections
        .of_channel(channel)
        .is_some_and(|(_, at)| at % 2 == 1);
    positive == second
}

/// A channel before bridging is looked at.
struct Channel {
    part: PartId,
    channel: u8,
    plus: usize,
    minus: usize,
    name: String,
}

/// A load between legs of two channels of one part: the channel's place in the list and whether its positive leg.
struct Cross {
    first: (usize, bool),
    second: (usize, bool),
}

/// Finds the outputs of a network and puts them into it.
pub(crate) fn find(net: &mut Network<'_>) {
    let channels = channels(net);
    let (own, crosses) = loads(net, &channels);
    let mut outputs: Vec<Option<Output>> = channels.iter().map(|channel| Some(alone(net, channel))).collect();
    let mut tied: OrderedSet<(usize, usize)> = OrderedSet::new();
    for cross in &crosses {
        let (Some(a), Some(b)) = (channels.get(cross.first.0), channels.get(cross.second.0)) else {
            continue;
        };
        let amplifier = match net.index.sheet.parts.get(&a.part).map(|part| &part.is) {
            Some(PartKind::Amplifier(amplifier)) => Some(amplifier),
            _ => None,
        };
        let pair = amplifier.and_then(|it| {
            let (section, at) = it.sections.of_channel(a.channel)?;
            let next = a.channel.checked_add(1)? == b.channel && at % 2 == 0 && at + 1 < section.channels;
            next.then_some(section)
        });
        let right_legs = cross.first.1 && !cross.second.1;
        let bridged = pair
            .and_then(|section| section.bridged.as_ref())
            .filter(|_| right_legs);
        let mixed = own.contains(&cross.first.0) || own.contains(&cross.second.0);
        if let (Some(bridged), false) = (bridged, mixed) {
            // A second load across the same pair finds it bridged already.
            if let Some(Some(second)) = outputs.get(cross.second.0)
                && let Some(Some(first)) = outputs.get(cross.first.0)
                && first.bridged_with.is_none()
            {
                let (minus, number) = (b.minus, second.channel);
                if let Some(Some(first)) = outputs.get_mut(cross.first.0) {
                    first.minus = minus;
                    first.bridged_with = Some(number);
                    first.stated = Stated::new(&bridged.power, Some(bridged.minimum));
                }
                if let Some(slot) = outputs.get_mut(cross.second.0) {
                    *slot = None;
                }
            }
            continue;
        }
        let remark = if bridged.is_some() {
            say!(
                "channel-bridged-besides",
                one = usize::from(a.channel),
                other = usize::from(b.channel),
            )
        } else if !right_legs && pair.is_some_and(|section| section.bridged.is_some()) {
            say!(
                "channel-not-the-legs",
                one = leg(a, cross.first.1),
                other = leg(b, cross.second.1),
            )
        } else {
            say!(
                "channel-not-bridged",
                one = leg(a, cross.first.1),
                other = leg(b, cross.second.1),
            )
        };
        for at in [cross.first.0, cross.second.0] {
            if let Some(Some(output)) = outputs.get_mut(at) {
                output.allowed &= bridged.is_some();
                if !output.remarks.contains(&remark) {
                    output.remarks.push(remark.clone());
                }
            }
        }
        if amplifier.is_none_or(|it| it.floating) {
            let other =
                |channel: &Channel, positive: bool| if positive { channel.minus } else { channel.plus };
            let (x, y) = (other(a, cross.first.1), other(b, cross.second.1));
            if x != y && tied.insert((x.min(y), x.max(y))) {
                net.add(x, y, What::Tie, Impedance::default());
            }
        }
    }
    net.outputs = outputs.into_iter().flatten().collect();
}

fn leg(channel: &Channel, positive: bool) -> String {
    format!("{}{}", channel.name, if positive { "+" } else { "-" })
}

fn channels(net: &Network<'_>) -> Vec<Channel> {
    let mut all = Vec::new();
    for (id, part) in &net.index.sheet.parts {
        let names: Vec<(u8, String)> = match &part.is {
            PartKind::Amplifier(amplifier) => (1..=amplifier.sections.channels().min(12))
                .map(|n| (n, format!("out{n}")))
                .collect(),
            PartKind::HeadUnit(head) => HEAD_SPEAKER_OUTPUTS
                .iter()
                .take(usize::from(head.speaker_outputs.min(4)))
                .map(|(name, n)| (*n, (*name).to_owned()))
                .collect(),
            _ => continue,
        };
        for (channel, name) in names {
            let node = |sign: &str| {
                net.index
                    .find(*id, &format!("{name}{sign}"))
                    .and_then(|at| net.node(at))
            };
            if let (Some(plus), Some(minus)) = (node("+"), node("-")) {
                all.push(Channel {
                    part: *id,
                    channel,
                    plus,
                    minus,
                    name,
                });
            }
        }
    }
    all
}

fn alone(net: &Network<'_>, channel: &Channel) -> Output {
    let (stated, high_pass) = match net.index.sheet.parts.get(&channel.part).map(|part| &part.is) {
        Some(PartKind::Amplifier(amplifier)) => match amplifier.sections.of_channel(channel.channel) {
            Some((section, _)) => (
                Stated::new(&section.power, Some(section.minimum)),
                match section.filter {
                    Filter::HighPass(from) => Some(from.0),
                    Filter::Full | Filter::LowPass(_) => None,
                },
            ),
            None => (Stated::default(), None),
        },
        Some(PartKind::HeadUnit(head)) => (Stated::head(head), head.high_pass.value().map(|from| from.0)),
        _ => (Stated::default(), None),
    };
    Output {
        part: channel.part,
        channel: channel.channel,
        bridged_with: None,
        plus: channel.plus,
        minus: channel.minus,
        stated,
        high_pass: high_pass.filter(|from| from.is_finite()),
        allowed: true,
        remarks: Vec::new(),
    }
}

/// Which channels have a load between their own legs, and the loads that lie between legs of two channels.
///
/// Leads are drawn together first, so that a splice on a leg counts as that leg. Legs and the supply bound regions of
/// what lies between them; each region with a coil is a load on the legs around it.
fn loads(net: &Network<'_>, channels: &[Channel]) -> (OrderedSet<usize>, Vec<Cross>) {
    let mut groups = Groups::new(net.nodes);
    for element in &net.elements {
        if matches!(element.what, What::Lead(_)) && element.a != SUPPLY && element.b != SUPPLY {
            groups.join(element.a, element.b);
        }
    }
    // Legs by the group they are in: (channel's place, positive).
    let mut legs: OrderedMap<usize, Vec<(usize, bool)>> = OrderedMap::new();
    legs.insert(SUPPLY, Vec::new());
    for (place, channel) in channels.iter().enumerate() {
        for (node, positive) in [(channel.plus, true), (channel.minus, false)] {
            legs.entry(groups.find(node)).or_default().push((place, positive));
        }
    }
    let mut regions = Groups::new(net.nodes);
    for element in &net.elements {
        let (a, b) = (groups.find(element.a), groups.find(element.b));
        if !legs.contains_key(&a) && !legs.contains_key(&b) {
            regions.join(a, b);
        }
    }
    // Boundaries around each region, and whether a coil is in it. An element between two legs is a region by itself.
    let mut around: OrderedMap<(usize, usize), (OrderedSet<usize>, bool)> = OrderedMap::new();
    for (number, element) in net.elements.iter().enumerate() {
        let (a, b) = (groups.find(element.a), groups.find(element.b));
        if a == b {
            continue;
        }
        let inner = [a, b].into_iter().find(|node| !legs.contains_key(node));
        let key = inner.map_or((usize::MAX, number), |node| (regions.find(node), 0));
        let (bounds, has_coil) = around.entry(key).or_default();
        bounds.extend([a, b].into_iter().filter(|node| legs.contains_key(node)));
        *has_coil |= matches!(element.what, What::Coil { .. });
    }
    let mut own = OrderedSet::new();
    let mut crosses = Vec::new();
    for (bounds, has_coil) in around.values() {
        if !has_coil || bounds.len() < 2 {
            continue;
        }
        let here: Vec<(usize, bool)> = bounds
            .iter()
            .filter_map(|node| legs.get(node))
            .flatten()
            .copied()
            .collect();
        let mut found = false;
        for (place, channel) in here
            .iter()
            .map(|(place, _)| (*place, channels.get(*place)))
            .collect::<OrderedMap<_, _>>()
        {
            let Some(channel) = channel else { continue };
            let (plus, minus) = (groups.find(channel.plus), groups.find(channel.minus));
            if plus != minus && bounds.contains(&plus) && bounds.contains(&minus) {
                own.insert(place);
                found = true;
            }
        }
        if !found {
            crosses.extend(cross(&here, channels));
        }
    }
    (own, crosses)
}

/// The pair of legs that a load between different channels of one part is on; a proper bridge goes before others.
fn cross(here: &[(usize, bool)], channels: &[Channel]) -> Option<Cross> {
    let mut pairs = Vec::new();
    for (at, first) in here.iter().enumerate() {
        for second in here.iter().skip(at + 1) {
            let (first, second) = if first.0 <= second.0 {
                (*first, *second)
            } else {
                (*second, *first)
            };
            if let (Some(a), Some(b)) = (channels.get(first.0), channels.get(second.0))
                && a.part == b.part
                && a.channel != b.channel
            {
                pairs.push((
                    !(first.1 && !second.1 && b.channel - a.channel == 1),
                    first,
                    second,
                ));
            }
        }
    }
    pairs
        .into_iter()
        .min()
        .map(|(_, first, second)| Cross { first, second })
}
