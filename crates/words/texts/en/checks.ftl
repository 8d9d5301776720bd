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
