### The body of the vehicle: its places and passages, and the routes of runs through it.

## Places. Those of a job's own have the names that the job gives them.

place-engine-bay-left = engine bay, left
place-engine-bay-right = engine bay, right
place-bulkhead-left = bulkhead, left
place-bulkhead-right = bulkhead, right
place-battery-tray = battery tray
place-footwell-left = footwell, left
place-footwell-right = footwell, right
place-dash-left = dashboard, left
place-dash-middle = dashboard, middle
place-dash-right = dashboard, right
place-steering-column = steering column
place-glovebox = behind the glovebox
place-pedals = pedals
place-a-pillar-left = A-pillar, left
place-a-pillar-right = A-pillar, right
place-b-pillar-left = B-pillar, left
place-b-pillar-right = B-pillar, right
place-c-pillar-left = C-pillar, left
place-c-pillar-right = C-pillar, right
place-sill-left = sill, left
place-sill-right = sill, right
place-tunnel = centre tunnel
place-under-seat-left = under the left front seat
place-under-seat-right = under the right front seat
place-front-seat-back-left = back of the left front seat
place-front-seat-back-right = back of the right front seat
place-door-left = front door, left
place-door-right = front door, right
place-rear-door-left = rear door, left
place-rear-door-right = rear door, right
place-sliding-door = sliding door
place-roof-front = headlining, front
place-roof = headlining, middle
place-roof-rear = headlining, rear
place-under-rear-seat-left = under the rear seat, left
place-under-rear-seat-right = under the rear seat, right
place-seat-back-left = rear seat back, left
place-seat-back-right = rear seat back, right
place-load-floor = load floor
place-spare-well = spare-wheel well
place-wheel-arch-left = rear wheel arch, left
place-wheel-arch-right = rear wheel arch, right
place-side-left = side of the load area, left
place-side-right = side of the load area, right
place-tail-panel = tail panel
place-tail-pillar-left = rear corner pillar, left
place-tail-pillar-right = rear corner pillar, right
place-rear-shelf = rear shelf
place-boot-lid = boot lid
place-tailgate = tailgate
place-partition-left = partition, left
place-partition-right = partition, right
place-cupboard-left = cupboard, left
place-cupboard-right = cupboard, right
place-bench = bench seat
place-under-bed = under the bed
place-cab-back-left = rear wall of the cab, left
place-cab-back-right = rear wall of the cab, right
place-frame-left = frame, left
place-frame-right = frame, right

## Places that stand on both sides, as the plan from above names them: there the side shows itself.

spot-engine-bay = engine bay
spot-bulkhead = bulkhead
spot-footwell = footwell
spot-dash = dashboard
spot-a-pillar = A-pillar
spot-b-pillar = B-pillar
spot-c-pillar = C-pillar
spot-sill = sill
spot-under-seat = under the seat
spot-front-seat-back = front seat back
spot-door = front door
spot-rear-door = rear door
spot-under-rear-seat = under the rear seat
spot-seat-back = rear seat back
spot-wheel-arch = rear wheel arch
spot-side = side of the load area
spot-tail-pillar = rear corner pillar
spot-partition = partition
spot-cupboard = cupboard
spot-cab-back = rear wall of the cab
spot-frame = frame

## Passages: the kind of way and the two places that it joins.

passage-between = { $kind }: { $a } – { $b }
passage-name-taken = the passage `{ $passage }` has the name of a place; give it another
passage-without-end = the passage `{ $passage }` ends at `{ $place }`, which this body does not have; give its ends the names of places
passage-to-itself = the passage `{ $passage }` begins and ends at the same place

## What endangers a wire, in the middle of a sentence.

hazard-airbag = an airbag unfolds there
hazard-moving = it is moved there
hazard-crush = it can be crushed there
hazard-sharp = bare metal edges can cut it there
hazard-wet = water gets there
hazard-heat = it is as hot as the engine bay

## What speaks for and against a route.

route-shortest = { $length } of wire: the shortest way there is.
route-longer = { $length } of wire, { $more } more than the shortest way.
route-avoids = The shortest way leads through: { $passage }; { $hazards }.
route-meets = { $passage }: { $hazards }.
route-clear = No seat, hinge, bare edge or airbag on its way.
route-hot = { $length } of it lie in the heat of the engine bay.
route-beside-feeds = Lies beside feeds or returns over up to { $length }: { $runs }.
route-beside-signal = Lies beside signal leads over up to { $length }: { $runs }.
route-apart-feeds = Lies beside no feed or return.
route-apart-signal = Lies beside no signal lead.
route-together = Lies with other signal leads to the same equipment over up to { $length }: { $runs }.
edit-route-all = { $count ->
    [one] Lay the way of { $count } run anew
   *[other] Lay the ways of { $count } runs anew
}
