# A planned system from a few words: assist/src/starting.

edit-start = Start a system

## What was not understood, and what would do

start-too-long = This is { $bytes } bytes long; at most { $most } are read. Tell less, or draw the rest afterwards.
start-unknown = “{ $word }” is no word that is known here. Tell it in other words, or leave it out and draw it afterwards.
start-unknown-meant = “{ $word }” is no word that is known here. Is “{ $meant }” meant?
start-hook-up-chosen = How coils are hooked up is chosen here, as the output bears it: leave it out.
start-no-volts = Everything here is 12 V: leave it out.
start-no-sign = This sign says nothing here: leave it out, or part things by commas.
start-number-alone = A number of what? Put W, Ω, A or Ah behind it, or the thing that there are so many of.
start-two-things = Two things in one breath: put a comma before this one.
start-does-not-fit = This does not belong to what stands beside it: put it beside what it is about, parted from the rest by commas.
start-told-twice = These speakers were told already: tell all about them in one place.
start-too-many = More than { $most } of these are not planned: tell fewer, and draw the rest afterwards.
start-no-solar = A solar panel and its controller are not planned: the program has no part that gives what the sun does. Leave it out, and fuse its lead at the battery as its maker says.

## Why a wish cannot be met, and what would do

start-empty = Nothing is told yet that could be drawn.
start-empty-instead = Tell an amplifier, speakers, a second battery or a load.
start-centre = A centre speaker plays what left and right have in common: only a processor makes that.
start-centre-instead = Add a processor, or leave out the centre speaker.
start-idle = Nothing is left for amplifier { $number } to drive.
start-idle-instead = Tell the speakers that it is for, or leave it out.
start-no-load = No output may drive the { $speakers }: their coils can be joined to { $loads }, and the least that an output may drive is { $least }.
start-no-load-instead = Take speakers whose coils can be joined to { $least } or more, or an amplifier that may drive less.
start-too-strong = The { $speakers } bear { $bears } in all, and the least that an output gives them is { $power }.
start-too-strong-instead = Take speakers that bear { $power } each, or an amplifier of less power.
start-no-output = No output is left for the { $speakers }.
start-no-output-instead = Add an amplifier for them, or a head unit with outputs of its own.
start-too-few = There are not enough outputs for { $speakers } together.
start-too-few-instead = Add an amplifier, or a head unit with outputs of its own.
start-few-outputs = The processor has { $outputs } outputs, and the amplifiers want { $needed } signals.
start-few-outputs-instead = Take a processor with { $needed } outputs or more.
start-offer-wired = With a return of wire to the battery it would do.
start-offer-second = With a second battery in the load area it would do.
start-offer-both = With a second battery in the load area and a return of wire it would do.
start-offer-alternator = With an alternator of { $current } it would do.

## What was chosen, and why

start-chose-output = { $amplifier }, { $kind ->
    [bridged] channels { $channels } bridged
    [pair] channels { $channels }
   *[one] channel { $channels }
}: the { $speakers }, { $how }. They see { $load }, at least { $least } is allowed, and { $power } is what { $amplifier } gives there.
start-chose-gain = The { $speakers } bear { $power }{ $kind ->
    [pair] { " " }each
   *[other] { "" }
}, and { $amplifier } could give { $could } there: at { $kind ->
    [bridged] channels { $channels } bridged
    [pair] channels { $channels }
   *[one] channel { $channels }
} set the gain so that the test tone gives no more than { $volts }.
start-chose-head = { $head } drives the { $speakers } itself: { $power } into { $load } each.
start-how-one = one to each output
start-how-alone = with nothing else on that output
start-how-series = { $coils } coils in series
start-how-parallel = { $coils } coils in parallel
start-how-both = { $parallel } rows in parallel, in each { $series } coils in series
start-how-coil = one voice coil on each output
start-how-both-parallel = in parallel with the { $with }, since there are no more outputs
start-how-both-series = in series with the { $with }, since both in parallel would be too low a load
start-chose-link = { $isolator } charges { $battery }, with a fuse at each end of the link. What was added hangs on { $battery }, so that the starter battery stays for starting.
start-chose-bank = { $count } batteries stand side by side on { $bus }, each with a fuse of its own: what is wrong in one is not fed by the others.
start-chose-feeds = { $feeds } main feeds share the load: on one too much would be lost, or its joints would get too warm.
start-chose-wired = The return goes by wire over { $bus } to the battery, as thick as the main feed.
start-chose-speaker-level = { $head } has no line outputs: the signal is taken from its speaker outputs.
start-chose-sensing = The factory radio has no turn-on output: each amplifier turns on by its signal.
start-chose-turn-on = Together the turn-on inputs draw { $draws } from { $from }, which its output can carry.

start-sums = { $parts } parts, { $runs } runs; { $draw } are drawn on average when it is loud, of { $available } that the alternator gives; { $wire } of wire with { $copper } of copper.

## What was taken for granted

start-assumed-alternator = The alternator gives { $current } at cruising speed.
start-assumed-battery = { $battery } holds { $capacity }.
start-assumed-charger = { $charger } gives { $current }, and only with the engine running.
start-assumed-load = { $load } ({ $name }) draws { $power }.
start-assumed-power = { $amplifier } gives { $power } into { $load } from each of { $channels ->
    [one] its one channel
   *[other] { $channels } channels
}.
start-assumed-load-of-power = The power of { $amplifier } is stated at { $load }.
start-assumed-speakers = There are { $speakers }.
start-assumed-impedance = The { $speakers } have { $impedance } a coil.
start-assumed-processor = A signal processor divides the sound for the drivers that have an output each.
start-assumed-built-in = The amplifier inside the active subwoofer gives { $power } and is drawn beside its speaker.
start-assumed-bridged = Two channels of { $amplifier }, bridged, give { $power } into { $load }.
start-assumed-bridging = { $amplifier } may be bridged, and then gives into twice the load what two of its channels give.

## What the speakers are called in these sentences

start-group-front = front speakers
start-group-rear = rear speakers
start-group-centre = centre speakers
start-group-bass = bass speakers
start-group-low = woofers of the { $of }
start-group-middle = midranges of the { $of }
start-group-high = tweeters of the { $of }

## What the job is called

start-job-sound = { $power ->
    [none] sound system
   *[other] sound system { $power }
}
start-job-second = second battery
start-job-loads = further loads

## Labels on the drawing

start-label-battery = Main battery
start-label-second = Second battery
start-label-plug = Radio plug
start-label-permanent = permanent
start-label-switched = switched
start-label-earth = ground
start-label-head = Head unit
start-label-head-fuse = Fuse of feed { $feed }
start-label-main-fuse = Main fuse
start-label-front-fuse = Fuse for the dashboard
start-label-link-fuse = Link fuse, { $end }
start-label-fuse-of = Fuse, { $of }
start-label-small-block = Fuse block
start-label-switch = Switch, { $of }
start-label-bus = Negative bus
start-label-plus-bus = Positive bus
start-label-charger = DC-DC charger
start-label-ground = Ground, { $of }
start-label-turn-on = Turn-on
start-label-amplifier = { $channels ->
    [one] Amplifier, one channel
   *[other] Amplifier, { $channels } channels
}
start-label-bass-amplifier = Bass amplifier
start-label-front-left = Front left
start-label-front-right = Front right
start-label-rear-left = Rear left
start-label-rear-right = Rear right
start-label-centre = Centre
start-label-subwoofer = Subwoofer
start-label-crossover = { $of } crossover
start-label-woofer = { $of } woofer
start-label-midrange = { $of } midrange
start-label-tweeter = { $of } tweeter
start-load-lights = Lights
start-load-two-way-radio = Two-way radio
start-load-inverter = Inverter
start-load-cool-box = Cool box
start-load-pump = Water pump
start-load-heater = Heater
start-load-camera = Dashboard camera
start-load-socket = Charging socket
start-load-winch = Winch
start-load-other = Load

## On the page

start-line = What there is and what is wanted, with commas between
start-understood = Understood
start-examples = For example
start-example-1 = hatchback, 4 × 75 W amp, mono 500 W at 2 ohm, front components, rear pair, 2 × 4 ohm dual coil sub
start-example-2 = estate, factory radio, 2 × 100 W amp, front components
start-example-3 = camper, extra lithium battery 100 Ah, inverter 500 W, lights 40 W, water pump
start-form = The same by buttons
start-clean = No finding of grade Stop or Fix.
start-troubles = What is not met
start-chosen = What was chosen, and why
start-assumed = What was taken for granted
start-what-does = What would do?
start-nothing-does = None of the usual changes would do: less power, or a shorter way.
start-draw = Draw it
start-draw-new = Draw it as a new job
start-draw-rest = Draw what was understood
start-draw-new-rest = Draw what was understood as a new job
start-care = A plan is a proposal: hold it against the vehicle before anything is cut or screwed, and let a qualified person decide.
start-vehicle = Vehicle
start-driver = Driver
start-battery = Battery
start-head = Radio
start-factory = factory radio
start-pairs = { $pairs ->
    [one] { $pairs } pair of line outputs
   *[other] { $pairs } pairs of line outputs
}
start-amplifiers = Amplifiers
start-watts-of = Power of each channel, { $amplifier }
start-without = Remove { $amplifier }
start-speakers-front = Front speakers
start-speakers-rear = Rear speakers
start-speakers-centre = Centre speaker
start-speakers-bass = Subwoofers
start-full = full range
start-components = with tweeters
start-three-way = 3-way
start-active = active
start-one = one
start-one-single = one, single coil
start-one-dual = one, dual coil
start-two-single = two, single coil
start-two-dual = two, dual coil
start-second = Second battery
start-loads = Other loads
start-others = Besides
start-processor = signal processor
start-wired = return by wire
start-no-harness = without the factory plug
