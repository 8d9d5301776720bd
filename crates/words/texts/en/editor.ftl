### What the editor says: names of steps, hints, things in words, the meter.

## The title block.

title-job = Job
title-vehicle = Vehicle
title-state = State
title-music = Music
title-limits = Limits
title-findings = Findings
title-drawn-by = Drawn by
title-date = Date
title-revision = Rev.
title-sheet = Sheet
title-remark = Remark
title-scale = Scale
title-unchecked = Not checked yet
title-counts = { $stop } Stop, { $fix } Fix, { $tidy } Tidy

## Ends of runs.

hint-end-keys = Arrows go to terminals that fit, Enter lands the end there, Delete leaves it loose, E takes the other end, Esc gives up.
hint-end = Glowing terminals fit. Dropped on a run it is spliced in, on paper it lies loose. Esc puts it back.

## What to do with the tool in hand.

hint-pick = Drag a part to move it, a terminal to pull a run, the paper to fence things in.
hint-carry = Let go to put it down. Esc puts it back.
hint-fence = Everything inside the fence is picked.
hint-bend = Let go to keep the bend. Esc takes it back.
hint-pull = Take a terminal to start the run from.
hint-pull-keys = Arrows go to terminals that fit, Enter connects, Esc gives up.
hint-pulling = Glowing terminals fit. Drop on paper for parts that make sense, on a run to splice it.
hint-place = Click or Enter puts it down, on a run it is put into it. R turns it, Esc puts it back.
hint-hand = Drag the paper.

## The meter.

hint-break-scissors = Click a run to cut it there. A mark can be dragged along its run, or off it to take it away.
hint-break-lead = Drag from a terminal, a run or the body clip to another. A mark can be dragged along, or off to take it away.
hint-break-leading = Let go on a terminal, a run or the body clip. Esc takes the lead back.
hint-break-holding = Now click where its other end goes, or press B for the body. Esc takes the lead back.
hint-break-dragging = Let go to leave it there, or away from everything to take it away. Esc puts it back.
hint-meter-amps = Click a run to put the clamp around it.
hint-meter-red = Touch a terminal with the red lead; take the black one first, or hold Shift, to move that.
hint-meter-black = Touch a terminal with the black lead.

## Everything that can be done.

action-pick = Pick and move
action-pull-run = Pull a run of wire
action-shelf = Open the shelf of parts
action-meter = Take the meter in hand
action-hand = Shift the paper
action-ask = Ask: find a part, run, check or action
action-what-feeds = What feeds this?
action-details = Details of what is picked
action-rename = Rename
action-turn = Turn clockwise
action-turn-back = Turn anticlockwise
action-delete = Delete
action-undo = Undo
action-redo = Redo
action-cut = Cut
action-copy = Copy
action-paste = Paste
action-duplicate = Duplicate
action-pick-all = Pick everything on the sheet
action-splice = Splice the run
action-move-end = Put an end of the run elsewhere
action-next-bend = Take the next bend of the run in hand
action-straighten = Let the run find its own way again
action-tidy-sheet = Tidy the arrangement of the whole sheet
action-next-finding = Next finding
action-previous-finding = Previous finding
action-mend = Mend the finding shown
action-mend-all = Mend all that needs no choice of yours
action-next-part = Next part
action-previous-part = Previous part
action-overlay-current = Overlay: current
action-overlay-voltage = Overlay: voltage
action-overlay-heat = Overlay: heat
action-overlay-protection = Overlay: protection
action-overlay-signal = Overlay: signal
action-overlay-speakers = Overlay: speakers
action-overlay-none = No overlay
action-zoom-in = Enlarge
action-zoom-out = Reduce
action-fit = Show the whole sheet
action-fit-picked = Show what is picked
action-sheet-before = Turn to the sheet before
action-sheet-after = Turn to the next sheet
action-lay-under = Lay another sheet under this one
action-meter-volts = Meter: volts
action-meter-amps = Meter: amps in a run
action-meter-tone = Meter: volts AC under a test tone
action-meter-ohms = Meter: ohms, supply isolated
action-keep-reading = Keep this reading of the meter
action-readings = Readings kept
action-prove = Shortest proof: the readings to take
action-find-fault = Find the fault: what to measure next
action-break-it = Break it: what happens when something fails
action-record = Record what is found
action-thread = Complaints, quote and what becomes of things
action-papers = Papers: lists to buy, cut, label, measure, checklists
action-body-plan = Body plan: the vehicle from above
action-size-it = Size all runs and fuses
action-route-all = Lay all runs through the body anew
action-open-file = Open a job file
action-save-file = Save the job as a file
action-start-system = Start a system: a whole plan from one line
action-new-job = New empty job
action-jobs = Jobs kept here
action-lessons = Lessons: good and bad, side by side
action-make-lesson = Make a lesson of this
action-export-svg = Export the sheet as SVG
action-export-png = Export the sheet as PNG
action-print = Print the sheet
action-share = Share: a link, a code to scan or a page file
action-limits = Conditions and limits of the job
action-outline = The system as an outline
action-paper = Light or dark paper
action-english = Language: English
action-german = Language: Deutsch (German)
action-metres = Lengths in metres
action-feet = Lengths in feet and inches
action-square-millimetres = Wire sizes in mm²
action-gauge = Wire sizes in AWG
action-keys = List of keys
