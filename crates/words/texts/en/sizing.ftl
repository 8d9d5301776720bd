## Sizes for all runs and ratings for all fuses.

sizing-edit = Size runs and fuses
sizing-edit-lock = Lock the size of { $thing }
sizing-edit-unlock = Unlock the size of { $thing }
sizing-held-locked = locked
sizing-held-kept = stays as it is
sizing-held-makers = fitted by the vehicle's maker
sizing-held-no-length = length not known
sizing-held-no-insulation = insulation not known
sizing-held-no-price = no price for a size that would do
sizing-held-none-fits = no size of the series goes into its terminals
sizing-held-between = between two sources: keeps its rating
sizing-held-brings = stays as it is: otherwise there would be a new finding: { $check }
sizing-held-signal = signal lead: no size to choose
sizing-held-undriven = no output drives it: keeps its size
sizing-limit-smallest = least of the series
sizing-limit-heat = heat of its steady current
sizing-limit-fuse = rating of { $device }
sizing-limit-drop = drop to { $load } and back
sizing-limit-ground = ground lead of { $amplifier } as good as its feed
sizing-limit-ending = heat of its endings
sizing-limit-lead = resistance of the ground lead
sizing-limit-load = lasting current of its loads
sizing-limit-burst = bursts of its loads
sizing-limit-check = { $check }
sizing-limit-price = the next smaller costs no less
sizing-limit-together = costs least together with the others
sizing-short-heat = { $run } carries more than the thickest wire of the series bears.
sizing-short-terminal = { $run } carries more than the thickest wire bears that its terminals take.
sizing-short-fuse = { $run } cannot be made to bear the least rating that { $device } needs for its loads.
sizing-short-rating = No rating of its form lets { $device } carry its loads for long.
sizing-short-drop = The thickest wires still lose { $lost } on the way to { $load } and back; { $most } is the limit.
sizing-short-ground = The ground lead of { $amplifier } cannot be made to conduct as well as its feed.
sizing-short-check = No size clears this of { $things }: { $check }.
sizing-short-no-answer = The network has no operating point with the thickest wires.
sizing-short-heat-worst = At the worst { $run } carries more than the thickest wire of the series bears. It bears what it carries as set.
sizing-short-terminal-worst = At the worst { $run } carries more than the thickest wire bears that its terminals take. It bears what it carries as set.
sizing-short-fuse-worst = { $run } cannot be made to bear the rating that { $device } needs for its loads at the worst. It bears one that does as set.
sizing-short-rating-worst = At the worst no rating of its form lets { $device } carry its loads for long. As set one does.
sizing-short-drop-worst = At the worst ({ $state }, { $duty }) the thickest wires still lose { $lost } on the way to { $load } and back; { $most } is the limit. It is kept as set, and not at the worst.
sizing-short-check-worst = At the worst no size clears this of { $things }: { $check }. As set it is clear.
sizing-short-no-answer-worst = At the worst the network has no operating point with the thickest wires. The limits are kept as set, and wherever it has one.
sizing-proved-but-short = Some of it cannot be sized, as told above. Of what can, no other choice has less.
sizing-proved = Proved: no other choice that passes all checks has less.
sizing-meshed = A good answer: the network is meshed. The best one is at most { $gap } below.
sizing-not-proved = A good answer: the best one is at most { $gap } below.
sizing-metal = Metal: { $before } now, { $after } then.
sizing-cost = Cost: { $before } now, { $after } then.
sizing-cost-then = Cost then: { $after }. Not everything that is there now has a price on the list.
sizing-cost-unknown = Not everything has a price on the list, so that no sum can be told.
sizing-nothing = Every run and fuse already has the size that costs least.
sizing-none = Nothing on this sheet can be sized.
sizing-judged-worst = Judged at the worst: test tone with the engine off, idling and cruising, and as set.
sizing-judged-set = Judged at the duty and state that are set.
sizing-care = Sizes follow from the drawing and its assumptions. Check them on the vehicle; local law and the makers of vehicle and cable come first.

## The drawer of the page.

sizing = Sizes of runs and fuses
sizing-works = Working out the sizes …
sizing-findings = Findings of grade Stop or Fix: { $now } now, { $then } with these sizes.
sizing-take = { $count ->
    [one] Take this size
   *[other] Take these { $count } sizes
}
sizing-imagined = These sizes are for what is asked below, not for the sheet as it stands; what is taken goes onto the sheet all the same.
sizing-take-one = Take { $size } for { $thing }
sizing-thing = Thing
sizing-now = Now
sizing-then = Then
sizing-lock = lock
sizing-unlock = locked
sizing-lock-of = Lock { $thing }
sizing-unlock-of = Unlock { $thing }
sizing-if = What if?
sizing-duty = Duty
sizing-worst = the worst
sizing-alternator = Alternator
sizing-battery = Battery
sizing-length = Lengths
sizing-series = Series
sizing-series-own = each run's own
sizing-series-metric = square millimetres
sizing-series-awg = gauge numbers (AWG)
sizing-stay = { $count ->
    [one] One that stays as it is
   *[other] { $count } that stay as they are
}
sizing-by = Least
sizing-by-metal = metal
sizing-by-cost = cost by the price list
sizing-no-list = No price list is kept here yet, so that metal decides. Hand out the list, fill in your prices, and take it in.
sizing-list = { $count ->
    [one] One price is kept here; what has none is not chosen.
   *[other] { $count } prices are kept here; what has none is not chosen.
}
sizing-list-out = Hand out the list to fill in
sizing-moved = Against how it is
sizing-moved-size = { $thing }: { $then } rather than { $now }
sizing-moved-new = New: { $finding }
sizing-moved-gone = Gone: { $finding }
sizing-moved-more = and { $count } more
sizing-moved-none = The same sizes and the same findings.
sizing-back = Back to how it is
