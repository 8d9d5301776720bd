## always-on

always-on-what = { $terminal } is tied to a permanent feed: { $part } never turns off.
always-on-remedy = Take { $terminal } to a turn-on output, or to a feed that the ignition switches.

## crossed-signal

crossed-signal-tied = Input { $input } of { $part } is tied to { $outputs }.
crossed-signal-tied-remedy = Leave one output on it: outputs do not bear being tied together.
crossed-signal-what = Left and right are crossed at { $part }: { $inputs }.
crossed-signal-left = input { $input } gets the left signal and drives the right side
crossed-signal-right = input { $input } gets the right signal and drives the left side
crossed-signal-remedy = Swap the signal leads at { $part }.

## no-signal

no-signal-what = Nothing feeds { $inputs ->
    [one] input
   *[other] inputs
} { $inputs } of { $part }, and speakers hang behind.
no-signal-remedy = Join it to the output that belongs to those speakers.

## no-turn-on

no-turn-on-nothing = Nothing is on { $terminal }: { $part } never turns on.
no-turn-on-what = What is on { $terminal } comes from no turn-on output: { $part } never turns on.
no-turn-on-remedy = Join { $terminal } to a turn-on output of the head unit or processor.

## turn-on-overloaded

turn-on-overloaded-what = { $asked } are asked of { $terminal } by { $parts }; it can carry { $can }.
turn-on-overloaded-remedy = Let it switch a relay with a small coil, and the relay the rest.

## wrong-level

wrong-level-what = { $inputs ->
    [one] Input { $inputs } of { $part } gets
   *[other] Inputs { $inputs } of { $part } get
} a level that is not made for it.
wrong-level-remedy = Use the input of the right level, or put a line converter between.
