## ground-forbidden

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

ground-offset-what = The grounds of { $parts } differ by { $differ } at bursts; { $most } is the limit.
ground-offset-remedy = Ground both at the same place, with short and thick leads, or use isolated inputs.

## ground-surface

ground-surface-what = { $ground } is on { $surface ->
    [painted] painted metal
    [hinge] hinge, door or lid
   *[trim] trim or bracket
}: that is no lasting contact.
ground-surface-clean = Take the paint off under { $ground } down to bright metal, bolt it, and seal it.
ground-surface-move = Move { $ground } to bare metal of the fixed body.

## no-return

no-return-apart = { $plug } is apart: the return of { $loads } ends there.
no-return-nothing = Nothing is on { $terminal }: { $loads } is fed but has no way back to its source.
no-return-what = The return of { $loads } reaches neither the body nor a negative pole.
no-return-remedy = Join the return of { $loads } to bare body metal nearby, or to the source's negative pole.
no-return-source = { $source } feeds { $loads }, but nothing comes back to its negative pole.
no-return-source-remedy = Join the negative pole of { $source } to the body or to what the loads return to.
no-return-coil = The coil of { $relay } is fed but has no way back: it never pulls in.
no-return-coil-remedy = Join the other end of the coil of { $relay } to ground.

## return-through-shield

return-through-shield-what = { $carried } of { $load }'s return flow through the shield of { $runs }; { $bears } is the limit.
return-through-shield-remedy = Give { $load } a better ground, close to that of the equipment it is joined to.
return-through-shield-only = { $load } has no ground of its own: { $carried } return through the shield of { $runs }; { $bears } is the limit.
return-through-shield-only-remedy = Ground { $load } on bare body metal nearby before it is turned on again.

## return-too-long

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

return-too-thin-what = The ground lead of { $amplifier } ({ $back }) conducts { $share } as well as its feed ({ $feed }); { $least } is the least.
return-too-thin-remedy = Lay { $size } copper for { $runs }.
return-too-thin-copper = Lay as much copper to ground as in the feed.
return-too-thin-strap = The strap from battery to body in { $vehicle } carries { $carries }; it can carry { $can }.
return-too-thin-strap-remedy = Add a strap for the { $missing } that are missing, from the battery's negative pole to the body.

## sensor-bypassed

sensor-bypassed-what = { $runs } { $runs ->
    [one] lands
   *[other] land
} on { $terminal }, behind the current sensor: the vehicle does not see that current.
sensor-bypassed-remedy = Land it on the body, or on the maker's ground point on the body side of the sensor.
