## coils-oppose

check-coils-oppose-title = Coils oppose
check-coils-oppose-holds = the coils of one driver push the same way
check-coils-oppose-looks = Speakers with two voice coils of which one is driven against the other.
check-coils-oppose-why = The cone hardly moves, while both coils take the full power as heat.
check-coils-oppose-source = Common practice of vehicle audio.
coils-oppose-what = Coil { $coil } of { $speaker } pushes against the other: its plus and minus are swapped.
coils-oppose-remedy = Swap the wires of coil { $coil } of { $speaker }.

## lead-loss

check-lead-loss-title = Lead loss
check-lead-loss-holds = a speaker loses at most half a decibel in its leads
check-lead-loss-looks = The level that a speaker loses to the resistance of its leads and their ends, at its rated impedance, against the limit.
check-lead-loss-why = The power is paid for and warms a wire; the bass loses control first.
check-lead-loss-source = 20 log10((Z + R)/Z); the limit is common practice with the range it states.
lead-loss-what = { $speaker } loses { $lost } in its leads; { $most } is the limit.
lead-loss-remedy = Use thicker or shorter leads.

## load-too-low

check-load-too-low-title = Load too low
check-load-too-low-holds = the nominal load of every channel is at least the stated minimum of its mode, and the impedance over the band at least 80 % of it
check-load-too-low-looks = What a channel, or a bridged pair, really drives: all speakers, coils, crossovers and capacitors on it. The nominal load is that of the rated impedances. A speaker may dip to 80 % of its rated impedance, so the least impedance between 20 Hz and 20 kHz is held against 80 % of the minimum. The resistance that a meter reads decides nothing here.
check-load-too-low-why = Half the load draws twice the current. The output stage overheats, shuts down again and again, and at last fails.
check-load-too-low-source = The amplifier maker's stated minimum; IEC 60268-5 clause 16.1 for the 80 % (from memory).
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

check-no-high-pass-title = No high pass
check-no-high-pass-holds = small drivers get no bass
check-no-high-pass-looks = Tweeters and midrange drivers that no filter, crossover or capacitor keeps the bass from, or only from below the limit. Drivers of one band on one amplifier share a finding.
check-no-high-pass-why = A small cone that is driven with bass moves beyond what it can, distorts, and tears.
check-no-high-pass-source = Common practice of vehicle audio; the limit states the range considered.
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

check-output-touches-chassis-title = Output touches chassis
check-output-touches-chassis-holds = floating outputs touch neither the body, nor the supply, nor each other
check-output-touches-chassis-looks = A leg of a floating speaker output that is wired to the body or to the supply, or to a leg of another output without a speaker between. Channels that are tied together make one finding. Bridging as the maker states it is left out.
check-output-touches-chassis-why = Both legs of a floating output carry about half the supply voltage. Tied to the body the output stage drives a short: it shuts down at best, and burns out at worst.
check-output-touches-chassis-source = Common practice; makers of bridge-tied outputs forbid it.
output-touches-chassis-what = { $who } { $who ->
    [one] touches the body or the supply: its legs both carry voltage.
   *[other] touch the body or the supply: their legs all carry voltage.
}
output-touches-chassis-remedy = Give each leg a wire of its own to the speaker, and nothing else.
output-touches-chassis-tied = { $who } are tied together without a speaker between.
output-touches-chassis-tied-remedy = Part them: each output has its own two wires to its own speaker.

## reversed-speaker

check-reversed-speaker-title = Reversed speaker
check-reversed-speaker-holds = drivers of one band and channel pair agree in polarity
check-reversed-speaker-looks = Among the drivers of one band that play as a pair (front left and right, rear left and right, all that play bass), those that move the other way than the rest for the same signal. Where as many go one way as the other, those that go against the amplifier's marking are named.
check-reversed-speaker-why = Two drivers that move against each other cancel what they should add: the bass is thin and the middle of the stage is empty.
check-reversed-speaker-source = Common practice; IEC 60268-5 marks the terminal to which a positive voltage moves the cone outwards.
reversed-speaker-what = { $speaker } moves against { $partners }: its plus and minus are swapped.
reversed-speaker-remedy = Swap the two wires at { $speaker }, and check the colours along the lead.

## silent-speaker

check-silent-speaker-title = Silent speaker
check-silent-speaker-holds = every driver has a complete loop to a channel
check-silent-speaker-looks = A speaker of which no voice coil is joined to both legs of a channel, and the first gap on the way: a terminal with nothing on it, a plug that is apart, a run that ends nowhere. Speakers that one gap makes silent share one finding.
check-silent-speaker-why = It does not play. Where the loop runs on through a plug to another speaker, one plug left apart silences both.
check-silent-speaker-source = Common practice; it follows from Kirchhoff's current law.
silent-speaker-what = { $speakers } { $speakers ->
    [one] is
   *[other] are
} silent: { $why }.
silent-speaker-remedy = Close the loop at that place.
silent-speaker-loop = its loop is not complete

## speaker-overpowered

check-speaker-overpowered-title = Speaker overpowered
check-speaker-overpowered-holds = the stated amplifier power into the actual load is no more than what each speaker bears
check-speaker-overpowered-looks = The power that the channels can give a speaker, all its coils together, against the power it bears for long. A gain that is set counts: no more than its volts of test tone give is taken to reach the speaker. Speakers on one channel share a finding.
check-speaker-overpowered-why = The voice coil overheats and burns out, most surely with an amplifier that is driven into clipping.
check-speaker-overpowered-source = Common practice; continuous power as ANSI/CTA-2006 and IEC 60268-5 state it (from memory).
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

check-uneven-coils-title = Uneven coils
check-uneven-coils-holds = the coils of one driver get equal power
check-uneven-coils-looks = Speakers with two voice coils of which one gets more than its share, or nothing at all.
check-uneven-coils-why = One coil does the work of two: it overheats at half the power the driver bears, and an open second coil even brakes the cone.
check-uneven-coils-source = Common practice of vehicle audio; the margin is a judgement of this project.
uneven-coils-what = The coils of { $speaker } get { $powers }: not the same.
uneven-coils-remedy = Wire both coils alike: in series, in parallel, or each to a channel of its own with equal power.
