### Was der Editor sagt: Namen von Schritten, Hinweise, Dinge in Worten, das Messgerät.

## Das Schriftfeld.

title-job = Auftrag
title-vehicle = Fahrzeug
title-state = Zustand
title-music = Musik
title-limits = Grenzwerte
title-findings = Befunde
title-drawn-by = Gezeichnet
title-date = Datum
title-revision = Stand
title-sheet = Blatt
title-remark = Bemerkung
title-scale = Maßstab
title-unchecked = Noch nicht geprüft
title-counts = { $stop } Halt, { $fix } Beheben, { $tidy } Ordnen

## Enden von Leitungen.

hint-end-keys = Pfeile gehen zu Klemmen, die passen, Enter legt das Ende dort auf, Entf lässt es lose, E nimmt das andere Ende, Esc gibt auf.
hint-end = Leuchtende Klemmen passen. Auf einer Leitung wird es eingesetzt, auf dem Papier liegt es lose. Esc legt es zurück.

## Was mit dem Werkzeug in der Hand zu tun ist.

hint-pick = Ein Bauteil ziehen, um es zu verschieben, eine Klemme für eine Leitung, das Papier, um Dinge einzurahmen.
hint-carry = Loslassen legt es hin. Esc legt es zurück.
hint-fence = Alles im Rahmen ist gewählt.
hint-bend = Loslassen behält den Knick. Esc nimmt ihn zurück.
hint-pull = Eine Klemme nehmen, an der die Leitung beginnt.
hint-pull-keys = Pfeile gehen zu Klemmen, die passen, Enter verbindet, Esc gibt auf.
hint-pulling = Leuchtende Klemmen passen. Auf dem Papier gibt es passende Bauteile, auf einer Leitung wird sie dort verbunden.
hint-place = Klick oder Enter legt es hin, auf einer Leitung wird es eingesetzt. R dreht es, Esc legt es zurück.
hint-hand = Das Papier ziehen.

## Das Messgerät.

hint-break-scissors = Eine Leitung anklicken, um sie dort zu durchtrennen. Gesetzte Fehler lassen sich entlang der Leitung ziehen oder von ihr weg, um sie zurückzunehmen.
hint-break-lead = Von einer Klemme, einer Leitung oder der Karosserieklammer zu einer anderen ziehen. Gesetzte Fehler lassen sich verschieben oder wegziehen, um sie zurückzunehmen.
hint-break-leading = Auf einer Klemme, einer Leitung oder der Karosserieklammer loslassen. Esc nimmt das Kabel zurück.
hint-break-holding = Jetzt anklicken, wohin das andere Ende kommt, oder B drücken für die Karosserie. Esc nimmt das Kabel zurück.
hint-break-dragging = Loslassen, um es dort zu lassen, oder abseits von allem, um es zurückzunehmen. Esc setzt es zurück.
hint-meter-amps = Eine Leitung anklicken, um die Zange darumzulegen.
hint-meter-red = Eine Klemme mit der roten Spitze berühren; um die schwarze zu versetzen, erst diese wählen oder Umschalt halten.
hint-meter-black = Eine Klemme mit der schwarzen Spitze berühren.

## Alles, was sich tun lässt.

action-pick = Wählen und verschieben
action-pull-run = Leitung ziehen
action-shelf = Regal der Bauteile öffnen
action-meter = Messgerät in die Hand nehmen
action-hand = Papier verschieben
action-ask = Fragen: Bauteil, Leitung, Prüfung oder Handlung finden
action-what-feeds = Was speist das?
action-details = Einzelheiten zum Gewählten
action-rename = Umbenennen
action-turn = Im Uhrzeigersinn drehen
action-turn-back = Gegen den Uhrzeigersinn drehen
action-delete = Löschen
action-undo = Rückgängig
action-redo = Wiederherstellen
action-cut = Ausschneiden
action-copy = Kopieren
action-paste = Einfügen
action-duplicate = Verdoppeln
action-pick-all = Alles auf dem Blatt wählen
action-splice = Verbinder in die Leitung setzen
action-move-end = Ein Ende der Leitung umlegen
action-next-bend = Nächsten Knick der Leitung in die Hand nehmen
action-straighten = Leitung den Weg wieder selbst finden lassen
action-tidy-sheet = Ganzes Blatt ordnen
action-next-finding = Nächster Befund
action-previous-finding = Voriger Befund
action-mend = Gezeigten Befund beheben
action-mend-all = Alles beheben, was keine Entscheidung braucht
action-next-part = Nächstes Bauteil
action-previous-part = Voriges Bauteil
action-overlay-current = Ebene: Strom
action-overlay-voltage = Ebene: Spannung
action-overlay-heat = Ebene: Wärme
action-overlay-protection = Ebene: Absicherung
action-overlay-signal = Ebene: Signal
action-overlay-speakers = Ebene: Lautsprecher
action-overlay-none = Keine Ebene
action-zoom-in = Vergrößern
action-zoom-out = Verkleinern
action-fit = Ganzes Blatt zeigen
action-fit-picked = Gewähltes zeigen
action-sheet-before = Zum vorigen Blatt
action-sheet-after = Zum nächsten Blatt
action-lay-under = Ein anderes Blatt unterlegen
action-meter-volts = Messgerät: Volt
action-meter-amps = Messgerät: Ampere in einer Leitung
action-meter-tone = Messgerät: Wechselspannung unter einem Prüfton
action-meter-ohms = Messgerät: Ohm, Versorgung abgeklemmt
action-keep-reading = Messwert behalten
action-readings = Behaltene Messwerte
action-prove = Kürzester Nachweis: was zu messen ist
action-find-fault = Fehler suchen: was als Nächstes zu messen ist
action-break-it = Etwas versagen lassen: was dann geschieht
action-record = Aufnehmen, was da ist
action-thread = Beanstandungen, Angebot und Verbleib
action-papers = Papiere: Listen zum Bestellen, Zuschneiden, Beschriften, Messen; Prüflisten
action-body-plan = Aufbauplan: das Fahrzeug von oben
action-size-it = Alle Leitungen und Sicherungen bemessen
action-route-all = Alle Leitungen neu durch den Aufbau führen
action-open-file = Auftragsdatei öffnen
action-save-file = Auftrag als Datei speichern
action-start-system = Anlage beginnen: ein ganzer Plan aus einer Zeile
action-new-job = Neuer leerer Auftrag
action-jobs = Aufträge in diesem Browser
action-lessons = Lektionen: falsch und richtig nebeneinander
action-make-lesson = Daraus eine Lektion machen
action-export-svg = Blatt als SVG ausgeben
action-export-png = Blatt als PNG ausgeben
action-print = Blatt drucken
action-share = Teilen: Link, Code zum Scannen oder Seitendatei
action-limits = Bedingungen und Grenzwerte des Auftrags
action-outline = Anlage als Gliederung
action-paper = Helles oder dunkles Papier
action-english = Sprache: English (Englisch)
action-german = Sprache: Deutsch
action-metres = Längen in Metern
action-feet = Längen in Fuß und Zoll
action-square-millimetres = Querschnitte in mm²
action-gauge = Querschnitte in AWG
action-keys = Liste der Tasten
