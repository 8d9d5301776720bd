## feed-unprotected

check-feed-unprotected-title = Feed unprotected
check-feed-unprotected-holds = every live conductor has an overcurrent device between it and each source
check-feed-unprotected-looks = Live wire that a source can drive current into without crossing a working fuse or breaker, and that ends where current is used or on nothing. A fuse after the first load, a ring feed with a fuse in one arm, a fuse that a second wire goes around and a fuse that is bridged all leave such wire. Wire that leads to its first device within the limit is left to the fuse itself; wire that leads to it, but from too far, is told by fuse-too-far. All runs behind one missing device make one finding.
check-feed-unprotected-why = A short of such a wire to the body draws all that the battery can give, often more than a thousand amperes. The wire glows within seconds, and nothing stops it but fire or a burnt-through wire.
check-feed-unprotected-source = 33 CFR 183.455 for small craft; common practice of vehicle audio.
feed-unprotected-what = { $runs } { $runs ->
    [one] is
   *[other] are
} live from { $sources } with no fuse on the way: a short burns the wire.
feed-unprotected-remedy = Put a fuse that the wire can bear next to { $sources }, ahead of everything on this feed.
feed-unprotected-bridged = { $runs } { $runs ->
    [one] is
   *[other] are
} live from { $sources } with no fuse on the way, since { $devices } { $devices ->
    [one] is
   *[other] are
} bridged: a short burns the wire.
feed-unprotected-bridged-remedy = Take the bridge out and fit a fuse of the right rating.
feed-unprotected-bypassed = { $runs } { $runs ->
    [one] is
   *[other] are
} live from { $sources } with no fuse on the way, since { $devices } { $devices ->
    [one] is
   *[other] are
} bypassed by another wire: a short burns the wire.
feed-unprotected-bypassed-remedy = Take that wire out, or let everything pass one fuse next to { $sources }.

## fuse-breaking-capacity

check-fuse-breaking-capacity-title = Fuse breaking capacity
check-fuse-breaking-capacity-holds = the current of a short right behind a device is no more than the device can break
check-fuse-breaking-capacity-looks = The largest current that the sources can drive into a short right behind a fuse or breaker, with the battery warm and charged, against what the device is made to interrupt: as entered, else as usual for its form. That figure is published at a higher voltage than 12 V, which the profile may take into account. Of a breaker, and of a glass fuse, it must be told.
check-fuse-breaking-capacity-why = A device that is asked for more than it can break may burst, or draw an arc that goes on burning.
check-fuse-breaking-capacity-source = ISO 8820-3:2015 scope for blades (1000 A); strips as usual published figures (from memory). The current follows from the cold-cranking current of the battery.
check-fuse-breaking-capacity-unmended = A block whose fuses come in no stronger form in the ratings that it holds, and a vehicle's own fuses: what stands there is for its maker or a new layout.
fuse-breaking-capacity-what = A short behind { $device } draws up to { $draws }; it can break { $breaks }.
fuse-breaking-capacity-remedy = Fit a bolt-in fuse that can break it next to the source, ahead of this one.
fuse-breaking-capacity-unknown = A short behind { $device } draws up to { $draws }; whether it can break that is not known.
fuse-breaking-capacity-find = Read what { $device } can break off it or its data.

## fuse-in-return

check-fuse-in-return-title = Fuse in return
check-fuse-in-return-holds = every fuse and breaker sits in the live side, ahead of its load
check-fuse-in-return-looks = A fuse or breaker that stands between a load and the way back to the source, where a negative pole can be reached without crossing a load and no live pole can. If nothing guards the feed of the same load, that belongs to this finding and is not told a second time.
check-fuse-in-return-why = A short of the feed to the body never passes such a fuse, so it guards nothing. When it does blow, the load stays live through and through, and a hand or a tool that touches it closes the circuit.
check-fuse-in-return-source = Common practice; 46 CFR 183.380(b) for the rule that a return is not opened unless the feed opens too.
fuse-in-return-what = { $device } sits in the return of { $loads ->
    [0] its load
   *[other] { $loads }
}: a short of the feed never passes it.
fuse-in-return-remedy = Take { $device } out and join the return straight through.
fuse-in-return-open = { $device } sits in the return of { $loads ->
    [0] its load
   *[other] { $loads }
}, and nothing guards the feed { $runs }: a short of it to the body never passes { $device }.
fuse-in-return-open-remedy = Move { $device } into the feed, next to the source, and join the return straight through.

## fuse-outsizes-wire

check-fuse-outsizes-wire-title = Fuse outsizes wire
check-fuse-outsizes-wire-holds = the rating of every device is no more than what each wire it guards can carry, times the factor of the profile
check-fuse-outsizes-wire-looks = A fuse or breaker whose rating lies above the allowable current of a run behind it, up to the next device. Wires that lie side by side between the same two points count together; uneven-parallel looks at each of them alone. All thin runs behind one device make one finding.
check-fuse-outsizes-wire-why = In a fault the wire, not the fuse, becomes the part that gives way: it can carry its own fire along the whole vehicle before the fuse opens.
check-fuse-outsizes-wire-source = ISO 13297 clause 13.1.5 in its strict form; 33 CFR 183.455(c)(1) allows 150 % below 50 V, which the small-craft profile follows.
fuse-outsizes-wire-what = { $run } can carry { $can } where it lies; { $device } lets { $lets } through.
fuse-outsizes-wire-either = Fit { $rating } in { $device }, or lay { $size } copper for { $run }.
fuse-outsizes-wire-fit = Fit { $rating } in { $device }.
fuse-outsizes-wire-lay = Lay { $size } copper for { $run }, or give it a fuse of its own where it begins.
fuse-outsizes-wire-own = Give { $run } a fuse of its own where it begins.
fuse-outsizes-wire-no-rating = { $device }'s rating is not known, so whether it guards { $runs } cannot be told.
fuse-outsizes-wire-unknown = Whether { $device } ({ $rating }) guards { $run } cannot be told: its { $missing } is not known.

## wire-before-fuse

check-wire-before-fuse-title = Wire before fuse
check-wire-before-fuse-holds = for a short at the far end of every run the device that guards it opens before the wire is damaged
check-wire-before-fuse-looks = Every live run is shorted to the body at its far end, and followed through time: the device ages on its operating times, the conductor warms, and its insulation is damaged above what it bears for a short time. Published operating times are a band and a battery gives more or less. Damage in every case, or by operating times that were entered for the device, is of grade Stop; damage in some cases only, as by the slowest of the published times, is of grade Fix.
check-wire-before-fuse-why = The wire then is the fuse: its insulation melts and smokes along its whole length before anything opens.
check-wire-before-fuse-source = Rule: IEC 60364-4-43 clause 434.5.2, I²t ≤ k²S², with heat that leaves added. Limits of insulation: BS 7671 table 43.1, 160 °C for thermoplastic (read). Operating times: ISO 8820-3, ISO 8820-5, SAE J553 (from memory); enter those of the data sheet where they are at hand.
check-wire-before-fuse-unmended = Where devices of several ways share the current, a change of one moves the current to the others; and where no thicker wire goes into the terminals.
wire-before-fuse-what = A short at the far end of { $run } draws up to { $draws }. The wire lasts { $lasts }; { $devices } may take from { $soonest } to { $latest }.
wire-before-fuse-holds-on = A short at the far end of { $run } draws up to { $draws }. The wire lasts { $lasts }; { $devices } need not open.
wire-before-fuse-remedy = Fit a quicker or a smaller fuse ahead of { $run }, or lay it thicker.
wire-before-fuse-data-sheet = Enter the operating times of { $devices } from the data sheet; if they are no better, fit a quicker or a smaller fuse ahead of { $run }, or lay it thicker.

## short-never-clears

check-short-never-clears-title = Short never clears
check-short-never-clears-holds = a short at the far end of every run draws enough to open the device that guards it
check-short-never-clears-looks = The short of wire-before-fuse, where the wire bears it: the current that the weakest credible battery drives through the warm wire, against what opens the device. Where it opens in some cases only, at the quickest of its times or with a strong battery, the grade is Fix.
check-short-never-clears-why = The device takes the short for a load. The current goes on until the battery is flat, and every poor joint on its way glows.
check-short-never-clears-source = Common practice; operating times as in wire-before-fuse.
check-short-never-clears-unmended = Where devices of several ways share the current, a change of one moves the current to the others; and where no thicker wire goes into the terminals.
short-never-clears-what = A short at the far end of { $run } draws no more than { $draws }: { $devices } never opens.
short-never-clears-perhaps = A short at the far end of { $run } may draw as little as { $draws }: { $devices } need not open.
short-never-clears-remedy = Fit a smaller fuse in place of { $devices }, or lay { $run } thicker, so that a short draws more.

## fuse-order

check-fuse-order-title = Fuse order
check-fuse-order-holds = of two devices in line the one nearest a fault opens first
check-fuse-order-looks = Two fuses or breakers one behind the other, for a short right behind the second. The first one is told of when it is the quicker of the two at both edges of its published times.
check-fuse-order-why = A fault in one branch then takes down everything on the feed, and the fuse that has blown tells nothing of where the fault is.
check-fuse-order-source = Common practice of discrimination between devices in series; operating times as in wire-before-fuse.
check-fuse-order-unmended = Where both devices are as small as their loads allow and as large as their wires bear; and for a vehicle's own fuses, whose ratings stay.
fuse-order-what = A short right behind { $near } draws up to { $draws }; { $far }, further up, opens first.
fuse-order-remedy = Fit a larger or slower fuse as { $far }, if its wires bear it, or a smaller or quicker one as { $near }.

## fuse-too-far

check-fuse-too-far-title = Fuse too far
check-fuse-too-far-holds = the unprotected length from each source to its first device stays within the limit
check-fuse-too-far-looks = The longest stretch of wire from a source's terminal to the first fuse or breaker, along the wire. With two sources each end counts. Small-craft rules allow more where the whole stretch lies in a sheath or conduit.
check-fuse-too-far-why = Between battery and fuse nothing stops a short. The longer that stretch, the more edges, hinges and screws it passes.
check-fuse-too-far-source = Common practice of vehicle audio, 18 in or 0.45 m along the wire; 33 CFR 183.455 and ABYC E-11 for small craft.
fuse-too-far-what = { $first ->
    [0] The first fuse sits
    [one] { $first } sits
   *[other] { $first } sit
} { $far } of wire from { $sources }; { $allowed } is the limit. Up to there nothing guards { $runs }.
fuse-too-far-remedy = Fit the fuse within { $allowed } of { $sources }, measured along the wire.
fuse-too-far-unknown = How far { $first ->
    [0] the first fuse
   *[other] { $first }
} sits from { $sources } cannot be told: a length among { $runs } is not known.
fuse-too-far-find = Measure { $runs } from { $sources } to { $first ->
    [0] the first fuse
   *[other] { $first }
}, along the wire.

## fuse-undersized

check-fuse-undersized-title = Fuse undersized
check-fuse-undersized-holds = the lasting current is at most 80 % of the rating, and bursts stay below the current at which the device has to open
check-fuse-undersized-looks = The heating current (RMS) through a fuse or breaker at the chosen duty, against the share of its rating that it carries for good, and the burst current against the least current at which its family has to open. Factory fuses are judged where something that was added hangs on them.
check-fuse-undersized-why = A fuse that runs near its rating ages and opens one day for no reason that anybody can find. The next hand then fits a larger one.
check-fuse-undersized-source = NFPA 70 210.20 and component practice for the 80 % (from memory); ISO 8820-3 and -5 for the current at which a family has to open (from memory).
check-fuse-undersized-unmended = For a vehicle's own fuse: its rating stays, and the load has to come off its circuit.
fuse-undersized-what = { $device } carries { $carries } for long; with its { $rating } it can carry { $lasting }.
fuse-undersized-bursts = Bursts of { $peaks } pass { $device }; with its { $rating } it has to open from { $opens }.
fuse-undersized-remedy = Fit { $rating } in { $device }; the wire behind it bears that.
fuse-undersized-wire = It takes { $needs } or more: lay wire that bears such a fuse first, or take load off.
fuse-undersized-unknown = Whether { $device } bears its load cannot be told: its rating is not known.

## second-source

check-second-source-title = Second source
check-second-source-holds = a conductor between two sources is protected at both ends
check-second-source-looks = Wire between two batteries, or a battery and a charger that does not limit its own current, without a device of its own at one of the ends. One fuse for both ends is one too few.
check-second-source-why = A short is fed from both ends. The fuse at one end opens, and the other battery goes on burning the wire.
check-second-source-source = ISO 13297 clause 12.3 and ABYC E-11: every source of power to a conductor is protected; common practice.
second-source-what = { $runs } { $runs ->
    [one] lies
   *[other] lie
} between two sources; from { $sources } nothing guards { $runs ->
    [one] it
   *[other] them
}.
second-source-remedy = Put a fuse that the wire can bear next to { $sources } as well.

## self-resetting-main

check-self-resetting-main-title = Self resetting main
check-self-resetting-main-holds = the first device behind a source does not close again by itself
check-self-resetting-main-looks = A breaker that closes again when it has cooled, as the first device between a source and the rest.
check-self-resetting-main-why = Into a lasting short it closes again and again, and each time the wire is heated anew, until something burns that was not meant to.
check-self-resetting-main-source = Common practice; ABYC E-11 asks for trip-free breakers that are reset by hand (from memory).
self-resetting-main-what = { $device } is the first device behind the source and closes again by itself.
self-resetting-main-remedy = Fit a fuse, or a breaker that is reset by hand, in place of { $device }.

## uneven-parallel

check-uneven-parallel-title = Uneven parallel
check-uneven-parallel-holds = wires side by side share the current, and one left alone is still protected
check-uneven-parallel-looks = Runs between the same two points. First, whether one of them takes more than its equal share, by the resistances of the wires and their ends. Second, for feeds, whether the device in front of them is too large for each of them alone.
check-uneven-parallel-why = The wire with the better joint carries most. When one comes off, nothing is noticed, and the other burns behind a fuse that was chosen for both.
check-uneven-parallel-source = NFPA 70 310.10(G) asks for equal length, material, size and termination of parallel conductors (from memory); the margin is a judgement of this project.
check-uneven-parallel-unmended = Where one wire in their place would not go into the terminals.
uneven-parallel-alone = { $runs } lie side by side behind { $device } ({ $lets }); { $run } left alone can carry { $can }.
uneven-parallel-alone-remedy = Lay one wire that bears { $rating }, or give each its own fuse at both ends.
uneven-parallel-shares = Of the { $carried } in { $runs }, { $run } takes { $takes }; up to { $share } passes as an equal share.
uneven-parallel-shares-remedy = Make them alike in size, length, material and ends, or lay one wire in their place.
