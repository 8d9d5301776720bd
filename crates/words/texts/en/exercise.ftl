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
