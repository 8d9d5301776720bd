## clad-feed

clad-feed-weak = { $run } is copper-clad aluminium: its { $size } conduct like { $equal } of copper. { $asks } are asked of it; it can carry { $can }.
clad-feed-lossy = { $run } is copper-clad aluminium: its { $size } conduct like { $equal } of copper. { $load } loses { $drop } on the way.
clad-feed-remedy = Lay { $size } copper in its place.
clad-feed-copper = Lay copper in its place, sized for its fuse and its length.

## hot-joint

hot-joint-what = { $run } turns { $lost } into heat where it is joined to { $place } ({ $carries } through { $ohms }); { $most } is the limit.
hot-joint-melts = { $run } turns { $lost } into heat where it is joined to { $place } ({ $carries } through { $ohms }); { $most } can melt plastic.
hot-joint-other = The other end, at { $place }, is too warm as well.
hot-joint-remedy = Remake the joint at { $place }: clean metal, a new crimp, the right torque.
hot-joint-end = its end

## loose-end

loose-end-unguarded = { $run } is live, no fuse guards it, and one end lies loose.
loose-end-live = { $run } is live and one end lies loose.
loose-end-what = { $run } ends nowhere.
loose-end-remedy = Join { $run } where it belongs, or take it out.

## no-feed

no-feed-coil = The coil of { $relay } gets no feed: it never pulls in.
no-feed-coil-remedy = Join the coil of { $relay } to a fused feed or a turn-on output.
no-feed-apart = { $plug } is apart: nothing reaches { $parts }.
no-feed-apart-remedy = Mate the halves of { $plug }.
no-feed-nothing = Nothing is on { $terminals }: no source reaches { $parts }.
no-feed-nowhere = What is on { $terminals } leads to no source.
no-feed-remedy = Join it to a fused feed.
no-feed-blown = { $device } is blown or taken out{ $parts ->
    [0] .
   *[other] : nothing reaches { $parts }.
}
no-feed-blown-remedy = Find out why it opened before a new one of the same rating goes in as { $device }.

## overloaded-run

overloaded-run-what = { $run } carries { $carries }; where it lies it can carry { $can }.
overloaded-run-remedy = Lay { $size } copper or take load off it.
overloaded-run-thicker = Lay thicker wire, or take load off it.
overloaded-run-unknown = { $run } carries { $carries }; whether it can cannot be told, since its { $missing } is not known.

## supply-collapse

supply-collapse-what = The supply can give { $share } of the power that is asked at bursts.
supply-collapse-most = Most is lost in { $things }.
supply-collapse-remedy = Use thicker and shorter wire, a stronger battery, or less power.
supply-collapse-failed = Currents and voltages could not be worked out: { $why }.
supply-collapse-failed-find = Look for sources that are joined the wrong way round, and for values that cannot be right.
supply-collapse-cut-off = At bursts { $amplifier } gets { $gets }; below { $needs } it turns itself off.

## terminal-overfull

terminal-overfull-many = { $count } wires are on { $terminal }: { $runs }; it takes { $most }.
terminal-overfull-many-remedy = Move wires to a terminal, a block or a bus of their own.
terminal-overfull-unknown = Whether { $run } fits { $terminal } cannot be told: its size is not known.
terminal-overfull-thick = { $run } has { $size }; { $terminal } takes { $takes }.
terminal-overfull-thick-remedy = Use a terminal that takes { $size }, or a reducer made for it; cut no strands.

## voltage-drop

voltage-drop-what = { $load } loses { $lost } between source and terminals; { $most } is the limit.
voltage-drop-in = { $load } loses { $lost } between source and terminals, { $part } of it in { $run }; { $most } is the limit.
voltage-drop-remedy = Lay { $sizes } copper.
voltage-drop-thicker = Lay thicker or shorter wire, there and back.
