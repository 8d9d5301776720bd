//! How a run is laid: what guards it where it passes through something, how it is held, and what makes it waver. And what
//! its copper really is, as found by counting strands or by measuring.

use crate::conductor::Material;
use crate::fact::Fact::{self, Unknown};
use crate::property::{PropertyError, PropertyType, Shape, not_one_of};
use crate::quantity::{Amps, Metres, Millimetres, Ohms, OhmsPerMetre, SquareMm, Volts};
use crate::{choice, properties};
use ordered::OrderedMap;

choice! {
    /// What guards a run in a passage.
    pub enum Guard {
        Nothing = "nothing", "nothing";
        Grommet = "grommet", "a grommet";
        Gaiter = "gaiter", "the maker's gaiter";
        Sleeve = "sleeve", "a sleeve or braid";
        Tube = "tube", "a corrugated tube";
        Loom = "loom", "the maker's own loom";
    }
}

choice! {
    /// What of the vehicle is moved, or done to the wire, in a state that comes and goes.
    pub enum Moved {
        Doors = "doors-open", "doors open";
        Lid = "lid-open", "lid or tailgate open";
        Seats = "seats-moved", "seats moved or folded";
        Flexed = "flexed", "wire flexed";
        Warm = "warm", "warm";
        Shaken = "shaken", "shaken";
    }
}

/// What guards a run in each passage of its route, and at each place that it passes, by its name. Of what is not listed nobody
/// knows; a place between two passages with the same guard has that guard too.
///
/// Written `bulkhead-grommet:grommet/door-gaiter-left:gaiter`; in names `/` is written `~1`, `:` is `~2` and `~` is `~0`.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Guards(pub OrderedMap<String, Guard>);

impl PropertyType for Guards {
    const SHAPE: Shape = Shape::Text {
        example: "bulkhead-left:grommet/door-front-left:gaiter",
    };
    fn print(&self) -> String {
        let all: Vec<String> = self
            .0
            .iter()
            .map(|(passage, guard)| {
                let name = passage.replace('~', "~0").replace('/', "~1").replace(':', "~2");
                format!("{name}:{}", guard.word())
            })
            .collect();
        all.join("/")
    }
    fn parse(text: &str, _: Option<(f64, f64)>) -> Result<Self, PropertyError> {
        let mut guards = OrderedMap::new();
        for one in text.split('/').filter(|one| !one.is_empty()) {
            let words: Vec<&str> = Guard::ALL.iter().map(|guard| guard.word()).collect();
            let (name, word) = one.split_once(':').ok_or_else(|| not_one_of(one, &words))?;
            let guard = Guard::from_word(word).ok_or_else(|| not_one_of(word, &words))?;
            let name = name.replace("~2", ":").replace("~1", "/").replace("~0", "~");
            guards.insert(name, guard);
        }
        let read = Self(guards);
        PropertyType::check(&read, None)?;
        Ok(read)
    }
    fn check(&self, _: Option<(f64, f64)>) -> Result<(), PropertyError> {
        let too_long = self
            .0
            .keys()
            .any(|name| name.len() > crate::limits::LONGEST_LABEL);
        if self.0.len() > crate::limits::MOST_PLACES || too_long {
            return Err(PropertyError::new(words::say!(
                "error-guards",
                most = crate::limits::MOST_PLACES,
                bytes = crate::limits::LONGEST_LABEL
            )));
        }
        Ok(())
    }
}

properties! {
    /// How a run is laid.
    pub struct Laying {
        /// What guards it in each passage of its route.
        guards as "guards": Guards = Guards::default();
        /// Whether its route stays when all runs are routed again.
        way_locked as "way-locked": bool = false;
        /// Whether its size stays when all runs are sized.
        size_locked as "size-locked": bool = false;
        /// Length left over at both ends together.
        slack as "slack": Fact<Metres> = Unknown, 0.0 to 20.0;
        /// Longest distance between two of its supports.
        support_spacing as "support-spacing": Fact<Metres> = Unknown, 0.0 to 50.0;
        /// When it loses contact, where that comes and goes.
        opens_when as "opens-when": Fact<Moved> = Unknown;
        /// How many strands it has, counted.
        strands as "strands": Fact<u16> = Unknown, 1 to 20000;
        /// Diameter of one strand, measured.
        strand as "strand-diameter": Fact<Millimetres> = Unknown, 0.01 to 10.0;
        /// Drop measured over its whole length.
        tested_drop as "tested-drop": Fact<Volts> = Unknown, 0.0001 to 100.0;
        /// Current that flowed while that drop was measured.
        tested_current as "tested-current": Fact<Amps> = Unknown, 0.001 to 5000.0;
    }
}

impl Laying {
    /// The cross-section that its strands add up to: n · π/4 · d². `None` until both are known.
    #[must_use]
    pub fn counted_area(&self) -> Option<SquareMm> {
        let (strands, strand) = (self.strands.value()?, self.strand.value()?);
        Some(SquareMm(
            f64::from(strands) * std::f64::consts::FRAC_PI_4 * strand.0 * strand.0,
        ))
    }
    /// The resistance of the run as measured: drop over current. `None` until both are known.
    #[must_use]
    pub fn tested_resistance(&self) -> Option<Ohms> {
        let (drop, current) = (self.tested_drop.value()?, self.tested_current.value()?);
        (current.0 > 0.0).then(|| Ohms(drop.0 / current.0))
    }
    /// The same per metre of a run of this length.
    #[must_use]
    pub fn tested_per_metre(&self, length: Metres) -> Option<OhmsPerMetre> {
        let whole = self.tested_resistance()?;
        (length.0 > 0.0).then(|| OhmsPerMetre(whole.0 / length.0))
    }
    /// The material that explains counted area and measured resistance best, and by what factor they differ from it
    /// (1 = not at all). `None` until both are known, and the length.
    #[must_use]
    pub fn likely_material(&self, length: Metres, of: impl Fn(Material) -> f64) -> Option<(Material, f64)> {
        let area = self.counted_area()?;
        let resistivity = self.tested_per_metre(length)?.0 * area.0;
        let far = |material: &Material| {
            let ratio = resistivity / of(*material);
            if ratio.is_finite() && ratio > 0.0 {
                libm::fabs(libm::log(ratio))
            } else {
                f64::INFINITY
            }
        };
        let best = Material::ALL
            .iter()
            .copied()
            .min_by(|a, b| far(a).total_cmp(&far(b)))?;
        Some((best, resistivity / of(best)))
    }
}
