## always-on

check-always-on-title = Always on
check-always-on-holds = no turn-on input is tied to a permanent supply
check-always-on-looks = Turn-on inputs that are joined to a feed which no ignition, switch or relay turns off. What it does to the battery while parked is not told again.
check-always-on-why = The part never turns off and empties the battery.
check-always-on-source = Common practice.
always-on-what = { $terminal } is tied to a permanent feed: { $part } never turns off.
always-on-remedy = Take { $terminal } to a turn-on output, or to a feed that the ignition switches.

## crossed-signal

check-crossed-signal-title = Crossed signal
check-crossed-signal-holds = each input is fed by one output, and by that of the side its speakers are on
check-crossed-signal-looks = Inputs that are tied to more than one output, and inputs whose signal is of the left while the speakers behind them are on the right, or the other way round. What is crossed on one part makes one finding.
check-crossed-signal-why = The stage is the wrong way round, or the outputs work against each other.
check-crossed-signal-source = Common practice.
crossed-signal-tied = Input { $input } of { $part } is tied to { $outputs }.
crossed-signal-tied-remedy = Leave one output on it: outputs do not bear being tied together.
crossed-signal-what = Left and right are crossed at { $part }: { $inputs }.
crossed-signal-left = input { $input } gets the left signal and drives the right side
crossed-signal-right = input { $input } gets the right signal and drives the left side
crossed-signal-remedy = Swap the signal leads at { $part }.

## no-signal

check-no-signal-title = No signal
check-no-signal-holds = each input with speakers behind it is fed by an output
check-no-signal-looks = On a sheet with something that gives a signal: inputs of amplifiers, processors and converters that no output feeds although speakers hang behind them. One finding for each part.
check-no-signal-why = Those speakers stay silent, or play what leaks in.
check-no-signal-source = Common practice.
no-signal-what = Nothing feeds { $inputs ->
    [one] input
   *[other] inputs
} { $inputs } of { $part }, and speakers hang behind.
no-signal-remedy = Join it to the output that belongs to those speakers.

## no-turn-on

check-no-turn-on-title = No turn on
check-no-turn-on-holds = a turn-on lead, a switched feed or a signal turns on every amplifier and processor
check-no-turn-on-looks = On a sheet with a source: parts that need a turn-on lead and get none, neither from an output nor from a switched feed, and that do not sense a signal.
check-no-turn-on-why = It never turns on.
check-no-turn-on-source = Common practice.
no-turn-on-nothing = Nothing is on { $terminal }: { $part } never turns on.
no-turn-on-what = What is on { $terminal } comes from no turn-on output: { $part } never turns on.
no-turn-on-remedy = Join { $terminal } to a turn-on output of the head unit or processor.

## turn-on-overloaded

check-turn-on-overloaded-title = Turn on overloaded
check-turn-on-overloaded-holds = a turn-on output can carry the sum of what hangs on it
check-turn-on-overloaded-looks = The currents of the turn-on inputs, relay coils and the like on one turn-on output, against what it can carry as stated, else what is usual.
check-turn-on-overloaded-why = The output fails, and takes a part of the head unit with it.
check-turn-on-overloaded-source = Common practice of vehicle audio; the usual capacity states the range considered.
check-turn-on-overloaded-unmended = Where the unit's own feed is not on the sheet, from which a relay would take its current.
turn-on-overloaded-what = { $asked } are asked of { $terminal } by { $parts }; it can carry { $can }.
turn-on-overloaded-remedy = Let it switch a relay with a small coil, and the relay the rest.

## wrong-level

check-wrong-level-title = Wrong level
check-wrong-level-holds = each input is fed at the level it takes
check-wrong-level-looks = Inputs that get speaker level and take line level, or get line level and take speaker level. One finding for each part.
check-wrong-level-why = Speaker level into a line input overdrives it and can break it; line level into a speaker-level input is hardly heard.
check-wrong-level-source = Common practice.
wrong-level-what = { $inputs ->
    [one] Input { $inputs } of { $part } gets
   *[other] Inputs { $inputs } of { $part } get
} a level that is not made for it.
wrong-level-remedy = Use the input of the right level, or put a line converter between.

## signal-beside-feed

check-signal-beside-feed-title = Signal beside feed
check-signal-beside-feed-holds = signal leads do not lie beside feeds or returns for long
check-signal-beside-feed-looks = Signal leads that lie in the same passages as feeds or returns over more than the limit. Runs in one passage are taken as closer than the distance that counts; where they are kept further apart, one of them gets a passage of its own on the plan. Where they only cross there is nothing to be found. Leads that lie beside the same feeds in the same passages make one finding.
check-signal-beside-feed-why = The current of an amplifier changes with the music, that of the alternator with the engine. A signal lead beside it picks up both.
check-signal-beside-feed-source = Common practice.
check-signal-beside-feed-unmended = Where every other way through the body is a worse one, past a seat, a hinge without a gaiter or an airbag, or the way is locked.
signal-beside-feed-what = { $signals } { $signals ->
    [one] lies
   *[other] lie
} within { $near } of { $feeds } over { $length }, longest in { $longest }.
signal-beside-feed-remedy = Lead signals and feeds along different sides; { $most } beside one another can be borne.

## signal-scattered

check-signal-scattered-title = Scattered signal
check-signal-scattered-holds = signal leads between the same two places travel together
check-signal-scattered-looks = Signal leads to the inputs of one part that begin and end at the same places and take ways farther apart than the limit, held against the way that most of them take.
check-signal-scattered-why = Two leads and the equipment at their ends make a loop. What its area catches is heard.
check-signal-scattered-source = Common practice: signal leads of one system travel together.
signal-scattered-what = { $runs } to { $part } { $runs ->
    [one] gets
   *[other] get
} up to { $far } away from { $other }, which goes between the same places.
signal-scattered-remedy = Lay all signal leads of { $part } together.
