## not-known

check-not-known-title = Not known
check-not-known-holds = every value that decides a check is known
check-not-known-looks = Values marked as not known, on parts and runs that are judged and in use, where a value is usually at hand. What makes another check undecided is told there. Also places and ways that the told body does not have. Values taken for granted are not told here; each finding names those it rests on.
check-not-known-why = What is not known cannot be judged, and a drawing that says so is worth more than one that guesses.
check-not-known-source = Common practice.
check-not-known-unmended = A fact is found out, not chosen: measure or read it, and enter it.
not-known-what = Of { $of } the { $properties } { $properties ->
    [one] is
   *[other] are
} not known.
not-known-place = { $part } stands at a place that this body does not have: { $place }.
not-known-route = The way of { $run } names what this body does not have: { $names }.
not-known-place-find = Choose from this body, or add the place or passage to it.
