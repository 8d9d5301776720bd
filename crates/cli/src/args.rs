//! Arguments as they are written.

use circuit::solve::Level;
use clap::{Args, Parser, Subcommand};
use model::SheetKind;
use model::job::{Duty, Profile, VehicleState};

/// Judges and computes wiring jobs: the engine of the diagram editor without a screen.
#[derive(Debug, Parser)]
#[command(
    name = "loomwright",
    version,
    after_help = "JOB is a job file (*.loom.json), a job in the text form, `-` for standard input, the name of a worked job (@estate, @van, @camper), or a version of a lesson (@fuse-bigger-than-wire/bad, …/good; also FILE.lesson/bad).\n\
Exit codes: 0 nothing grave; 1 findings of grade Stop, decided or undecided; 2 the input or the call was bad.\n\
Work on vehicle wiring can start a fire, set off an airbag, or hurt. The program advises; let a qualified person decide."
)]
pub(crate) struct Arguments {
    #[command(subcommand)]
    pub(crate) command: Command,
}

#[derive(Debug, Subcommand)]
pub(crate) enum Command {
    /// Lists what is dangerous, wrong or untidy.
    Check(CheckCall),
    /// Lists currents, drops and temperatures.
    Solve(JobCall),
    /// Shows what feeds a part, and how its return gets back.
    Trace(TraceCall),
    /// Shows what each channel drives, and what reaches each speaker.
    Speakers(JobCall),
    /// Draws the sheet as SVG.
    Draw(DrawCall),
    /// Writes a deck for a circuit simulator.
    Deck(DeckCall),
    /// Explains a check: what it looks for, why, its source.
    Explain(ExplainCall),
    /// Lists the lessons, or tells one: story, what to look at, questions.
    Lesson(LessonCall),
    /// Writes the JSON Schema of the job file.
    Schema,
    /// Writes a job anew, in the file form or the text form.
    Format(FormatCall),
    /// Makes a link that carries a whole job or lesson inside itself, and its printed code.
    Link(LinkCall),
    /// Writes a page file: one HTML file with the program and the job in it, which opens offline.
    Page(PageCall),
    /// Opens a link or a page file and writes the job, or the lesson, that it carries.
    Open(OpenCall),
}

/// A job and the conditions to look at it under.
#[derive(Debug, Args)]
pub(crate) struct JobCall {
    /// The job.
    #[arg(value_name = "JOB")]
    pub(crate) job: String,
    /// The sheet: found, plan or built. Without it, the last of these that the job has.
    #[arg(long, value_parser = sheet)]
    pub(crate) sheet: Option<SheetKind>,
    /// Instead of the job's own: parked, engine-off, idle or cruise.
    #[arg(long, value_parser = state)]
    pub(crate) state: Option<VehicleState>,
    /// Instead of the job's own: idle, speech, music, loud or tone.
    #[arg(long, value_parser = duty)]
    pub(crate) duty: Option<Duty>,
    /// Instead of the job's own: common-practice or small-craft.
    #[arg(long, value_parser = profile)]
    pub(crate) profile: Option<Profile>,
    /// Writes JSON instead of a table.
    #[arg(long)]
    pub(crate) json: bool,
}

#[derive(Debug, Args)]
pub(crate) struct CheckCall {
    #[command(flatten)]
    pub(crate) job: JobCall,
    /// Adds to each finding what to do.
    #[arg(long)]
    pub(crate) remedies: bool,
}

#[derive(Debug, Args)]
pub(crate) struct TraceCall {
    #[command(flatten)]
    pub(crate) job: JobCall,
    /// Tag of the part; without it, every part that draws current.
    #[arg(long, value_name = "TAG")]
    pub(crate) part: Option<String>,
}

#[derive(Debug, Args)]
pub(crate) struct DrawCall {
    #[command(flatten)]
    pub(crate) job: JobCall,
    /// Where to write; standard output without it.
    #[arg(short, long, value_name = "FILE")]
    pub(crate) output: Option<String>,
    /// Lays another sheet of the job under this one, to show what is new, changed and removed: found, plan or built.
    #[arg(long, value_parser = sheet, value_name = "SHEET")]
    pub(crate) under: Option<SheetKind>,
    /// Arranges all parts anew.
    #[arg(long, conflicts_with = "under")]
    pub(crate) arrange: bool,
    /// Paper: light, dark or print.
    #[arg(long, default_value = "light", value_parser = ["light", "dark", "print"])]
    pub(crate) paper: String,
}

#[derive(Debug, Args)]
pub(crate) struct DeckCall {
    #[command(flatten)]
    pub(crate) job: JobCall,
    /// Writes the speaker network for AC analysis instead of the supply network.
    #[arg(long)]
    pub(crate) speakers: bool,
    /// Level of the loads in the supply network: mean, rms or burst.
    #[arg(long, default_value = "mean", value_parser = level)]
    pub(crate) level: Level,
}

#[derive(Debug, Args)]
pub(crate) struct ExplainCall {
    /// Name of the check; without it, a list of all.
    #[arg(value_name = "CHECK")]
    pub(crate) check: Option<String>,
    /// Explains every check.
    #[arg(long, conflicts_with = "check")]
    pub(crate) all: bool,
    /// Writes markdown as it is, without fitting it to the terminal.
    #[arg(long)]
    pub(crate) markdown: bool,
}

#[derive(Debug, Args)]
pub(crate) struct LessonCall {
    /// Key of a built-in lesson, a file *.lesson, or a link that carries one; without it, a list of all.
    #[arg(value_name = "LESSON")]
    pub(crate) lesson: Option<String>,
    /// Shows the right answers, the explanation and the faults to be found.
    #[arg(long)]
    pub(crate) answers: bool,
    /// Says what is wrong with the lesson itself: for whoever writes one.
    #[arg(long, conflicts_with = "answers")]
    pub(crate) problems: bool,
    /// Writes the lesson's text.
    #[arg(long, conflicts_with_all = ["answers", "problems"])]
    pub(crate) text: bool,
}

#[derive(Debug, Args)]
pub(crate) struct FormatCall {
    /// The job.
    #[arg(value_name = "JOB")]
    pub(crate) job: String,
    /// Writes the text form instead of the file form.
    #[arg(long)]
    pub(crate) text: bool,
}

#[derive(Debug, Args)]
pub(crate) struct LinkCall {
    /// The job; or a lesson: a file *.lesson, or the key of a built-in one.
    #[arg(value_name = "JOB")]
    pub(crate) job: String,
    /// The address that the link starts with: where the page is served from.
    #[arg(long, value_name = "ADDRESS")]
    pub(crate) address: String,
    /// Shows notes and remarks too. They stay out otherwise.
    #[arg(long)]
    pub(crate) notes: bool,
    /// Shows the vehicle's name and who drew it too. They stay out otherwise.
    #[arg(long)]
    pub(crate) names: bool,
    /// Writes the printed code of the link to this SVG file.
    #[arg(long, value_name = "FILE")]
    pub(crate) code: Option<String>,
    /// Writes JSON instead of text.
    #[arg(long)]
    pub(crate) json: bool,
}

#[derive(Debug, Args)]
pub(crate) struct PageCall {
    /// The job.
    #[arg(value_name = "JOB")]
    pub(crate) job: String,
    /// Where to write.
    #[arg(short, long, value_name = "FILE")]
    pub(crate) output: String,
    /// The page that the job is put into: page.html of the built program.
    #[arg(long, value_name = "FILE", default_value = "dist/page.html")]
    pub(crate) app: String,
    /// Shows notes and remarks too. They stay out otherwise.
    #[arg(long)]
    pub(crate) notes: bool,
    /// Shows the vehicle's name and who drew it too. They stay out otherwise.
    #[arg(long)]
    pub(crate) names: bool,
}

#[derive(Debug, Args)]
pub(crate) struct OpenCall {
    /// The link, a page file, or `-` to read a link from standard input.
    #[arg(value_name = "LINK")]
    pub(crate) link: String,
    /// Writes the text form instead of the file form. A lesson has its text only.
    #[arg(long)]
    pub(crate) text: bool,
}

macro_rules! word {
    ($function:ident, $kind:ty) => {
        fn $function(word: &str) -> Result<$kind, String> {
            <$kind>::from_word(word).ok_or_else(|| {
                let words: Vec<&str> = <$kind>::ALL.iter().map(|value| value.word()).collect();
                format!("it takes {}", words.join(", "))
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
        _ => Err("it takes mean, rms, burst".to_owned()),
    }
}
