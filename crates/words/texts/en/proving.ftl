## The shortest proof: what the vehicle does, where the leads go, what is in order, what a reading outside of it points to.

proof-doing-fuses-out = Supply isolated, every fuse out, every breaker open
proof-doing-isolated = Supply isolated, fuses in
proof-doing-parked = Supply on, parked, all off
proof-doing-on = On, engine off, nothing playing
proof-doing-tone = On, engine off, { $duty } on all channels
proof-doing-idling = Engine idling, { $duty } on all channels
proof-at-volts = Volts: red lead on { $red }, black lead on { $black }
proof-at-ohms = Ohms: one lead on { $red }, the other on { $black }
proof-at-amps = Amps: clamp round { $run }
proof-expected = expected { $expected }; in order from { $least } to { $most }
proof-expected-open = expected open; in order from { $least } up
proof-touches = { $run } touches the body
proof-bad-joint = a bad joint on { $run }
proof-bad-contact = a bad contact in { $part }
proof-thinner = { $run } only { $size }
proof-larger = { $device } with { $rating }
proof-bridged = { $device } replaced by something that is no fuse
proof-harm-live-end = a bare live end
proof-harm-short = the source is shorted
proof-harm-hot-joint = a joint that melts plastic
proof-harm-overload = another wire carries more than it bears
proof-harm-fuse = the fuse lets more through than the wire bears
proof-look-rating = Read what is printed on { $device }, and see that it is a fuse or breaker and nothing else
proof-look-size = Measure { $run } against { $size }: strands, or over the bare conductor
proof-look-run = Pull at both ends of { $run }, and look along it for bare, pinched or discoloured places
proof-look-part = Look at the contacts of { $part }: tight, clean, not discoloured, nothing that touches
proof-why-rating = a meter reads the same through a larger one
proof-why-size = the wire is too short for a meter to tell
proof-why-small = no reading differs by more than sound systems differ among themselves

## The list as a whole.

proof-count =
    { $count ->
        [one] { $count } reading
       *[other] { $count } readings
    }
proof-summary = { $readings } would expose { $exposed } of { $all } single faults of grade Stop; about { $minutes } min.
proof-none-grave = No single fault of grade Stop can be put in on this sheet: there is nothing to prove.
proof-shortest = No list that exposes as much is shorter.
proof-bound = No list that exposes as much has fewer than { $least }; the search was ended there.
proof-unseen = No reading exposes these; look instead:
proof-stops =
    { $count ->
        [one] The sheet itself has { $count } finding of grade Stop. Readings say nothing about what is drawn so.
       *[other] The sheet itself has { $count } findings of grade Stop. Readings say nothing about what is drawn so.
    }
proof-caution = Isolate the supply for ohms and touch the leads together first; a point that is a pole of a battery is then the clamp taken off it, never the battery itself. Under a test tone be brief, protect ears and speakers, and keep clear of moving parts. One fault at a time is exposed: two may hide one another, and what comes and goes shows only while it is there. Readings do not prove that wiring is in order; the vehicle maker's instructions and the law of the place come first, and a qualified person decides.
proof-points = Outside, it points to { $faults }
proof-kept = read { $read }: { $verdict }
proof-faults = { $faults }
proof-look-line = – { $look }
proof-pass = in order
proof-fail = outside

## On the page.

proof-head = Shortest proof
proof-working = The readings are being worked out: { $done } …
proof-progress = Reading { $number } of { $count } · { $good } in order · { $bad } outside · { $left } to take
proof-black = Black
proof-red = Red
proof-lead = Lead
proof-clamp = Clamp round
proof-as-expected = As expected
proof-enter = Enter
proof-erase = Erase the last digit
proof-sign = Plus or minus
proof-back = Back
proof-skip = Skip
proof-next = Next
proof-points-to = It points to
proof-more = { $count } more
proof-light = Show on the drawing
proof-find = Find the fault
proof-end-good = All readings are within their limits.
proof-end-open = Gone through; some readings were left out.
proof-end-outside = Gone through; some readings are outside of their limits.
