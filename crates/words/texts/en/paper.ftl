## Headings and names of the papers.

paper-untitled = Untitled job
paper-heading = { $title } · { $sheet }
paper-heading-since = { $title } · { $sheet }, starting from { $since }
paper-list-thread = Complaints and what came of them
paper-list-quote = Quote
paper-list-becomes = What becomes of each thing
paper-list-totals = In sum
paper-list-findings = Findings cleared and left
paper-list-order = Order list
paper-list-prices = Price list
paper-list-cut = Cut list
paper-list-labels = Labels
paper-list-fuses = Fuse table
paper-list-settings = Settings
paper-list-meter = Meter sheet
paper-list-readings = Readings kept
paper-list-proof = Shortest proof
paper-list-wiring = Wiring table
paper-list-stock = Return to stock

## Columns.

paper-column-answered = Answered by
paper-column-answers = Answers
paper-column-article = Article
paper-column-becomes = Becomes
paper-column-black = Black lead
paper-column-changes = What differs
paper-column-channel = Channel
paper-column-closed = Closed
paper-column-colour = Colour
paper-column-complaint = Complaint
paper-column-cruise = Cruising
paper-column-current-burst = Burst
paper-column-current-rms = RMS
paper-column-cut-length = Cut
paper-column-decided-on = Decided
paper-column-decision = Decision
paper-column-delay = Delay
paper-column-done = Done
paper-column-end-a = End A
paper-column-end-b = End B
paper-column-engine-off = Engine off
paper-column-equipment = Equipment
paper-column-expected = Expected
paper-column-explained = Explained by
paper-column-extra = Extra
paper-column-finding = Finding
paper-column-finish-a = Ending A
paper-column-finish-b = Ending B
paper-column-fitted = Fitted by
paper-column-for = For
paper-column-form = Type
paper-column-fuse = Fuse
paper-column-gain = Gain
paper-column-grade = Grade
paper-column-guards = Guards
paper-column-here = This end
paper-column-high-pass = High-pass
paper-column-hours = Hours
paper-column-idle = Idling
paper-column-known = Value is
paper-column-length = Length
paper-column-level = Level
paper-column-load = Load
paper-column-low-pass = Low-pass
paper-column-material = Material
paper-column-name = Name
paper-column-need = Need
paper-column-once-out = Once out
paper-column-other-end = Other end
paper-column-parked = Parked
paper-column-parts-price = Parts
paper-column-place = Place
paper-column-power = Power
paper-column-price = Price
paper-column-proven = Proven at
paper-column-proves = Proves
paper-column-quantity = Quantity
paper-column-rating = Rating
paper-column-read = Read
paper-column-red = Red lead
paper-column-remark = Remark
paper-column-route = Route
paper-column-section = Group
paper-column-serves = Serves
paper-column-size = Size
paper-column-slope = Slope
paper-column-state = State
paper-column-step = Step
paper-column-sum = Sum
paper-column-tag = Tag
paper-column-target = Target
paper-column-tolerance = ±
paper-column-least = At least
paper-column-most = At most
paper-column-points = Outside, it points to
paper-column-total = Total
paper-column-turned = Polarity
paper-column-unit = Unit
paper-column-used = Used
paper-column-verdict = Verdict
paper-column-weakest = Weakest wire
paper-column-what = What
paper-column-with = With

## Words within the lists.

paper-and = { $first }, { $second }
paper-article = { $kind }: { $what }
paper-property = { $name } { $value }
paper-yes-no = { $answer ->
    [yes] yes
   *[no] no
}
paper-colour-unknown = colour not known
paper-colour = { $letters } { $base }
paper-colour-two = { $letters } { $base }, { $tracer } stripe
paper-not-known = not known
paper-assumed = assumed
paper-computed = computed
paper-then = { $first } → { $second }
paper-semicolon = { $first }; { $second }
paper-power-at = { $power } at { $load }
paper-section = { $channels } × { $powers }
paper-section-bridged = { $section }, bridged { $powers }
paper-section-least = { $section }, no less than { $load }
paper-section-high = { $section }, high-pass { $frequency }
paper-section-low = { $section }, low-pass { $frequency }
paper-named = { $name } ({ $what })
paper-another-way = takes another way
paper-ending-at = ending at { $at }
paper-loose-end = a loose end
paper-fitted-maker = maker
paper-fitted-earlier = earlier hand
paper-fitted-us = us
paper-end-factory = maker's
paper-end-ring = ring
paper-end-spade = push-on
paper-end-ferrule = ferrule
paper-end-butt = butt splice
paper-end-soldered = soldered
paper-end-bare-screw = bare, screwed
paper-end-twisted = twisted
paper-end-tap = piercing tap
paper-end-plug = plug
paper-end-loose = loose
paper-loose = lies loose
paper-done = done
paper-closed = closed
paper-turned = turned
paper-things = things
paper-findings = findings
paper-pieces = pcs
paper-money = { $number } { $currency }
paper-price-unknown = a price is not known
paper-run = { $from } to { $to }, { $size }
paper-run-any = { $from } to { $to }
paper-against = { $at } against { $against }
paper-state-duty = { $state }, { $duty }
paper-computed-at = Currents are computed: { $state }, { $duty }.

## What becomes of things.

paper-becomes-kept = kept
paper-becomes-refitted = taken out and refitted
paper-becomes-moved = moved
paper-becomes-changed = changed
paper-becomes-replaced = replaced
paper-becomes-new = new
paper-becomes-removed = removed
paper-cleared = cleared
paper-left = left
paper-added = new on this sheet
paper-copper = copper, { $becomes }
paper-aluminium = aluminium, { $becomes }
paper-approved-sum = approved
paper-metal-unknown = Not weighed, since size, length or material is not known: { $runs }.

## The order list.

paper-section-parts = Parts
paper-section-fuses = Fuses
paper-section-cable = Cable
paper-section-leads = Signal leads
paper-section-endings = Terminals
paper-section-small = Small parts
paper-fuse-holder = Fuse holder, { $form }
paper-makers-fuse = fuse of the vehicle's maker
paper-fuse = Fuse { $rating }, { $form }
paper-cable = Cable { $size }, { $colour }, { $material }, { $insulation }
paper-signal-lead = Signal lead, { $length }
paper-tube = Conduit over cable { $size }
paper-clip = Clip or tie for cable { $size }
paper-label = Label
paper-ring = Ring terminal { $size }, hole { $stud }
paper-ring-usual = Ring terminal { $size }, hole { $stud } (usual; measure the stud)
paper-ring-any = Ring terminal { $size }, measure the stud
paper-spade = Push-on terminal { $size }, measure the tab
paper-ferrule = Ferrule { $size }
paper-butt = Crimped butt splice { $size }
paper-plug = Plug { $size }
paper-tap = Insulation-piercing tap { $size }
paper-shrink = Shrink sleeve with adhesive for { $size }
paper-sleeve = Sleeve over cable { $size }
paper-sleeve-at = Sleeve: { $passage }
paper-tube-at = Corrugated tube: { $passage }
paper-grommet = Grommet: { $passage }, for { $count ->
    [one] one run
   *[other] { $count } runs
}
paper-ground-screw = Screw, nut and star washer for a ground point
paper-prices-how = Every cable and fuse that sizing by cost chooses from. Hand it out as a table file, fill in the prices, and take it in again; what has no price is not chosen.
paper-order-waste = Cable with { $share } of waste, rounded up. "Used" is what the cut lengths add up to.
paper-price-converted = The price list tells { $count ->
    [one] one price
   *[other] { $count } prices
} { $by ->
    [foot] by the metre; here prices stand by the foot
   *[other] by the foot; here prices stand by the metre
}. Sums are made from the list's own prices.
paper-order-sum = By the price list: { $sum }. { $missing ->
    [0] Every line has its price.
    [one] One line has no price.
   *[other] { $missing } lines have no price.
}
paper-order-staying = { $count ->
    [one] One run stays in the vehicle and is not bought again.
   *[other] { $count } runs stay in the vehicle and are not bought again.
}
paper-lacking = Not in the list: { $tag }, since its { $what } is not known.
paper-cut-spare = { $spare } is added at each end of runs for which no slack was told.

## Settings and meter.

paper-settings-target = The computed target is √(P·Z), for the power that the channel gives into this load; with the test tone, speakers off. Set it at the level at which the source is still clean.
paper-meter-duty = Expected values are computed: { $duty } where something plays. A contact that is not what it should be reads otherwise.
paper-meter-ohms = Ohms are measured with the supply isolated; they stand under the first state.
paper-meter-moved = { $run } loses contact with: { $moved }. Read again in that state, at { $from } and at { $to }, and watch the display.
paper-meter-tone = Volts AC are read at the outputs under a test tone that plays at the duty above: √(power × impedance).
paper-readings-tolerance = Tolerance: 2 % of a voltage, at least 0.1 V; 12.5 % of a current, a resistance or a test tone, at least 20 mA, 0.3 Ω and 0.2 V.
paper-shows-nothing = no reading
paper-agrees = as expected
paper-differs = differs
paper-not-compared = not compared

## Return to stock.

paper-stock-out = take out
paper-stock-back = put back
paper-stock-customer = put back, the customer has it
paper-stock-gone = get a new one, it is gone
paper-stock-unknown = find out where it is, then put back
paper-stock-undo = make as it was
paper-stock-no-found = The job has no sheet of what was found: what the maker fitted and is gone is not known.

## Quote and thread.

paper-extra-on = found after strip-out { $on }
paper-extras = found after strip-out
paper-sum-of = { $what }: { $sum }
paper-sum-all = In all: { $sum }
paper-refused = { $what } ({ $need }) was offered and declined.
paper-refused-on = { $what } ({ $need }) was offered and declined, { $on }.
paper-answer = { $offer } ({ $decision })
paper-finding = { $title }: { $things }
paper-open-unexplained = { $complaint }: no finding explains it yet.
paper-open-unanswered = { $complaint }: no offer answers it yet.
paper-open-not-offered-for = { $complaint }: nothing was offered against “{ $finding }”.
paper-open-not-offered = Nothing was offered against “{ $finding }”.
paper-open-undecided = { $offer }: the customer has not decided.
paper-open-not-done = { $offer }: approved, not done yet.
paper-open-still-found = { $offer }: done, but “{ $finding }” is still found.
paper-open-unproven = { $complaint }: mended, but no reading proves it yet.
paper-open-not-closed = { $complaint }: mended and proven, not closed yet.

## Labels to cut out.

label-title = Labels to cut: { $heading } ({ $number } of { $count })
label-how = Print at 100 %, on sticky sheet. Cut along the full lines. Fold flags at the dotted lines around the wire, words outside.
label-more = and { $count } more
