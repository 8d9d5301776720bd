## Finding the fault: where the leads go, what is suspected, what cannot be read.

fault-at-volts = Volts, red on { $red }, black on { $black }
fault-at-tone = Volts of the test tone between { $red } and { $black }
fault-at-ohms = Ohms between { $red } and { $black }, supply isolated
fault-at-amps = Amps in { $run }, by clamp
fault-nothing-broken = nothing is broken
fault-pair = { $one }, and { $other }
fault-open = open

## What is said of the outcome.

fault-found = Found: { $what } ({ $share }).
fault-alike = Nothing that can be measured tells these apart:
fault-suspected = Suspected:
fault-next = Next: { $at }. About { $minutes } min; it tells { $bits } bits.
fault-would-read = if { $what }: { $number }
fault-unexplained = With “{ $what }” this would read { $foretold }, and { $read } was read: { $at }. Read it again, or take it back; if it stands, more than this is broken.
fault-no-supply = Nothing on this sheet is fed: there is nothing to measure.
fault-none = No fault speaks out of what is known.
fault-leads = Ohms are told without the leads of the meter; these add about { $ohms }.
fault-caution = Measure with one hand where you can, and with the supply off for ohms. Readings narrow a fault down; they do not prove that wiring is in order.

## What is wrong with a reading or symptom.

fault-not-number = “{ $text }” is no number.
fault-no-number = “{ $text }” names no reading; write it as in “F1.out B1.- 12.1 V on” or “LS1.+ LS1.- open”.
fault-no-points = “{ $text }” does not say where; write two terminals, as in “F1.out B1.- 12.1 V”, or a run for amps, as in “W3 4 A”.
fault-amps-in-run = “{ $text }”: amps are read with a clamp round a run, as in “W3 4 A”.
fault-no-run = There is no run “{ $tag }”; did you mean “{ $meant }”?
fault-no-part = There is no part “{ $tag }”; did you mean “{ $meant }”?
fault-no-terminal = “{ $part }” has no terminal “{ $terminal }”; it has { $names }.
fault-no-speaker = “{ $part }” is no speaker: of a speaker it is told whether it is silent, weak or plays.
fault-symptoms = “{ $text }” is no symptom; write “LS1 silent”, “LS1 weak”, “LS1 plays”, “A1 off”, “A1 on”, “F1 opened” or “A1 hum”.

## On the page.

fault-head = Find the fault
fault-known = What is seen and heard
fault-thing = Part
fault-thing-none = choose a part
fault-silent = is silent
fault-weak = is weak
fault-plays = plays
fault-off = does not turn on
fault-on = turns on
fault-opened = has opened
fault-hum = hums
fault-symptom-line = { $tag }: { $what }
fault-measure = Measure next
fault-show = Leads on the drawing
fault-reads = The meter shows, in { $unit }
fault-enter = Enter
fault-skip-open = Open circuit
fault-effort = about { $minutes } min · tells { $bits } bits
fault-readings = Measured
fault-while = While measuring
fault-while-nothing = nothing moved
fault-keep = { $count ->
    [one] Keep it with the sheet
   *[other] Keep these { $count } with the sheet
}
fault-kept = Take { $count } kept on this sheet
fault-suspects = Suspected
fault-done = Found
fault-left = Nothing tells these apart
fault-start = Say what is wrong, or measure as proposed.
fault-own = Another reading
fault-own-like = F1.out B1.- 12.1 V ±0.2 on
fault-within = { $number } ± { $tolerance }
fault-foretold = would read { $numbers }
fault-remove = Remove { $what }
fault-line = { $at }: { $number }
