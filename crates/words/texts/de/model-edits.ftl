### Wie Arbeitsschritte in der Liste zum Zurücknehmen heißen, und was an Eingaben falsch ist.

## Arbeitsschritte.

edit-delete-nothing = Löschen
edit-delete = { $what } löschen
edit-move-nothing = Verschieben
edit-move = { $what } verschieben
edit-add = { $tag } hinzufügen
edit-set = { $name } von { $of } setzen
edit-set-alone = { $name } setzen
edit-set-end = { $name } an einem Ende von { $of } setzen
edit-word-label = Bezeichnung
edit-word-note = Notiz
edit-word-place = Stelle
edit-move-end = Ein Ende von { $run } umlegen
edit-rename = { $from } in { $to } umbenennen
edit-title = Titel setzen
edit-limit = Grenzwert { $limit } setzen
edit-limit-back = Grenzwert { $limit } zurücknehmen
edit-leave-out = Prüfung { $check } weglassen
edit-take-in = Prüfung { $check } wieder aufnehmen
edit-set-body = { $name } der Karosserie setzen
edit-route = Weg von { $run } legen
edit-reverse = { $run } umdrehen
edit-copy-sheet = { $from } nach { $to } kopieren
edit-pull = { $run } ziehen
edit-paste = { $what } einfügen
edit-duplicate = { $what } verdoppeln
edit-insert = { $part } in { $run } setzen
edit-keep-reading = Messwert an { $at } behalten
edit-remove-reading = Messwert an { $at } entfernen
edit-set-reading = Angaben zum Messwert an { $at } ändern

## Was an einem Wert falsch ist.

error-not-finite = muss eine endliche Zahl sein
error-out-of-range = { $number } liegt außerhalb: möglich ist { $least } bis { $most }
error-no-count = `{ $text }` ist hier keine passende ganze Zahl
error-no-yes-no = `{ $text }` ist weder ja noch nein
error-text-too-long = ist länger als { $most } Byte
error-no-properties = hat keine Eigenschaften
error-no-such-property = diese Eigenschaft gibt es hier nicht; es gibt { $names }
error-not-one-of = `{ $text }` ist keines von { $words }
error-no-number = `{ $text }` ist keine Zahl; so schreiben: { $like }
error-other-unit = `{ $text }` hat eine Einheit, die hier nicht passt; so schreiben: { $like }
error-no-gauge = { $number } ist keine bekannte AWG-Nummer
error-no-such-gauge = `{ $text }` gibt es hier nicht; möglich ist 24AWG bis 4/0AWG, unter 4 nur gerade Nummern
error-no-colour = `{ $text }` ist keine Farbe; RD schreiben, WHBK für Weiß mit schwarzem Strich (Buchstaben nach IEC 60757), oder ? für nicht bekannt
error-section = in `{ $text }`: { $why }
error-section-channels = `{ $count }` sollte die Anzahl der Kanäle sein, wie `4x` (1 bis 12)
error-section-after = nach `{ $word }`: { $why }
error-section-word = `{ $word }` ist unverständlich; möglich sind 75W@4ohm, min, bridged, hp, lp
error-section-powers = mehr als 8 Leistungen sind angegeben
error-section-no-power = es ist keine Leistung angegeben, wie 75W@4ohm
error-section-bridged = nach `bridged` ist keine Leistung angegeben
error-channels = eine Endstufe hat insgesamt 1 bis 12 Kanäle
error-curve-pair = „{ $text }“ ist kein Paar aus Vielfachem und Zeit; Schreibweise: 1.35:600,2:5,6:0.1
error-curve-order = Auslösezeiten sind höchstens 24 Paare; das Vielfache steigt von Paar zu Paar, die Zeit nicht
error-outputs = ein Verteiler hat höchstens 12 Ausgänge
error-cavities = ein Stecker hat 1 bis 60 Kammern
error-position = `{ $position }` ist kein Platz: möglich sind 1 bis 4 Buchstaben oder Ziffern
error-position-twice = Platz { $position } steht zweimal da
error-function = die Funktion von { $position } ist länger als 60 Byte
error-pair = `{ $word }` ist kein Paar von Kammern wie 1-3
error-pairs = möglich sind bis zu 30 Paare von Kammern wie 1-3
error-computed = ({ $inner }) ist berechnet; um einen eigenen Wert zu setzen, die Zahl ohne Klammern schreiben, wie sie gemessen wurde

## Was an einem Arbeitsschritt falsch ist.

error-no-sheet = der Auftrag hat kein Blatt { $sheet }
error-no-part = auf diesem Blatt gibt es kein Bauteil { $id }
error-no-run = auf diesem Blatt gibt es keine Leitung { $id }
error-no-terminal = auf diesem Blatt gibt es keine Klemme { $terminal }
error-same-end = eine Leitung endet anderswo, als sie beginnt
error-no-way-through = eine Leitung kann durch so ein Bauteil nicht hindurchgehen: { $kind }
error-run-place = eine Leitung hat einen Weg, keine Stelle
error-tag-taken = auf diesem Blatt gibt es schon `{ $tag }`; das nächste freie ist { $free }
error-length = ist { $bytes } Byte lang; möglich sind { $most }
error-no-id = `{ $text }` ist keine Nummer eines Bauteils oder einer Leitung; so schreiben: { $like }
error-tag-empty = ein Kennzeichen darf nicht leer sein; eines wie F1 schreiben
error-tag-long = ein Kennzeichen darf { $most } Byte lang sein, dieses hat { $bytes }
error-tag-sign = `{ $tag }` ist kein Kennzeichen: möglich sind Buchstaben, Ziffern und `_`, nicht `{ $bad }`
error-too-long = { $what ->
    [label] die Bezeichnung
    [note] die Notiz
    [place] die Stelle
    [title] der Titel
    [limit] der Name des Grenzwerts
   *[check] der Name der Prüfung
} { $why }
error-place-empty = eine Stelle oder ein Durchgang braucht einen Namen, zum Beispiel ablage-links
error-place-long = der Name einer Stelle oder eines Durchgangs darf { $most } Byte lang sein, dieser hat { $bytes }
error-place-sign = `{ $place }` ist kein Name einer Stelle: möglich sind Buchstaben, Ziffern, `-` und `_`, nicht `{ $bad }`
error-places = der Auftrag beschreibt schon { $most } Stellen oder Durchgänge, mehr dürfen es nicht sein
error-place-taken = `{ $place }` ist schon beschrieben; das ändern oder einen anderen Namen nehmen
error-place-untold = zu `{ $place }` ist nichts beschrieben
error-route-long = ein Weg hat höchstens { $most } Stellen und Durchgänge
error-route-place = eine Stelle des Weges { $why }
error-off-board = { $x },{ $y } liegt neben dem Brett, das auf jeder Seite bis { $most } reicht
error-limit = ein Grenzwert ist eine Zahl von 0 bis zu einer Million
error-limits = es sind schon { $most } Grenzwerte gesetzt; zuerst einen davon zurücknehmen
error-left-out = es sind schon { $most } Prüfungen weggelassen; zuerst eine davon wieder aufnehmen
error-too-much = das Blatt enthielte mehr, als es darf
error-readings = ein Blatt behält höchstens { $most } Messwerte
error-reading-gone = diesen Messwert gibt es nicht mehr

## Warum sich eine Auftragsdatei nicht öffnet.

job-file-too-large = die Datei hat { $bytes } Byte; ein Auftrag darf höchstens { $most } haben
job-file-no-text = die Datei ist kein UTF-8-Text: Byte { $byte } ist keiner; sie ist vielleicht beschädigt oder von anderer Art
job-file-no-json = die Datei ist kein JSON: Zeile { $line }, Spalte { $column }: { $why }; wurde sie abgeschnitten, eine frühere Kopie öffnen
job-file-misbuilt = die Datei lässt sich nicht lesen: { $why }
job-file-no-job = die Datei ist kein Auftrag: { $why }
job-file-newer = die Datei stammt von Version { $version }, diese hier liest bis { $reads }; mit einer neueren Version öffnen. Sie bleibt, wie sie ist
job-file-damaged = { $count ->
    [one] { $count } Stück der Datei lässt sich nicht lesen; der Rest lässt sich ohne es öffnen:{ "\u000A  " }{ $problems }
   *[other] { $count } Stücke der Datei lassen sich nicht lesen; der Rest lässt sich ohne sie öffnen:{ "\u000A  " }{ $problems }
}

## Was zwischen zwei Blättern anders ist.

change = { $name }: { $before }, jetzt { $after }
run-loose = lose
change-tag = Kennzeichen
change-name = Bezeichnung
change-place = Stelle
change-fitted-by = eingebaut von
change-from = von
change-to = nach
change-route = Weg
change-kind = Art
change-first-ending = erstes Ende, { $name }
change-second-ending = zweites Ende, { $name }

## Der Gang eines Auftrags, Einstellungen von Geräten, Bilder.

thread-complaint = Beanstandung
thread-intake = Zeile der Zustandsaufnahme
thread-offer = Zeile des Angebots
edit-thread-add = { $what } hinzufügen
edit-thread-set = { $name } setzen: { $what }
edit-thread-remove = { $what } entfernen
edit-rate = { $name } setzen
edit-tick = { $step } abhaken
edit-untick = Haken entfernen: { $step }
edit-picture-add = Bild von { $of } hinzufügen
edit-picture-set = Angaben zum Bild ändern
edit-picture-remove = Bild entfernen
error-thread-full = höchstens { $most } Zeilen; zuerst welche entfernen
error-thread-gone = diese Zeile gibt es nicht mehr
error-pictures = ein Auftrag behält höchstens { $most } Bilder
error-picture-large = das Bild hat { $bytes } Bytes; erlaubt sind { $most }
error-picture-form = das ist kein Bild in bekannter Form; möglich sind JPEG, PNG und WebP
error-picture-gone = dieses Bild gibt es nicht mehr
error-no-money = `{ $text }` ist kein Preis; so schreiben: 120,50; höchstens { $most }
error-no-finding = `{ $text }` ist kein Name einer Prüfung; so schreiben: silent-speaker LS4
error-guards = höchstens { $most } Durchgänge, jeder Name höchstens { $bytes } Bytes lang
