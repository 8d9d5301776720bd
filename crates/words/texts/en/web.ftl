### The page: what its pieces say.

## Everywhere.

untitled = Untitled job
mend-all-short = Mend all…

## The strip of tools.

tray = Tools and overlays
tray-overlays = Overlays
tool-shelf = Shelf
tool-pull = Pull run
tool-meter = Meter
tool-feeds = Feeds
tool-ask = Ask
tool-jobs = Jobs
tool-share = Share
tool-zoom-out = −
tool-zoom-in = +
tool-fit = Fit

## Keys.

key-enter = Enter
key-esc = Esc
key-delete = Del
key-home = Home
key-page-up = Page Up
key-page-down = Page Down
key-command = Ctrl+{ $key }
key-shift = Shift+{ $key }
key-command-shift = Ctrl+Shift+{ $key }
key-arrows = Arrows
key-arrows-do = Walk: part, terminal, along the run, next terminal
key-shift-arrows = Shift+Arrows
key-shift-arrows-do = Move what is picked; of a run, a piece aside or the bend in hand
key-double-click = Double click
key-double-click-do = Details; on a bend, take it out
key-space-drag = Space and drag
key-space-drag-do = Shift the paper
key-wheel = Wheel
key-wheel-do = Enlarge about the pointer
key-alt = Alt while moving
key-alt-do = Off the grid
key-shift-placing = Shift while placing
key-shift-placing-do = Place another
key-esc-do = Back out

## A finding explained.

hover-size = size?
hover-length = length?

## Jobs.

remove = Remove

## Conditions and limits.

low-none = No findings

## The meter.

meter = Meter
meter-what = What is measured
meter-next = next lead
meter-keep = Keep
meter-away = Put away

## The right margin.

notes-collapsed = The feed gives { $share } of what is asked.
notes-failed = No numbers: { $why }
notes-none = No findings. { $draw } drawn, { $available } to be had.
notes-here = here:

## What lies over the drawing.

legend-current = amps in each run, arrow by direction, width by load against what the run bears
legend-voltage = volts at the terminals against battery negative
legend-heat = temperature of each conductor
legend-protection = each conductor in the hue of the device that guards it; unguarded ones dashed
legend-signal = signal and turn-on leads
legend-speakers = what each channel sees, what each speaker gets
legend-lost = { $amps }, { $drop } lost
legend-fed = { $part } ({ $amps }) from { $ways }
legend-feeds = What feeds { $thing }
legend-feeds-nothing = nothing on this sheet

## Readings kept.

readings = Readings
readings-kept = { $count } kept on this sheet

## The set index.

set = Sheets of the job
set-empty = empty
set-holds = { $parts }, { $runs }
set-fill = copy { $sheet } here
set-lies-under = lies under
set-lay-under = lay under

## Sharing.

downloaded = Downloaded as { $name }

## The shelf of parts.

also-fuse = blade strip holder protection
also-block = distribution power fused
also-bus = stud bar
also-ground = earth chassis body
also-head = radio receiver
also-processor = dsp
also-line-converter = high low level
also-amplifier = amp
also-speaker = woofer tweeter subwoofer driver
also-load = light lamp inverter pump radio
also-splice = joint butt
also-converter = dc charger
spoken-elsewhere = Another tab has this job open. What you change here is not kept until you take it over, see Jobs.

## The title block.

cell-edit = { $name }: { $text }. Edit
title-block = Title block
title-ambients-limits = Ambients and limits
title-ambients = cabin { $cabin }, load { $load }, engine { $engine }
title-ambients-own = { $ambients }; { $count ->
    [one] { $count } limit
   *[other] { $count } limits
} set here
title-left-out = { $count } left out
title-undo = Undo
title-redo = Redo
title-nothing-done = nothing done yet
title-look-only = This drawing is for looking at
title-own-copy = Make my own copy
title-copy-downloaded = Downloaded as { $name }. Open it in the program to change it.

## A sheet laid under.

under-laid = The sheet laid under
under-away = take it away
under-numbers = Findings, metal and money
under-changed = What changed: { $count ->
    [one] { $count } thing
   *[other] { $count } things
}
became-kept = kept
became-new = new
became-removed = removed
under-against = Against { $sheet }

## Files and storage.

file-opened = { $name } is on the table.
file-opened-in-part = { $name } is on the table. Left out: { $first }
file-not-opened = { $name } was not opened: { $why }
file-empty = there is nothing in it
file-not-text = it is neither a job file nor a job in the text form. As text: { $first }{ $more ->
    [0] .
    [one] , and 1 more error.
   *[other] , and { $more } more errors.
}
file-saved = Saved to { $name }
board = Wiring diagram, sheet { $sheet }: { $parts }, { $runs }, { $counts }. Arrows walk, Enter opens details, slash asks.

## Recording what is found, and the thread of the job.

tool-record = Record
tool-thread = The job

## The papers of the job.

tool-papers = Papers

## An empty sheet.

start-title = Start a system
start-offer = What there is and what is wanted, in one line: a whole plan comes of it.
# Beside the offer to start a system, on an empty sheet.
shelf-offer = Part by part: take them from the shelf, then pull wires from terminal to terminal.

## What lies beside the sheets.

share = Share
shelf = Shelf of parts
record = Record what is found
thread = The job
body-plan = Body plan
papers = Papers of the job
