//! The words of the trade that a wish is read by, and the ones that it is written with: English and German, which may stand side
//! by side in one text. The first of each language in a row is the one that is written, as it is written; the others stand
//! in small letters, without hyphens.

use super::wish::{LoadKind, Where};
use model::body::{BatteryPlace, BodyForm, DriveSide};
use model::kinds::sound::AmplifierClass;
use model::kinds::supply::{Chemistry, IsolatorKind};
use words::Language;

/// What a word means.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Meaning {
    Body(BodyForm),
    Drive(DriveSide),
    Battery,
    Second,
    Chemistry(Chemistry),
    Cranking,
    /// Where a battery stands.
    Stands(BatteryPlace),
    Alternator,
    Isolator(IsolatorKind),
    /// A charger from battery to battery.
    Charger,
    /// A solar panel or its controller, for which there is no part.
    Solar,
    Head,
    Factory,
    LineOutputs,
    SpeakerOutputs,
    Processor,
    Outputs,
    Amplifier,
    Mono,
    Stereo,
    Channels,
    Bridged,
    Minimum,
    At,
    Class(AmplifierClass),
    Speakers,
    Plays(Where),
    /// In the doors: the front ones, unless it is told which.
    Doors,
    Components,
    ThreeWay,
    /// With an output for each driver; of the bass: with its amplifier built in.
    Active,
    FullRange,
    Pair,
    DualCoil,
    SingleCoil,
    Load(LoadKind),
    Harness,
    WiredReturn,
    BodyReturn,
    Without,
    Number(u8),
    Watt,
    Ohm,
    Ampere,
    AmpereHour,
    /// A size in inches or centimetres, which decides nothing here.
    Inch,
    Volt,
    /// How coils are hooked up, which is chosen here.
    HookUp,
    /// Parts one thing from the next: and, with.
    And,
    /// Says nothing by itself.
    Filler,
}

/// A meaning with its words in each language.
pub(super) struct Row {
    pub(super) means: Meaning,
    english: &'static [&'static str],
    german: &'static [&'static str],
}

impl Row {
    /// Its words in both languages.
    fn words(&self) -> impl Iterator<Item = &'static str> {
        self.english.iter().chain(self.german).copied()
    }
}

const fn row(means: Meaning, english: &'static [&'static str], german: &'static [&'static str]) -> Row {
    Row {
        means,
        english,
        german,
    }
}

use Meaning::*;

#[rustfmt::skip]
pub(super) const ROWS: &[Row] = &[
    row(Body(BodyForm::Hatchback), &["hatchback", "hatch"], &["Schrägheck", "kleinwagen", "fließheck", "steilheck"]),
    row(Body(BodyForm::Saloon), &["saloon", "sedan"], &["Limousine", "stufenheck"]),
    row(Body(BodyForm::Estate), &["estate", "estate car", "station wagon", "wagon", "suv", "off-roader"], &["Kombi", "geländewagen"]),
    row(Body(BodyForm::Van), &["van", "panel van"], &["Kastenwagen", "transporter", "lieferwagen"]),
    row(Body(BodyForm::PickUp), &["pick-up", "pickup", "truck"], &["Pritschenwagen"]),
    row(Body(BodyForm::Camper), &["camper", "camper van", "campervan", "motorhome"], &["Wohnmobil", "reisemobil", "campingbus"]),
    row(Drive(DriveSide::Left), &["left-hand drive", "left hand", "lhd"], &["Linkslenker"]),
    row(Drive(DriveSide::Right), &["right-hand drive", "right hand", "rhd"], &["Rechtslenker"]),
    row(Battery, &["battery", "starter battery", "main battery", "batteries"], &["Batterie", "batterien", "starterbatterie", "hauptbatterie"]),
    row(Second, &["extra", "second", "additional", "auxiliary", "aux", "leisure", "house", "another"],
        &["Zusatz", "zweite", "zweit", "zusätzliche", "bord", "versorger", "versorgungs", "aufbau"]),
    row(Chemistry(self::Chemistry::Agm), &["AGM", "gel"], &["AGM", "vlies"]),
    row(Chemistry(self::Chemistry::Flooded), &["flooded", "lead acid", "wet"], &["nass", "nassbatterie", "blei säure", "blei"]),
    row(Chemistry(self::Chemistry::Lithium), &["lithium", "lifepo", "lfp", "lithium iron phosphate"], &["Lithium", "lithium eisenphosphat"]),
    row(Cranking, &["cold cranking", "cold cranking current", "cca", "cranking"], &["Kälteprüfstrom", "kaltstartstrom", "startstrom"]),
    row(Stands(BatteryPlace::Rear), &["in the load area", "load area", "in the boot", "boot", "in the trunk", "trunk", "in the rear", "at the back", "in the back"],
        &["im Laderaum", "laderaum", "im kofferraum", "kofferraum", "im heck", "hinten"]),
    row(Stands(BatteryPlace::Front), &["in the engine bay", "engine bay", "under the bonnet", "under the hood", "in front"],
        &["im Motorraum", "motorraum", "unter der motorhaube", "vorn", "vorne"]),
    row(Alternator, &["alternator", "generator"], &["Lichtmaschine", "lima", "generator"]),
    row(Isolator(IsolatorKind::Sensing), &["isolator", "sensing relay", "voltage sensing relay", "split charge", "split charge relay", "battery isolator"],
        &["Trennrelais", "spannungsabhängiges trennrelais", "batterietrennrelais"]),
    row(Isolator(IsolatorKind::Ignition), &["ignition relay", "relay by ignition"], &["Zündungsrelais", "zündungsgesteuertes trennrelais"]),
    row(Isolator(IsolatorKind::Diode), &["diode isolator", "diodes"], &["Trenndiode", "diodentrenner", "trenndioden"]),
    row(Isolator(IsolatorKind::Manual), &["manual switch", "battery switch"], &["Batterieschalter", "handschalter"]),
    row(Charger, &["DC-DC charger", "dc dc", "dc to dc charger", "dcdc charger", "dcdc", "battery to battery charger", "b2b charger", "b2b", "charging booster", "charger"],
        &["Ladebooster", "ladewandler", "dc dc wandler", "dc dc lader", "dc dc ladegerät", "batterie zu batterie lader", "b2b lader", "b2b", "booster"]),
    row(Solar, &["solar panel", "solar", "solar panels", "solar controller", "solar charge controller", "mppt", "mppt controller", "mppt charge controller", "photovoltaic panel"],
        &["Solarmodul", "solar", "solarpanel", "solarpanele", "solarmodule", "solaranlage", "solarregler", "solarladeregler", "mppt regler", "mppt laderegler"]),
    row(Head, &["radio", "head unit", "headunit", "stereo unit", "receiver"], &["Radio", "autoradio", "headunit", "radiogerät"]),
    row(Factory, &["factory", "original", "oem", "stock", "maker's", "standard", "keep", "keeping", "keeps", "stays", "stay", "remains"], &["Werks", "behalten", "bleibt", "bleiben", "original", "serien", "originales", "serienmäßiges", "werkseitiges"]),
    row(LineOutputs, &["line outputs", "line output", "pairs of line outputs", "line outs", "phono outputs", "phono pairs", "preouts", "preout", "pre outs", "pre out", "rca outputs", "rca pairs"],
        &["Line-Ausgänge", "line ausgang", "paar line ausgänge", "cinchausgänge", "cinch ausgänge", "paar cinch", "cinchpaare", "vorverstärkerausgänge", "vorverstärkerausgängen", "cinchausgängen"]),
    row(SpeakerOutputs, &["speaker outputs", "speaker output", "own outputs"], &["Lautsprecherausgänge", "lautsprecherausgang", "lautsprecherausgängen"]),
    row(Processor, &["processor", "signal processor", "dsp", "sound processor"], &["Prozessor", "signalprozessor", "dsp", "klangprozessor"]),
    row(Outputs, &["outputs", "output", "out", "outs"], &["Ausgänge", "ausgang", "ausgängen"]),
    row(Amplifier, &["amplifier", "amp", "amps", "amplifiers", "power amplifier"], &["Endstufe", "endstufen", "verstärker", "amp"]),
    row(Mono, &["mono", "monoblock"], &["Mono", "monoblock", "monoblöcke", "monoendstufe", "monoendstufen"]),
    row(Stereo, &["two channel", "stereo"], &["stereo", "zweikanal"]),
    row(Channels, &["channel", "channels", "ch"], &["Kanäle", "kanal", "kanälen", "kanalig"]),
    row(Bridged, &["bridged", "bridge", "bridgeable"], &["gebrückt", "brücke", "brückbar", "gebrückte", "gebrückten", "gebrückter"]),
    row(Minimum, &["minimum", "min", "stable", "stable at", "stable to", "stable down to", "at least"], &["mindestens", "minimal", "stabil", "stabil bis", "stabil an", "min", "ab"]),
    row(At, &["at", "@", "into", "off", "driven by"], &["an", "bei", "@"]),
    row(Class(AmplifierClass::D), &["class D", "digital"], &["Klasse D", "digital", "digitale"]),
    row(Class(AmplifierClass::Ab), &["class AB", "analogue"], &["Klasse AB", "analog", "analoge"]),
    row(Speakers, &["speakers", "speaker", "loudspeakers", "loudspeaker"], &["Lautsprecher", "lautsprechern", "boxen", "system"]),
    row(Plays(Where::Front), &["front", "fronts"], &["Front", "vordere", "vorderen"]),
    row(Doors, &["doors", "door"], &["Türen", "tür"]),
    row(Plays(Where::Rear), &["rear", "rears", "back"], &["Heck", "hintere", "hinteren", "rück"]),
    row(Plays(Where::Centre), &["centre", "center", "centre speaker", "center speaker"], &["Center", "mitten", "mittel", "centerlautsprecher"]),
    row(Plays(Where::Bass), &["subwoofer", "sub", "subs", "subwoofers", "bass", "bass speaker"], &["Subwoofer", "sub", "subs", "bass", "basslautsprecher", "bässe"]),
    row(Components, &["components", "component", "component set", "component speakers", "two way components", "two way", "separates"],
        &["Komponenten", "kompo", "komponentensystem", "komponentenlautsprecher", "zweiwege", "kompos"]),
    row(ThreeWay, &["3-way", "three way", "three way components"], &["3-Wege", "dreiwege", "drei wege"]),
    row(Active, &["active", "fully active", "actively", "powered"], &["aktiv", "aktive", "aktives", "aktiver", "aktiven", "vollaktiv", "vollaktive", "vollaktives"]),
    row(FullRange, &["coaxial", "coaxials", "coax", "full range"], &["Koaxial", "koax", "koaxe", "breitbänder", "koaxiallautsprecher", "coax"]),
    row(Pair, &["pair", "pairs", "set", "pair of"], &["Paar", "pärchen", "satz"]),
    row(DualCoil, &["dual coil", "dual", "dual voice coil", "dvc", "double coil", "two coils", "coils"],
        &["Doppelschwingspule", "doppelspule", "doppelschwingspulen", "zwei schwingspulen", "schwingspulen", "doppelschwinger", "dvc", "dual"]),
    row(SingleCoil, &["single coil", "single", "svc"], &["Einfachschwingspule", "einzelspule", "einfachspule"]),
    row(Load(LoadKind::Lights), &["lights", "light", "lamps", "work lights", "work light", "light bar", "lighting"], &["Licht", "lampen", "leuchten", "lampe", "arbeitsscheinwerfer", "beleuchtung", "lichtbalken"]),
    row(Load(LoadKind::TwoWayRadio), &["two-way radio", "cb radio", "cb", "radio telephone"], &["Funkgerät", "betriebsfunk", "cb funk"]),
    row(Load(LoadKind::Inverter), &["inverter", "power inverter", "sine inverter", "pure sine inverter"], &["Wechselrichter", "spannungswandler", "sinuswechselrichter"]),
    row(Load(LoadKind::Winch), &["winch", "recovery winch", "electric winch"], &["Seilwinde", "winde", "bergewinde"]),
    row(Load(LoadKind::CoolBox), &["cool box", "fridge", "cooler", "cool boxes", "compressor fridge", "refrigerator"], &["Kühlbox", "kühlschrank", "kompressorkühlschrank", "kompressorkühlbox"]),
    row(Load(LoadKind::Pump), &["pump", "water pump"], &["Pumpe", "wasserpumpe"]),
    row(Load(LoadKind::Heater), &["heater", "parking heater"], &["Heizung", "standheizung"]),
    row(Load(LoadKind::Camera), &["camera", "dashboard camera", "dash camera", "dashcam"], &["Kamera", "armaturenbrettkamera", "dashcam"]),
    row(Load(LoadKind::Socket), &["socket", "sockets", "charging socket", "usb socket", "usb sockets", "usb", "charger socket"], &["Steckdose", "steckdosen", "ladebuchse", "usb buchse", "ladebuchsen", "usb buchsen", "buchse", "buchsen"]),
    row(Load(LoadKind::Other), &["load", "consumer"], &["Verbraucher"]),
    row(Harness, &["factory harness", "harness", "original harness", "factory plug"], &["Originalkabelbaum", "werkskabelbaum", "originalstecker", "kabelbaum", "fahrzeugkabelbaum"]),
    row(WiredReturn, &["wired return", "return wired", "return by wire", "return wire", "ground cable to the battery"], &["Rückleiter", "verdrahtete masse", "massekabel zur batterie", "masse zur batterie", "eigene rückleitung", "rückleitung"]),
    row(BodyReturn, &["return by body", "body return", "return through the body"], &["Masse über Karosserie", "masse über die karosserie", "karosseriemasse"]),
    row(Without, &["without", "no"], &["ohne", "kein", "keine", "keinen"]),
    row(Number(1), &["one"], &["eins"]),
    row(Number(2), &["two"], &["zwei"]),
    row(Number(3), &["three"], &["drei"]),
    row(Number(4), &["four"], &["vier"]),
    row(Number(5), &["five"], &["fünf"]),
    row(Number(6), &["six"], &["sechs"]),
    row(Number(8), &["eight"], &["acht"]),
    row(Watt, &["w", "watt", "watts", "wrms"], &["w", "watt"]),
    row(Ohm, &["ohm", "ohms", "ω"], &["ohm"]),
    row(Ampere, &["a", "ampere", "amperes"], &["a", "ampere"]),
    row(AmpereHour, &["ah", "ampere hours", "amp hours"], &["ah", "amperestunden"]),
    row(Inch, &["inch", "inches", "cm"], &["zoll", "cm"]),
    row(Volt, &["v", "volt", "volts"], &["v", "volt"]),
    row(HookUp, &["parallel", "in parallel", "series", "in series"], &["parallel", "in reihe", "seriell"]),
    row(And, &["and", "with", "plus", "also", "then"], &["und", "mit", "dazu", "sowie", "plus"]),
    row(Filler, &["a", "an", "the", "of", "in", "on", "for", "to", "by", "my", "some", "each", "per", "is", "there", "has", "have", "it", "new", "car", "rms", "power", "led", "round", "from", "vehicle", "continuous", "build", "under the seat", "behind the seat", "underseat",
            "replace", "replacing", "replaced", "upgrade", "upgraded", "swap", "change", "install", "fit", "add", "want", "wants", "please", "i", "we", "customer"],
        &["ein", "eine", "einen", "einem", "einer", "der", "die", "das", "den", "dem", "im", "am", "auf", "für", "zu", "je", "pro", "mein", "neue", "neuer", "neues", "auto", "wagen", "fahrzeug", "sinus", "leistung", "passiv", "passive", "passives", "vom", "von", "unter dem sitz", "hinter dem sitz",
            "ersetzen", "ersetzt", "tauschen", "austauschen", "getauscht", "einbauen", "nachrüsten", "soll", "sollen", "rein", "bitte", "kunde", "ich", "wir", "will", "möchte"]),
];

/// Most words of one entry.
pub(super) const MOST_WORDS: usize = 5;

/// The meaning of these words, in small letters with spaces between.
pub(super) fn meaning(words: &str) -> Option<Meaning> {
    ROWS.iter()
        .find(|row| row.words().any(|known| is_same(known, words)))
        .map(|row| row.means)
}

/// Whether an entry is these words, but for large letters and hyphens.
fn is_same(known: &str, words: &str) -> bool {
    let plain = known.chars().map(|c| if c == '-' { ' ' } else { c });
    plain.flat_map(char::to_lowercase).eq(words.chars())
}

/// The meanings that a word is put together of, as German writes them: `frontlautsprecher`, `zusatzbatterie`. Every piece has
/// to be known; the longest first piece that leaves a known rest is taken.
pub(super) fn compound(word: &str) -> Option<Vec<Meaning>> {
    const SHORTEST: usize = 3;
    if word.chars().count() < 2 * SHORTEST {
        return None;
    }
    let ends: Vec<usize> = word.char_indices().map(|(at, _)| at).collect();
    for end in ends.into_iter().skip(SHORTEST).rev() {
        let (Some(first), Some(rest)) = (word.get(..end), word.get(end..)) else {
            continue;
        };
        // Letters that German puts between: `schwingspule-n-subwoofer`.
        for link in ["", "s", "n", "en", "er"] {
            let Some(rest) = rest
                .strip_prefix(link)
                .filter(|rest| rest.chars().count() >= SHORTEST)
            else {
                continue;
            };
            let whole = |part: &str| meaning(part).filter(|it| !matches!(it, Filler | And));
            let Some(begins) = whole(first) else { continue };
            if let Some(ends) = whole(rest) {
                return Some(vec![begins, ends]);
            }
            if let Some(mut ends) = compound(rest) {
                ends.insert(0, begins);
                return Some(ends);
            }
        }
    }
    None
}

/// All single words, for a suggestion in the place of one that is not known.
pub(super) fn all_words() -> impl Iterator<Item = &'static str> {
    ROWS.iter()
        .filter(|row| !matches!(row.means, Filler))
        .flat_map(Row::words)
        .filter(|word| word.chars().count() > 2)
}

/// How a meaning is written.
pub(super) fn word(means: Meaning, language: Language) -> &'static str {
    let row = ROWS.iter().find(|row| row.means == means);
    row.and_then(|row| match language {
        Language::English => row.english.first(),
        Language::German => row.german.first(),
    })
    .copied()
    .unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A word of one language that meant something else in the other would be read wrongly in one of them.
    #[test]
    fn every_word_has_one_meaning_in_both_languages() {
        let mut seen: ordered::OrderedMap<String, Meaning> = ordered::OrderedMap::new();
        for row in ROWS {
            for known in row.words() {
                assert!(known.split([' ', '-']).count() <= MOST_WORDS, "{known}");
                let before = seen.insert(known.to_lowercase().replace('-', " "), row.means);
                // The unit `a` and the article are told apart by what stands before; the German `an` and the article by neither: both
                // say nothing that the rest of a phrase does not.
                let both = [before, Some(row.means)];
                let article =
                    both.contains(&Some(Filler)) && [Ampere, At].iter().any(|it| both.contains(&Some(*it)));
                assert!(
                    before.is_none_or(|it| it == row.means) || article,
                    "{known}: {before:?} {:?}",
                    row.means
                );
            }
        }
    }

    #[test]
    fn german_compounds_are_taken_apart() {
        let of = |word: &str| compound(word);
        assert_eq!(of("frontlautsprecher"), Some(vec![Plays(Where::Front), Speakers]));
        assert_eq!(of("zusatzbatterie"), Some(vec![Second, Battery]));
        assert_eq!(
            of("vierkanalendstufe"),
            Some(vec![Number(4), Channels, Amplifier])
        );
        assert_eq!(of("quetschkommode"), None);
    }
}
