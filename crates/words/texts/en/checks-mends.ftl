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
