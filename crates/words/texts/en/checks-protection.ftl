## feed-unprotected

feed-unprotected-what = { $runs } { $runs ->
    [one] is
   *[other] are
} live from { $sources } with no fuse on the way: a short burns the wire.
feed-unprotected-remedy = Put a fuse that the wire can bear next to { $sources }, ahead of everything on this feed.
feed-unprotected-bridged = { $runs } { $runs ->
    [one] is
   *[other] are
} live from { $sources } with no fuse on the way, since { $devices } { $devices ->
    [one] is
   *[other] are
} bridged: a short burns the wire.
feed-unprotected-bridged-remedy = Take the bridge out and fit a fuse of the right rating.
feed-unprotected-bypassed = { $runs } { $runs ->
    [one] is
   *[other] are
} live from { $sources } with no fuse on the way, since { $devices } { $devices ->
    [one] is
   *[other] are
} bypassed by another wire: a short burns the wire.
feed-unprotected-bypassed-remedy = Take that wire out, or let everything pass one fuse next to { $sources }.

## fuse-breaking-capacity

fuse-breaking-capacity-what = A short behind { $device } draws up to { $draws }; it can break { $breaks }.
fuse-breaking-capacity-remedy = Fit a bolt-in fuse that can break it next to the source, ahead of this one.
fuse-breaking-capacity-unknown = A short behind { $device } draws up to { $draws }; whether it can break that is not known.
fuse-breaking-capacity-find = Read what { $device } can break off it or its data.

## fuse-in-return

fuse-in-return-what = { $device } sits in the return of { $loads ->
    [0] its load
   *[other] { $loads }
}: a short of the feed never passes it.
fuse-in-return-remedy = Take { $device } out and join the return straight through.
fuse-in-return-open = { $device } sits in the return of { $loads ->
    [0] its load
   *[other] { $loads }
}, and nothing guards the feed { $runs }: a short of it to the body never passes { $device }.
fuse-in-return-open-remedy = Move { $device } into the feed, next to the source, and join the return straight through.

## fuse-outsizes-wire

fuse-outsizes-wire-what = { $run } can carry { $can } where it lies; { $device } lets { $lets } through.
fuse-outsizes-wire-either = Fit { $rating } in { $device }, or lay { $size } copper for { $run }.
fuse-outsizes-wire-fit = Fit { $rating } in { $device }.
fuse-outsizes-wire-lay = Lay { $size } copper for { $run }, or give it a fuse of its own where it begins.
fuse-outsizes-wire-own = Give { $run } a fuse of its own where it begins.
fuse-outsizes-wire-no-rating = { $device }'s rating is not known, so whether it guards { $runs } cannot be told.
fuse-outsizes-wire-unknown = Whether { $device } ({ $rating }) guards { $run } cannot be told: its { $missing } is not known.

## fuse-too-far

fuse-too-far-what = { $first ->
    [0] The first fuse sits
    [one] { $first } sits
   *[other] { $first } sit
} { $far } of wire from { $sources }; { $allowed } is the limit. Up to there nothing guards { $runs }.
fuse-too-far-remedy = Fit the fuse within { $allowed } of { $sources }, measured along the wire.
fuse-too-far-unknown = How far { $first ->
    [0] the first fuse
   *[other] { $first }
} sits from { $sources } cannot be told: a length among { $runs } is not known.
fuse-too-far-find = Measure { $runs } from { $sources } to { $first ->
    [0] the first fuse
   *[other] { $first }
}, along the wire.

## fuse-undersized

fuse-undersized-what = { $device } carries { $carries } for long; with its { $rating } it can carry { $lasting }.
fuse-undersized-bursts = Bursts of { $peaks } pass { $device }; with its { $rating } it has to open from { $opens }.
fuse-undersized-remedy = Fit { $rating } in { $device }; the wire behind it bears that.
fuse-undersized-wire = It takes { $needs } or more: lay wire that bears such a fuse first, or take load off.
fuse-undersized-unknown = Whether { $device } bears its load cannot be told: its rating is not known.

## second-source

second-source-what = { $runs } { $runs ->
    [one] lies
   *[other] lie
} between two sources; from { $sources } nothing guards { $runs ->
    [one] it
   *[other] them
}.
second-source-remedy = Put a fuse that the wire can bear next to { $sources } as well.

## self-resetting-main

self-resetting-main-what = { $device } is the first device behind the source and closes again by itself.
self-resetting-main-remedy = Fit a fuse, or a breaker that is reset by hand, in place of { $device }.

## uneven-parallel

uneven-parallel-alone = { $runs } lie side by side behind { $device } ({ $lets }); { $run } left alone can carry { $can }.
uneven-parallel-alone-remedy = Lay one wire that bears { $rating }, or give each its own fuse at both ends.
uneven-parallel-shares = Of the { $carried } in { $runs }, { $run } takes { $takes }; up to { $share } passes as an equal share.
uneven-parallel-shares-remedy = Make them alike in size, length, material and ends, or lay one wire in their place.
