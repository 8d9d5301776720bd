## coils-oppose

coils-oppose-what = Coil { $coil } of { $speaker } pushes against the other: its plus and minus are swapped.
coils-oppose-remedy = Swap the wires of coil { $coil } of { $speaker }.

## lead-loss

lead-loss-what = { $speaker } loses { $lost } in its leads; { $most } is the limit.
lead-loss-remedy = Use thicker or shorter leads.

## load-too-low

load-too-low-what = { $who } { $bridged ->
    [yes] drive
   *[no] drives
} { $drives }; { $allows } is the least allowed.
load-too-low-dips = The load of { $who } dips to { $dips }; { $allows } is the least it should see.
load-too-low-dips-at = The load of { $who } dips to { $dips } at { $at }; { $allows } is the least it should see.
load-too-low-higher = Use a speaker of higher impedance in place of { $speaker }, or join its coils in series.
load-too-low-series = Join the speakers in series, or spread them over more channels.
load-too-low-not-stated = { $amplifier } is bridged across channels { $channel } and { $second }, which its maker does not state.
load-too-low-not-stated-remedy = Give each channel its own speaker.
load-too-low-impedance = Whether { $who } may drive its load cannot be told: the impedance of { $speakers } is not known.
load-too-low-impedance-find = Read the impedance off { $speakers }, or measure the resistance of each coil.
load-too-low-minimum = Whether { $who } may drive its load cannot be told: the least load it allows is not known.
load-too-low-minimum-find = Read the least load off the data of { $amplifier }.

## no-high-pass

no-high-pass-low = { $speakers } { $speakers ->
    [one] gets
   *[other] get
} bass down to { $from }; { $least } is the least for a { $band ->
    [mid] midrange
   *[tweeter] tweeter
}.
no-high-pass-low-remedy = Set the high-pass higher, or put a capacitor in the lead.
no-high-pass-what = Nothing keeps the bass from { $speakers } ({ $band ->
    [mid] midrange
   *[tweeter] tweeter
}).
no-high-pass-remedy = Set a high-pass of { $least } or more in the amplifier, or put a capacitor or crossover in the lead.

## output-touches-chassis

output-touches-chassis-what = { $who } { $who ->
    [one] touches the body or the supply: its legs both carry voltage.
   *[other] touch the body or the supply: their legs all carry voltage.
}
output-touches-chassis-remedy = Give each leg a wire of its own to the speaker, and nothing else.
output-touches-chassis-tied = { $who } are tied together without a speaker between.
output-touches-chassis-tied-remedy = Part them: each output has its own two wires to its own speaker.

## reversed-speaker

reversed-speaker-what = { $speaker } moves against { $partners }: its plus and minus are swapped.
reversed-speaker-remedy = Swap the two wires at { $speaker }, and check the colours along the lead.

## silent-speaker

silent-speaker-what = { $speakers } { $speakers ->
    [one] is
   *[other] are
} silent: { $why }.
silent-speaker-remedy = Close the loop at that place.
silent-speaker-loop = its loop is not complete

## speaker-overpowered

speaker-overpowered-what = { $who } can give { $speaker } { $gives }; it bears { $takes }.
speaker-overpowered-others = { $speakers } { $speakers ->
    [one] is
   *[other] are
} given too much as well.
speaker-overpowered-channel = The channel
speaker-overpowered-remedy = Use a speaker that bears it, or set the gain for the power it bears and seal the setting.
speaker-overpowered-unknown = Up to { $power } reach { $speaker }; what it bears is not known.
speaker-overpowered-find = Read the continuous power off { $speaker } or its data.

## uneven-coils

uneven-coils-what = The coils of { $speaker } get { $powers }: not the same.
uneven-coils-remedy = Wire both coils alike: in series, in parallel, or each to a channel of its own with equal power.
