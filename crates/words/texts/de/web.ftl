### Die Seite: was ihre Stücke sagen.

## Überall.

untitled = Auftrag ohne Titel
mend-all-short = Alles beheben …

## Die Leiste mit den Werkzeugen.

tray = Werkzeuge und Ebenen
tray-overlays = Ebenen
tool-shelf = Regal
tool-pull = Leitung
tool-meter = Messen
tool-feeds = Speist
tool-ask = Fragen
tool-jobs = Aufträge
tool-share = Teilen
tool-zoom-out = −
tool-zoom-in = +
tool-fit = Ganz

## Tasten.

key-enter = Enter
key-esc = Esc
key-delete = Entf
key-home = Pos1
key-page-up = Bild↑
key-page-down = Bild↓
key-command = Strg+{ $key }
key-shift = Umschalt+{ $key }
key-command-shift = Strg+Umschalt+{ $key }
key-arrows = Pfeile
key-arrows-do = Gehen: Bauteil, Klemme, die Leitung entlang, nächste Klemme
key-shift-arrows = Umschalt+Pfeile
key-shift-arrows-do = Gewähltes verschieben; bei einer Leitung ein Stück zur Seite oder den Knick in der Hand
key-double-click = Doppelklick
key-double-click-do = Einzelheiten; auf einem Knick: herausnehmen
key-space-drag = Leertaste und ziehen
key-space-drag-do = Papier verschieben
key-wheel = Rad
key-wheel-do = Um den Zeiger vergrößern
key-alt = Alt beim Verschieben
key-alt-do = Neben dem Raster
key-shift-placing = Umschalt beim Hinlegen
key-shift-placing-do = Noch eines hinlegen
key-esc-do = Abbrechen

## Ein Befund, erklärt.

hover-size = Querschnitt?
hover-length = Länge?

## Aufträge.

remove = Entfernen

## Bedingungen und Grenzwerte.

low-none = Keine Befunde

## Das Messgerät.

meter = Messgerät
meter-what = Was gemessen wird
meter-next = nächste Spitze
meter-keep = Behalten
meter-away = Weglegen

## Der rechte Rand.

notes-collapsed = Versorgung: { $share } des Verlangten.
notes-failed = Keine Zahlen: { $why }
notes-none = Keine Befunde. { $draw } gezogen, { $available } verfügbar.
notes-here = hier:

## Was über der Zeichnung liegt.

legend-current = Ampere in jeder Leitung, Pfeil nach Richtung, Breite nach Last gegen das, was die Leitung verträgt
legend-voltage = Volt an den Klemmen gegen den Batterieminus
legend-heat = Temperatur jeder Leitung
legend-protection = jede Leitung in der Farbe des Schutzorgans, das sie schützt; ungeschützte gestrichelt
legend-signal = Signal- und Einschaltleitungen
legend-speakers = was jeder Kanal sieht, was jeder Lautsprecher erhält
legend-lost = { $amps }, { $drop } verloren
legend-fed = { $part } ({ $amps }) von { $ways }
legend-feeds = Was { $thing } speist
legend-feeds-nothing = nichts auf diesem Blatt

## Behaltene Messwerte.

readings = Messwerte
readings-kept = { $count } auf diesem Blatt behalten

## Das Blattverzeichnis.

set = Blätter des Auftrags
set-empty = leer
set-holds = { $parts }, { $runs }
set-fill = { $sheet } hierher kopieren
set-lies-under = liegt darunter
set-lay-under = unterlegen

## Teilen.

downloaded = Heruntergeladen als { $name }

## Das Regal der Bauteile.

also-fuse = flachsicherung streifensicherung halter schutz
also-block = verteilung plus sicherung
also-bus = bolzen schiene masseschiene
also-ground = erde masse karosserie
also-head = autoradio empfänger
also-processor = dsp
also-line-converter = high low pegel
also-amplifier = verstärker amp
also-speaker = tieftöner hochtöner subwoofer chassis
also-load = licht lampe wechselrichter pumpe
also-splice = stoßverbinder
also-converter = ladegerät booster
spoken-elsewhere = Ein anderer Tab hat diesen Auftrag offen. Was hier geändert wird, bleibt erst nach dem Übernehmen, siehe Aufträge.

## Das Schriftfeld.

cell-edit = { $name }: { $text }. Ändern
title-block = Schriftfeld
title-ambients-limits = Umgebung und Grenzwerte
title-ambients = innen { $cabin }, Laderaum { $load }, Motor { $engine }
title-ambients-own = { $ambients }; { $count ->
    [one] { $count } Grenzwert
   *[other] { $count } Grenzwerte
} hier gesetzt
title-left-out = { $count } weggelassen
title-undo = Rückgängig
title-redo = Wiederherstellen
title-nothing-done = noch nichts getan
title-look-only = Diese Zeichnung ist zum Ansehen
title-own-copy = Eigene Kopie machen
title-copy-downloaded = Heruntergeladen als { $name }. Zum Ändern im Programm öffnen.

## Ein untergelegtes Blatt.

under-laid = Das untergelegte Blatt
under-away = wegnehmen
under-numbers = Befunde, Metall und Geld
under-changed = Was sich änderte: { $count ->
    [one] { $count } Ding
   *[other] { $count } Dinge
}
became-kept = gleich
became-new = neu
became-removed = entfernt
under-against = Gegen { $sheet }

## Dateien und Speicher.

file-opened = { $name } liegt auf dem Tisch.
file-opened-in-part = { $name } liegt auf dem Tisch. Weggelassen: { $first }
file-not-opened = { $name } wurde nicht geöffnet: { $why }
file-empty = sie ist leer
file-not-text = sie ist weder eine Auftragsdatei noch ein Auftrag in der Textform. Als Text: { $first }{ $more ->
    [0] .
    [one] , und 1 weiterer Fehler.
   *[other] , und { $more } weitere Fehler.
}
file-saved = Gespeichert in { $name }
board = Schaltplan, Blatt { $sheet }: { $parts }, { $runs }, { $counts }. Pfeile gehen, Enter öffnet Einzelheiten, Schrägstrich fragt.

## Aufnehmen, was da ist, und der Gang des Auftrags.

tool-record = Aufnehmen
tool-thread = Auftrag

## Die Papiere des Auftrags.

tool-papers = Papiere

## Ein leeres Blatt.

start-title = Anlage beginnen
start-offer = Was da ist und was gewünscht wird, in einer Zeile: Daraus wird ein ganzer Plan.
# Beside the offer to start a system, on an empty sheet.
shelf-offer = Teil für Teil: aus dem Regal nehmen, dann Leitungen von Klemme zu Klemme ziehen.

## Was neben den Blättern liegt.

share = Teilen
shelf = Regal der Bauteile
record = Aufnehmen, was da ist
thread = Der Auftrag
body-plan = Aufbauplan
papers = Papiere des Auftrags
