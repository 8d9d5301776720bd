## over-budget

over-budget-what = { $draws } are drawn on average, { $state ->
    [idle] engine idling
   *[cruise] cruising
}; { $alternators } can give { $gives } hot.
over-budget-remedy = Take { $over } off, or fit a larger alternator with a charge lead to match.

## standing-drain

standing-drain-what = After { $days } days parked { $left } is left in { $battery }; { $least } is the least for a start. { $standing } are drawn while it stands.
standing-drain-remedy = Find what draws while parked, and put it behind the ignition or a switch.
standing-drain-unknown = How long the vehicle stands is not known, so what is left to start it cannot be told.
standing-drain-find = Ask how long it stands at most.
