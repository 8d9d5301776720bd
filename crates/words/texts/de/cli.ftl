## Die Hilfe der Befehlszeile.

cli-about = Beurteilt und berechnet Verdrahtungsaufträge: die Rechenmaschine des Zeichenprogramms ohne Bildschirm.
cli-after-job = JOB ist eine Auftragsdatei (*.loom.json), ein Auftrag in Textform, `-` für die Standardeingabe, der Name eines ausgearbeiteten Auftrags (@estate, @van, @camper) oder eine Anlage einer Lektion (@fuse-bigger-than-wire/bad, …/good; auch FILE.lesson/bad).
cli-after-codes = Rückgabewerte: 0 nichts Schwerwiegendes; 1 Befunde vom Grad Halt, entschieden oder offen; 2 Eingabe oder Aufruf fehlerhaft.
cli-after-care = Arbeit an der Fahrzeugverdrahtung kann Feuer verursachen, einen Airbag auslösen oder verletzen. Das Programm berät; entscheiden soll eine Fachkraft.
cli-usage = Aufruf
cli-usage-options = OPTIONEN
cli-usage-command = BEFEHL
cli-commands = Befehle
cli-arguments = Argumente
cli-options = Optionen
cli-option-help = Hilfe ausgeben
cli-option-version = Version ausgeben
cli-command-help = Diese Hilfe oder die eines Befehls ausgeben
cli-command-check = Listet auf, was gefährlich, falsch oder unordentlich ist
cli-command-solve = Listet Ströme, Spannungsabfälle und Temperaturen auf
cli-command-trace = Zeigt, was ein Bauteil versorgt und wie der Strom zurückfließt
cli-command-speakers = Zeigt, was jeder Kanal treibt und was jeden Lautsprecher erreicht
cli-command-draw = Zeichnet das Blatt als SVG
cli-command-deck = Schreibt eine Netzliste für einen Schaltungssimulator
cli-command-explain = Erklärt eine Prüfung: wonach sie sucht, warum, und ihre Quelle
cli-command-lesson = Listet die Lektionen auf oder erzählt eine: Geschichte, worauf zu achten ist, Fragen
cli-command-schema = Schreibt das JSON-Schema der Auftragsdatei
cli-command-format = Schreibt einen Auftrag neu, in Dateiform oder Textform
cli-command-link = Macht einen Link, der einen ganzen Auftrag oder eine Lektion in sich trägt, und seinen gedruckten Code
cli-command-page = Schreibt eine Seitendatei: eine HTML-Datei mit dem Programm und dem Auftrag, die sich ohne Netz öffnet
cli-command-open = Öffnet einen Link oder eine Seitendatei und schreibt den Auftrag oder die Lektion daraus
cli-option-language = Sprache der Ausgabe: en oder de; ohne Angabe die aus LC_ALL, LC_MESSAGES oder LANG
cli-option-units = Einheiten für Längen und Querschnitte: metric, oder awg für Fuß, Zoll und AWG-Nummern
cli-option-job = Der Auftrag
cli-option-sheet = Das Blatt: found, plan oder built. Ohne Angabe das letzte davon, das der Auftrag hat
cli-option-state = Anstelle der Angabe im Auftrag: parked, engine-off, idle oder cruise
cli-option-duty = Anstelle der Angabe im Auftrag: idle, speech, music, loud oder tone
cli-option-profile = Anstelle der Angabe im Auftrag: common-practice oder small-craft
cli-option-json = Schreibt JSON anstelle von Text
cli-option-remedies = Nennt zu jedem Befund, was zu tun ist
cli-option-part = Kennzeichen des Bauteils; ohne Angabe jedes Bauteil, das Strom zieht
cli-option-output = Wohin geschrieben wird
cli-option-output-draw = Wohin geschrieben wird; ohne Angabe auf die Standardausgabe
cli-option-under = Legt ein anderes Blatt des Auftrags unter dieses und zeigt Neues, Geändertes und Entferntes: found, plan oder built
cli-option-arrange = Ordnet alle Bauteile neu an
cli-option-paper = Papier: light, dark oder print
cli-option-speakers = Schreibt das Lautsprechernetz für eine Wechselstromanalyse anstelle des Versorgungsnetzes
cli-option-level = Stand der Verbraucher im Versorgungsnetz: mean, rms oder burst
cli-option-check = Name der Prüfung; ohne Angabe eine Liste aller
cli-option-all = Erklärt jede Prüfung
cli-option-markdown = Schreibt Markdown, wie es ist, ohne es dem Terminal anzupassen
cli-option-lesson = Schlüssel einer mitgelieferten Lektion, eine Datei *.lesson oder ein Link mit einer Lektion; ohne Angabe eine Liste aller
cli-option-answers = Zeigt die richtigen Antworten, die Erklärung und die zu findenden Fehler
cli-option-problems = Sagt, was an der Lektion selbst nicht stimmt: für alle, die eine schreiben
cli-option-text = Schreibt die Textform anstelle der Dateiform
cli-option-text-lesson = Schreibt den Text der Lektion
cli-option-text-open = Schreibt die Textform anstelle der Dateiform. Eine Lektion hat nur ihren Text
cli-option-job-link = Der Auftrag; oder eine Lektion: eine Datei *.lesson oder der Schlüssel einer mitgelieferten
cli-option-address = Die Adresse, mit der der Link beginnt: wo die Seite bereitliegt
cli-option-notes = Zeigt auch Notizen und Bemerkungen. Sonst bleiben sie draußen
cli-option-names = Zeigt auch den Namen des Fahrzeugs und wer gezeichnet hat. Sonst bleiben sie draußen
cli-option-prices = Zeigt auch das Angebot mit seinen Preisen. Sonst bleibt es draußen
cli-option-pictures = Nimmt auch die Bilder auf. Sonst bleiben sie draußen
cli-option-code = Schreibt den gedruckten Code des Links in diese SVG-Datei
cli-option-app = Die Seite, in die der Auftrag kommt: page.html des gebauten Programms
cli-option-link = Der Link, eine Seitendatei oder `-`, um einen Link von der Standardeingabe zu lesen

## Was an einem Aufruf nicht stimmt.

cli-error = Fehler: { $what }
cli-error-unknown = hier gibt es kein Argument `{ $argument }`
cli-error-command = es gibt keinen Befehl `{ $command }`
cli-error-value = `{ $value }` geht nicht für { $argument }: { $why }
cli-error-takes = möglich sind { $words }
cli-error-missing-value = { $argument } braucht einen Wert
cli-error-missing = es fehlt: { $arguments }
cli-error-conflict = { $argument } und { $other } passen nicht zusammen
cli-error-no-command = es fehlt ein Befehl
cli-error-twice = { $argument } steht mehr als einmal da
cli-error-more = Mehr sagt `loomwright --help`.
cli-cannot-read = { $name }: lässt sich nicht lesen: { $error }
cli-cannot-write = { $name }: lässt sich nicht schreiben: { $error }
cli-cannot-write-json = JSON lässt sich nicht schreiben: { $error }
cli-not-utf8 = { $name }: Byte { $at } ist kein UTF-8; ein Auftrag ist ein UTF-8-Text oder eine Datei *.loom.json
cli-not-text = { $name }: lässt sich nicht als Text lesen: { $error }
cli-two-versions = { $name }: eine Lektion hat zwei Anlagen, { $of }/bad (falsch) und { $of }/good (richtig)
cli-no-worked-job = es gibt keinen ausgearbeiteten Auftrag { $name }; es gibt { $names }
cli-no-lesson-meant = es gibt keine Lektion `{ $name }`; ist `{ $meant }` gemeint?
cli-no-lesson = es gibt keine Lektion `{ $name }`; `loomwright lesson` listet sie auf; eine eigene Lektion ist eine Datei *.lesson
cli-no-sheet = { $job }: es gibt kein Blatt `{ $sheet }`; der Auftrag hat { $there }
cli-no-sheet-at-all = { $job }: der Auftrag hat kein Blatt
cli-none = keines
cli-no-part = auf dem Blatt gibt es kein Bauteil { $tag }; es gibt { $tags }
cli-no-check = es gibt keine Prüfung `{ $name }`; `loomwright explain` listet alle auf
cli-no-check-near = es gibt keine Prüfung `{ $name }`; es gibt { $near }; `loomwright explain` listet alle auf
cli-under-itself = das Blatt `{ $sheet }` kann nicht unter sich selbst liegen; --sheet sagt, welches oben liegt
cli-no-sheet-under = es gibt kein Blatt `{ $sheet }`, das unter `{ $above }` gelegt werden kann; daneben hat der Auftrag { $there }
cli-code-too-long = { $job }: als Link sind das { $characters } Zeichen, und ein gedruckter Code fasst { $most }; geschrieben wurde nichts
cli-no-app-hint = `cargo xtask bundle` baut das Programm mit seiner page.html nach dist/; --app nennt eine andere
cli-not-solved = Das Netz ließ sich nicht berechnen: { $why }

## Antworten.

cli-untitled = Auftrag ohne Titel
cli-written = { $file } geschrieben.
cli-written-bytes = { $file } geschrieben, { $bytes } Byte.
cli-no-findings = Keine Befunde. Die Prüfungen kennen die Zeichnung, nicht das Fahrzeug: Eine Fachkraft soll es ansehen.
cli-assumed = (angenommen: { $properties })
cli-counts = { $stop } Halt, { $fix } Beheben, { $tidy } Ordnen; davon { $undecided } offen (mit ? gekennzeichnet).
cli-care = Vor jeder Arbeit: die Batterie abklemmen, von Airbag- und Hochvoltkreisen fernbleiben, die Anweisungen des Fahrzeugherstellers und das geltende Recht befolgen und eine Fachkraft entscheiden lassen.
cli-column-grade = Grad
cli-column-check = Prüfung
cli-column-where = Wo
cli-column-what = Was
cli-column-holds = Erfüllt, wenn
cli-column-run = Leitung
cli-column-purpose = Zweck
cli-column-mean = Mittel A
cli-column-rms = Eff. A
cli-column-burst = Spitze A
cli-column-may = Darf A
cli-column-drop = Abfall mV
cli-column-loss = Verlust W
cli-column-part = Bauteil
cli-column-name = Name
cli-column-burst-volts = Spitze V
cli-column-state = Zustand
cli-column-channel = Kanal
cli-column-drives = Treibt
cli-column-nominal = Nenn Ω
cli-column-least = Kleinste |Z| Ω
cli-column-least-at = bei Hz
cli-column-may-ohms = Darf Ω
cli-column-dc = Gleich Ω
cli-column-remark = Bemerkung
cli-column-speaker = Lautsprecher
cli-column-from = Von
cli-column-phase = Phase
cli-column-high-pass = Kein Bass unter Hz
cli-column-lead-loss = Leitungsverlust dB
cli-column-silent = Stumm, weil
cli-column-lesson = Lektion
cli-column-title = Titel
cli-nothing-solved = Keine Quelle auf dem Blatt versorgt etwas.
cli-delivers = Die Zuleitung liefert nur { $share } dessen, was die Verbraucher verlangen.
cli-purpose = { $purpose ->
    [feed] Zuleitung
    [between-sources] zwischen Quellen
    [return] Rückleitung
    [signal] Signal
    [turn-on] Einschalten
    [speaker] Lautsprecher
   *[nothing] nichts
}
cli-when-loud = bei Spitzen: { $why }
cli-energy = Verbrauch { $draw } von { $available }, die die Lichtmaschine liefern kann; Ruhestrom { $standing }.
cli-balance = Bilanz: Ströme auf { $current } des größten genau, Leistung auf { $power }.
cli-note = Hinweis: { $note }
cli-coils-oppose = Spulen gegeneinander
cli-in-phase = gleichphasig
cli-reversed = verpolt
cli-no-device = kein Schutzorgan, durch das jeder Weg führt
cli-then = { $first }, dann { $second }
cli-fed = an { $terminal } versorgt von { $source } über { $runs }: { $length }{ $ways ->
    [several] , einer von mehreren Wegen; geschützt durch { $devices }
   *[one] ; geschützt durch { $devices }
}
cli-no-return = kein Rückweg zu { $source }
cli-returns = zurück zu { $source } über { $runs }: Masseleitung { $length }
cli-returns-ohms = , { $ohms } insgesamt
cli-returns-through-body = , durch die Karosserie
cli-returns-body = , durch die Karosserie an { $grounds }
cli-returns-devices = ; darin: { $devices }
cli-returns-shields = ; Signalschirme führen Rückstrom: { $runs }
cli-part-draws-nothing = Dieses Bauteil zieht keinen Versorgungsstrom, oder nichts versorgt es.
cli-no-part-draws = Kein Bauteil auf dem Blatt zieht Versorgungsstrom.
cli-loses = { $part } { $name }: verliert bei Spitzen { $drop }, Zu- und Rückleitung zusammen
cli-part-name = { $part } { $name }
cli-nothing-feeds = nichts versorgt es
cli-fits-code = { $count } Zeichen; passt in einen gedruckten Code.
cli-fits-no-code = { $count } Zeichen; zu lang für einen gedruckten Code.
cli-left-out = Weggelassen: { $things }.
cli-left-notes = { $count } Notizen und Bemerkungen (--notes zeigt sie)
cli-left-names = { $count } Namen (--names zeigt sie)
cli-left-prices = { $count } Zeilen des Angebots (--prices zeigt sie)
cli-left-pictures = { $count } Bilder (`page --pictures` nimmt sie auf)
cli-left-unknown = { $count } Felder, die diese Version nicht kennt
cli-lesson-right = { $name }: an der Lektion ist nichts falsch.
cli-lesson-looks = Ansehen
cli-lesson-breaks = Fehler setzen
cli-lesson-questions = Fragen
cli-lesson-explanation = Erklärung
cli-lesson-source = Quelle: { $sources }.
cli-lesson-faults = In der falschen Anlage zu findende Fehler
cli-lesson-care = Fehler werden an der Zeichnung ausprobiert, nie an einem Fahrzeug.
cli-lesson-versions = Falsche und richtige Anlage: @{ $key }/bad und @{ $key }/good.
