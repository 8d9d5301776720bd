## clad-feed

check-clad-feed-title = Clad feed
check-clad-feed-holds = copper-clad aluminium in a feed or return is sized as what it is, not as copper
check-clad-feed-looks = A feed or return of copper-clad aluminium that, taken as what it is, cannot carry its current or the rating of the device in front of it, or on whose way too much voltage is lost. What follows from that for the fuse is told by fuse-outsizes-wire as well, since it can burn.
check-clad-feed-why = It has about two thirds of the conductance of copper of the same size and carries about four fifths of the current. Its jacket often claims a size that is not even there, and its ends loosen and corrode sooner.
check-clad-feed-source = ASTM B566 for its resistivity (from memory); 33 CFR 183.425(a) allows copper only in small craft.
clad-feed-weak = { $run } is copper-clad aluminium: its { $size } conduct like { $equal } of copper. { $asks } are asked of it; it can carry { $can }.
clad-feed-lossy = { $run } is copper-clad aluminium: its { $size } conduct like { $equal } of copper. { $load } loses { $drop } on the way.
clad-feed-remedy = Lay { $size } copper in its place.
clad-feed-copper = Lay copper in its place, sized for its fuse and its length.

## hot-joint

check-hot-joint-title = Hot joint
check-hot-joint-holds = the power lost in each ending stays small
check-hot-joint-looks = Heat in the ends of runs: the resistance of an ending times the square of its heating current (RMS). Grade Stop where it can melt plastic. An ending of a kind that does not hold, or on a corroded run, is told as that.
check-hot-joint-why = A joint that warms loosens, corrodes and warms more. Most melted holders and terminals began that way.
check-hot-joint-source = Joule heating; the limits are judgements of this project, with the range considered in them.
check-hot-joint-unmended = A joint that is already finished as it should be, of which nobody measured the resistance: measure the drop across it under load, and enter that.
hot-joint-what = { $run } turns { $lost } into heat where it is joined to { $place } ({ $carries } through { $ohms }); { $verdict }.
hot-joint-melts = { $most } can melt plastic
hot-joint-limit = { $most } is the limit
hot-joint-other = The other end, at { $place }, is too warm as well.
hot-joint-remedy = Remake the joint at { $place }: clean metal, a new crimp, the right torque.
hot-joint-end = its end

## loose-end

check-loose-end-title = Loose end
check-loose-end-holds = no run ends nowhere
check-loose-end-looks = Runs of which an end lies loose, also one that was clipped off and left in the car, or lands on a terminal that is not there. Stop where the other end can be live, and it says so when no fuse guards it; Tidy elsewhere. A loose end that is the gap of something else (a return, a speaker) is told there.
check-loose-end-why = A live end that lies loose will touch something one day. A dead one puzzles the next person.
check-loose-end-source = Common practice.
loose-end-unguarded = { $run } is live, no fuse guards it, and one end lies loose.
loose-end-live = { $run } is live and one end lies loose.
loose-end-what = { $run } ends nowhere.
loose-end-remedy = Join { $run } where it belongs, or take it out.

## no-feed

check-no-feed-title = No feed
check-no-feed-holds = a source reaches everything that uses current
check-no-feed-looks = On a sheet with a source: a supply terminal that no live pole reaches even with every switch, relay and isolator closed, and where the way ends: nothing on the terminal, a wire that leads nowhere, a plug that is apart, a fuse that is blown or taken out. Parts on one dead feed share a finding. A feed that is cut through is told by damaged-run.
check-no-feed-why = It does not work.
check-no-feed-source = Common practice; it follows from Kirchhoff's current law.
check-no-feed-unmended = For several things on one wire that leads to nothing, and for runs whose other end is somewhere: which source they were meant for is nowhere on the sheet.
no-feed-coil = The coil of { $relay } gets no feed: it never pulls in.
no-feed-coil-remedy = Join the coil of { $relay } to a fused feed or a turn-on output.
no-feed-apart = { $plug } is apart: nothing reaches { $parts }.
no-feed-apart-remedy = Mate the halves of { $plug }.
no-feed-nothing = Nothing is on { $terminals }: no source reaches { $parts }.
no-feed-nowhere = What is on { $terminals } leads to no source.
no-feed-remedy = Join it to a fused feed.
no-feed-blown = { $device } is blown or taken out{ $parts ->
    [0] .
   *[other] : nothing reaches { $parts }.
}
no-feed-blown-remedy = Find out why it opened before a new one of the same rating goes in as { $device }.

## overloaded-run

check-overloaded-run-title = Overloaded run
check-overloaded-run-holds = the steady current of every run is no more than it can carry at its place
check-overloaded-run-looks = The current that a run carries at the chosen duty, as its heating value (RMS), against the current that brings its conductor to the rating of its insulation: by size, material, insulation, the warmest surroundings on its way, and how many loaded wires lie with it. Factory wiring is judged where something was added that hangs on it. A run told here is not told again by fuse-outsizes-wire or voltage-drop: the wire is too thin for all three.
check-overloaded-run-why = The insulation softens, ages and at last melts. No fuse opens, because the current is what the load is meant to draw.
check-overloaded-run-source = 33 CFR 183.425 table 5 and its corrections, as the allowable-current model of this tool states them.
overloaded-run-what = { $run } carries { $carries }; where it lies it can carry { $can }.
overloaded-run-remedy = Lay { $size } copper or take load off it.
overloaded-run-thicker = Lay thicker wire, or take load off it.
overloaded-run-unknown = { $run } carries { $carries }; whether it can cannot be told, since its { $missing } is not known.

## supply-collapse

check-supply-collapse-title = Supply collapse
check-supply-collapse-holds = the network can deliver what the loads ask, and every amplifier stays above its cut-off
check-supply-collapse-looks = Loads that ask for more power than the feed can pass at any voltage, with the share that can be delivered and what is to blame; and amplifiers whose supply at bursts falls below the voltage at which they turn themselves off. The battery counts with the highest resistance that is credible, cold and half flat. Where the way has an overloaded run, a bad joint or a bad ground, that is told instead. Undecided where the network could not be solved.
check-supply-collapse-why = The sound cuts out at the loudest moment, comes back, and cuts out again.
check-supply-collapse-source = Common practice; maximum power transfer of a source with resistance.
check-supply-collapse-unmended = With several batteries, and where neither thicker wire nor a larger battery is enough: then less has to be asked of the supply.
supply-collapse-what = The supply can give { $share } of the power that is asked at bursts.
supply-collapse-most = Most is lost in { $things }.
supply-collapse-remedy = Use thicker and shorter wire, a stronger battery, or less power.
supply-collapse-failed = Currents and voltages could not be worked out: { $why }.
supply-collapse-failed-find = Look for sources that are joined the wrong way round, and for values that cannot be right.
supply-collapse-cut-off = At bursts { $amplifier } gets { $gets }; below { $needs } it turns itself off.

## terminal-overfull

check-terminal-overfull-title = Terminal overfull
check-terminal-overfull-holds = each terminal takes the size and the number of wires on it
check-terminal-overfull-looks = Supply terminals of amplifiers and the screws of distribution blocks: one wire each, no thicker than they take. Studs (battery poles, ground points, places of a bus): no more rings than the limit.
check-terminal-overfull-why = Strands that were cut off to make a wire fit do not carry. A screw on two wires holds one of them.
check-terminal-overfull-source = Common practice; ABYC E-11 for four rings on a stud.
check-terminal-overfull-unmended = A wire that is too thick and has to stay so, for what it carries or for what guards it: a terminal that takes it is another device.
terminal-overfull-many = { $count } wires are on { $terminal }: { $runs }; it takes { $most }.
terminal-overfull-many-remedy = Move wires to a terminal, a block or a bus of their own.
terminal-overfull-unknown = Whether { $run } fits { $terminal } cannot be told: its size is not known.
terminal-overfull-thick = { $run } has { $size }; { $terminal } takes { $takes }.
terminal-overfull-thick-remedy = Use a terminal that takes { $size }, or a reducer made for it; cut no strands.
terminal-overfull-thinner-remedy = Lay { $size }, which bears what it carries and what guards it, or use a terminal that takes { $takes }, or a reducer made for it; cut no strands.

## voltage-drop

check-voltage-drop-title = Voltage drop
check-voltage-drop-holds = what is lost from the source to a load and back, at bursts of the chosen duty, stays within the limit
check-voltage-drop-looks = The voltage at the source's poles less the voltage at the load's terminals, feed and return together, at burst level. Amplifiers have a limit in volts, other equipment one in per cent of the nominal voltage. Loads that lose most in the same run share one finding. What is lost in something that has a finding of its own (an overloaded run, a bad joint, a bad ground) is not told again.
check-voltage-drop-why = An amplifier on a weak supply clips earlier and runs hotter, lights are dim, pumps are slow, and equipment switches itself off at the loudest moment.
check-voltage-drop-source = Amplifiers: common practice. Others: ABYC E-11 clause 11.14.2.6 and ISO 10133 for small craft, IEC 60364-5-52 Annex G.
voltage-drop-what = { $load } loses { $lost } between source and terminals; { $most } is the limit.
voltage-drop-in = { $load } loses { $lost } between source and terminals, { $part } of it in { $run }; { $most } is the limit.
voltage-drop-remedy = Lay { $sizes } copper.
voltage-drop-thicker = Lay thicker or shorter wire, there and back.

## false-size

check-false-size-title = False size
check-false-size-holds = a wire has the cross-section and the conductance that its jacket says
check-false-size-looks = Runs of which the strands were counted and measured, or the drop at a known current, where what is there is clearly less than the size on the jacket. Both together tell the likely material. The engine reckons with what was counted or measured, not with the jacket, and what follows from that for fuses and currents is told by their own checks, since it can burn. A count or a measurement that lacks its other half is undecided.
check-false-size-why = A jacket is printed before the copper is in it. Thick soft insulation around thin strands, or aluminium with a skin of copper, looks like a large cable and is not one.
check-false-size-source = Cross-section from strands is geometry; resistance of sizes by IEC 60228 and ASTM B258; the limit is a judgement of this project, with what it allows for in it.
false-size-counted = The jacket of { $run } says { $size }; its strands add up to { $counted }.
false-size-also = By its measured drop it conducts like { $like } of copper.
false-size-like = The jacket of { $run } says { $size }; by its measured drop it conducts like { $like } of copper.
false-size-material = That fits { $material }.
false-size-unknown = What was counted or measured of { $run } tells nothing without: { $missing }.
false-size-remedy = Lay { $size } of copper whose strands add up, or fuse and load it as what it is.
