## damaged-run

damaged-run-what = { $run } is { $state ->
    [chafed] chafed
    [pinched] pinched
    [melted] melted
    [corroded] corroded
    [wet] wet
   *[cut] cut through
}{ $danger ->
    [heated] : find out what heated it before a new one is laid
    [live-end] , and one end is live
    [live] , and it is live
    [bare] : bare metal here is live
   *[none] { "" }
}.
damaged-run-remedy = Lay { $run } anew, and keep it from what did that.
damaged-run-unknown = The state of { $run } is not known.
damaged-run-find = Look at { $run } along its whole length.

## poor-ending

poor-ending-splice = { $splice } is { $method ->
    [tap] insulation-piercing tap
   *[twisted] twisted by hand
}: such a joint does not hold.
poor-ending-splice-remedy = Crimp { $splice } with a splice of the right size, and cover it.
poor-ending-what = { $run } is { $ends }.
poor-ending-at = { $method ->
    [twisted] twisted together by hand
    [tap] insulation-piercing tap
   *[loose] nothing: a bare loose end
} at { $terminal }
poor-ending-heat = { $heat } turn into heat there.
poor-ending-remedy = Cut { $run } back to clean metal and crimp it.
