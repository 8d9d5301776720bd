## damaged-run

check-damaged-run-title = Damaged run
check-damaged-run-holds = every run is in a sound state
check-damaged-run-looks = Runs that were found chafed through, pinched, melted, corroded, wet or cut. Stop where a source can make them live, and wherever insulation has melted; Fix elsewhere. What a cut or a corroded run causes further on (no feed, no return, a silent speaker, a hot joint) is not told again.
check-damaged-run-why = Bare live metal finds the body. A wire that has melted once tells that something was wrong, and may still be.
check-damaged-run-source = Common practice; 33 CFR 183.445 asks that conductors are protected from damage.
damaged-run-what = { $run } is { $state ->
    [chafed] chafed
    [pinched] pinched
    [melted] melted
    [corroded] corroded
    [wet] wet
   *[cut] cut through
}{ $danger ->
    [heated] : find out what heated it before a new one is laid
    [live-end] , and one end is live
    [live] , and it is live
    [bare] : bare metal here is live
   *[none] { "" }
}.
damaged-run-remedy = { $state ->
    [corroded] Lay { $run } anew as far back as its copper is bright: green corrosion goes on beneath the insulation, so it is replaced and not cleaned.
   *[other] Lay { $run } anew, and keep it from what did that.
}
damaged-run-unknown = The state of { $run } is not known.
damaged-run-find = Look at { $run } along its whole length.

## poor-ending

check-poor-ending-title = Poor ending
check-poor-ending-holds = ends are finished by a method that holds: crimped, soldered and supported, or screwed
check-poor-ending-looks = Ends and splices that are twisted together by hand, made with an insulation-piercing tap, or lie bare on a terminal. Stop on what is live from a source, Fix on everything else.
check-poor-ending-why = Such joints come loose with vibration, or corrode and warm. A live end that comes loose finds the body.
check-poor-ending-source = Common practice: speaker and supply ends are crimped or soldered in a proper terminal, not twisted; 33 CFR 183.420 and ABYC E-11 forbid joints that rely on tension alone (from memory).
poor-ending-splice = { $splice } is { $method ->
    [tap] insulation-piercing tap
   *[twisted] twisted by hand
}: such a joint does not hold.
poor-ending-splice-remedy = Crimp { $splice } with a splice of the right size, and cover it.
poor-ending-what = { $run } is { $ends }.
poor-ending-at = { $method ->
    [twisted] twisted together by hand
    [tap] insulation-piercing tap
   *[loose] nothing: a bare loose end
} at { $terminal }
poor-ending-heat = { $heat } turn into heat there.
poor-ending-remedy = Cut { $run } back to clean metal and crimp it.

## What several checks of ways say.

way-spot = “{ $spot }”
way-guard-unknown = What guards { $run } here is not known ({ $spots }).
way-guard-find = Look what guards { $run } there and note it: a grommet, a gaiter, a sleeve, a tube, the maker's own loom, or nothing.
way-untold = Which way { $run } takes is not told in full; the shortest leads through here ({ $spots }).
way-untold-find = Look where { $run } really lies, and note its way.

## airbag-way

check-airbag-way-title = Way of an airbag
check-airbag-way-holds = nothing lies or is mounted where an airbag unfolds
check-airbag-way-looks = Runs that come through a place or passage where an airbag unfolds, and parts that were put at one. Where an airbag unfolds follows from the form of the body, and is told otherwise place by place. What the vehicle's maker put there is not judged. A route that leaves that piece open is undecided.
check-airbag-way-why = An airbag fills in some hundredths of a second. What lies in its way holds it back or is thrown at people, and what is fixed to its module can fire it or keep it from firing.
check-airbag-way-source = Common practice; the vehicle maker's instructions for his restraint system come first, and work on it is for qualified people.
airbag-way-what = { $run } lies where an airbag unfolds ({ $spots }).
airbag-way-remedy = Lead { $run } another way, behind and below what unfolds, as the vehicle's maker leads his own looms.
airbag-way-part = { $part } stands where an airbag unfolds ({ $place }).
airbag-way-part-remedy = Move { $part } to another place, or note that this vehicle has no airbag there.

## bare-edge

check-bare-edge-title = Bare edge
check-bare-edge-holds = every way through sheet metal, and past a bare edge, has a grommet, a sleeve, a tube or the maker's loom
check-bare-edge-looks = Runs through a hole or grommet of sheet metal, or past bare edges, with nothing that keeps the metal off them. Stop for what a source can make live, Fix elsewhere. Where nobody said what guards the run it is undecided. A way over a hinge is told by moving-joint. The maker's own looms are judged only where somebody found that their guard is gone.
check-bare-edge-why = Sheet metal cuts through insulation within months of vibration. What is live then finds the body, ahead of every fuse that stands further on.
check-bare-edge-source = ISO 10133:2012 clause 7.5 asks for protection from chafing at bulkheads and edges; SAE J1292 and 33 CFR 183.445 for a grommet in every hole of metal (from memory).
bare-edge-what = Nothing keeps bare metal off { $run } ({ $spots }){ $live ->
    [yes] , and it is live
   *[no] { "" }
}.
bare-edge-kind = Whether { $run } comes through sheet metal here is not known ({ $spots }).
bare-edge-kind-find = Note what kind of way that is: { $spots }.
bare-edge-remedy = Set a grommet that fits hole and cable, or draw a sleeve over { $run } and hold it there.

## blind-fixing

check-blind-fixing-title = Blind fixing
check-blind-fixing-holds = nothing is screwed or drilled where a tank, a brake or fuel line, a high-voltage cable or an airbag may lie behind
check-blind-fixing-looks = Parts that stand where one of these may lie behind the sheet metal, and at which somebody said that nobody looked behind. Where nobody said whether, it is undecided. Parts on a board, on a stud of the vehicle's maker, without screws, or where their maker put them are not asked about.
check-blind-fixing-why = A screw finds a fuel tank, a brake line or a cable of some hundred volts just as easily as air. It is seen only from the other side.
check-blind-fixing-source = Common practice; the vehicle maker's body repair instructions come first, and high-voltage parts are for qualified people.
blind-fixing-what = { $part } is screwed on ({ $place }) and nobody looked behind. What may lie there: { $behind }.
blind-fixing-remedy = Look from the other side where each screw of { $part } comes out. Where that cannot be seen, choose another place.
blind-fixing-unknown = Whether somebody looked behind the screws of { $part } is not known ({ $place }). What may lie there: { $behind }.
blind-fixing-find = Look from the other side where each screw of { $part } comes or will come out, before anything is drilled, and note it.

## crush

check-crush-title = Crushed run
check-crush-holds = nothing runs under a seat, a seat rail or a clamp of trim without protection
check-crush-looks = Runs that come through where weight or moving parts can crush them, with nothing, or only a braid, around them; a tube or the maker's loom counts as protection. Stop for what a source can make live, Fix elsewhere. Where nobody said what guards the run it is undecided. The maker's own looms are judged only where somebody found that their guard is gone.
check-crush-why = No run is made to be loaded by a seat. Rail and frame press through insulation, and a seat that is pushed back cuts.
check-crush-source = Common practice: no run is loaded by a seat; 33 CFR 183.445 asks that conductors are protected from damage (from memory).
crush-what = { $run } can be crushed here ({ $spots }){ $live ->
    [yes] , and it is live
   *[no] { "" }
}.
crush-remedy = Lead { $run } around the seat. Where there is no way round, lay it in a tube that bears the weight, clear of rails and springs.

## hot-place

check-hot-place-title = Too hot a place
check-hot-place-holds = the insulation bears the hottest place on the way
check-hot-place-looks = Runs of which the insulation is rated for less than the hottest surroundings on the way; those follow from the route where there is one. Stop for what a source can make live, Fix elsewhere. That such a run bears no current at all is not told again.
check-hot-place-why = Insulation that is warmer than it is made for hardens, cracks and falls off, without any current.
check-hot-place-source = 33 CFR 183.425 gives allowable currents by insulation rating, and for engine spaces less; the rating itself is the limit without current.
hot-place-what = { $run } lies where it gets { $hot } ({ $around }); its insulation bears { $bears }.
hot-place-remedy = Lay wire with insulation for that place, or lead { $run } where it is cooler.

## intermittent

check-intermittent-title = Intermittent contact
check-intermittent-holds = no run loses contact when something is moved
check-intermittent-looks = Runs of which somebody found that they lose contact in a state that comes and goes: doors, lid or seats moved, wire flexed, warm or shaken. Stop for what a source can make live, Fix elsewhere. A run that is known to be damaged is told as that.
check-intermittent-why = Strands that break one by one, or a terminal that has lost its spring, still pass a test at rest. What is left of it carries all the current and warms, and a live end that parts finds the body.
check-intermittent-source = Common practice.
intermittent-what = { $run } loses contact { $state ->
    [doors-open] when doors open
    [lid-open] when the lid or tailgate opens
    [seats-moved] when seats are moved or folded
    [flexed] when it is flexed
    [warm] when it is warm
   *[shaken] when it is shaken
}.
intermittent-remedy = Have a second person { $state ->
    [doors-open] open and close the doors
    [lid-open] open and close the lid
    [seats-moved] move and fold the seats
    [flexed] flex it hand by hand
    [warm] warm it with a hot-air gun, gently
   *[shaken] tap along it
} while a meter shows the resistance of { $run }, plugs and endings included; replace the piece or terminal that makes it jump.
intermittent-look = Look here first: { $spots }.

## mounted-on-moving

check-mounted-on-moving-title = Mounted on what moves
check-mounted-on-moving-holds = amplifiers, blocks, fuses and their like sit on fixed structure
check-mounted-on-moving-looks = Amplifiers, batteries, chargers, capacitors, processors, blocks, bus bars, fuses, breakers, relays and isolators on a seat, a seat back that folds, a door or a lid, by what is told of their mounting or else of their place; and the heavy ones of them on trim.
check-mounted-on-moving-why = Their wires flex with every fold and their screws work loose. In a crash a seat back with an amplifier on it is hit by it.
check-mounted-on-moving-source = Common practice: equipment is not carried by a folding seat back.
mounted-on-moving-what = { $part } is fixed to what does not hold still ({ $on }).
mounted-on-moving-remedy = Fix { $part } to body metal, or to a board or bracket that is fixed to it.
mounted-on-moving-place = { $part } stands on what moves ({ $place }).
mounted-on-moving-place-remedy = Move { $part } to a place that holds still, such as a side panel or the load floor.

## loose-metal

check-loose-metal-title = Loose metal
check-loose-metal-holds = no screw, offcut or other loose metal was left lying in the car
check-loose-metal-looks = Parts by which a loose screw, an offcut or other metal was seen to lie. Stop by a battery or an alternator, Fix elsewhere. It is told whoever left it.
check-loose-metal-why = What lies loose in a car travels, and stops at terminals and in moving parts. Across the posts of a battery it lets more than a thousand amperes flow with no fuse on the way; under a carpet it works its way into a wire.
check-loose-metal-source = Common practice: nothing is left in the car that was not in it, and every screw that came out is found.
loose-metal-what = Loose metal lies by { $part }{ $source ->
    [yes] , whose studs are live with no fuse before them
   *[no] { "" }
}.
loose-metal-remedy = Isolate the battery, pick up what lies by { $part }, and find out where it came from.

## mounting-loose

check-mounting-loose-title = Loose mounting
check-mounting-loose-holds = every fixing hole has its screw, square to the surface, and nothing lies loose
check-mounting-loose-looks = Parts of which fixing holes and screws were counted and screws are missing, that sit askew, or that lie loose. Fix where a part lies loose or half of its screws or more are missing, Tidy elsewhere. What was looked at is judged whoever fitted it.
check-mounting-loose-why = What is half fixed rattles, buzzes and comes off. A missing screw is somewhere: one that lies loose in the car finds terminals and moving parts.
check-mounting-loose-source = Common practice: every fixing hole of a speaker or amplifier gets its screw, square to the surface, and no loose screw is left in the car.
mounting-loose-lies = { $part } lies loose.
mounting-loose-fix = Fix { $part } to body metal, or to a board or bracket that is fixed to it.
mounting-loose-what = { $part } lacks { $missing } of { $holes } screws.
mounting-loose-unknown = { $missing ->
    [screws] How many screws { $part } has is not known.
   *[holes] How many fixing holes { $part } has is not known.
}
mounting-loose-count = Count the { $missing ->
    [screws] screws
   *[holes] fixing holes
} of { $part }.
mounting-loose-crooked = { $part } does not sit square to its surface.
mounting-loose-remedy = Give each hole of { $part } its screw, and look for those that came out: none stays loose in the car.
mounting-loose-square = Take { $part } off, clear what it stands on, and screw it on square.

## moving-joint

check-moving-joint-title = Moving joint
check-moving-joint-holds = a run goes over a hinge or into a seat only in the maker's gaiter or a loom made for it
check-moving-joint-looks = Runs that bend when a door, a lid or a seat is moved, and lie neither in the maker's gaiter nor in a loom made for it. Stop for what a source can make live, Fix elsewhere. Where nobody said what guards the run it is undecided. The maker's own looms are judged only where somebody found that their gaiter is torn or gone.
check-moving-joint-why = A wire breaks after some thousand bends, strand by strand, and first where a tie or an edge holds it. A torn gaiter cuts what it should guard and lets water in.
check-moving-joint-source = Common practice: a run flexes only inside a maker's gaiter.
moving-joint-what = { $run } bends here without a gaiter or loom made for it ({ $spots }){ $live ->
    [yes] , and it is live
   *[no] { "" }
}.
moving-joint-remedy = Lead { $run } through the maker's gaiter, with a loop to bend in, or by a way that does not move.

## unsupported

check-unsupported-title = Unsupported run
check-unsupported-holds = supports stand close enough together
check-unsupported-looks = Runs of which the longest distance between two supports was measured and is above the limit. Runs that have a route and are longer than the limit, but of which nobody measured it, are asked about in one finding.
check-unsupported-why = A run that hangs swings, chafes and pulls at its ends.
check-unsupported-source = ISO 10133:2012 clauses 7.3 and 7.4; ABYC E-11 11.15 (from memory).
unsupported-what = { $run } hangs free over { $hangs }; { $most } is the limit.
unsupported-remedy = Hold { $run } at least every { $most }, with clips or ties on something fixed.
unsupported-unknown = How far apart the supports of { $runs } are is not known.
unsupported-find = Measure the longest distance between two supports of { $runs }.

## water-way

check-water-way-title = Way for water
check-water-way-holds = openings to the outside are sealed
check-water-way-looks = Runs that come from outside, where water gets or the engine stands, through an opening of sheet metal in no more than a sleeve or tube. An opening with nothing in it is told by bare-edge, a gaiter that is gone by moving-joint.
check-water-way-why = Water runs along the cable to the lowest point within: carpet, plugs, a control unit. Fumes and fire come the same way.
check-water-way-source = Common practice.
water-way-what = { $run } comes in from outside and nothing seals its way ({ $spots }).
water-way-remedy = Set a grommet that closes around { $run }, with a loop below it from which water drips off.
