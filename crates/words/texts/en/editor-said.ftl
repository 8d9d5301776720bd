### What the editor says when something was done or is asked.

## What is said after a step of work.

undid = Undid: { $name }
did-again = Did again: { $name }
findings-cleared = { $gone ->
    [one] { $gone } finding cleared
   *[other] { $gone } findings cleared
}, { $left } left
finding-new = New finding, { $grade }: { $what }
findings-new = { $count } new findings, the gravest { $grade }: { $what }

## What actions say.

feeds-pick-first = Pick a part, terminal or run first, then ask what feeds it.
feeds-nothing = Nothing feeds { $thing }.
edit-turn = Turn { $what }
splice-pick-first = Pick one run to splice.
straighten-nothing = No run with bends put by hand is picked.
edit-straighten = Let { $run } find its way
edit-straighten-several = Let { $count ->
    [one] { $count } run
   *[other] { $count } runs
} find their way
tidy-already = It is tidy already.
edit-tidy = Tidy arrangement
finding-shown = { $grade }: { $what }
findings-none = No findings on this sheet.
mend-none = No mend is known for this; what to do is written in the note.
mended = Mended: { $what }
mended-all = { $count ->
    [one] { $count } mend made; one undo takes it back
   *[other] { $count } mends made; one undo takes all of them back
}
sheet-turned = Sheet { $sheet }

## A sheet laid under another.

under-none = There is nothing on the other sheets of this job to lay under this one.
under-nothing = Nothing is laid under this sheet.
under-new = new: not on { $sheet }
under-removed = removed: not on { $sheet }
under-alone = { $thing } is on { $sheet } alone.
look-only = This drawing is for looking at. Make a copy of your own to change it.

## The clipboard.

copy-pick-first = Pick parts to copy; runs between them come along.
copied = { $parts } and { $runs } copied
paste-no-text = The clipboard holds no text, and nothing was copied here yet.
paste-no-part = it holds no part
paste-refused = Nothing was pasted: the clipboard holds “{ $text }”, which is no part of a job ({ $why }).
paste-refused-kept = { $refused } What was copied here last is still kept: Ask, then Paste, puts it down.
paste-nothing = Nothing was copied yet.

## Bends of runs.

bend-pick-first = Pick one run first.
bend-none = No bend was put into it by hand. Shift and an arrow draws a piece of it aside.
bend-in-hand = Bend { $number } of { $count }. Shift and arrows move it, Delete takes it out.
bend-no-piece = No piece of it lies across this arrow.
bend-removed = Bend of { $run } taken out
edit-move-bend = Move a bend of { $run }
edit-bend = Bend { $run }
edit-remove-bend = Take out a bend of { $run }
picked = { $count } picked
placed = On the sheet: { $part }
place-into = Enter puts it into { $run }
place-beside = Beside { $run }: Enter puts it on the sheet

## Ends of runs.

end-pick-first = Pick a run, or a terminal with one, to put its end elsewhere.
loose-end = the loose end
end-in-hand = { $run }, end at { $at }
towards = to { $thing }
end-nothing-there = Nothing there takes this end; it stays where it was.
end-other-there = The other end of { $run } is on { $terminal }; this one goes elsewhere.
edit-move-run-end = Move end of run { $run }

## Pulling runs.

pull-from = Run from { $terminal }. Arrows go to terminals that fit.
pull-begins = The run begins at { $terminal }; it goes to another terminal.
edit-splice-in = Splice in a run
edit-pull-to-new = Pull a run to a new { $kind }

## The meter.

reading-in = { $number } in { $at }
edit-keep-readings = { $count ->
    [one] Keep a reading
   *[other] Keep { $count } readings
}
reading-ac = { $number } AC
reading-at = { $number } at { $at } against { $against }
meter-take-first = Take the meter in hand first.
meter-no-reading = There is no reading yet. { $hint }
meter-kept = Kept: { $shown } { $between }
meter-in = in { $run }
meter-rms = RMS { $rms }, burst { $burst }
meter-between = red on { $red }, black on { $black }
meter-floating = floating
meter-open = open
meter-floats = Nothing ties { $terminal } to a source: a meter shows a number that wanders.
meter-same-point = One and the same point.
meter-no-way = No way through metal between them.

## Ask.

ask-put-new = Put a new { $kind }
ask-from-shelf = from the shelf

## Things told in one sentence.

run-between = { $from } to { $to }
spoken-findings = { $count ->
    [one] , one finding: { $grade }
   *[other] , { $count } findings, the gravest { $grade }
}
spoken-part = { $part }, { $name }, { $runs }{ $noted }
spoken-terminal-free = terminal { $terminal }, nothing on it{ $volts }
spoken-terminal = terminal { $terminal }, with { $runs }{ $volts }
spoken-nowhere = nowhere
spoken-run = run { $run } from { $from } to { $to }{ $numbers }{ $noted }

## Numbers of parts and runs.

numbers-current = current
numbers-burst = burst
numbers-drop = drop
numbers-limit-after = limit after
numbers-temperature = temperature
numbers-guarded-by = guarded by
numbers-is = is
numbers-voltage = voltage
numbers-power = power
numbers-note = note
numbers-channel = channel
numbers-gets = gets
numbers-lost-on-the-way = lost on the way
told-of-allowed = { $amps } of { $most } allowed
told-warm-in = { $own } in { $around }
told-guarded = { $guards } against { $source }
told-limits-itself = { $source } limits itself
told-unguarded-for = none against { $source }, { $length } of wire away
told-unguarded = none against { $source }
told-off = off: { $why }
told-off-when-loud = off when it is loud: { $why }
told-is-on = on
told-is-off = off
told-burst = { $mean }, burst { $burst }
told-nothing = nothing: { $part } is { $why }
told-silent = silent: { $why }
told-reversed = { $power }, reversed

## A part in plain words: what it is for.

purpose-battery = It stores energy and gives current when the engine does not run.
purpose-alternator = It is driven by the engine, feeds everything while the engine runs and charges the battery.
purpose-vehicle = It stands for the wiring that the vehicle came with: its feeds, its straps and its body metal.
purpose-converter = It charges a battery from the vehicle's supply at the voltage that the battery needs.
purpose-fuse = It melts and cuts the wire off when more current flows than the wire behind it can bear.
purpose-breaker = It opens when too much current flows, and can be closed again.
purpose-block = It takes one thick wire and shares it out to several thinner ones, each with a fuse of its own where it has fuses.
purpose-bus = It is a piece of metal on which several wires are joined.
purpose-splice = It is a place where wires are joined to each other.
purpose-plug = It is a plug of the vehicle's own wiring, with one place for each wire.
purpose-adapter = It joins new equipment to a plug of the vehicle without cutting the vehicle's wires.
purpose-ground = It is where wires are bolted to the body of the vehicle. Current goes back to the battery through the body's metal.
purpose-relay = It is a switch that is worked by a small current and carries a large one.
purpose-switch = It closes and opens a circuit by hand.
purpose-isolator = It joins two batteries for charging and keeps them apart otherwise.
purpose-head = It is the radio: it makes the signal, and tells the amplifiers when to turn on.
purpose-processor = It shares the signal out to the speakers and shapes it for each of them.
purpose-line-converter = It takes the signal from speaker wires and makes it small enough for an amplifier's input.
purpose-amplifier = It makes the small signal strong enough to move speakers, and takes more current than anything else in a sound system.
purpose-speaker = It turns the amplifier's current into sound.
purpose-crossover = It sends low notes to one speaker and high notes to another.
purpose-inline-capacitor = It keeps low notes away from a small speaker.
purpose-capacitor = It holds a little energy close to an amplifier for short moments.
purpose-load = It is something that uses current.

## A part in plain words: its current.

plain-called = { $tag } ({ $name })
plain-fitted-maker = The vehicle's maker fitted it.
plain-fitted-earlier = Somebody fitted it earlier.
plain-fed = It gets current from { $source }, over { $length } of wire.
plain-fed-through = It gets current from { $source } through { $through }, over { $length } of wire.
plain-not-fed = Nothing feeds it.
plain-back-none = Its current does not get back to { $sources }, so none flows from there.
plain-back-body = The current goes back to { $sources } through the vehicle's body.
plain-back-by = The current goes back to { $sources } by { $points } through the vehicle's body.
plain-back-wire = The current goes back to { $sources } by wire alone.
plain-is = It is { $why }.
plain-moments = { $amps }, for moments { $burst }
plain-current = With the vehicle { $state }, { $duty }, { $verb ->
    [charged] it is charged with
    [gives] it gives
    [takes] it takes
   *[carries] it carries
} { $amps }.
plain-lost = { $drop } are lost on the way there and back, so that { $volts } arrive.
plain-it = It
plain-output = Output { $output }
plain-idle = { $name } does not do its work as it is now.
plain-guards-none = { $name } is made for { $amps } and guards no wire.
plain-guards = { $name } is made for { $amps } and guards { $runs }.

## A part in plain words: its sound.

plain-channels = Channels { $one } and { $other } together play { $drivers }
plain-channel = Channel { $one } plays { $drivers }
plain-plays = { $channels }.
plain-plays-into = { $channels }, { $ohms }.
plain-plays-with = { $channels }, and can give { $watts }.
plain-plays-into-with = { $channels }, { $ohms }, and can give { $watts }.
plain-silent = It is silent: { $why }.
plain-gets = It plays what channel { $channel } of { $part } gives, up to { $power }.
plain-gets-turned = { $gets } It is joined the wrong way round and pushes when it should pull.
plain-unplayed = Nothing plays on it.

## A run in plain words.

plain-loose = nothing: that end is loose
plain-size-unknown = unknown size
plain-length-unknown = unknown length
plain-colour-unknown = unknown colour
plain-traced = { $base } with a { $tracer } line
plain-wire = A wire of { $size }, { $colour }, { $length }, from { $from } to { $to }.
plain-no-current = No current to speak of flows in it.
plain-carries = It carries { $amps }, and is { $own } warm where { $around } are around it.
plain-carries-of = It carries { $amps } of the { $most } that it may carry, and is { $own } warm where { $around } are around it.
plain-cut-off = { $guards } { $guards ->
    [one] cuts
   *[other] cut
} it off from { $source } if it is shorted.
plain-limits = { $source } cannot give more than it bears.
plain-uncut = Nothing cuts it off from { $source } if it is shorted.
plain-condition = Its condition: { $condition }.

## The system as an outline.

outline-directly = directly
outline-through = through { $parts }
outline-no-way-back = no way back
outline-feeds = feeds { $part } { $way }{ $current }{ $back }
outline-drives = channel { $channel } drives { $driver }

## Recording what is found.

record-new = new: { $kind }
record-somewhere = somewhere
edit-record = Record { $run }
error-record-nowhere = a run that goes from somewhere to somewhere is no find: name one end
error-record-kind = there is no kind of part `{ $kind }`
error-record-no-terminal = this part has no terminal on which a run could land
error-record-seen = { $name }: { $why }

## The body plan on the table.

body-turned = Body plan
body-form-unknown = The body plan waits for the form of the vehicle: choose it on the left.
body-placed = { $part }: { $place }
body-place-held = { $place }: drag it to where it is, or move it with the arrow keys, finer with Shift.
body-place-moved = { $place }: { $front } from the front, { $left } from the left side.
body-routed = { $changed } runs got another way; { $without } have none, since an end has no place.
