## The exercise: marks, what came of them, the report for a teacher.

exercise-refused-handed-in = It is handed in. Try again to mark anew.
exercise-refused-thing = This is not in the drawing.
exercise-refused-reason = Choose a reason from the list.
exercise-refused-mark = This mark is not there any more.
exercise-refused-twice = You have marked this for that reason already.
exercise-refused-many = There are { $most } marks already; take one back first.

exercise-right = Found
exercise-missed = Missed
exercise-unasked = True, but not asked for
exercise-other-reason = Something is wrong there, but not this
exercise-wrong = Wrongly accused

exercise-report = Results of exercises
exercise-report-head = { $learner }: { $lesson }, try { $try }
exercise-report-when = { $learner }: { $lesson }, try { $try }, { $when }
exercise-report-points = Points: { $points } of { $of }
exercise-report-note = Noted on { $thing }: { $note }
exercise-no-name = No name
exercise-results-unreadable = These results cannot be read: { $why }.
exercise-results-came = a mark is right, unasked, other-reason or wrong
exercise-results-count = a count is not negative

## What an own lesson lacks.

lesson-lacks-title = It has no title.
lesson-lacks-story = It has no story: say who came with what, and what was seen.
lesson-lacks-drawing = Nothing is drawn in the bad version.
lesson-lacks-fault = There is nothing to be found: ask for at least one finding, or add a fault of your own.
lesson-lacks-fault-words = The fault “{ $fault }” has no explanation.
lesson-lacks-fault-things = The fault “{ $fault }” names a part or run that is not in the drawing.
lesson-lacks-question = Question { $at } asks nothing.
lesson-lacks-answers = Question { $at } needs a right answer and a wrong one.
lesson-lacks-look = What to look at, { $at }: it needs parts or runs of the drawing, and a sentence.
lesson-lacks-break = Break { $at } names something that is not in the drawing.
exercise-in-this-lesson = In this lesson

## Views of a lesson, and what is the same in all.

lesson-views = Views of the lesson
lesson-presenting = Presenting
lesson-exercise = Exercise
lesson-writing = Writing
lesson-not-open = This lesson does not open
lesson-downloaded = Downloaded as { $name }
own-untitled = Lesson without a title
own-words = in these words

## The drawing under an exercise, and its tools.

over-tools = Tools
over-meter = Meter
over-feeds = Feeds
over-reduce = Smaller
over-enlarge = Larger
over-fit = Fit

## The exercise as a learner has it.

exercise-drawing = Wiring diagram of the exercise: { $parts } parts, { $runs } runs. Arrows walk, Enter marks what is wrong, M takes the meter.
exercise-not-told = Not in an exercise: find it out with the meter.
exercise-task = What is wrong here?
exercise-how = Pick a part or a run by the pointer or the arrow keys. Enter marks it; then choose why. The meter and “feeds” help to find out.
exercise-mark = Mark { $thing } as wrong
exercise-mark-none = Pick a part or a run to mark it
exercise-marks = Your marks: { $count }
exercise-no-marks = None yet.
exercise-learner = Name (may stay empty)
exercise-hand-in = Hand in
exercise-show-score = Show the score
exercise-hide-score = Hide the score
exercise-again = Try again
exercise-marking = Why { $thing } is wrong
exercise-why = Why is it wrong?
exercise-filter = Type to filter
exercise-reasons = Reasons
exercise-no-reason = No reason of that name.
exercise-leave = Leave it
exercise-marked = { $thing } is marked: { $reason }.
exercise-taken-back = The mark on { $thing } is taken back.
exercise-note = Note
exercise-note-on = Note on { $mark }
exercise-change = Change
exercise-change-mark = Choose another reason: { $mark }
exercise-take-back = Take back
exercise-take-back-mark = Take back the mark: { $mark }
exercise-outcome = { $found } of { $all } found
exercise-sign-unasked = Not asked
exercise-sign-other = Not this
exercise-sign-wrong = Wrong
exercise-results = Results on this device
exercise-private = They stay in this browser until you delete them, and go nowhere unless you hand out the file.
exercise-no-results = None yet.
exercise-result = { $found } found, { $missed } missed, { $wrong } wrongly accused.
exercise-as-text = As text
exercise-as-json = As data
exercise-delete = Delete
exercise-delete-one = Delete the result of { $learner }
exercise-delete-all = Delete all

## An own lesson: its form, how it is kept and given away.

own-drawing = Drawing of the bad version: { $parts } parts, { $runs } runs. Arrows walk, Enter adds a fault.
own-title = Title
own-story = Story
own-story-hint = Who came with what? What was seen, heard, smelled? The learner reads this first. An empty line begins a paragraph.
own-with-good = Names, notes and remarks of the job stayed behind.
own-without-good = The drawing is the bad version; beside it stands a good one if the job has a sheet for it. Names, notes and remarks of the job stayed behind.
own-numbers = A number that is computed goes into any text in braces: current W3, drop A1, good drop A1. Each reader has it in his units, as the drawing shows it.
own-sheet-bad = Bad version: sheet
own-sheet-good = Good version: sheet
own-sheet-none = none
own-faults = To be found: { $count }
own-faults-how = What the checks find is proposed here. Pick a thing on the drawing to add a fault that they cannot see.
own-add-fault = Add a fault of { $thing }
own-add-fault-none = Pick a part or a run to add a fault
own-fault-why = What is wrong with it? Choose, or type words of your own.
own-fault-words = Explanation: { $fault }
own-fault-hint = Explanation in your own words
own-places = More places
own-places-how = Pick what may be marked for this fault as well.
own-place-out = Take { $thing } out
own-looks = What to look at
own-look-overlay = Overlay
own-look-says = What to see there
own-add-look = Add a look
own-pick-things = Pick on the drawing.
own-add-thing = Add { $thing }
own-clear-things = Clear
own-take-out = Take out
own-break = A break to try
own-break-kind = What happens
own-break-says = What is to be seen then
own-add-break = Add a break
own-questions = Questions
own-questions-how = They are asked when the lesson is presented. Tick what is right.
own-question = Question { $number }
own-question-why = Why
own-add-question = Add a question
own-answer = Answer { $number }
own-answer-right = right
own-add-answer = One more answer
own-explanation = Explanation
own-explain = In your words
own-explain-hint = What the class should take home.
own-sources = Sources, one a line
own-sources-hint = A published rule with its number, or: common practice
own-give = Give it away
own-whole = The lesson is whole.
own-lacks = Before it can be given:
own-file = Download the file
own-link = Make a link
own-link-old = The lesson was changed since: make the link anew.
own-address = The link starts with
own-private = The link carries the lesson with its answers inside itself; whoever knows how can read them. It never reaches a server.
own-lessons = Your lessons
own-open = Open a lesson file
own-none = None yet. Make one of any job: Share, then “Make a lesson of this”; or drop a lesson file here.
own-delete = Delete the lesson “{ $lesson }”
own-not-read = { $name } was not opened. { $why }
share-lesson = Lesson
share-lesson-make = Make a lesson of this
share-lesson-how = A class looks for what is wrong in this drawing. You write the story and choose what is to be found.
own-line = Line { $line }: { $wrong }; { $help }.
