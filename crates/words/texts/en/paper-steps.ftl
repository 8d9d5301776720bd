## Checklists: strip-out and build.

paper-list-strip-out = Strip-out order
paper-list-build = Build order
paper-column-phase = Group
paper-column-step-name = Name of the step

step-phase-isolate = Isolate
step-phase-record = Record
step-phase-trim = Trim
step-phase-runs-out = Runs out
step-phase-parts-out = Parts out
step-phase-sweep = Leave it clean
step-phase-ground = Ground
step-phase-protection = Protection
step-phase-parts = Mounting
step-phase-passages = Passages
step-phase-runs = Runs
step-phase-cold = Before the supply is on
step-phase-battery = Battery, last of all
step-phase-prove = Proof

## Stripping out.

step-off = Turn everything off, take the key away from the vehicle, and wait as long as its maker says until its control units and airbags are asleep.
step-isolate = Isolate { $tag } ({ $name }): negative clamp off first; wrap it so that it cannot spring back.
step-discharge = Discharge { $tag } ({ $name }) through a resistor or a lamp, never with a spanner.
step-dead = Measure from the feeds to ground that nothing is live. A second source may still feed them.
step-record = Record the condition of the vehicle, with pictures, before any trim comes off.
step-open = Open up at: { $places }.
step-trim = Get access: { $trim }.
step-trim-airbag = Get access: { $trim }. An airbag unfolds there: keep to the vehicle maker's procedure and put nothing in its way.
step-run-out = { $tag } out: { $way }; { $then }.
step-part-out = { $tag } ({ $name }) out; { $then }.
step-then-refit = label it, it is refitted
step-then-move = label it, it moves to another place
step-then-keep = the maker's: keep it whole, bag and label it
step-then-ask = ask what is to become of it
step-sweep = Look for loose screws, clippings and ends of wire, and take them out: one of them is the next fault.
step-stays = Insulate and tie back every end that stays without its other end.

## Building.

step-isolated = Make sure that the supply is still isolated.
step-place-open = where the plan says
step-ground = Make the ground point { $tag } ({ $name }), { $place }: paint off to bare metal, star washer, screw tight, then seal against rust.
step-ground-makers = Use the maker's ground stud for { $tag } ({ $name }), { $place }: clean it, and do not loosen what is on it while the supply is on.
step-protection = Mount { $tag } ({ $name }), { $place }. Fuses stay out.
step-mount = Mount { $tag } ({ $name }), { $place }: a screw in every hole, square to the surface.
step-mount-on = Mount { $tag } ({ $name }), { $place }, on { $on }: a screw in every hole, square to the surface.
step-splice = Make the joint { $tag } ({ $name }) of { $runs }, { $place }.
step-refit = Refit { $tag } ({ $name }), { $place }.
step-behind = Before a hole is drilled for { $tag }, look behind: { $behind }.
step-change = { $tag } ({ $name }): { $changes }.
step-mate = Mate { $tag } ({ $name }) until it latches.
step-guard = Before the run is pulled through, set { $guard }: { $passage }.
step-lay = Lay { $tag }: cut { $length } of { $size } { $colour }, label both ends; { $way }. { $through }
step-relay = Lay { $tag } anew: { $way }. { $through }
step-way = Way: { $places }.
step-way-open = Way: not told; clear of heat, edges, hinges and seats.
step-end = { $tag } at { $at }: { $method }.
step-end-pull = { $tag } at { $at }: { $method }. A trial crimp must bear { $force } ({ $source }{ $known ->
    [memory] , from memory
   *[read] {""}
}).
step-short = Fuses out: measure ohms from every feed to ground. No reading is right; a low one is a short.
step-ohms = { $tag } channel { $channel }: { $ohms } at its speaker leads, and no reading from either leg to ground.
step-look = Pull at every ending, look at every passage and edge, and move doors, lids and seats through their whole travel.
step-fuse = { $tag }: fit { $ratings }.
step-battery = Connect { $tag } ({ $name }): live runs first, negative clamp last. The fuse beside it is still out.
step-meter = Fill in the meter sheet: { $count ->
    [one] one voltage
   *[other] { $count } voltages
} in each state.
step-gain = { $tag } channel { $channel }: set the gain to { $volts } with the test tone.
step-moved = Measure again with: { $moved }. Faults that come and go show then.
step-prove = Prove { $tag }: “{ $words }”. Keep the reading that shows it.
step-handover = Hand over: both papers, spare fuses, and what came out and belongs to the customer.
