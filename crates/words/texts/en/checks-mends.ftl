## What clears a finding, as the list of steps calls it.

mend-fit = Fit { $rating } in { $device }
mend-fit-several = Fit { $ratings }
mend-rating-in = { $rating } in { $device }
mend-put-fuse = Put fuse { $fuse }, { $rating }, into { $run }
mend-and-lay-behind = { $first } and lay { $sizes } behind it
mend-join-through = Take { $device } out and join { $run } through
mend-then-join-through = { $first } and take { $device } out and join { $run } through
mend-take-to = Take { $run } to { $terminal }
mend-lay-copper = Lay copper for { $run }
mend-lay-size = Lay { $size } for { $run }
mend-lay-thicker = Lay thicker wire for { $load }
mend-lay-thicker-behind = Lay thicker wire behind { $device }
mend-swap-coil = Swap the wires of coil { $coil } of { $speaker }
mend-swap-wires = Swap the wires at { $speaker }
mend-swap-inputs = Swap inputs { $one } and { $other } of { $part }
mend-lay-anew = Lay { $run } anew
mend-fit-anew = Fit { $devices } anew
mend-clean-ground = Clean { $ground } to bare metal
mend-move-ground = Move { $ground } to bare body metal
mend-take-out = Take { $run } out
mend-crimp = Crimp { $splice }
mend-remake-ends = Remake the ends of { $run }
mend-reset-by-hand = Fit a breaker reset by hand as { $device }
mend-land-on-body = Land { $runs } on the body side
mend-mate = Mate { $plug }
mend-guard = Guard { $run } with { $guards }
mend-route = Lay { $runs } another way: { $way }
mend-lay-with = Lay { $runs } with { $other }
mend-insulation = Lay { $run } with insulation for { $rating }
mend-support = Hold { $run } every { $most }
mend-mount = Fix { $part } to { $on }
mend-screw = Put the missing screws into { $part } and set it square
mend-move-part = Move { $part }: { $place }
mend-and-lay-back = { $first }, and { $sizes } for { $runs } to the ground
mend-add-ground = Make ground point { $ground } for { $terminal }
mend-ground-closer = Move { $ground } close to { $part }
mend-ground-own = Make ground point { $ground } for { $run } close by
mend-add-run = Lay { $run } from { $from } to { $to }
mend-add-signal = Lay { $runs } to the inputs of { $part }
mend-in-series = Hook up { $speakers } in series
mend-in-parallel = Hook up { $speakers } in parallel
mend-in-strings = Hook up { $speakers } as { $strings } strings side by side
mend-lay-sizes = Lay { $sizes }
mend-split-feed = Take { $runs } to { $outputs }
mend-fuse-form = Fit a fuse of another form as { $device }: { $form }, { $rating }

## What somebody has to choose before a mend is made: the rest of a sentence that begins with “to choose:”.

mend-choice-ground = where on the body the ground goes
mend-choice-end = where { $run } is to end, or whether it is wanted at all
mend-choice-output = which output turns it on
mend-choice-hook-up = which of the hook-ups it is to be
mend-choice-lead = which of the leads stays
