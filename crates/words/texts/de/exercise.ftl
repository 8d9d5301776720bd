## Die Übung: Marken, was aus ihnen wurde, der Bericht für den Lehrer.

exercise-refused-handed-in = Es ist abgegeben. Versuche es noch einmal, um neu zu markieren.
exercise-refused-thing = Das steht nicht in der Zeichnung.
exercise-refused-reason = Wähle einen Grund aus der Liste.
exercise-refused-mark = Diese Marke gibt es nicht mehr.
exercise-refused-twice = Das hast du aus diesem Grund schon markiert.
exercise-refused-many = Es sind schon { $most } Marken; nimm erst eine zurück.

exercise-right = Gefunden
exercise-missed = Übersehen
exercise-unasked = Stimmt, war aber nicht gefragt
exercise-other-reason = Hier stimmt etwas nicht, aber nicht dies
exercise-wrong = Zu Unrecht beschuldigt

exercise-report = Ergebnisse der Übungen
exercise-report-head = { $learner }: { $lesson }, Versuch { $try }
exercise-report-when = { $learner }: { $lesson }, Versuch { $try }, { $when }
exercise-report-points = Punkte: { $points } von { $of }
exercise-report-note = Notiz zu { $thing }: { $note }
exercise-no-name = Ohne Namen
exercise-results-unreadable = Diese Ergebnisse lassen sich nicht lesen: { $why }.

## Was einer eigenen Lektion fehlt.

lesson-lacks-title = Sie hat keinen Titel.
lesson-lacks-story = Sie hat keine Geschichte: Wer kam womit, und was war zu sehen?
lesson-lacks-drawing = In der schlechten Fassung ist nichts gezeichnet.
lesson-lacks-fault = Es gibt nichts zu finden: Frage nach mindestens einem Befund, oder füge einen eigenen Fehler hinzu.
lesson-lacks-fault-words = Der Fehler „{ $fault }“ hat keine Erklärung.
lesson-lacks-fault-things = Der Fehler „{ $fault }“ nennt ein Teil oder eine Leitung, die nicht in der Zeichnung steht.
lesson-lacks-question = Frage { $at } fragt nichts.
lesson-lacks-answers = Frage { $at } braucht eine richtige und eine falsche Antwort.
lesson-lacks-look = Was anzusehen ist, { $at }: Es braucht Teile oder Leitungen der Zeichnung und einen Satz.
lesson-lacks-break = Störung { $at } nennt etwas, das nicht in der Zeichnung steht.
exercise-in-this-lesson = In dieser Lektion
