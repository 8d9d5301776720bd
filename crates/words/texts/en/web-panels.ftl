### What only a panel or a slip says.

## Everywhere.

close = Esc: close
nothing-known = not known
yes = yes
no = no

## Ask.

ask-for = Ask for a part, a run, a finding, an action
ask-none = Nothing of that name here.

## Keys.

keys = Keys

## A finding explained.

finding-number = Finding { $number }
finding-do = Do:
finding-source = Source:
finding-assumed = Assumed:
finding-leave-out = Leave this check out of this job
finding-leave-out-where = Kept in the job and listed under conditions and limits (l), where it is taken in again
finding-before = Before
finding-of = { $number } of { $count }
finding-next = Next
finding-against = { $value } against a limit of { $limit }

## Jobs.

jobs-here = on the table
jobs-damaged = damaged, kept as it was; found { $when }
jobs-save-damaged = Save to a file
keeping-opening = Opening the storage …
keeping-kept = Every change is kept in this browser.
keeping-writing = Writing …
keeping-elsewhere = Another tab has this job; what is changed here is not kept.
jobs-take-over = Take it over here
jobs-worked = Worked examples
jobs-kept = Kept here
jobs-damaged-list = Damaged, kept as they were

## Conditions and limits.

limits = Conditions and limits
limits-shares = Shares are written as such: 0.03 is 3 %. The law of the place and the vehicle's maker come first.
limits-profile = All are the profile's.
limits-own = { $count } set in this job.
limits-left-out = Checks left out of this job
limits-take-in = take in again
limit-own = Set in this job.
limit-back = Back to { $number }
limit-profile = Profile:
limit-no-number = `{ $text }` is no number

## The meter.

meter-red = red
meter-black = black
meter-clamp = clamp
note-undecided = { $grade }, undecided

## The right margin.

offer = From { $from } to a new
outline = Outline

## The slip beside a thing.

plain-run = Wire
slip-about = About { $tag }
slip-details = Details of { $tag }
slip-feeds = What feeds this
slip-tag = Tag
slip-fewer = fewer
slip-more = { $count } more
slip-more-run = material, insulation, surroundings, condition …
slip-name = name
slip-note = note
slip-fitted-by = fitted by
slip-splice = Splice
slip-move-end = Move an end
slip-straighten = Let it find its way
slip-turn = Turn
slip-duplicate = Duplicate
slip-delete = Delete
slip-at = at { $at }
slip-loose-end = the loose end
edit-fitted-by = Set who fitted { $tag }

## Readings kept.

readings-sheet = Readings, sheet { $sheet }
readings-remove = Remove { $reading }
readings-none = None yet. Take the meter in hand (M), put its leads on, and keep what it shows (S).
readings-proves = proves
readings-with = with

## Sharing.

share-use = Use { $address }
share-use-here = Use { $address } (opens on this machine alone)
share-link-what = The link holds the drawing itself: nothing is stored anywhere. Who opens it loads this program from the address that the link starts with, so it has to be one that they can reach.
share-no-address = There is a link as soon as that address stands here. Until then there is the page file, below.
share-seen = What others see
share-out = What stays out
share-notes = notes, remarks and complaints
share-names = names in the title block
share-prices = the quote and its prices
share-pictures = pictures (in the page file alone)
share-show = show { $what }
share-show-none = show { $what } (there are none)
share-show-left = show { $what } ({ $count } left out)
share-unknown = { $count } fields of a newer version's file
share-always = Title and labels are always shown: look whether they name anybody.
share-link = Link
share-starts = starts with
share-page = Page file
share-page-what = One file with this drawing and the program in it. It opens with a double click, without a network, and can be of any size.
share-page-download = Download the page file
share-page-missing = The page file was not made: page.html, which belongs beside this page, could not be fetched.
share-page-failed = The page file was not made. { $why }
share-title = Title
share-revision = Revision
share-sheet = Sheet { $sheet }: { $parts }, { $runs }, { $labels } labels
share-sheet-notes = { $count } notes
share-sheet-readings = { $count } readings
share-complaints = { $count } complaints
share-intake = { $count } lines of the condition record
share-offers = { $count } lines of the quote, with prices
share-holds-pictures = { $count } pictures, in the page file
share-findings = The findings, as the checks make them from it
share-copied = The link is on the clipboard.
share-not-copied = This browser does not let the page write to the clipboard: mark the link and copy it.
share-characters = { $count } characters
share-copy = Copy the link
share-code = Code of the link, to scan
share-no-code = Too long for a code that a telephone reads from paper.
share-scan = Scan to look at this drawing

## The shelf of parts.

shelf-filter-how = Type to filter, Enter takes the first
shelf-filter = Filter the shelf
shelf-close = Esc: close the shelf
shelf-none = Nothing of that name on the shelf.

## A sheet laid under.

newer = A newer version is ready; it is used the next time the page is opened.
newer-load = Load it now

## Files and storage.

job-damaged = { $count ->
    [one] { $count } piece
   *[other] { $count } pieces
} of this job could not be read: { $first }. What was stored is kept as it was, see Jobs.
no-canvas = This browser gives no canvas to paint the picture on.
file-too-large = { $name } has { $size }; a job file may have { $most }. It was not opened; is it the right file?
file-kind-job = Job file
file-kind-lesson = Lesson
file-none = That is not a file. Drop one job file from your file manager here.
file-several = Those are { $count } files. Drop one job file at a time.
file-gone = The file is not there any more: it was moved, renamed or deleted. Save the job under a new name.
file-not-allowed = The browser did not allow it. Try again and agree when it asks, or save the job under a new name.
file-disk-full = The disk is full: the file was not written. Free some space and save again.
file-in-use = The file is in use by another program or protected. Close it there, or save the job under a new name.
file-picture-too-large = The browser cannot make a picture of this size. Choose a smaller scale, or export SVG.
file-failed = The file could not be read or written ({ $reason }).
store-said = { $what } { $todo }
browser-no-reason = no reason given
store-no-window = there is no window
store-no-database = it has no database
store-refused = This browser keeps no data for this page: perhaps a private window, or storage is turned off ({ $reason }).
store-refused-do = You can go on working, but the job lives only in this tab. Save it to a file before you close it.
store-full = The browser's storage is full: the last change could not be kept.
store-full-do = Nothing is lost yet: save the job to a file now. Then remove jobs that you no longer need, or free disk space.
store-changed = This job was changed in another tab since it was opened here.
store-changed-do = What you see here is still whole: save it to a file or as a new job, then open the other state.
store-newer = A newer version of this page is open in another tab.
store-newer-do = Save the job to a file, then load this page again.
store-missing = This job is not in the browser's storage any more.
store-missing-do = If it is still open here, save it to a file or as a new job.
journal-unplayed = cannot be played back, nor what came after it: { $why }
journal-missing = edit { $edit } is missing
store-unreadable = What is stored of this job cannot be read: { $reason }.
store-unreadable-do = It is left as it is. Save the stored text to a file, and open an earlier copy.
store-failed = The browser could not keep or read the job ({ $reason }).
store-failed-do = Save the job to a file now, then load this page again.

## Fields.

mark-unknown = unknown
mark-unknown-what = Nobody has said what this is
mark-assumed = assumed
mark-assumed-what = Taken for granted: click when you know that it is so
mark-computed = computed
mark-computed-what = Follows from its way through the body: type what was measured to put that in its place
mark-given = given
mark-given-what = Known: click to mark it as assumed

## Worked examples.

worked-estate = An estate car with front components, a rear pair and one subwoofer, all in order.
worked-van = A trades van that several hands have altered: what is wrong with it?
worked-camper = A camper with a second battery, a split-charge relay, an inverter and house loads.
worked-hatchback = A hatchback from complaint to proof: found, planned and built, with its quote, lists and readings.

## Recording what is found, and the thread of the job.

record-on = Record on { $sheet }
record-other-sheet = The sheet on the table is { $sheet }. What an earlier hand left belongs on Found.
record-to-found = Turn to Found
record-from = from
record-to = to
record-size = size
record-colour = colour
record-condition = condition
record-endings = both ends
record-opens-when = loses contact with
record-length = length
record-not-measured = not measured
record-go = Record this run
record-done = { $run } recorded: { $between }
record-two-ends = Name both ends: choose an offer, or “somewhere” where nobody knows yet.
record-unseen = What is not chosen stays unknown, and the findings that hinge on it say what to look at.
thread-complaints = Complaints
thread-complaints-about = What the customer came with, in the customer's words. Each is tied to the findings that explain it, and closed by a reading that proves it.
thread-add-complaint = Add a complaint
thread-condition = Condition at intake
thread-condition-about = What was seen before any trim came off.
thread-add-intake = Add a line
thread-find-out = To find out
thread-find-out-about = What to look at or to measure next: these findings lack a fact.
thread-find-out-none = Every finding of this sheet has the facts that it needs.
thread-becomes = What becomes of things
thread-quote = Quote
thread-add-offer = Add a line to the quote
thread-remove = Remove { $line }
thread-untie = Untie { $finding }
thread-untie-word = untie
thread-tie = tie a finding …
thread-not-here = (not on this sheet)
thread-answered-by = Answered by
thread-proven-by = Proven by
becomes-none = There is no earlier sheet to compare with. Fill the Plan from what was found: the set index in the title block does it.
becomes-from = Since { $sheet }:
becomes-counts = { $kept } kept, { $changed } changed, { $new } new, { $removed } removed.
becomes-findings = { $cleared } findings cleared, { $left } left, { $brought } new.
becomes-kept = kept
becomes-changed = changed
becomes-new = new
becomes-removed = removed
quote-findings = Offer what the findings ask for
quote-all = All
quote-no-price = no price yet
quote-approved = Approved
edit-quote-findings = { $count ->
    [one] Offer one line
   *[other] Offer { $count } lines
}
thread-more = more
becomes-kept-all = { $count } kept
slip-mounting = How it is fixed ({ $count })
slip-handling = What becomes of it ({ $count })
slip-laying = How it is laid ({ $count })
pictures = Pictures
pictures-add = Add a picture
pictures-of = Picture of { $of }
pictures-what = what is to be seen
pictures-unread = This picture could not be read: { $why }
pictures-added = Picture of { $of } added, { $size } kB

## The body plan.

body-no-form = Choose the form of the vehicle, and its plan is drawn. Sizes that you do not give are those usual for the form.
body-lay-all = Lay all runs through the body
body-lay-all-how = Feeds apart from signal leads, signal leads of one amplifier together, nothing under a seat or over a hinge where there is a way round. Runs whose way is locked keep it.
body-nowhere = No place yet
body-parts = Places of parts
body-places = What is told of a place or passage
body-places-how = The form knows what is usual. Tell here what differs in this vehicle: heat, water, sharp metal, what lies behind.
told-places = Places
told-passages = Passages
told-dangers = A wire there: { $dangers }.
told-no-danger = Nothing is known there that endangers a wire.
told-add-place = Add a place
told-add-passage = Add a passage
told-new-place = new place
told-new-passage = new passage
told-move = Move the place
told-move-how = Drag it on the plan, or by { $step }:
told-move-front = Towards the front
told-move-rear = Towards the rear
told-move-left = Towards the left side
told-move-right = Towards the right side
told-take-back = Take back what is told here
body-place-of = Place of { $part }
ways = Ways through the body
ways-number = Way { $number }: { $length }
ways-take = Take this way
ways-taken = It lies so.
ways-none = Take the way off again
body-plan-drawer = Form and places

## The papers of the job.

papers-which = Which paper
papers-print = Print this paper
papers-csv = As a table file (CSV)
papers-nothing = There is nothing on this sheet yet.
papers-empty = Nothing to list.
papers-waste = waste
papers-prices = Take in a filled price list
papers-no-prices = No prices were found there. Hand out the price list or the order list as a table file, fill in its columns of prices and hours, and take that in.
papers-prices-read = { $count } prices taken in; this browser keeps them.
print-part = Part { $part } of { $count } of the drawing: row { $row } from the top, column { $column } from the left. What runs on beyond the edge is on the drawing as a whole.
papers-prices-unread = { $count ->
    [one] Line { $line } could not be read
   *[other] { $count } lines could not be read, the first is line { $line }
}: write prices as 120.50 or 120,50, units as m, ft or pcs.
papers-done = { $done } of { $count } done

## The handover.

hand-out-title = Handover
hand-out-what = One file for the customer, in plain words with the drawing before and after, and for the next installer, with drawing, wiring and fuse table, readings and settings. It opens with a double click, without a network, and prints on A4 and Letter.
hand-out-for = for
hand-out-for-both = both
hand-out-for-customer = the customer
hand-out-for-installer = the next installer
hand-out-pictures = pictures
hand-out-make = Make the handover
hand-out-how = It is made of the sheet on the table. What was declined stands in it as a statement.
hand-out-file = handover
slip-tunings = How its channels are set ({ $count })
tuning-channel = Channel { $channel }
tuning-add = add channel
pictures-vehicle = the vehicle
