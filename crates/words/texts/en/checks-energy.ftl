## over-budget

check-over-budget-title = Over budget
check-over-budget-holds = the average draw and the vehicle's own are no more than what the alternator gives, hot, at the chosen speed
check-over-budget-looks = With the engine running: the mean current of everything on the sheet at the chosen duty, the vehicle's own load included, against what the alternators can give hot, at idle or cruising speed.
check-over-budget-why = The battery makes up the rest, is never full, sulphates, and one morning does not start the engine.
check-over-budget-source = Common practice; alternator output falls with heat and speed (ISO 8854 states it cold and at test speed, from memory).
over-budget-what = { $draws } are drawn on average, { $state ->
    [idle] engine idling
   *[cruise] cruising
}; { $alternators } can give { $gives } hot.
over-budget-remedy = Take { $over } off, or fit a larger alternator with a charge lead to match.

## standing-drain

check-standing-drain-title = Standing drain
check-standing-drain-holds = the standing current over the parking time leaves the battery able to start the engine
check-standing-drain-looks = The charge that is left in the battery after the parking time of the conditions, with everything that draws while parked, the vehicle's own included. Where there is a vehicle on the sheet, its own battery is looked at. Switches count as turned off, save a battery master switch, which counts as left on unless the sheet says that it is off: one in the only live or return way of a battery to the vehicle or to two parts or more. What batteries in parallel pass to each other does not count. A turn-on lead on a permanent feed is told by always-on.
check-standing-drain-why = After two weeks at the airport the engine does not start, and a battery that was empty once holds less for good.
check-standing-drain-source = Common practice; the share that is left states the range considered.
check-standing-drain-unmended = Where what draws is not a load with a switch-off of its own, and no battery of a usual size is enough: what draws has to be found first.
standing-drain-what = After { $days } days parked { $left } is left in { $battery }; { $least } is the least for a start. { $standing } are drawn while it stands.
standing-drain-remedy = Find what draws while parked, and put it behind the ignition or a switch.
standing-drain-unknown = How long the vehicle stands is not known, so what is left to start it cannot be told.
standing-drain-find = Ask how long it stands at most.
