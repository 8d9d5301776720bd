## What fails, as it is called in a list and as the name of an edit.

break-cut = { $run } cut
break-cut-at = { $run } cut at { $at }
break-off = { $run } off { $end }
break-open = { $part } open
break-grounded = { $run } touches the body at { $at }
break-grounded-through = { $run } touches the body at { $at } through { $ohms }
break-joined = { $one } and { $other } touch
break-joined-through = { $one } and { $other } touch through { $ohms }
break-point-along = { $run } at { $at }
break-point-body = the body
break-more = { $thing } with { $ohms } too much
break-reversed = { $part } reversed
break-dead = { $part } dead

## Why something cannot break so, and what would do.

break-nothing-said = Say what breaks, for example “W3 cut”.
break-no-word = Say what happens to { $thing }: { $words }.
break-other-word = “{ $word }” says no break; { $words } do.
break-more-said = Nothing is known of “{ $text }” after “{ $word }”.
break-how-many-ohms = Say how many ohms too much, for example “0.2 Ω”.
break-joined-to-what = Say what touches { $terminal }, for example “{ $terminal } joined E1.stud”.
break-joined-to-itself = { $terminal } cannot touch itself.
break-off-what = Say which end of { $run } is off: { $ends }, or “from” or “to”.
break-which-terminal = Say which terminal of { $thing } is meant, for example “{ $thing }.in”.
break-no-thing = There is no run or part “{ $thing }”.
break-no-run = There is no run “{ $run }”.
break-no-part = There is no part “{ $part }”.
break-part-not-run = “{ $part }” is a part; only a run can break so.
break-run-not-part = “{ $run }” is a run; only a part can break so.
break-no-terminal = “{ $part }” has no terminal “{ $terminal }”; it has { $names }.
break-no-coil = “{ $part }” has no coil “{ $coil }”; coils are called a and b.
break-cannot-open = “{ $part }” cannot be opened; a run, plug, switch, relay, isolator, fuse, breaker, ground point or terminal can.
break-open-output = “{ $part }” has several outputs; one of them can be opened: { $outputs }.
break-cannot-be-poor = “{ $part }” passes no current on; a ground point, fuse, breaker, switch, relay, isolator or block does.
break-cannot-reverse = Nothing is on a plus or minus terminal of “{ $part }”: it cannot be reversed.
break-nothing-on = Nothing is on { $terminal }.
break-job-full = The job holds no more parts.

## What happens after a break, in a list.

event-opens = { $device } opens
event-closes = { $device } closes again
event-damaged = { $run }: insulation damaged
event-melts = { $run } melts through
event-off = { $part } goes off
event-on = { $part } is on again
event-lets = { $part } lets go
event-pulls = { $part } closes
event-unloaded = { $part } turns without a battery: over-voltage possible, not simulated
event-times = { $what }, up to { $times } times
time-at-once = at once
time-about = { $time }
time-within = { $least } to { $most }
current-about = { $most }
current-within = { $least } to { $most }
certainty-no = no
certainty-possible = possible
certainty-certain = certain

## What becomes of a short.

outcome-nothing = There is no short that a device would have to clear.
outcome-clears = Cleared after { $time }, before any wire is damaged; the wires would last { $margin } times as long at the least.
outcome-clears-cool = Cleared after { $time }; no wire would have been damaged.
outcome-wire = The wire goes first: the insulation of { $run } is damaged after { $time }.
outcome-wire-perhaps = The wire may go first: in the worst case the insulation of { $run } is damaged after { $time }.
outcome-never = No device opens: { $current } goes on flowing.
outcome-never-perhaps = A device need not open: then { $current } goes on flowing.
outcome-not-known = What becomes of it could not be worked out to its end.
break-caution = Do not try this on the vehicle. Work with the battery off, follow the vehicle maker and local law, and ask a qualified person where you are not sure.

## The drawer in which something is broken to see what follows.

breaking-head = Break it
breaking-pick = Cut with the scissors, join with the lead, or pick a run or part on the drawing and say what happens to it.
breaking-cut = Cut it
breaking-grounded = Let it touch the body
breaking-open = Open it
breaking-reversed = Turn plus and minus round
breaking-dead = Let it die
breaking-write = Or write it
breaking-throw = Throw it
breaking-thrown = Thrown
breaking-along = Where along { $run }
breaking-remove = Take back: { $what }
breaking-draws = The short draws { $current } at first.
breaking-carries = What touches carries { $current } at first.
breaking-events = What happens
breaking-none = Nothing else happens.
breaking-when = When
breaking-what = What
breaking-sure = Certain
breaking-moment = Moment
breaking-at = After { $time }
breaking-at-first = At first
breaking-flows = { $current } where it touches, { $volts } at the source
breaking-hottest = { $run } at { $temperature }; it bears { $limit }
breaking-case = Shown for
breaking-case-strong-slow = strong sources, slow fuses
breaking-case-strong-fast = strong sources, quick fuses
breaking-case-weak-slow = weak sources, slow fuses
breaking-case-weak-fast = weak sources, quick fuses
breaking-sign-open = open
breaking-sign-off = off
breaking-sign-damaged = damaged
breaking-sign-here = here
breaking-clip-body = body
breaking-let-go = Let go here to take it away.
breaking-taken-back = Taken back: { $what }
breaking-no-step = Nothing more to undo of what was thrown.
breaking-same-point = Both ends are on one point.
breaking-tools = In hand
breaking-tool-scissors = Scissors
breaking-tool-lead = Lead
breaking-event = { $time }: { $what }
breaking-event-perhaps = { $event } (possible)
breaking-events-more = and { $count } more
breaking-all-back = Take all back
