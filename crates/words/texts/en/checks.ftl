## What the findings of several checks say.

two-sentences = { $first } { $second }
same-holds-for = The same holds for { $things }.
read-rating = Read the rating off { $device }.
find-size = Read the size off { $run }'s jacket, or count its strands and measure one.
find-insulation = Read the temperature rating off { $run }'s jacket.
find-out = Find out the { $what } of { $of }.
size-of-run = { $size } for { $run }
channel-one = { $part } channel { $channel }
channel-bridged = { $part } channels { $channel } and { $second }, bridged,

## What a finding rests on: a property that is assumed, of a part or run.

assumed-of = { $of } { $property }
assumed-parking = conditions parking

## The page of a check.

explain-head = **{ $grade }** · { $group } · since { $since }
explain-holds = Holds when { $holds }.
explain-looks = What it looks for
explain-why = Why it matters
explain-example = Example
explain-marks = Lines that end in `#~` are marked by the checks named there.
explain-instead = Instead
explain-unmended = Where no mend is proposed
explain-care = Care
explain-limits = Limits
explain-limit = limit
explain-what = what
explain-value = value
explain-value-in = { $value } ({ $profile })
explain-source-in = { $profile }: { $source }
explain-source-column = source
explain-source = Source

## What everybody who does such work is told.

care = Isolate the battery before any work. Keep away from airbag and high-voltage circuits. Follow the vehicle maker's instructions and the law of the place, and let a qualified person decide. The tool knows the drawing, not the vehicle.

## Grades and groups.

grade-stop = Stop
grade-fix = Fix
grade-tidy = Tidy
check-group-protection = Protection
check-group-conductors = Conductors
check-group-ground = Ground
check-group-speakers = Speakers
check-group-signal = Signal and control
check-group-workmanship = Body and workmanship
check-group-energy = Energy
check-group-data = Data
