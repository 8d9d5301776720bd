## The help of the command line.

cli-about = Judges and computes wiring jobs: the engine of the diagram editor without a screen.
cli-after-job = JOB is a job file (*.loom.json), a job in the text form, `-` for standard input, the name of a worked job (@estate, @van, @camper), or a version of a lesson (@fuse-bigger-than-wire/bad, …/good; also FILE.lesson/bad).
cli-after-codes = Exit codes: 0 nothing grave; 1 findings of grade Stop, decided or undecided; 2 the input or the call was bad.
cli-after-care = Work on vehicle wiring can start a fire, set off an airbag, or hurt. The program advises; let a qualified person decide.
cli-usage = Usage
cli-usage-options = OPTIONS
cli-usage-command = COMMAND
cli-commands = Commands
cli-arguments = Arguments
cli-options = Options
cli-option-help = Print help
cli-option-version = Print version
cli-command-help = Print this message or the help of the given subcommand(s)
cli-command-check = Lists what is dangerous, wrong or untidy
cli-command-solve = Lists currents, drops and temperatures
cli-command-trace = Shows what feeds a part, and how its return gets back
cli-command-speakers = Shows what each channel drives, and what reaches each speaker
cli-command-draw = Draws the sheet as SVG
cli-command-deck = Writes a deck for a circuit simulator
cli-command-explain = Explains a check: what it looks for, why, its source
cli-command-lesson = Lists the lessons, or tells one: story, what to look at, questions
cli-command-schema = Writes the JSON Schema of the job file
cli-command-format = Writes a job anew, in the file form or the text form
cli-command-link = Makes a link that carries a whole job or lesson inside itself, and its printed code
cli-command-page = Writes a page file: one HTML file with the program and the job in it, which opens offline
cli-command-open = Opens a link or a page file and writes the job, or the lesson, that it carries
cli-option-language = Language of what is told: en or de; without it, the one that LC_ALL, LC_MESSAGES or LANG names
cli-option-units = Units of lengths and wire sizes: metric, or awg for feet, inches and gauge numbers
cli-option-job = The job
cli-option-sheet = The sheet: found, plan or built. Without it, the last of these that the job has
cli-option-state = Instead of the job's own: parked, engine-off, idle or cruise
cli-option-duty = Instead of the job's own: idle, speech, music, loud or tone
cli-option-profile = Instead of the job's own: common-practice or small-craft
cli-option-json = Writes JSON instead of text
cli-option-remedies = Adds to each finding what to do
cli-option-part = Tag of the part; without it, every part that draws current
cli-option-output = Where to write
cli-option-output-draw = Where to write; standard output without it
cli-option-under = Lays another sheet of the job under this one, to show what is new, changed and removed: found, plan or built
cli-option-arrange = Arranges all parts anew
cli-option-paper = Paper: light, dark or print
cli-option-speakers = Writes the speaker network for AC analysis instead of the supply network
cli-option-level = Level of the loads in the supply network: mean, rms or burst
cli-option-check = Name of the check; without it, a list of all
cli-option-all = Explains every check
cli-option-markdown = Writes markdown as it is, without fitting it to the terminal
cli-option-lesson = Key of a built-in lesson, a file *.lesson, or a link that carries one; without it, a list of all
cli-option-answers = Shows the right answers, the explanation and the faults to be found
cli-option-problems = Says what is wrong with the lesson itself: for whoever writes one
cli-option-text = Writes the text form instead of the file form
cli-option-text-lesson = Writes the lesson's text
cli-option-text-open = Writes the text form instead of the file form. A lesson has its text only
cli-option-job-link = The job; or a lesson: a file *.lesson, or the key of a built-in one
cli-option-address = The address that the link starts with: where the page is served from
cli-option-notes = Shows notes and remarks too. They stay out otherwise
cli-option-names = Shows the vehicle's name and who drew it too. They stay out otherwise
cli-option-prices = Shows the quote and its prices too. They stay out otherwise
cli-option-pictures = Takes the pictures in too. They stay out otherwise
cli-option-code = Writes the printed code of the link to this SVG file
cli-option-app = The page that the job is put into: page.html of the built program
cli-option-link = The link, a page file, or `-` to read a link from standard input

## What is wrong with a call.

cli-error = error: { $what }
cli-error-unknown = there is no argument `{ $argument }` here
cli-error-command = there is no command `{ $command }`
cli-error-value = `{ $value }` does not do for { $argument }: { $why }
cli-error-takes = it takes { $words }
cli-error-missing-value = { $argument } needs a value
cli-error-missing = missing: { $arguments }
cli-error-conflict = { $argument } and { $other } do not go together
cli-error-no-command = a command is missing
cli-error-twice = { $argument } stands more than once
cli-error-more = `loomwright --help` tells more.
cli-cannot-read = { $name }: cannot be read: { $error }
cli-cannot-write = { $name }: cannot be written: { $error }
cli-cannot-write-json = cannot write JSON: { $error }
cli-not-utf8 = { $name }: byte { $at } is not UTF-8; a job is a UTF-8 text or a *.loom.json file
cli-not-text = { $name }: cannot be read as text: { $error }
cli-two-versions = { $name }: a lesson has two versions, { $of }/bad and { $of }/good
cli-no-worked-job = there is no worked job { $name }; there are { $names }
cli-no-lesson-meant = there is no lesson `{ $name }`; did you mean `{ $meant }`?
cli-no-lesson = there is no lesson `{ $name }`; `loomwright lesson` lists them; a lesson of your own is a file *.lesson
cli-no-sheet = { $job }: there is no sheet `{ $sheet }`; the job has { $there }
cli-no-sheet-at-all = { $job }: the job has no sheet
cli-none = none
cli-no-part = there is no part { $tag } on the sheet; there are { $tags }
cli-no-check = there is no check `{ $name }`; `loomwright explain` lists them all
cli-no-check-near = there is no check `{ $name }`; there are { $near }; `loomwright explain` lists them all
cli-under-itself = the sheet `{ $sheet }` cannot lie under itself; --sheet says which one is on top
cli-no-sheet-under = there is no sheet `{ $sheet }` to lay under `{ $above }`; besides it the job has { $there }
cli-code-too-long = { $job }: as a link this has { $characters } characters and a printed code holds { $most }; nothing was written
cli-no-app-hint = `cargo xtask bundle` builds the program with its page.html into dist/; --app names another one
cli-not-solved = The network could not be solved: { $why }

## Answers.

cli-untitled = Job without a title
cli-written = { $file } written.
cli-written-bytes = { $file } written, { $bytes } bytes.
cli-no-findings = No findings. The checks know the drawing, not the vehicle: have a qualified person look at it.
cli-assumed = (assumed: { $properties })
cli-counts = { $stop } Stop, { $fix } Fix, { $tidy } Tidy; { $undecided } of them undecided (marked ?).
cli-care = Before any work: isolate the battery, keep away from airbag and high-voltage circuits, follow the vehicle maker's instructions and the law of the place, and let a qualified person decide.
cli-column-grade = Grade
cli-column-check = Check
cli-column-where = Where
cli-column-what = What
cli-column-holds = Holds when
cli-column-run = Run
cli-column-purpose = Purpose
cli-column-mean = Mean A
cli-column-rms = RMS A
cli-column-burst = Burst A
cli-column-may = May A
cli-column-drop = Drop mV
cli-column-loss = Loss W
cli-column-part = Part
cli-column-name = Name
cli-column-burst-volts = Burst V
cli-column-state = State
cli-column-channel = Channel
cli-column-drives = Drives
cli-column-nominal = Nominal Ω
cli-column-least = Least |Z| Ω
cli-column-least-at = at Hz
cli-column-may-ohms = May Ω
cli-column-dc = DC Ω
cli-column-remark = Remark
cli-column-speaker = Speaker
cli-column-from = From
cli-column-phase = Phase
cli-column-high-pass = No bass below Hz
cli-column-lead-loss = Lead loss dB
cli-column-silent = Silent because
cli-column-lesson = Lesson
cli-column-title = Title
cli-nothing-solved = No source on the sheet feeds anything.
cli-delivers = The feed delivers only { $share } of what the loads ask.
cli-purpose = { $purpose ->
    [feed] Feed
    [between-sources] between sources
    [return] Return
    [signal] Signal
    [turn-on] turn-on
    [speaker] Speaker
   *[nothing] Nothing
}
cli-when-loud = when it is loud { $why }
cli-energy = Draw { $draw } of { $available } that the alternator can give; standing current { $standing }.
cli-balance = Balance: currents to { $current } of the largest, power to { $power }.
cli-note = Note: { $note }
cli-coils-oppose = coils oppose
cli-in-phase = in phase
cli-reversed = reversed
cli-no-device = no device that every way crosses
cli-then = { $first }, then { $second }
cli-fed = fed at { $terminal } from { $source } over { $runs }: { $length }{ $ways ->
    [several] , one of several ways; protected by { $devices }
   *[one] ; protected by { $devices }
}
cli-no-return = no return to { $source }
cli-returns = returns to { $source } over { $runs }: ground lead { $length }
cli-returns-ohms = , { $ohms } in all
cli-returns-through-body = , through the body
cli-returns-body = , through the body at { $grounds }
cli-returns-devices = ; in it: { $devices }
cli-returns-shields = ; signal shields carry return current: { $runs }
cli-part-draws-nothing = That part draws no supply current, or nothing feeds it.
cli-no-part-draws = No part on the sheet draws supply current.
cli-loses = { $part } { $name }: loses { $drop } at burst, feed and return together
cli-part-name = { $part } { $name }
cli-nothing-feeds = nothing feeds it
cli-fits-code = { $count } characters; fits a printed code.
cli-fits-no-code = { $count } characters; too long for a printed code.
cli-left-out = Left out: { $things }.
cli-left-notes = { $count } notes and remarks (--notes shows them)
cli-left-names = { $count } names (--names shows them)
cli-left-prices = { $count } lines of the quote (--prices shows them)
cli-left-pictures = { $count } pictures (`page --pictures` takes them in)
cli-left-unknown = { $count } fields that this version does not know
cli-lesson-right = { $name }: nothing is wrong with the lesson.
cli-lesson-looks = Look at
cli-lesson-breaks = Break
cli-lesson-questions = Questions
cli-lesson-explanation = Explanation
cli-lesson-source = Source: { $sources }.
cli-lesson-faults = Faults to be found in the bad version
cli-lesson-care = Breaks are tried on the drawing, never on a vehicle.
cli-lesson-versions = Its two versions: @{ $key }/bad and @{ $key }/good.
