## Facts of parts and runs that findings name otherwise, in the midst of a sentence, than a field is labelled (`field-…`).

fact-body-strap = body strap
fact-closes-at = closes at
fact-cut-off = cut-off
fact-ending-resistance = ending resistance
fact-high-pass = high-pass
fact-hot-share = hot share
fact-input-takes = input takes
fact-minimum-load = minimum load
fact-on-current = on current
fact-output-takes = output takes
fact-permanent-fuse = permanent fuse
fact-pull-in = pull-in
fact-running-load = running load
fact-standing-load = standing load
fact-strap-current = strap current
fact-switched-fuse = switched fuse
fact-takes = takes
fact-turn-on-capacity = turn-on capacity
fact-turn-on-current = turn-on current
