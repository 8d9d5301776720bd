## The printed handover: what the customer gets, and what the next installer gets.

paper-list-parts = Parts
paper-column-mounted = Fixed to

handover-vehicle = Vehicle
handover-sheet = Sheet
handover-drawn-by = Drawn by
handover-date = Date
handover-revision = Revision
handover-for-customer = This paper says what was found in your vehicle, what was done, and what you need to know. Keep it with the vehicle's documents: whoever works on it next will want it.
handover-came-with = What you came with
handover-complaint = “{ $words }” – { $state }
handover-complaint-done = “{ $words }” – done: { $done }. { $state }
handover-proven = Mended, and shown by measuring.
handover-settled = Settled.
handover-still-open = Still open.
handover-dangerous = What was dangerous
handover-dangerous-about = These could have started a fire, hurt somebody, or left you standing. The numbers are those on the drawing.
handover-no-danger = Nothing was found that could start a fire, hurt somebody, or leave you standing.
handover-numbered = { $number }. { $title }
handover-danger-gone = Mended: it is not there any more.
handover-danger-left = It is still there, at least in part: see below.
handover-before = Before
handover-before-shows = As it was found. The numbers are those of the dangers above.
handover-after = After
handover-after-shows = Sheet { $sheet }.
handover-as-it-is = The system
handover-done = What was done
handover-done-extra = { $what } (found during the work, { $on })
handover-became = { $becomes }: { $what }.
handover-called = { $tag } ({ $name })
handover-runs = { $count ->
    [one] one run of wire
   *[other] { $count } runs of wire
}
handover-parts-and-runs = { $parts }, and { $count ->
    [one] one run of wire
   *[other] { $count } runs of wire
}
handover-left = What is left as it is
handover-found = What was found
handover-nothing-left = The checks report nothing more. They know the drawing, not the vehicle.
handover-finding = { $grade }: { $what }
handover-isolate = How to isolate the system
handover-isolate-off = Turn everything off and take the key away.
handover-isolate-battery = Take the negative clamp off { $battery }, { $place }, and keep it away from the pole.
handover-isolate-fuse = To take the supply off this system alone: take out { $fuse }, { $rating }, { $place }.
handover-isolate-fuse-any = To take the supply off this system alone: take out { $fuse }, { $place }.
handover-place-unknown = place not recorded
handover-fuse-rule = A fuse that opens has a reason. Replace it once, by one of the same rating and type; when it opens again, have the reason looked for. Never a larger one, and never anything else in its place.
handover-declined = What was declined
handover-declined-about = The following was offered, its reason was explained, and it was declined. It stays as it was found.
handover-money = Prices
handover-condition = Condition of the vehicle when it came
handover-intake = { $words } ({ $at }, { $on })
handover-intake-at = { $words } ({ $at })
handover-intake-on = { $words } ({ $on })
handover-pictures = Pictures
handover-picture = { $of }: { $words }
handover-picture-on = { $words } ({ $on })
handover-picture-of-on = { $of }: { $words } ({ $on })
handover-sign-date = Place, date
handover-sign-customer = Customer
handover-sign-shop = Workshop
handover-for-installer = For the next installer: { $title }
handover-conditions = Numbers are computed for: { $state }, { $duty }. Judged by: { $profile }.
handover-drawing = Drawing: { $sheet }
handover-drawing-part = Drawing: { $sheet }, part { $part } of { $count }
handover-drawing-place = Row { $row } from the top, column { $column } from the left. What runs on beyond the edge is on the drawing as a whole.
handover-difference = What differs from before
handover-from-above = Where everything is in the vehicle
handover-from-above-shows = Seen from above, the front at the left.
