## Why a speaker is silent. These stand inside sentences, after a colon, and begin small.

gap-nothing-on = nothing is on { $place }
gap-one-leg = both ends of { $speaker } come to { $leg }, and nothing to the other leg
gap-no-pair = { $speaker } hangs between { $legs }, which are no pair of one output
gap-joined-by-run = both ends of { $speaker } are joined, by way of { $run }
gap-joined-in-part = both ends of { $speaker } are joined in { $part }
gap-cut = run { $run } is cut through
gap-apart = plug { $plug } is apart, on the way from { $from }
gap-loop-open = plug { $plug } is apart, so its loop from { $from } to { $to } is open
gap-blown = { $device } is blown or missing
gap-open = { $device } is open
gap-led-to-supply = { $speaker } is led to { $terminal }, not to an output
gap-nothing-goes-on = nothing goes on from { $terminal }
gap-lead-ends = the lead from { $speaker } ends at { $terminal }
gap-run-on-nothing = an end of run { $run } is on nothing that the sheet has
gap-run-loose = run { $run } ends loose
gap-too-large = the network that { $speaker } hangs in is too large to be solved

## Remarks about what a channel drives.

channel-bridged-besides = channels { $one } and { $other } drive a bridged load besides their own
channel-not-the-legs = a load lies across { $one } and { $other }, which are not the legs to bridge
channel-not-bridged = a load lies across { $one } and { $other }, which its maker does not let be bridged
channel-power-not-stated = no power is stated for a load this low; the one of the least stated load is taken
channel-legs-joined = its two legs are joined
channel-not-solved = the load over the band could not be solved
channel-leads-shared = its leads are shared with another output; their relative phase is not known, the worse case is shown
channel-impedance-unknown = impedance of { $speakers } is not known; { $taken } is taken for the power

## Remarks about what a part does.

part-below-cut-off = { $gets } is below its cut-off of { $least }
part-below-some-cut-off = { $gets } is below its cut-off
part-reversed = is connected the wrong way round
part-no-supply = gets no supply
part-gives-most = gives its most on the average
part-gives-most-loud = gives its most when it is loud
part-charged = is being charged
part-blocked = gives nothing: the voltage is above its own
part-restless = would switch to and fro without end; taken as open

## Notes about a sheet, and why it could not be solved.

note-no-terminal = run { $run }: there is no terminal { $terminal }; this end is taken as loose
note-shorted = { $source }: its live pole and its negative pole are joined by conductors alone; it is shorted
note-pole-on-body = { $source }: its live pole is on the body
note-no-source = there is no source on the sheet
unbalanced = the solution does not balance: { $current } of the current and { $power } of the power are missing
