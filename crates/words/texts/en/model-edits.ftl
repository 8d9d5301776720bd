### What steps of work are called in the undo list, and what is wrong with what was typed.

## Steps of work.

edit-delete-nothing = Delete
edit-delete = Delete { $what }
edit-move-nothing = Move
edit-move = Move { $what }
edit-add = Add { $tag }
edit-set = Set { $name } of { $of }
edit-set-alone = Set { $name }
edit-set-end = Set an end's { $name } of { $of }
edit-word-label = label
edit-word-note = note
edit-word-place = place
edit-move-end = Move an end of { $run }
edit-rename = Rename { $from } to { $to }
edit-title = Set the title
edit-limit = Set the limit { $limit }
edit-limit-back = Take back the limit { $limit }
edit-leave-out = Leave out the check { $check }
edit-take-in = Take in again the check { $check }
edit-set-body = Set { $name } of the body
edit-route = Lay the way of { $run }
edit-reverse = Turn { $run } round
edit-copy-sheet = Copy { $from } to { $to }
edit-pull = Pull { $run }
edit-paste = Paste { $what }
edit-duplicate = Duplicate { $what }
edit-insert = Put { $part } into { $run }
edit-keep-reading = Keep the reading at { $at }
edit-remove-reading = Remove the reading at { $at }
edit-set-reading = Change what is told of the reading at { $at }

## What is wrong with a value.

error-not-finite = must be a finite number
error-out-of-range = { $number } is out of range: it takes { $least } to { $most }
error-no-count = `{ $text }` is not a whole number here
error-no-yes-no = `{ $text }` is neither yes nor no
error-text-too-long = is longer than { $most } bytes
error-no-properties = it has no properties
error-no-such-property = there is no such property here; there are { $names }
error-not-one-of = `{ $text }` is not one of { $words }
error-no-number = `{ $text }` is not a number; write it as { $like }
error-other-unit = `{ $text }` has a unit this value does not take; write it as { $like }
error-no-gauge = { $number } is not a known AWG number
error-no-such-gauge = there is no `{ $text }` here; it takes 24AWG to 4/0AWG, even numbers below 4
error-no-colour = `{ $text }` is not a colour; write RD, WHBK for white with a black tracer (IEC 60757 letters), or ? where nobody knows
error-section = in `{ $text }`: { $why }
error-section-channels = `{ $count }` should be the number of channels, like `4x` (1 to 12)
error-section-after = after `{ $word }`: { $why }
error-section-word = `{ $word }` is not understood; it takes 75W@4ohm, min, bridged, hp, lp
error-section-powers = more than 8 powers are stated
error-section-no-power = no power is stated, like 75W@4ohm
error-section-bridged = no power is stated after `bridged`
error-channels = an amplifier has 1 to 12 channels in all
error-curve-pair = “{ $text }” is no pair of a multiple and a time; write it as 1.35:600,2:5,6:0.1
error-curve-order = operating times are at most 24 pairs, the multiple rising and the time not
error-outputs = a block has at most 12 outputs
error-cavities = a plug has 1 to 60 cavities
error-position = `{ $position }` is not a position: it takes 1 to 4 letters or digits
error-position-twice = position { $position } stands twice
error-function = the function of { $position } is longer than 60 bytes
error-pair = `{ $word }` is not a pair of cavities like 1-3
error-pairs = it takes up to 30 pairs of cavity positions like 1-3
error-computed = ({ $inner }) is computed; to set it, write the value without the parentheses, as it was measured

## What is wrong with a step of work.

error-no-sheet = the job has no sheet { $sheet }
error-no-part = there is no part { $id } on this sheet
error-no-run = there is no run { $id } on this sheet
error-no-terminal = there is no terminal { $terminal } on this sheet
error-same-end = a run ends somewhere else than it begins
error-no-way-through = a run cannot go through a part like this: { $kind }
error-run-place = a run has a route, not a place
error-tag-taken = there is another `{ $tag }` on this sheet; the next free one is { $free }
error-length = is { $bytes } bytes long; it may have { $most }
error-no-id = `{ $text }` is not an id; write it as { $like }
error-tag-empty = a tag may not be empty; write one like F1
error-tag-long = a tag may be { $most } bytes long, this one has { $bytes }
error-tag-sign = `{ $tag }` is not a tag: it takes letters, digits and `_`, not `{ $bad }`
error-too-long = { $what ->
    [label] the label
    [note] the note
    [place] the place
    [title] the title
    [limit] the name of the limit
   *[check] the name of the check
} { $why }
error-place-empty = a place or passage must have a name; write one like shelf-left
error-place-long = the name of a place or passage may be { $most } bytes long, this one has { $bytes }
error-place-sign = `{ $place }` is not the name of a place: it takes letters, digits, `-` and `_`, not `{ $bad }`
error-places = the job tells of { $most } places or passages already, and there may be no more
error-place-taken = something is told of `{ $place }` already; change that, or take another name
error-place-untold = nothing is told of `{ $place }`
error-route-long = a route has at most { $most } places and passages
error-route-place = a place of the route { $why }
error-off-board = { $x },{ $y } is off the board, which reaches to { $most } on every side
error-limit = a limit is a number from 0 to a million
error-limits = there are { $most } limits set already; take one of them back first
error-left-out = { $most } checks are left out already; take one of them in again first
error-too-much = the sheet would hold more than it may
error-readings = a sheet keeps { $most } readings at most
error-reading-gone = this reading is not there any more

## Why a job file does not open.

job-file-too-large = the file has { $bytes } bytes; a job may have { $most } at most
job-file-no-text = the file is not UTF-8 text: byte { $byte } is none; it may be damaged or of another kind
job-file-no-json = the file is not JSON: line { $line }, column { $column }: { $why }; if it was cut short, open an earlier copy
job-file-misbuilt = the file cannot be read: { $why }
job-file-no-job = the file is not a job: { $why }
job-file-newer = the file was made by version { $version }, this reads up to { $reads }; open it with a newer version. It is left as it is
job-file-damaged = { $count ->
    [one] { $count } piece of the file cannot be read; the rest can be opened without it:{ "\u000A  " }{ $problems }
   *[other] { $count } pieces of the file cannot be read; the rest can be opened without them:{ "\u000A  " }{ $problems }
}

## What differs between two sheets.

change = { $name }: { $before }, now { $after }
run-loose = loose
change-tag = tag
change-name = name
change-place = place
change-fitted-by = fitted by
change-from = from
change-to = to
change-route = route
change-kind = kind
change-first-ending = first ending, { $name }
change-second-ending = second ending, { $name }

## The thread of a job, settings of equipment, pictures.

thread-complaint = complaint
thread-intake = line of the condition record
thread-offer = line of the quote
edit-thread-add = Add a { $what }
edit-thread-set = Set { $name } of a { $what }
edit-thread-remove = Remove a { $what }
edit-rate = Set { $name }
edit-tick = Tick off { $step }
edit-untick = Take the tick from { $step }
edit-picture-add = Add a picture of { $of }
edit-picture-set = Change what is said of a picture
edit-picture-remove = Remove a picture
error-thread-full = there may be { $most } lines; remove some first
error-thread-gone = this line is not there any more
error-pictures = a job keeps { $most } pictures at most
error-picture-large = the picture has { $bytes } bytes; it may have { $most }
error-picture-form = this is no picture of a form that is known; it takes JPEG, PNG and WebP
error-picture-gone = this picture is not there any more
error-no-money = `{ $text }` is not a price; write it as 120.50, up to { $most }
error-no-finding = `{ $text }` is not the name of a check; write silent-speaker LS4
error-guards = it takes up to { $most } passages, each name up to { $bytes } bytes long
