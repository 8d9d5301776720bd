### What stands on the drawing itself. Short: the room is measured with these words.

## Overlays.

overlay-none = No overlay
overlay-current = Current
overlay-voltage = Voltage
overlay-heat = Heat
overlay-protection = Protection
overlay-signal = Signal
overlay-speakers = Speakers

## Numbers of parts and runs.

drawn-main-fuse = main fuse { $amps }
drawn-gets = gets { $power }
drawn-heat-limit = { $temperature }, limit in { $time }
drawn-silent = silent
drawn-takes = takes { $amps }
drawn-gives = gives { $amps }
drawn-channel = { $part } ch { $channels }
drawn-left = left
drawn-right = right
drawn-bass = bass
drawn-no-source = no source
drawn-turn-on = turn-on
drawn-unguarded = unguarded

## A sheet laid under another.

drawn-under = { $kind } under { $on }: { $kept } kept, { $changed } changed, { $new } new, { $removed } removed
drawn-new-on = new on { $on }
drawn-differs = differs from { $kind }
drawn-gone = removed: on { $kind } alone
drawn-goes = removed on { $kind }
drawn-comes = new: on { $kind } alone
drawn-more = { $one } and { $more } more

## The body plan.

drawn-front = front
drawn-no-place = no place in the body yet:
drawn-key-grave = moved, crushed, or an airbag
drawn-key-hot = as hot as the engine bay
