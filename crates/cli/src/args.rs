//! Arguments as they are written. What each is for stands in the messages `cli-command-…` and `cli-option-…`, where the help
//! takes it from in every language.

use crate::speech::{Units, tell};
use circuit::solve::Level;
use clap::{Args, Parser, Subcommand};
use model::SheetKind;
use model::job::{Duty, Profile, VehicleState};
use words::{Language, say};

#[derive(Debug, Parser)]
#[command(name = "loomwright", version)]
pub(crate) struct Arguments {
    // Both were looked at before the rest, by `speech::read_by`; here they are held against what they take.
    #[arg(long, global = true, value_name = "LANGUAGE", value_parser = language)]
    pub(crate) language: Option<Language>,
    #[arg(long, global = true, value_name = "UNITS", value_parser = units)]
    pub(crate) units: Option<Units>,
    #[command(subcommand)]
    pub(crate) command: Command,
}

#[derive(Debug, Subcommand)]
pub(crate) enum Command {
    Check(CheckCall),
    Solve(JobCall),
    Trace(TraceCall),
    Meter(MeterCall),
    FindFault(FindFaultCall),
    Prove(JobCall),
    Break(BreakCall),
    Speakers(JobCall),
    Draw(DrawCall),
    Routes(RoutesCall),
    Mend(MendCall),
    Deck(DeckCall),
    Explain(ExplainCall),
    Lesson(LessonCall),
    Size(SizeCall),
    Schema,
    Format(FormatCall),
    Link(LinkCall),
    Lists(ListsCall),
    Labels(LabelsCall),
    Handover(HandoverCall),
    Page(PageCall),
    Open(OpenCall),
    Start(StartCall),
}

#[derive(Debug, Args)]
pub(crate) struct JobCall {
    #[arg(value_name = "JOB")]
    pub(crate) job: String,
    #[arg(long, value_parser = sheet)]
    pub(crate) sheet: Option<SheetKind>,
    #[arg(long, value_parser = state)]
    pub(crate) state: Option<VehicleState>,
    #[arg(long, value_parser = duty)]
    pub(crate) duty: Option<Duty>,
    #[arg(long, value_parser = profile)]
    pub(crate) profile: Option<Profile>,
    #[arg(long)]
    pub(crate) json: bool,
}

#[derive(Debug, Args)]
pub(crate) struct CheckCall {
    #[command(flatten)]
    pub(crate) job: JobCall,
    #[arg(long)]
    pub(crate) remedies: bool,
}

#[derive(Debug, Args)]
pub(crate) struct SizeCall {
    #[command(flatten)]
    pub(crate) job: JobCall,
    #[arg(long, value_parser = ["metric", "awg"])]
    pub(crate) series: Option<String>,
    #[arg(long, default_value = "metal", value_parser = ["metal", "cost"])]
    pub(crate) by: String,
    #[arg(long, value_name = "FILE")]
    pub(crate) price_list: Option<String>,
    #[arg(long)]
    pub(crate) as_set: bool,
    #[arg(short, long, value_name = "FILE")]
    pub(crate) output: Option<String>,
}

#[derive(Debug, Args)]
pub(crate) struct TraceCall {
    #[command(flatten)]
    pub(crate) job: JobCall,
    #[arg(long, value_name = "TAG")]
    pub(crate) part: Option<String>,
}

#[derive(Debug, Args)]
pub(crate) struct MeterCall {
    #[command(flatten)]
    pub(crate) job: JobCall,
    #[arg(value_name = "POINT")]
    pub(crate) red: Option<String>,
    #[arg(value_name = "POINT")]
    pub(crate) black: Option<String>,
    #[arg(long, value_name = "FAULT")]
    pub(crate) broken: Vec<String>,
}

#[derive(Debug, Args)]
pub(crate) struct FindFaultCall {
    #[command(flatten)]
    pub(crate) job: JobCall,
    #[arg(long, value_name = "READING")]
    pub(crate) reading: Vec<String>,
    #[arg(long, value_name = "SYMPTOM")]
    pub(crate) symptom: Vec<String>,
}

#[derive(Debug, Args)]
pub(crate) struct BreakCall {
    #[command(flatten)]
    pub(crate) job: JobCall,
    #[arg(value_name = "BREAK", required = true)]
    pub(crate) breaks: Vec<String>,
}

#[derive(Debug, Args)]
pub(crate) struct DrawCall {
    #[command(flatten)]
    pub(crate) job: JobCall,
    #[arg(short, long, value_name = "FILE")]
    pub(crate) output: Option<String>,
    #[arg(long, value_parser = sheet, value_name = "SHEET")]
    pub(crate) under: Option<SheetKind>,
    #[arg(long, conflicts_with = "under")]
    pub(crate) arrange: bool,
    #[arg(long, conflicts_with_all = ["under", "arrange"])]
    pub(crate) body: bool,
    #[arg(long, default_value = "light", value_parser = ["light", "dark", "print"])]
    pub(crate) paper: String,
}

#[derive(Debug, Args)]
pub(crate) struct RoutesCall {
    #[command(flatten)]
    pub(crate) job: JobCall,
    #[arg(value_name = "RUN")]
    pub(crate) run: Option<String>,
    #[arg(long)]
    pub(crate) anew: bool,
    #[arg(long, conflicts_with_all = ["run", "anew", "output"])]
    pub(crate) places: bool,
    #[arg(short, long, value_name = "FILE")]
    pub(crate) output: Option<String>,
}

#[derive(Debug, Args)]
pub(crate) struct MendCall {
    #[command(flatten)]
    pub(crate) job: JobCall,
    #[arg(long, conflicts_with = "finding")]
    pub(crate) all: bool,
    #[arg(long, value_name = "NUMBER")]
    pub(crate) finding: Option<usize>,
    #[arg(long, value_name = "NUMBER", default_value_t = 1, requires = "finding")]
    pub(crate) way: usize,
    #[arg(short, long, value_name = "FILE")]
    pub(crate) output: Option<String>,
    #[arg(long)]
    pub(crate) dry_run: bool,
}

#[derive(Debug, Args)]
pub(crate) struct DeckCall {
    #[command(flatten)]
    pub(crate) job: JobCall,
    #[arg(long)]
    pub(crate) speakers: bool,
    #[arg(long, default_value = "mean", value_parser = level)]
    pub(crate) level: Level,
}

#[derive(Debug, Args)]
pub(crate) struct ExplainCall {
    #[arg(value_name = "CHECK")]
    pub(crate) check: Option<String>,
    #[arg(long, conflicts_with = "check")]
    pub(crate) all: bool,
    #[arg(long)]
    pub(crate) markdown: bool,
}

#[derive(Debug, Args)]
pub(crate) struct LessonCall {
    #[arg(value_name = "LESSON")]
    pub(crate) lesson: Option<String>,
    #[arg(long)]
    pub(crate) answers: bool,
    #[arg(long, conflicts_with = "answers")]
    pub(crate) problems: bool,
    #[arg(long, conflicts_with_all = ["answers", "problems"])]
    pub(crate) text: bool,
}

#[derive(Debug, Args)]
pub(crate) struct FormatCall {
    #[arg(value_name = "JOB")]
    pub(crate) job: String,
    #[arg(long)]
    pub(crate) text: bool,
}

#[derive(Debug, Args)]
pub(crate) struct LinkCall {
    #[arg(value_name = "JOB")]
    pub(crate) job: String,
    #[arg(long, value_name = "ADDRESS")]
    pub(crate) address: String,
    #[arg(long)]
    pub(crate) notes: bool,
    #[arg(long)]
    pub(crate) names: bool,
    #[arg(long)]
    pub(crate) prices: bool,
    #[arg(long, value_name = "FILE")]
    pub(crate) code: Option<String>,
    #[arg(long)]
    pub(crate) json: bool,
}

#[derive(Debug, Args)]
pub(crate) struct ListsCall {
    #[command(flatten)]
    pub(crate) job: JobCall,
    #[arg(long = "list", value_name = "LIST", value_delimiter = ',')]
    pub(crate) lists: Vec<String>,
    #[arg(long, value_parser = sheet, value_name = "SHEET")]
    pub(crate) since: Option<SheetKind>,
    #[arg(long, conflicts_with = "json")]
    pub(crate) csv: bool,
    #[arg(short, long, value_name = "FOLDER", requires = "csv")]
    pub(crate) output: Option<String>,
    #[arg(long, value_name = "PERCENT", value_parser = percent)]
    pub(crate) waste: Option<f64>,
    #[arg(long, value_name = "FILE")]
    pub(crate) price_list: Option<String>,
}

#[derive(Debug, Args)]
pub(crate) struct LabelsCall {
    #[command(flatten)]
    pub(crate) job: JobCall,
    #[arg(long, value_parser = sheet, value_name = "SHEET")]
    pub(crate) since: Option<SheetKind>,
    #[arg(short, long, value_name = "FILE")]
    pub(crate) output: String,
}

#[derive(Debug, Args)]
pub(crate) struct HandoverCall {
    #[arg(value_name = "JOB")]
    pub(crate) job: String,
    #[arg(short, long, value_name = "FILE")]
    pub(crate) output: String,
    #[arg(long, value_parser = sheet)]
    pub(crate) sheet: Option<SheetKind>,
    #[arg(long, value_parser = readers, default_value = "both", value_name = "READERS")]
    pub(crate) readers: paperwork::Readers,
    #[arg(long)]
    pub(crate) notes: bool,
    #[arg(long)]
    pub(crate) names: bool,
    #[arg(long)]
    pub(crate) prices: bool,
    #[arg(long)]
    pub(crate) pictures: bool,
}

#[derive(Debug, Args)]
pub(crate) struct PageCall {
    #[arg(value_name = "JOB")]
    pub(crate) job: String,
    #[arg(short, long, value_name = "FILE")]
    pub(crate) output: String,
    #[arg(long, value_name = "FILE", default_value = "dist/page.html")]
    pub(crate) app: String,
    #[arg(long)]
    pub(crate) notes: bool,
    #[arg(long)]
    pub(crate) names: bool,
    #[arg(long)]
    pub(crate) prices: bool,
    #[arg(long)]
    pub(crate) pictures: bool,
}

#[derive(Debug, Args)]
pub(crate) struct OpenCall {
    #[arg(value_name = "LINK")]
    pub(crate) link: String,
    #[arg(long)]
    pub(crate) text: bool,
}

#[derive(Debug, Args)]
pub(crate) struct StartCall {
    #[arg(value_name = "WISH", required_unless_present = "form")]
    pub(crate) wish: Option<String>,
    #[arg(long, value_name = "FILE", conflicts_with = "wish")]
    pub(crate) form: Option<String>,
    #[arg(short, long, value_name = "FILE")]
    pub(crate) output: Option<String>,
    #[arg(long, conflicts_with = "json")]
    pub(crate) text: bool,
    #[arg(long)]
    pub(crate) anyway: bool,
    #[arg(long)]
    pub(crate) json: bool,
}

macro_rules! word {
    ($function:ident, $kind:ty) => {
        fn $function(word: &str) -> Result<$kind, String> {
            <$kind>::from_word(word).ok_or_else(|| {
                let words: Vec<&str> = <$kind>::ALL.iter().map(|value| value.word()).collect();
                takes(&words)
            })
        }
    };
}
word!(sheet, SheetKind);
word!(state, VehicleState);
word!(duty, Duty);
word!(profile, Profile);

fn level(word: &str) -> Result<Level, String> {
    match word {
        "mean" => Ok(Level::Mean),
        "rms" => Ok(Level::Rms),
        "burst" => Ok(Level::Burst),
        _ => Err(takes(&["mean", "rms", "burst"])),
    }
}

/// A share in per cent, with either decimal sign.
fn percent(text: &str) -> Result<f64, String> {
    let number = text.trim_end_matches('%').trim().replace(',', ".").parse().ok();
    number
        .filter(|percent| (0.0..=100.0).contains(percent))
        .ok_or_else(|| takes(&["0 … 100"]))
}

fn readers(word: &str) -> Result<paperwork::Readers, String> {
    paperwork::Readers::from_word(word).ok_or_else(|| takes(paperwork::Readers::WORDS))
}

fn language(tag: &str) -> Result<Language, String> {
    Language::of_tag(tag).ok_or_else(|| {
        let tags: Vec<&str> = Language::ALL.iter().map(|language| language.tag()).collect();
        takes(&tags)
    })
}

fn units(word: &str) -> Result<Units, String> {
    Units::from_word(word).ok_or_else(|| takes(&Units::WORDS))
}

fn takes(words: &[&str]) -> String {
    tell(&say!("cli-error-takes", words = words.join(", ")))
}
