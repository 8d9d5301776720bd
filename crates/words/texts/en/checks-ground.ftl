## ground-forbidden

check-ground-forbidden-title = Ground forbidden
check-ground-forbidden-holds = no ground is on a seat-belt anchor, a seat fixing, or a steering, fuel or brake fastener
check-ground-forbidden-looks = Ground points in use on such fasteners. A ground point of which nobody knows what it is made on is undecided here, since it may be one of these.
check-ground-forbidden-why = A washer under such a bolt changes how it holds in a crash; current through steering or brake parts eats them.
check-ground-forbidden-source = Vehicle makers' instructions for fastenings of restraint, steering, brake and fuel parts; common practice.
ground-forbidden-what = { $ground } is on a { $surface ->
    [seat-rail] seat rail or seat fixing
    [belt-anchor] seat-belt anchor
    [steering] steering part
   *[brake-fuel] brake or fuel fastener
}: nothing may be fastened there.
ground-forbidden-remedy = Move { $ground } to bare metal of the fixed body, and have the fastener put right by the vehicle maker's instructions.
ground-forbidden-unknown = What { $ground } is made on is not known.
ground-forbidden-find = Find { $ground } and see what it is bolted to.

## ground-offset

check-ground-offset-title = Ground offset
check-ground-offset-holds = the grounds of equipment joined by signal leads differ by no more than the limit under load
check-ground-offset-looks = The voltage between the supply grounds at both ends of a signal lead, at bursts, where both inputs tie their signal ground to it. One finding for each pair. A bad, long or thin ground that causes it is told as such.
check-ground-offset-why = The difference stands in series with the signal: it is heard as whine that follows the engine.
check-ground-offset-source = Common practice of vehicle audio; the limit states the range considered.
ground-offset-what = The grounds of { $parts } differ by { $differ } at bursts; { $most } is the limit.
ground-offset-remedy = Ground both at the same place, with short and thick leads, or use isolated inputs.

## ground-surface

check-ground-surface-title = Ground surface
check-ground-surface-holds = ground points are on bare, fixed body metal
check-ground-surface-looks = Ground points in use that are made on painted metal, on a hinge, a door or a lid, or on a trim bracket. What follows from that (a long drop, a ground offset) is not told again.
check-ground-surface-why = Paint insulates, and a hinge is a bearing, not a conductor: the contact is bad today and worse in winter.
check-ground-surface-source = NFPA 70 552.10(C): contact surfaces cleaned of paint and oxide; common practice.
ground-surface-what = { $ground } is on { $surface ->
    [painted] painted metal
    [hinge] hinge, door or lid
   *[trim] trim or bracket
}: that is no lasting contact.
ground-surface-clean = Take the paint off under { $ground } down to bright metal, bolt it, and seal it.
ground-surface-move = Move { $ground } to bare metal of the fixed body.

## no-return

check-no-return-title = No return
check-no-return-holds = each load that is fed returns to each source that feeds it
check-no-return-looks = A load whose negative terminal reaches neither the body nor a negative pole, and a source whose negative pole nothing comes back to. Loads on one broken return make one finding. A return that is cut through is told by damaged-run, one that finds its way through the shield of a signal lead by return-through-shield.
check-no-return-why = Without a way back no current flows: the load is dead. Worse, the current looks for another way, through shields and aerial leads.
check-no-return-source = Common practice; it follows from Kirchhoff's current law.
no-return-apart = { $plug } is apart: the return of { $loads } ends there.
no-return-nothing = Nothing is on { $terminal }: { $loads } is fed but has no way back to its source.
no-return-what = The return of { $loads } reaches neither the body nor a negative pole.
no-return-remedy = Join the return of { $loads } to bare body metal nearby, or to the source's negative pole.
no-return-source = { $source } feeds { $loads }, but nothing comes back to its negative pole.
no-return-source-remedy = Join the negative pole of { $source } to the body or to what the loads return to.
no-return-coil = The coil of { $relay } is fed but has no way back: it never pulls in.
no-return-coil-remedy = Join the other end of the coil of { $relay } to ground.

## return-through-shield

check-return-through-shield-title = Return through shield
check-return-through-shield-holds = a signal shield is never the supply return, nor carries more than it can bear
check-return-through-shield-looks = Signal leads whose shield carries return current of a load: because the load has no ground of its own, or because its ground is so much worse than the other end's that the current takes the shield as well.
check-return-through-shield-why = A shield is a few strands of thin wire. It glows within seconds, inside a loom, behind a panel, and no fuse stands in that way.
check-return-through-shield-source = Common practice of vehicle audio; the limit is that of a thin braid.
check-return-through-shield-unmended = For a part with a ground of its own: which of the grounds has to become better is for a measurement to tell.
return-through-shield-what = { $carried } of { $load }'s return flow through the shield of { $runs }; { $bears } is the limit.
return-through-shield-remedy = Give { $load } a better ground, close to that of the equipment it is joined to.
return-through-shield-only = { $load } has no ground of its own: { $carried } return through the shield of { $runs }; { $bears } is the limit.
return-through-shield-only-remedy = Ground { $load } on bare body metal nearby before it is turned on again.

## return-too-long

check-return-too-long-title = Return too long
check-return-too-long-holds = length and resistance of an amplifier's ground lead, and of its whole return, stay within the limits
check-return-too-long-looks = The wire from an amplifier's negative terminal to the first point on the body, along the wire; its resistance with its endings and the contact of the ground point; and the resistance of the whole way back to the source. An amplifier whose return is wired all the way back is held against the last of these only. A bad ground surface, a bad ending or a damaged run on the way is told as such and not here.
check-return-too-long-why = All of the amplifier's current passes its ground lead. What is lost there is lost from its supply, and it lifts the amplifier's ground above that of the head unit, which is heard as whine.
check-return-too-long-source = Common practice of vehicle audio: 18 in or 0.45 m; the resistances are judgements with the range stated in the limits.
return-too-long-unknown = Whether the ground lead of { $load } is short enough cannot be told: the length of { $run } is not known.
return-too-long-find = Measure { $run }.
return-too-long-what = The ground lead of { $load } is { $length } long; { $most } is the limit.
return-too-long-remedy = Ground { $load } on bare body metal within { $most } of it.
return-too-long-lead = The ground lead of { $load } has { $ohms }, { $contact } of it in the contact of its ground point; { $most } is the limit.
return-too-long-lead-remedy = Use thicker wire, and clean the ground point down to bare metal.
return-too-long-whole = The whole return of { $load } to { $source } has { $ohms }; { $most } is the limit.
return-too-long-weakest = The whole return of { $load } to { $source } has { $ohms }, most of it in { $weakest }; { $most } is the limit.
return-too-long-whole-remedy = Add a strap or a thicker lead where most is lost.

## return-too-thin

check-return-too-thin-title = Return too thin
check-return-too-thin-holds = an amplifier's ground lead conducts at least as well as its feed, and every strap back to the sources carries its current
check-return-too-thin-looks = The conductance per metre of what is on an amplifier's negative terminal against what is on its positive one; and the current in the vehicle's strap from battery to body, where something that was added returns through it.
check-return-too-thin-why = The same current flows in both. A thin ground lead loses voltage where it hurts most, and warms behind a fuse that was chosen for the feed.
check-return-too-thin-source = NFPA 70 552.10(C): the bond to the body is not smaller than the battery lead; common practice.
return-too-thin-what = The ground lead of { $amplifier } ({ $back }) conducts { $share } as well as its feed ({ $feed }); { $least } is the least.
return-too-thin-remedy = Lay { $size } copper for { $runs }.
return-too-thin-copper = Lay as much copper to ground as in the feed.
return-too-thin-strap = The strap from battery to body in { $vehicle } carries { $carries }; it can carry { $can }.
return-too-thin-strap-remedy = Add a strap for the { $missing } that are missing, from the battery's negative pole to the body.

## sensor-bypassed

check-sensor-bypassed-title = Sensor bypassed
check-sensor-bypassed-holds = returns join on the body side of the battery's current sensor
check-sensor-bypassed-looks = In a vehicle with a current sensor on the battery's negative clamp: runs that were added straight to that negative pole.
check-sensor-bypassed-why = The vehicle counts what flows through the sensor. What goes around it is missing: the battery is charged too little, and systems switch off that should not.
check-sensor-bypassed-source = Vehicle makers' instructions for battery sensors; common practice.
sensor-bypassed-what = { $runs } { $runs ->
    [one] lands
   *[other] land
} on { $terminal }, behind the current sensor: the vehicle does not see that current.
sensor-bypassed-remedy = Land it on the body, or on the maker's ground point on the body side of the sensor.
