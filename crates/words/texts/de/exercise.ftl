## Die Übung: Marken, was aus ihnen wurde, der Bericht für den Lehrer.

exercise-refused-handed-in = Es ist abgegeben. Zum neuen Markieren noch einmal versuchen.
exercise-refused-thing = Das steht nicht in der Zeichnung.
exercise-refused-reason = Einen Grund aus der Liste wählen.
exercise-refused-mark = Diese Marke gibt es nicht mehr.
exercise-refused-twice = Das ist aus diesem Grund schon markiert.
exercise-refused-many = Es sind schon { $most } Marken; erst eine zurücknehmen.

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
exercise-results-came = eine Markierung ist right, unasked, other-reason oder wrong
exercise-results-count = eine Anzahl ist nicht negativ

## Was einer eigenen Lektion fehlt.

lesson-lacks-title = Sie hat keinen Titel.
lesson-lacks-story = Sie hat keine Geschichte: Wer kam womit, und was war zu sehen?
lesson-lacks-drawing = In der falschen Anlage ist nichts gezeichnet.
lesson-lacks-fault = Es gibt nichts zu finden: nach mindestens einem Befund fragen oder einen eigenen Fehler hinzufügen.
lesson-lacks-fault-words = Der Fehler „{ $fault }“ hat keine Erklärung.
lesson-lacks-fault-things = Der Fehler „{ $fault }“ nennt ein Bauteil oder eine Leitung, die nicht in der Zeichnung steht.
lesson-lacks-question = Frage { $at } fragt nichts.
lesson-lacks-answers = Frage { $at } braucht eine richtige und eine falsche Antwort.
lesson-lacks-look = Was anzusehen ist, { $at }: Es braucht Bauteile oder Leitungen der Zeichnung und einen Satz.
lesson-lacks-break = Gesetzter Fehler { $at } nennt etwas, das nicht in der Zeichnung steht.
exercise-in-this-lesson = In dieser Lektion

## Ansichten einer Lektion, und was in allen gleich ist.

lesson-views = Ansichten der Lektion
lesson-presenting = Vorführen
lesson-exercise = Übung
lesson-writing = Schreiben
lesson-not-open = Diese Lektion lässt sich nicht öffnen
lesson-downloaded = Heruntergeladen als { $name }
own-untitled = Lektion ohne Titel
own-words = mit diesen Worten

## Die Zeichnung unter einer Übung und ihre Werkzeuge.

over-tools = Werkzeuge
over-meter = Messgerät
over-feeds = Speist
over-reduce = Kleiner
over-enlarge = Größer
over-fit = Alles

## Die Übung, wie ein Lernender sie hat.

exercise-drawing = Schaltplan der Übung: { $parts } Bauteile, { $runs } Leitungen. Pfeiltasten gehen, Eingabe markiert, was falsch ist, M nimmt das Messgerät.
exercise-not-told = Nicht in einer Übung: mit dem Messgerät herausfinden.
exercise-task = Was ist hier falsch?
exercise-how = Ein Bauteil oder eine Leitung mit dem Zeiger oder den Pfeiltasten wählen. Eingabe markiert; dann wählen, warum. Messgerät und „Speist“ helfen beim Suchen.
exercise-mark = { $thing } als falsch markieren
exercise-mark-none = Bauteil oder Leitung zum Markieren wählen
exercise-marks = Marken: { $count }
exercise-no-marks = Noch keine.
exercise-learner = Name (darf leer bleiben)
exercise-hand-in = Abgeben
exercise-show-score = Punkte zeigen
exercise-hide-score = Punkte verbergen
exercise-again = Noch einmal
exercise-marking = Warum { $thing } falsch ist
exercise-why = Warum ist es falsch?
exercise-filter = Tippen, um zu filtern
exercise-reasons = Gründe
exercise-no-reason = Kein Grund dieses Namens.
exercise-leave = Lassen
exercise-marked = { $thing } ist markiert: { $reason }.
exercise-taken-back = Die Marke auf { $thing } ist zurückgenommen.
exercise-note = Notiz
exercise-note-on = Notiz zu { $mark }
exercise-change = Ändern
exercise-change-mark = Einen anderen Grund wählen: { $mark }
exercise-take-back = Zurücknehmen
exercise-take-back-mark = Die Marke zurücknehmen: { $mark }
exercise-outcome = { $found } von { $all } gefunden
exercise-sign-unasked = Nicht gefragt
exercise-sign-other = Nicht dies
exercise-sign-wrong = Falsch
exercise-results = Ergebnisse auf diesem Gerät
exercise-private = Sie bleiben in diesem Browser, bis sie gelöscht werden, und gehen nirgendwohin, außer als weitergegebene Datei.
exercise-no-results = Noch keine.
exercise-result = { $found } gefunden, { $missed } übersehen, { $wrong } zu Unrecht beschuldigt.
exercise-as-text = Als Text
exercise-as-json = Als Daten
exercise-delete = Löschen
exercise-delete-one = Das Ergebnis von { $learner } löschen
exercise-delete-all = Alle löschen

## Eine eigene Lektion: ihr Formular, wie sie aufbewahrt und weitergegeben wird.

own-drawing = Zeichnung der falschen Anlage: { $parts } Bauteile, { $runs } Leitungen. Pfeiltasten gehen, Eingabe fügt einen Fehler hinzu.
own-title = Titel
own-story = Geschichte
own-story-hint = Wer kam womit? Was war zu sehen, zu hören, zu riechen? Das liest der Lernende zuerst. Eine leere Zeile beginnt einen Absatz.
own-with-good = Namen, Notizen und Bemerkungen des Auftrags blieben zurück.
own-without-good = Die Zeichnung ist die falsche Anlage; eine richtige steht daneben, wenn der Auftrag ein Blatt dafür hat. Namen, Notizen und Bemerkungen des Auftrags blieben zurück.
own-numbers = Eine berechnete Zahl kommt in geschweiften Klammern in jeden Text: current W3 (Strom), drop A1 (Spannungsabfall), good drop A1 (in der richtigen Anlage). Jeder liest sie in seinen Einheiten, wie die Zeichnung sie zeigt.
own-sheet-bad = Falsche Anlage: Blatt
own-sheet-good = Richtige Anlage: Blatt
own-sheet-none = keines
own-faults = Zu finden: { $count }
own-faults-how = Was die Prüfungen finden, wird hier vorgeschlagen. Etwas in der Zeichnung wählen, um einen Fehler hinzuzufügen, den sie nicht sehen können.
own-add-fault = Einen Fehler an { $thing } hinzufügen
own-add-fault-none = Bauteil oder Leitung für einen Fehler wählen
own-fault-why = Was stimmt damit nicht? Wählen, oder eigene Worte tippen.
own-fault-words = Erklärung: { $fault }
own-fault-hint = Erklärung in eigenen Worten
own-places = Weitere Stellen
own-places-how = In der Zeichnung wählen, was für diesen Fehler auch gilt.
own-place-out = { $thing } herausnehmen
own-looks = Was anzusehen ist
own-look-overlay = Ebene
own-look-says = Was dort zu sehen ist
own-add-look = Einen Blick hinzufügen
own-pick-things = In der Zeichnung wählen.
own-add-thing = { $thing } hinzufügen
own-clear-things = Leeren
own-take-out = Herausnehmen
own-break = Fehler zum Setzen
own-break-kind = Was geschieht
own-break-says = Was dann zu sehen ist
own-add-break = Gesetzten Fehler hinzufügen
own-questions = Fragen
own-questions-how = Sie werden beim Vorführen gestellt. Was richtig ist, hat einen Haken.
own-question = Frage { $number }
own-question-why = Warum
own-add-question = Eine Frage hinzufügen
own-answer = Antwort { $number }
own-answer-right = richtig
own-add-answer = Noch eine Antwort
own-explanation = Erklärung
own-explain = In eigenen Worten
own-explain-hint = Was die Klasse mitnehmen soll.
own-sources = Quellen, je Zeile eine
own-sources-hint = Eine veröffentlichte Regel mit ihrer Nummer, oder: allgemeine Praxis
own-give = Weitergeben
own-whole = Die Lektion ist vollständig.
own-lacks = Bevor sie weitergegeben werden kann:
own-file = Datei herunterladen
own-link = Link erzeugen
own-link-old = Die Lektion wurde seither geändert: den Link neu erzeugen.
own-address = Der Link beginnt mit
own-private = Der Link trägt die Lektion mit ihren Antworten in sich; wer weiß wie, kann sie lesen. Er erreicht nie einen Server.
own-lessons = Eigene Lektionen
own-open = Eine Lektionsdatei öffnen
own-none = Noch keine. Aus jedem Auftrag lässt sich eine machen: Teilen, dann „Daraus eine Lektion machen“; oder eine Lektionsdatei hierher ziehen.
own-delete = Die Lektion „{ $lesson }“ löschen
own-not-read = { $name } wurde nicht geöffnet. { $why }
share-lesson = Lektion
share-lesson-make = Daraus eine Lektion machen
share-lesson-how = Eine Klasse sucht, was in dieser Zeichnung falsch ist. Geschichte und Fehler bestimmt, wer sie schreibt.
own-line = Zeile { $line }: { $wrong }; { $help }.
