## The list of lessons.

lessons-title = Lessons
lessons-back = Back to the table
lessons-count = { $count } small systems, each in a bad and a good version. Arrows walk, Enter opens.
lessons-shows = { $count } small systems, good and bad side by side, to be shown to a class.

## A lesson presented.

lesson-bad = Bad
lesson-good = Good
lesson-step = Step of the lesson
lesson-step-on = Step { $place } of { $count }: { $kind }.
lesson-numbered = { $name } { $number } of { $count }
lesson-story = Story
lesson-look = Look
lesson-break = Break
lesson-question = Question
lesson-why = Why
lesson-sources = Where it comes from
lesson-care = Take care.
lesson-right = Right:
lesson-back = Back
lesson-next = Next
lesson-throw = Break
lesson-overlays = Overlays
lesson-findings = Findings
lesson-close = Closer
lesson-pointer = Pointer
lesson-keys = Keys
lesson-open = Open as a job
lesson-version-title = { $title } ({ $version ->
    [bad] bad
   *[good] good
})
lesson-picture = { $version } version: { $parts } parts, { $runs } runs
lesson-outline = { $version } version as an outline
lesson-of-version = { $version }: { $told }
lesson-not-there = not there.
lesson-more = and { $count } more
lesson-nothing-found = Nothing found.

## What a break does.

lesson-break-open = { $things } open
lesson-break-reversed = { $things } reversed
lesson-break-dead = { $things } dead
lesson-break-joined = { $things } touch
lesson-break-try = What will follow, in the bad version and in the good one?
lesson-sign-open = open
lesson-sign-reversed = reversed
lesson-sign-dead = dead
lesson-sign-joined = touch
lesson-plays-on = { $things ->
    [one] { $things } plays on.
   *[other] { $things } play on.
}
lesson-falls-silent = { $things ->
    [one] { $things } falls silent.
   *[other] { $things } fall silent.
}
lesson-falls-silent-off = { $things ->
    [one] { $things } falls silent with { $off }.
   *[other] { $things } fall silent with { $off }.
}
lesson-begins-to-play = { $things ->
    [one] { $things } begins to play.
   *[other] { $things } begin to play.
}
lesson-stays-silent = { $things ->
    [one] { $things } stays silent.
   *[other] { $things } stay silent.
}
lesson-stays-silent-off = { $things ->
    [one] { $things } stays silent without { $off }.
   *[other] { $things } stay silent without { $off }.
}
lesson-stays-on = { $things ->
    [one] { $things } stays on.
   *[other] { $things } stay on.
}
lesson-goes-off = { $things ->
    [one] { $things } goes off.
   *[other] { $things } go off.
}
lesson-comes-on = { $things ->
    [one] { $things } comes on.
   *[other] { $things } come on.
}
lesson-stays-off = { $things ->
    [one] { $things } stays off.
   *[other] { $things } stay off.
}
lesson-opens = { $things ->
    [one] { $things } has to open.
   *[other] { $things } have to open.
}
lesson-holds = { $things ->
    [one] { $things } does not open.
   *[other] { $things } do not open.
}
lesson-finding-stays = Still found: { $check }.
lesson-finding-comes = Now found: { $check }.
lesson-finding-goes = No longer found: { $check }.
lesson-finding-none = Not found: { $check }.
lesson-no-number = none
lesson-number-turns = { $name } { $at }: from { $was } to { $is }.
lesson-number-turns-alone = { $name }: from { $was } to { $is }.
lesson-nothing-happens = Nothing turns.
lesson-cannot-break = It cannot break like this here.

lesson-measure-current = Current
lesson-measure-rms = RMS current
lesson-measure-burst = Current in bursts
lesson-measure-drop = Voltage lost,
lesson-measure-feed-drop = Voltage lost in the feed,
lesson-measure-return-drop = Voltage lost in the return,
lesson-measure-volts = Voltage
lesson-measure-mean-volts = Mean voltage
lesson-measure-temperature = Temperature
lesson-measure-ambient = Temperature around
lesson-measure-insulation = Temperature borne by
lesson-measure-allowable = Allowable current
lesson-measure-resistance = Resistance
lesson-measure-loss = Power lost in
lesson-measure-length = Length
lesson-measure-size = Size
lesson-measure-unprotected = Unprotected way to
lesson-measure-offset = Voltage between the grounds of
lesson-measure-shield = Current in the shield of
lesson-measure-rating = Rating
lesson-measure-prospective = Current of a short behind
lesson-measure-return = Resistance of the return,
lesson-measure-load = Load of
lesson-measure-least = Least load of
lesson-measure-minimum = Least load allowed,
lesson-measure-power = Power
lesson-measure-coil = Power in the coil
lesson-measure-lead-loss = Level lost in the leads of
lesson-measure-hours = Hours until flat,
lesson-measure-charge = Charge left in
lesson-measure-draw = Current drawn
lesson-measure-available = Current at hand
lesson-measure-standing = Standing current
lesson-measure-found = Found by
lesson-measure-limit = Limit

## Keys of the presenter.

lesson-key-next = On: the answer or the break first, then the next step
lesson-key-back = Back
lesson-key-ends = First and last step
lesson-key-end = End
lesson-key-answer = Show or hide the answer
lesson-key-break = Throw the break in both; again heals it
lesson-key-other-break = Throw another break
lesson-key-overlay = Lay an overlay on both; again or 0 takes it off
lesson-key-findings = Findings: mark and list them, or not
lesson-key-close = Closer: what is lit fills the pictures
lesson-key-pointer = Pointer: a ring that follows mouse or finger, on both
lesson-key-walk = Lead the pointer from part to part
lesson-key-keys = These keys
lesson-key-leave = Put the pointer away; back to the list

## What is wrong with a lesson, for whoever writes one.

lesson-bad-without-finding = The bad version has no finding of “{ $check }”.
lesson-about-nothing = It is about nothing: name a check under “about”, or write a “fault”.
lesson-good-with-finding = The good version has a finding of “{ $check }”: { $what }
lesson-no-source = Its explanation names no source.
lesson-brace-open = A brace is not closed in: { $text }
lesson-place-empty = The place “{ $place }” has no number: { $why }
lesson-place-form = Write it as “current W3” or “good drop A1”.
lesson-no-break = The lesson has no break.
lesson-break-problem = { $break }, { $version }: { $why }
lesson-effect-problem = “{ $effect }”: { $why }
lesson-does-not-follow = It does not follow.
lesson-write-still = It is so before as well: write “still”.
lesson-write-then = It is not so before: write “then”.
lesson-no-limit = There is no limit “{ $limit }”.
lesson-no-found-number = No finding of “{ $check }” holds a number.
lesson-no-measure = The engine has no “{ $measure }” of “{ $thing }”.
lesson-no-thing = There is no run or part “{ $thing }”.
lesson-no-part = There is no part “{ $part }”.
lesson-no-speaker = “{ $part }” is no speaker.
lesson-no-device = There is no fuse or breaker “{ $device }”.
lesson-no-rating = The rating of “{ $device }” is not known.
lesson-other-unit = “{ $measure }” is told in { $of }, not in { $unit }.

## What is wrong with the text of a lesson, and what would do.

lesson-text-blocks = more than { $most } blocks
lesson-text-two = make two lessons of it
lesson-text-long = the lesson is longer than a job may be
lesson-text-key-first = a lesson begins with its key
lesson-text-key = a key is made of small letters, digits and dashes
lesson-text-key-help = write `lesson fuse-too-far`
lesson-text-things = more than { $most } things are named
lesson-text-things-help = name the foremost
lesson-text-fault = a fault has a name, things and a sentence
lesson-text-fault-help = write `fault signal-beside-feed W4 W2` and below it, indented, what is wrong
lesson-text-unasked = what is not asked for has the name of a check
lesson-text-unasked-help = write `unasked lead-loss W5`
lesson-text-begins = a line begins with { $words }, or is indented
lesson-text-no-block = `{ $word }` opens no block
lesson-text-overlay = there is no overlay `{ $word }`
lesson-text-look = a look needs things and a sentence
lesson-text-look-help = write `look heat W2` and below it, indented, what to see there
lesson-text-break = `{ $word }` is no kind of break
lesson-text-break-help = write `break open W3`, `break reversed LS1`, `break dead B2` or `break joined LS1.+ E1.stud`
lesson-text-break-things = `{ $word }` names { $count } things
lesson-text-break-things-help = { $count ->
    [one] name { $count } thing
   *[other] name { $count } things, as `LS1.+ E1.stud`
}
lesson-text-version = in which version?
lesson-text-version-help = write `then bad silent LS1` or `still good plays LS1`
lesson-text-effect = this is no effect
lesson-text-effect-word = `{ $word }` is no effect; write { $words } or `current W3 > 20 A`
lesson-text-effect-form = write an effect as `silent LS1` or `current W3 > 20 A`
lesson-text-in-break = `{ $word }` has no place in a break
lesson-text-in-break-help = write then, still or says
lesson-text-in-question = `{ $word }` has no place in a question
lesson-text-in-question-help = write right, wrong or why
lesson-text-question = a question needs a right answer and a wrong one
lesson-text-question-help = add `right …` and `wrong …` below it, indented
lesson-text-own-line = a lesson has a title and its two versions already
lesson-text-own-line-help = take this line out
lesson-text-no-thing = the system has no `{ $tag }`
lesson-text-no-thing-help = name a part or run of the system
lesson-text-no-check = there is no check `{ $name }`
lesson-text-about-help = leave `about` out where no check speaks of it, and write a `fault`
lesson-text-checks-help = `loomwright explain` lists the checks

## What is wrong with the words of a lesson or a worked job in another language.

lesson-words-surplus = the lesson has no further `{ $word }`
lesson-words-surplus-help = take it out, or add it to the lesson first
lesson-words-in-question-help = write answer or why
lesson-words-answers = { $count ->
    [one] { $count } answer
   *[other] { $count } answers
} where the lesson has { $wanted }
lesson-words-answers-help = give each answer of the lesson its words, in its order
lesson-words-part-help = name a part of it
lesson-words-missing = { $count } of { $wanted } blocks `{ $word }`
lesson-words-missing-help = add the ones that are missing
worked-words-no-thing = the job has no `{ $tag }`
worked-words-thread-help = name a line of its thread
