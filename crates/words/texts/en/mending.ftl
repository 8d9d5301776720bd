## Mending everything, and what a mend would do.

mend-all-edit = { $count ->
    [one] Make { $count } mend
   *[other] Make { $count } mends
}
mending-of-one = { $what }
mending-of-several = { $what } (×{ $count })
mending-clears = Clears: { $findings }.
mending-brings = Would bring: { $findings }.
mending-brings-nothing = Would bring nothing.
mending-counts = Stop { $stop } → { $stop_after }, Fix { $fix } → { $fix_after }, Tidy { $tidy } → { $tidy_after }
mending-choice = To choose: { $choice }.
mending-found = This sheet tells what was found. Mended, it tells so no more: mend a plan that is made from it, where it is to be kept.

## Why a finding is left after everything was mended that needs no choice.

left-brings = What can be mended without a choice of yours would bring: { $findings }.
left-same = What can be mended without a choice of yours would leave as much as it clears.
left-unknown = A fact is missing. { $find }
left-no-edit = No change of the drawing clears it.

## On the command line.

cli-command-mend = Shows what would clear each finding and what that would bring; makes one mend, or all that need no choice
cli-option-all-mend = Makes every mend that needs no choice of yours and makes nothing worse
cli-option-finding = Makes the mend of one finding, by its number in the list
cli-option-way = Which of its mends, where it has several
cli-option-output-mend = Where to write the job as it then is; without it nothing is written
cli-option-dry_run = Only tells what would be done, and writes nothing
cli-column-number = No.
cli-column-mend = Mend
cli-column-finding = For the finding
cli-column-does = What it does
cli-column-why = Why it is left
cli-mend-steps = What is done, in this order:
cli-mend-left = What is left:
cli-mend-nothing = There is nothing to mend that needs no choice of yours.
cli-mend-none = Nothing known clears it.
cli-mend-no-finding = there is no finding { $number }; the list has { $count }
cli-mend-no-way = finding { $number } has { $count ->
    [0] no mend
    [one] one mend
   *[other] { $count } mends
}: { $what }

## On the page.

mend-all = Mend all that needs no choice
mend-all-working = Working out what can be mended: { $made } so far …
mend-all-make = { $count ->
    [one] Make this { $count } mend
   *[other] Make these { $count } mends
}
mend-all-nothing = There is nothing to mend that needs no choice of yours.
mend-all-steps = What is done, in this order
mend-all-left = What is left
mend-all-none-left = Nothing is left. The checks know the drawing, not the vehicle: have a qualified person look at it.
mend-all-undo = One undo takes all of it back.
mend-look = Show what it does
