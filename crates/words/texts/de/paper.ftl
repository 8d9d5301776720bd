## Überschriften und Namen der Papiere.

paper-untitled = Auftrag ohne Titel
paper-heading = { $title } · { $sheet }
paper-heading-since = { $title } · { $sheet }, ausgehend von { $since }
paper-list-thread = Beanstandungen und was daraus wurde
paper-list-quote = Angebot
paper-list-becomes = Was aus jedem Teil wird
paper-list-totals = In Summe
paper-list-findings = Befunde, behoben und geblieben
paper-list-order = Bestellliste
paper-list-prices = Preisliste
paper-list-cut = Zuschnittliste
paper-list-labels = Beschriftung
paper-list-fuses = Sicherungstabelle
paper-list-settings = Einstellungen
paper-list-meter = Messblatt
paper-list-readings = Festgehaltene Messwerte
paper-list-proof = Kürzester Nachweis
paper-list-wiring = Leitungstabelle
paper-list-stock = Rückbau

## Spalten.

paper-column-answered = Beantwortet durch
paper-column-answers = Beantwortet
paper-column-article = Artikel
paper-column-becomes = Wird
paper-column-black = Schwarze Spitze
paper-column-changes = Was anders ist
paper-column-channel = Kanal
paper-column-closed = Erledigt
paper-column-colour = Farbe
paper-column-complaint = Beanstandung
paper-column-cruise = Fahrt
paper-column-current-burst = Spitze
paper-column-current-rms = Effektiv
paper-column-cut-length = Zuschnitt
paper-column-decided-on = Entschieden
paper-column-decision = Entscheidung
paper-column-delay = Laufzeit
paper-column-done = Ausgeführt
paper-column-end-a = Ende A
paper-column-end-b = Ende B
paper-column-engine-off = Motor aus
paper-column-equipment = Gerät
paper-column-expected = Erwartet
paper-column-explained = Erklärt durch
paper-column-extra = Nachtrag
paper-column-finding = Befund
paper-column-finish-a = Anschluss A
paper-column-finish-b = Anschluss B
paper-column-fitted = Eingebaut von
paper-column-for = Für
paper-column-form = Bauform
paper-column-fuse = Sicherung
paper-column-gain = Gain
paper-column-grade = Grad
paper-column-guards = Schützt
paper-column-here = Dieses Ende
paper-column-high-pass = Hochpass
paper-column-hours = Stunden
paper-column-idle = Leerlauf
paper-column-known = Wert ist
paper-column-length = Länge
paper-column-level = Pegel
paper-column-load = Last
paper-column-low-pass = Tiefpass
paper-column-material = Werkstoff
paper-column-name = Name
paper-column-need = Dringlichkeit
paper-column-once-out = Verbleib
paper-column-other-end = Anderes Ende
paper-column-parked = Geparkt
paper-column-parts-price = Teile
paper-column-place = Stelle
paper-column-power = Leistung
paper-column-price = Preis
paper-column-proven = Belegt an
paper-column-proves = Belegt
paper-column-quantity = Menge
paper-column-rating = Nennstrom
paper-column-read = Gemessen
paper-column-red = Rote Spitze
paper-column-remark = Bemerkung
paper-column-route = Weg
paper-column-section = Gruppe
paper-column-serves = Versorgt
paper-column-size = Querschnitt
paper-column-slope = Steilheit
paper-column-state = Zustand
paper-column-step = Schritt
paper-column-sum = Summe
paper-column-tag = Kennzeichen
paper-column-target = Zielwert
paper-column-tolerance = ±
paper-column-least = Mindestens
paper-column-most = Höchstens
paper-column-points = Außerhalb deutet er auf
paper-column-total = Posten
paper-column-turned = Polung
paper-column-unit = Einheit
paper-column-used = Verbraucht
paper-column-verdict = Urteil
paper-column-weakest = Schwächste Leitung
paper-column-what = Was
paper-column-with = Dabei

## Wörter in den Listen.

paper-and = { $first }, { $second }
paper-article = { $kind }: { $what }
paper-property = { $name } { $value }
paper-yes-no = { $answer ->
    [yes] ja
   *[no] nein
}
paper-colour-unknown = Farbe nicht bekannt
paper-colour = { $letters } { $base }
paper-colour-two = { $letters } { $base }, Streifen { $tracer }
paper-not-known = nicht bekannt
paper-assumed = angenommen
paper-computed = berechnet
paper-then = { $first } → { $second }
paper-semicolon = { $first }; { $second }
paper-power-at = { $power } an { $load }
paper-section = { $channels } × { $powers }
paper-section-bridged = { $section }, gebrückt { $powers }
paper-section-least = { $section }, mindestens { $load }
paper-section-high = { $section }, Hochpass { $frequency }
paper-section-low = { $section }, Tiefpass { $frequency }
paper-named = { $name } ({ $what })
paper-another-way = nimmt einen anderen Weg
paper-ending-at = Anschluss an { $at }
paper-loose-end = (loses Ende)
paper-fitted-maker = Hersteller
paper-fitted-earlier = frühere Hand
paper-fitted-us = uns
paper-end-factory = ab Werk
paper-end-ring = Ringkabelschuh
paper-end-spade = Steckhülse
paper-end-ferrule = Aderendhülse
paper-end-butt = Quetschverbinder
paper-end-soldered = gelötet
paper-end-bare-screw = blank geklemmt
paper-end-twisted = verdrillt
paper-end-tap = Schneidklemme
paper-end-plug = Stecker
paper-end-loose = lose
paper-loose = liegt lose
paper-done = ausgeführt
paper-closed = erledigt
paper-turned = gedreht
paper-things = Teile
paper-findings = Befunde
paper-pieces = St.
paper-money = { $number } { $currency }
paper-price-unknown = ein Preis ist nicht bekannt
paper-run = { $from } nach { $to }, { $size }
paper-run-any = { $from } nach { $to }
paper-against = { $at } gegen { $against }
paper-state-duty = { $state }, { $duty }
paper-computed-at = Die Ströme sind berechnet: { $state }, { $duty }.

## Was aus den Teilen wird.

paper-becomes-kept = bleibt
paper-becomes-refitted = aus- und wieder eingebaut
paper-becomes-moved = versetzt
paper-becomes-changed = geändert
paper-becomes-replaced = ersetzt
paper-becomes-new = neu
paper-becomes-removed = ausgebaut
paper-cleared = behoben
paper-left = geblieben
paper-added = auf diesem Blatt neu
paper-copper = Kupfer, { $becomes }
paper-aluminium = Aluminium, { $becomes }
paper-approved-sum = beauftragt
paper-metal-unknown = Nicht gewogen, weil Querschnitt, Länge oder Werkstoff nicht bekannt sind: { $runs }.

## Die Bestellliste.

paper-section-parts = Bauteile
paper-section-fuses = Sicherungen
paper-section-cable = Leitung
paper-section-leads = Signalleitungen
paper-section-endings = Anschlüsse
paper-section-small = Kleinteile
paper-fuse-holder = Sicherungshalter, { $form }
paper-makers-fuse = Sicherung des Fahrzeugherstellers
paper-fuse = Sicherung { $rating }, { $form }
paper-cable = Leitung { $size }, { $colour }, { $material }, { $insulation }
paper-signal-lead = Signalleitung, { $length }
paper-tube = Schutzrohr für Leitung { $size }
paper-clip = Halter oder Binder für Leitung { $size }
paper-label = Beschriftungsfahne
paper-ring = Ringkabelschuh { $size }, Loch { $stud }
paper-ring-usual = Ringkabelschuh { $size }, Loch { $stud } (üblich; Bolzen messen)
paper-ring-any = Ringkabelschuh { $size }, Bolzen messen
paper-spade = Flachsteckhülse { $size }, Zunge messen
paper-ferrule = Aderendhülse { $size }
paper-butt = Quetschverbinder { $size }
paper-plug = Stecker { $size }
paper-tap = Schneidklemmverbinder { $size }
paper-shrink = Schrumpfschlauch mit Kleber für { $size }
paper-sleeve = Schutzschlauch über Leitung { $size }
paper-sleeve-at = Schutzschlauch: { $passage }
paper-tube-at = Wellrohr: { $passage }
paper-grommet = Tülle: { $passage }, für { $count ->
    [one] eine Leitung
   *[other] { $count } Leitungen
}
paper-ground-screw = Schraube, Mutter und Zahnscheibe für einen Massepunkt
paper-prices-how = Alle Kabel und Sicherungen, unter denen die Bemessung nach Kosten wählt. Als Tabellendatei ausgeben, die Preise eintragen und wieder einlesen; was keinen Preis hat, wird nicht gewählt.
paper-order-waste = Leitung mit { $share } Verschnitt, aufgerundet. „Verbraucht“ ist die Summe der Zuschnitte.
paper-price-converted = Die Preisliste nennt { $count ->
    [one] einen Preis
   *[other] { $count } Preise
} { $by ->
    [foot] je Meter; hier stehen Preise je Fuß
   *[other] je Fuß; hier stehen Preise je Meter
}. Die Summen entstehen aus den Preisen der Liste selbst.
paper-order-sum = Nach der Preisliste: { $sum }. { $missing ->
    [0] Jede Zeile hat ihren Preis.
    [one] Eine Zeile hat keinen Preis.
   *[other] { $missing } Zeilen haben keinen Preis.
}
paper-order-staying = { $count ->
    [one] Eine Leitung bleibt im Fahrzeug und wird nicht neu gekauft.
   *[other] { $count } Leitungen bleiben im Fahrzeug und werden nicht neu gekauft.
}
paper-lacking = Nicht in der Liste: { $tag }, weil nicht bekannt ist: { $what }.
paper-cut-spare = Wo keine Zugabe angegeben ist, kommen an jedem Ende { $spare } hinzu.

## Einstellungen und Messen.

paper-settings-target = Der berechnete Zielwert ist √(P·Z) für die Leistung, die der Kanal an diese Last gibt; mit Prüfton, Lautsprecher abgeklemmt. Bei der Lautstärke einstellen, bei der die Quelle noch sauber ist.
paper-meter-duty = Die erwarteten Werte sind berechnet, Aussteuerung, wo etwas spielt: { $duty }. Ein Kontakt, der nicht ist, wie er soll, zeigt etwas anderes.
paper-meter-ohms = Widerstände werden bei getrennter Versorgung gemessen; sie stehen unter dem ersten Zustand.
paper-meter-moved = { $run } verliert den Kontakt ({ $moved }). An { $from } und an { $to } auch so messen und die Anzeige beobachten.
paper-meter-tone = Wechselspannungen (V AC) werden an den Ausgängen unter einem Prüfton mit der genannten Aussteuerung gemessen: √(Leistung × Impedanz).
paper-readings-tolerance = Toleranz: 2 % einer Spannung, mindestens 0,1 V; 12,5 % eines Stroms, eines Widerstands oder eines Prüftons, mindestens 20 mA, 0,3 Ω und 0,2 V.
paper-shows-nothing = keine Anzeige
paper-agrees = wie erwartet
paper-differs = weicht ab
paper-not-compared = nicht verglichen

## Rückbau.

paper-stock-out = ausbauen
paper-stock-back = wieder einbauen
paper-stock-customer = wieder einbauen, der Kunde hat es
paper-stock-gone = neu beschaffen, nicht mehr vorhanden
paper-stock-unknown = Verbleib klären, dann wieder einbauen
paper-stock-undo = zurück in den alten Zustand
paper-stock-no-found = Der Auftrag hat kein Blatt der Bestandsaufnahme: Was der Hersteller eingebaut hatte und nun fehlt, ist nicht bekannt.

## Angebot und Faden.

paper-extra-on = nach dem Ausbau gefunden { $on }
paper-extras = nach dem Ausbau gefunden
paper-sum-of = { $what }: { $sum }
paper-sum-all = Insgesamt: { $sum }
paper-refused = { $what } ({ $need }) wurde angeboten und abgelehnt.
paper-refused-on = { $what } ({ $need }) wurde angeboten und abgelehnt, { $on }.
paper-answer = { $offer } ({ $decision })
paper-finding = { $title }: { $things }
paper-open-unexplained = { $complaint }: Noch kein Befund erklärt sie.
paper-open-unanswered = { $complaint }: Noch kein Angebot beantwortet sie.
paper-open-not-offered-for = { $complaint }: Gegen „{ $finding }“ ist nichts angeboten.
paper-open-not-offered = Gegen „{ $finding }“ ist nichts angeboten.
paper-open-undecided = { $offer }: Der Kunde hat nicht entschieden.
paper-open-not-done = { $offer }: Beauftragt, noch nicht ausgeführt.
paper-open-still-found = { $offer }: Ausgeführt, aber „{ $finding }“ wird noch gefunden.
paper-open-unproven = { $complaint }: Behoben, aber noch durch keinen Messwert belegt.
paper-open-not-closed = { $complaint }: Behoben und belegt, noch nicht erledigt.

## Schilder zum Ausschneiden.

label-title = Schilder zum Ausschneiden: { $heading } ({ $number } von { $count })
label-how = Mit 100 % auf Klebefolie drucken. Entlang der durchgezogenen Linien schneiden. Fahnen an den punktierten Linien um die Leitung falten, Schrift außen.
label-more = und { $count } weitere
