### Was der Editor sagt, wenn etwas getan oder gefragt wurde.

## Was nach einem Arbeitsschritt gesagt wird.

undid = Zurückgenommen: { $name }
did-again = Wieder getan: { $name }
findings-cleared = { $gone ->
    [one] { $gone } Befund erledigt
   *[other] { $gone } Befunde erledigt
}, { $left } übrig
finding-new = Neuer Befund, { $grade }: { $what }
findings-new = { $count } neue Befunde, der schwerste { $grade }: { $what }

## Was Handlungen sagen.

feeds-pick-first = Erst ein Bauteil, eine Klemme oder eine Leitung wählen, dann fragen, was es speist.
feeds-nothing = Nichts speist { $thing }.
edit-turn = { $what } drehen
splice-pick-first = Eine Leitung wählen, in die der Verbinder soll.
straighten-nothing = Es ist keine Leitung mit Knicken von Hand gewählt.
edit-straighten = { $run } den Weg selbst finden lassen
edit-straighten-several = { $count ->
    [one] { $count } Leitung
   *[other] { $count } Leitungen
} den Weg selbst finden lassen
tidy-already = Es ist schon geordnet.
edit-tidy = Anordnung ordnen
finding-shown = { $grade }: { $what }
findings-none = Keine Befunde auf diesem Blatt.
mend-none = Hierfür ist keine Behebung bekannt; was zu tun ist, steht beim Befund.
mended = Behoben: { $what }
mended-all = { $count ->
    [one] { $count } Behebung vorgenommen; einmal Rückgängig nimmt sie zurück
   *[other] { $count } Behebungen vorgenommen; einmal Rückgängig nimmt alle zurück
}
sheet-turned = Blatt { $sheet }

## Ein Blatt, unter ein anderes gelegt.

under-none = Auf den anderen Blättern dieses Auftrags ist nichts, was sich unterlegen ließe.
under-nothing = Unter diesem Blatt liegt nichts.
under-new = neu: nicht auf { $sheet }
under-removed = entfernt: nicht auf { $sheet }
under-alone = { $thing } ist nur auf { $sheet }.
look-only = Diese Zeichnung ist zum Ansehen. Zum Ändern eine eigene Kopie machen.

## Die Zwischenablage.

copy-pick-first = Bauteile wählen, die kopiert werden sollen; Leitungen dazwischen kommen mit.
copied = { $parts } und { $runs } kopiert
paste-no-text = Die Zwischenablage enthält keinen Text, und hier wurde noch nichts kopiert.
paste-no-part = er enthält kein Bauteil
paste-refused = Nichts eingefügt: Die Zwischenablage enthält „{ $text }“, das ist kein Stück eines Auftrags ({ $why }).
paste-refused-kept = { $refused } Was hier zuletzt kopiert wurde, ist noch da: Fragen, dann Einfügen, legt es hin.
paste-nothing = Es wurde noch nichts kopiert.

## Knicke in Leitungen.

bend-pick-first = Erst eine Leitung wählen.
bend-none = Sie hat keinen Knick von Hand. Umschalt und ein Pfeil zieht ein Stück zur Seite.
bend-in-hand = Knick { $number } von { $count }. Umschalt und Pfeile verschieben ihn, Entf nimmt ihn heraus.
bend-no-piece = Kein Stück davon liegt quer zu diesem Pfeil.
bend-removed = Knick von { $run } herausgenommen
edit-move-bend = Knick von { $run } verschieben
edit-bend = { $run } knicken
edit-remove-bend = Knick von { $run } herausnehmen
picked = { $count } gewählt
placed = Auf dem Blatt: { $part }
place-into = Enter setzt es in { $run } ein
place-beside = Neben { $run }: Enter setzt es auf das Blatt

## Enden von Leitungen.

end-pick-first = Eine Leitung wählen, oder eine Klemme mit einer, um ihr Ende umzulegen.
loose-end = dem losen Ende
end-in-hand = { $run }, Ende an { $at }
towards = zu { $thing }
end-nothing-there = Nichts dort nimmt dieses Ende; es bleibt, wo es war.
end-other-there = An { $terminal } ist schon das andere Ende von { $run }; dieses kommt woandershin.
edit-move-run-end = Ende von Leitung { $run } umlegen

## Leitungen ziehen.

pull-from = Leitung von { $terminal }. Pfeile gehen zu Klemmen, die passen.
pull-begins = Die Leitung beginnt an { $terminal }; sie führt zu einer anderen Klemme.
edit-splice-in = Eine Leitung einsetzen
edit-pull-to-new = Leitung ziehen, neu: { $kind }

## Das Messgerät.

reading-in = { $number } in { $at }
edit-keep-readings = { $count ->
    [one] Messwert behalten
   *[other] { $count } Messwerte behalten
}
reading-ac = { $number } AC
reading-at = { $number } an { $at } gegen { $against }
meter-take-first = Erst das Messgerät in die Hand nehmen.
meter-no-reading = Es gibt noch keinen Messwert. { $hint }
meter-kept = Behalten: { $shown } { $between }
meter-in = in { $run }
meter-rms = Effektivwert { $rms }, Spitze { $burst }
meter-between = Rot an { $red }, Schwarz an { $black }
meter-floating = schwebend
meter-open = offen
meter-floats = Nichts bindet { $terminal } an eine Quelle: Ein Messgerät zeigt eine Zahl, die wandert.
meter-same-point = Ein und derselbe Punkt.
meter-no-way = Kein Weg durch Metall dazwischen.

## Fragen.

ask-put-new = Neu hinlegen: { $kind }
ask-from-shelf = aus dem Regal

## Dinge in einem Satz.

run-between = { $from } nach { $to }
spoken-findings = { $count ->
    [one] , ein Befund: { $grade }
   *[other] , { $count } Befunde, der schwerste { $grade }
}
spoken-part = { $part }, { $name }, { $runs }{ $noted }
spoken-terminal-free = Klemme { $terminal }, nichts daran{ $volts }
spoken-terminal = Klemme { $terminal }, mit { $runs }{ $volts }
spoken-nowhere = nirgends
spoken-run = Leitung { $run } von { $from } nach { $to }{ $numbers }{ $noted }

## Zahlen von Teilen und Leitungen.

numbers-current = Strom
numbers-burst = Spitze
numbers-drop = Spannungsabfall
numbers-limit-after = Grenze nach
numbers-temperature = Temperatur
numbers-guarded-by = geschützt durch
numbers-is = ist
numbers-voltage = Spannung
numbers-power = Leistung
numbers-note = Hinweis
numbers-channel = Kanal
numbers-gets = erhält
numbers-lost-on-the-way = unterwegs verloren
told-of-allowed = { $amps } von erlaubten { $most }
told-warm-in = { $own } bei { $around }
told-guarded = { $guards } gegen { $source }
told-limits-itself = { $source } begrenzt sich selbst
told-unguarded-for = nichts gegen { $source }, { $length } Leitung entfernt
told-unguarded = nichts gegen { $source }
told-off = aus: { $why }
told-off-when-loud = aus, wenn es laut ist: { $why }
told-is-on = ein
told-is-off = aus
told-burst = { $mean }, Spitze { $burst }
told-nothing = nichts: { $part } ist { $why }
told-silent = stumm: { $why }
told-reversed = { $power }, verpolt

## Ein Bauteil in einfachen Worten: wozu es da ist.

purpose-battery = Sie speichert Energie und gibt Strom, wenn der Motor nicht läuft.
purpose-alternator = Sie wird vom Motor angetrieben, speist alles, solange er läuft, und lädt die Batterie.
purpose-vehicle = Sie stehen für die Verkabelung ab Werk: Zuleitungen, Massebänder und Karosserieblech.
purpose-converter = Er lädt eine Batterie aus der Versorgung des Fahrzeugs mit der Spannung, die sie braucht.
purpose-fuse = Sie schmilzt und trennt die Leitung, wenn mehr Strom fließt, als die Leitung dahinter verträgt.
purpose-breaker = Er löst aus, wenn zu viel Strom fließt, und lässt sich wieder schließen.
purpose-block = Er nimmt eine dicke Leitung und verteilt sie auf mehrere dünnere, jede mit eigener Sicherung, wo er Sicherungen hat.
purpose-bus = Ein Stück Metall, auf dem mehrere Leitungen zusammenkommen.
purpose-splice = Eine Stelle, an der Leitungen miteinander verbunden sind.
purpose-plug = Ein Stecker der Fahrzeugverkabelung mit einem Platz für jede Leitung.
purpose-adapter = Er verbindet neue Geräte mit einem Stecker des Fahrzeugs, ohne dessen Leitungen zu schneiden.
purpose-ground = Hier sind Leitungen an die Karosserie geschraubt. Der Strom fließt durch das Blech zur Batterie zurück.
purpose-relay = Ein Schalter, den ein kleiner Strom betätigt und der einen großen führt.
purpose-switch = Er schließt und öffnet einen Stromkreis von Hand.
purpose-isolator = Es verbindet zwei Batterien zum Laden und hält sie sonst getrennt.
purpose-head = Es liefert das Signal und sagt den Endstufen, wann sie einschalten.
purpose-processor = Er verteilt das Signal auf die Lautsprecher und formt es für jeden.
purpose-line-converter = Er nimmt das Signal von Lautsprecherleitungen und macht es klein genug für den Eingang einer Endstufe.
purpose-amplifier = Sie macht das kleine Signal stark genug, um Lautsprecher zu bewegen, und nimmt mehr Strom als alles andere in einer Musikanlage.
purpose-speaker = Er macht aus dem Strom der Endstufe Schall.
purpose-crossover = Sie schickt tiefe Töne zu einem Lautsprecher und hohe zu einem anderen.
purpose-inline-capacitor = Er hält tiefe Töne von einem kleinen Lautsprecher fern.
purpose-capacitor = Er hält nahe an einer Endstufe ein wenig Energie für kurze Augenblicke bereit.
purpose-load = Etwas, das Strom braucht.

## Ein Bauteil in einfachen Worten: sein Strom.

plain-called = { $tag } ({ $name })
plain-fitted-maker = Der Fahrzeughersteller hat es eingebaut.
plain-fitted-earlier = Jemand hat es früher eingebaut.
plain-fed = Der Strom kommt von { $source }, über { $length } Leitung.
plain-fed-through = Der Strom kommt von { $source } durch { $through }, über { $length } Leitung.
plain-not-fed = Nichts speist es.
plain-back-none = Der Strom findet nicht zurück zu { $sources }, also fließt von dort keiner.
plain-back-body = Der Strom fließt durch die Karosserie zurück zu { $sources }.
plain-back-by = Der Strom fließt über { $points } durch die Karosserie zurück zu { $sources }.
plain-back-wire = Der Strom fließt nur über Leitungen zurück zu { $sources }.
plain-is = Es ist { $why }.
plain-moments = { $amps }, für Augenblicke { $burst }
plain-current = Fahrzeug: { $state }, { $duty }. { $verb ->
    [charged] Ladestrom
    [gives] Abgegebener Strom
    [takes] Aufgenommener Strom
   *[carries] Geführter Strom
}: { $amps }.
plain-lost = { $drop } gehen auf dem Hin- und Rückweg verloren, { $volts } kommen an.
plain-it = Das Schutzorgan
plain-output = Ausgang { $output }
plain-idle = { $name } erfüllt die Aufgabe so nicht.
plain-guards-none = { $name } ist für { $amps } gemacht und schützt keine Leitung.
plain-guards = { $name } ist für { $amps } gemacht und schützt { $runs }.

## Ein Bauteil in einfachen Worten: sein Klang.

plain-channels = Die Kanäle { $one } und { $other } treiben gemeinsam { $drivers }
plain-channel = Kanal { $one } treibt { $drivers }
plain-plays = { $channels }.
plain-plays-into = { $channels }, { $ohms }.
plain-plays-with = { $channels } und kann { $watts } abgeben.
plain-plays-into-with = { $channels }, { $ohms }; möglich sind { $watts }.
plain-silent = Er ist stumm: { $why }.
plain-gets = Er spielt, was Kanal { $channel } von { $part } abgibt, bis zu { $power }.
plain-gets-turned = { $gets } Er ist verpolt und drückt, wenn er ziehen soll.
plain-unplayed = Nichts spielt darauf.

## Eine Leitung in einfachen Worten.

plain-loose = nichts: das Ende ist lose
plain-size-unknown = unbekannter Querschnitt
plain-length-unknown = unbekannte Länge
plain-colour-unknown = unbekannte Farbe
plain-traced = { $base } mit Kennstreifen { $tracer }
plain-wire = Eine Leitung: { $size }, { $colour }, { $length }, von { $from } nach { $to }.
plain-no-current = Es fließt kein nennenswerter Strom darin.
plain-carries = Sie führt { $amps } und ist { $own } warm bei { $around } ringsum.
plain-carries-of = Sie führt { $amps } von erlaubten { $most } und ist { $own } warm bei { $around } ringsum.
plain-cut-off = Bei einem Kurzschluss { $guards ->
    [one] trennt
   *[other] trennen
} { $guards } sie von { $source }.
plain-limits = { $source } kann nicht mehr abgeben, als sie verträgt.
plain-uncut = Bei einem Kurzschluss trennt nichts sie von { $source }.
plain-condition = Zustand: { $condition }.

## Die Anlage als Gliederung.

outline-directly = direkt
outline-through = durch { $parts }
outline-no-way-back = kein Rückweg
outline-feeds = speist { $part } { $way }{ $current }{ $back }
outline-drives = Kanal { $channel } treibt { $driver }

## Aufnehmen, was da ist.

record-new = neu: { $kind }
record-somewhere = irgendwohin
edit-record = { $run } aufnehmen
error-record-nowhere = eine Leitung von irgendwo nach irgendwo ist kein Fund: ein Ende benennen
error-record-kind = es gibt keine Bauteilart `{ $kind }`
error-record-no-terminal = dieses Bauteil hat keine Klemme, an der eine Leitung enden könnte
error-record-seen = { $name }: { $why }

## Der Aufbauplan auf dem Tisch.

body-turned = Aufbauplan
body-form-unknown = Dem Aufbauplan fehlt die Form des Fahrzeugs: links wählen.
body-placed = { $part }: { $place }
body-place-held = { $place }: dorthin ziehen, wo die Stelle liegt, oder mit den Pfeiltasten verschieben, feiner mit der Umschalttaste.
body-place-moved = { $place }: { $front } von vorn, { $left } von der linken Seite.
body-routed = { $changed } Leitungen haben einen anderen Weg; { $without } haben keinen, weil ein Ende keine Stelle hat.
