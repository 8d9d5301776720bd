## damaged-run

check-damaged-run-title = Damaged run
check-damaged-run-holds = every run is in a sound state
check-damaged-run-looks = Runs that were found chafed through, pinched, melted, corroded, wet or cut. Stop where a source can make them live, and wherever insulation has melted; Fix elsewhere. What a cut or a corroded run causes further on (no feed, no return, a silent speaker, a hot joint) is not told again.
check-damaged-run-why = Bare live metal finds the body. A wire that has melted once tells that something was wrong, and may still be.
check-damaged-run-source = Common practice; 33 CFR 183.445 asks that conductors are protected from damage.
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

check-poor-ending-title = Poor ending
check-poor-ending-holds = ends are finished by a method that holds: crimped, soldered and supported, or screwed
check-poor-ending-looks = Ends and splices that are twisted together by hand, made with an insulation-piercing tap, or lie bare on a terminal. Stop on what is live from a source, Fix on everything else.
check-poor-ending-why = Such joints come loose with vibration, or corrode and warm. A live end that comes loose finds the body.
check-poor-ending-source = Common practice; 33 CFR 183.420 and ABYC E-11 forbid joints that rely on tension alone (from memory).
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
