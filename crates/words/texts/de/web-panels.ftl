### Was nur eine Tafel oder ein Zettel sagt.

## Überall.

close = Esc: schließen
nothing-known = nicht bekannt
yes = ja
no = nein

## Fragen.

ask-for = Nach Bauteil, Leitung, Befund oder Handlung fragen
ask-none = Hier gibt es nichts mit diesem Namen.

## Tasten.

keys = Tasten

## Ein Befund, erklärt.

finding-number = Befund { $number }
finding-do = Abhilfe:
finding-source = Quelle:
finding-assumed = Angenommen:
finding-leave-out = Diese Prüfung in diesem Auftrag weglassen
finding-leave-out-where = Steht im Auftrag unter Bedingungen und Grenzwerte (L) und lässt sich dort wieder aufnehmen
finding-before = Zurück
finding-of = { $number } von { $count }
finding-next = Weiter
finding-against = { $value } bei einem Grenzwert von { $limit }

## Aufträge.

jobs-here = auf dem Tisch
jobs-damaged = beschädigt, so behalten; gefunden { $when }
jobs-save-damaged = In eine Datei speichern
keeping-opening = Der Speicher wird geöffnet …
keeping-kept = Jede Änderung bleibt in diesem Browser.
keeping-writing = Es wird geschrieben …
keeping-elsewhere = Ein anderer Tab hat diesen Auftrag; was hier geändert wird, bleibt nicht.
jobs-take-over = Hier übernehmen
jobs-worked = Ausgearbeitete Beispiele
jobs-kept = Hier behalten
jobs-damaged-list = Beschädigt, so behalten

## Bedingungen und Grenzwerte.

limits = Bedingungen und Grenzwerte
limits-shares = Anteile stehen als solche da: 0,03 sind 3 %. Das Recht des Ortes und der Fahrzeughersteller gehen vor.
limits-profile = Alle sind die des Regelwerks.
limits-own = { $count } in diesem Auftrag gesetzt.
limits-left-out = In diesem Auftrag weggelassene Prüfungen
limits-take-in = wieder aufnehmen
limit-own = In diesem Auftrag gesetzt.
limit-back = Zurück zu { $number }
limit-profile = Regelwerk:
limit-no-number = `{ $text }` ist keine Zahl

## Das Messgerät.

meter-red = rot
meter-black = schwarz
meter-clamp = Zange
note-undecided = { $grade }, offen

## Der rechte Rand.

offer = Von { $from } zu neu:
outline = Gliederung

## Der Zettel neben einem Ding.

plain-run = Leitung
slip-about = Über { $tag }
slip-details = Einzelheiten zu { $tag }
slip-feeds = Was speist das
slip-tag = Kennzeichen
slip-fewer = weniger
slip-more = { $count } weitere
slip-more-run = Werkstoff, Isolierung, Umgebung, Zustand …
slip-name = Bezeichnung
slip-note = Notiz
slip-fitted-by = eingebaut von
slip-splice = Verbinder
slip-move-end = Ende umlegen
slip-straighten = Weg selbst finden
slip-turn = Drehen
slip-duplicate = Verdoppeln
slip-delete = Löschen
slip-at = an { $at }
slip-loose-end = dem losen Ende
edit-fitted-by = Wer { $tag } eingebaut hat, setzen

## Behaltene Messwerte.

readings-sheet = Messwerte, Blatt { $sheet }
readings-remove = { $reading } entfernen
readings-none = Noch keine. Messgerät in die Hand nehmen (M), Spitzen anlegen und den Wert behalten (S).
readings-proves = belegt
readings-with = bei

## Teilen.

share-use = { $address } verwenden
share-use-here = { $address } verwenden (öffnet sich nur auf diesem Rechner)
share-link-what = Der Link enthält die Zeichnung selbst, nirgends wird etwas gespeichert. Wer ihn öffnet, lädt dieses Programm von der Adresse, mit der der Link beginnt; sie muss also für andere erreichbar sein.
share-no-address = Den Link gibt es, sobald diese Adresse hier steht. Bis dahin gibt es die Seitendatei, unten.
share-seen = Was andere sehen
share-out = Was draußen bleibt
share-notes = Notizen, Bemerkungen und Beanstandungen
share-names = Namen im Schriftfeld
share-prices = das Angebot mit Preisen
share-pictures = Bilder (nur in der Seitendatei)
share-show = { $what } zeigen
share-show-none = { $what } zeigen (es gibt keine)
share-show-left = { $what } zeigen ({ $count } weggelassen)
share-unknown = { $count } Felder aus der Datei einer neueren Version
share-always = Titel und Bezeichnungen werden immer gezeigt: nachsehen, ob sie jemanden nennen.
share-link = Link
share-starts = beginnt mit
share-page = Seitendatei
share-page-what = Eine Datei mit dieser Zeichnung und dem Programm darin. Sie öffnet sich mit einem Doppelklick, ohne Netz, und darf beliebig groß sein.
share-page-download = Seitendatei herunterladen
share-page-missing = Die Seitendatei entstand nicht: page.html, das neben dieser Seite liegen soll, war nicht zu laden.
share-page-failed = Die Seitendatei entstand nicht. { $why }
share-title = Titel
share-revision = Stand
share-sheet = Blatt { $sheet }: { $parts }, { $runs }, { $labels } Bezeichnungen
share-sheet-notes = { $count } Notizen
share-sheet-readings = { $count } Messwerte
share-complaints = { $count } Beanstandungen
share-intake = { $count } Zeilen der Zustandsaufnahme
share-offers = { $count } Zeilen des Angebots, mit Preisen
share-holds-pictures = { $count } Bilder, in der Seitendatei
share-findings = Die Befunde, wie die Prüfungen sie daraus machen
share-copied = Der Link liegt in der Zwischenablage.
share-not-copied = Dieser Browser lässt die Seite nicht in die Zwischenablage schreiben: Link markieren und kopieren.
share-characters = { $count } Zeichen
share-copy = Link kopieren
share-code = Code des Links, zum Scannen
share-no-code = Zu lang für einen Code, den ein Telefon vom Papier liest.
share-scan = Scannen, um diese Zeichnung anzusehen

## Das Regal der Bauteile.

shelf-filter-how = Tippen filtert, Enter nimmt das erste
shelf-filter = Regal filtern
shelf-close = Esc: Regal schließen
shelf-none = Nichts mit diesem Namen im Regal.

## Ein untergelegtes Blatt.

newer = Eine neuere Version liegt bereit; sie gilt, wenn die Seite das nächste Mal geöffnet wird.
newer-load = Jetzt laden

## Dateien und Speicher.

job-damaged = { $count ->
    [one] { $count } Stück
   *[other] { $count } Stücke
} dieses Auftrags ließen sich nicht lesen: { $first }. Das Gespeicherte bleibt, wie es war, siehe Aufträge.
no-canvas = Dieser Browser gibt keine Fläche her, auf die das Bild gemalt werden könnte.
file-too-large = { $name } hat { $size }; eine Auftragsdatei darf { $most } haben. Sie wurde nicht geöffnet; ist es die richtige Datei?
file-kind-job = Auftragsdatei
file-kind-lesson = Lektion
file-none = Das ist keine Datei. Eine Auftragsdatei aus dem Dateimanager hier ablegen.
file-several = Das sind { $count } Dateien. Immer nur eine Auftragsdatei ablegen.
file-gone = Die Datei gibt es nicht mehr: Sie wurde verschoben, umbenannt oder gelöscht. Den Auftrag unter einem neuen Namen speichern.
file-not-allowed = Der Browser hat es nicht erlaubt. Noch einmal versuchen und zustimmen, wenn er fragt, oder unter einem neuen Namen speichern.
file-disk-full = Die Festplatte ist voll: Die Datei wurde nicht geschrieben. Platz schaffen und noch einmal speichern.
file-in-use = Ein anderes Programm benutzt die Datei, oder sie ist geschützt. Dort schließen oder unter einem neuen Namen speichern.
file-picture-too-large = Ein Bild dieser Größe kann der Browser nicht machen. Einen kleineren Maßstab wählen oder SVG ausgeben.
file-failed = Die Datei ließ sich nicht lesen oder schreiben ({ $reason }).
store-said = { $what } { $todo }
browser-no-reason = ohne Angabe von Gründen
store-no-window = es gibt kein Fenster
store-no-database = er hat keine Datenbank
store-refused = Dieser Browser behält für diese Seite keine Daten: vielleicht ein privates Fenster, oder der Speicher ist abgeschaltet ({ $reason }).
store-refused-do = Weiterarbeiten geht, aber der Auftrag lebt nur in diesem Tab. Vor dem Schließen in eine Datei speichern.
store-full = Der Speicher des Browsers ist voll: Die letzte Änderung ließ sich nicht behalten.
store-full-do = Noch ist nichts verloren: den Auftrag jetzt in eine Datei speichern. Danach nicht mehr gebrauchte Aufträge entfernen oder Platz schaffen.
store-changed = Dieser Auftrag wurde in einem anderen Tab geändert, seit er hier geöffnet wurde.
store-changed-do = Was hier zu sehen ist, ist noch ganz: in eine Datei oder als neuen Auftrag speichern, dann den anderen Stand öffnen.
store-newer = In einem anderen Tab ist eine neuere Version dieser Seite offen.
store-newer-do = Den Auftrag in eine Datei speichern, dann diese Seite neu laden.
store-missing = Dieser Auftrag ist nicht mehr im Speicher des Browsers.
store-missing-do = Ist er hier noch offen, in eine Datei oder als neuen Auftrag speichern.
journal-unplayed = lässt sich nicht nachspielen, und auch nicht, was danach kam: { $why }
journal-missing = Änderung { $edit } fehlt
store-unreadable = Was von diesem Auftrag gespeichert ist, lässt sich nicht lesen: { $reason }.
store-unreadable-do = Es bleibt, wie es ist. Den gespeicherten Text in eine Datei speichern und eine frühere Kopie öffnen.
store-failed = Der Browser konnte den Auftrag nicht behalten oder lesen ({ $reason }).
store-failed-do = Den Auftrag jetzt in eine Datei speichern, dann diese Seite neu laden.

## Felder.

mark-unknown = unbekannt
mark-unknown-what = Niemand hat gesagt, was das ist
mark-assumed = angenommen
mark-assumed-what = Vorausgesetzt: anklicken, wenn bekannt ist, dass es so ist
mark-computed = berechnet
mark-computed-what = Folgt aus dem Weg durch die Karosserie: Gemessenes eintippen, damit es an dessen Stelle tritt
mark-given = angegeben
mark-given-what = Bekannt: anklicken, um es als angenommen zu kennzeichnen

## Ausgearbeitete Beispiele.

worked-estate = Ein Kombi mit getrenntem System vorn, einem Paar hinten und einem Subwoofer, alles in Ordnung.
worked-van = Ein Handwerkertransporter, an dem mehrere Hände geändert haben: Was stimmt daran nicht?
worked-camper = Ein Wohnmobil mit zweiter Batterie, Trennrelais, Wechselrichter und Verbrauchern im Aufbau.
worked-hatchback = Ein Schrägheck von der Beanstandung bis zum Nachweis: vorgefunden, geplant und gebaut, mit Angebot, Listen und Messwerten.

## Aufnehmen, was da ist, und der Gang des Auftrags.

record-on = Aufnehmen auf { $sheet }
record-other-sheet = Auf dem Tisch liegt das Blatt { $sheet }. Was ein anderer hinterlassen hat, gehört auf Bestand.
record-to-found = Bestand auflegen
record-from = von
record-to = nach
record-size = Querschnitt
record-colour = Farbe
record-condition = Zustand
record-endings = beide Enden
record-opens-when = verliert den Kontakt bei
record-length = Länge
record-not-measured = nicht gemessen
record-go = Diese Leitung aufnehmen
record-done = { $run } aufgenommen: { $between }
record-two-ends = Beide Enden benennen: einen Vorschlag wählen, oder „irgendwohin“, wo es noch niemand weiß.
record-unseen = Was nicht gewählt ist, bleibt unbekannt; die Befunde, die daran hängen, sagen, was nachzusehen ist.
thread-complaints = Beanstandungen
thread-complaints-about = Womit der Kunde gekommen ist, in seinen Worten. Jede hängt an den Befunden, die sie erklären, und wird durch einen Messwert geschlossen, der sie belegt.
thread-add-complaint = Beanstandung hinzufügen
thread-condition = Zustand bei Annahme
thread-condition-about = Was zu sehen war, bevor eine Verkleidung abkam.
thread-add-intake = Zeile hinzufügen
thread-find-out = Noch herauszufinden
thread-find-out-about = Was als Nächstes anzusehen oder zu messen ist: Diesen Befunden fehlt eine Angabe.
thread-find-out-none = Jeder Befund dieses Blatts hat die Angaben, die er braucht.
thread-becomes = Was aus den Dingen wird
thread-quote = Angebot
thread-add-offer = Zeile ins Angebot
thread-remove = { $line } entfernen
thread-untie = { $finding } lösen
thread-untie-word = lösen
thread-tie = Befund anhängen …
thread-not-here = (nicht auf diesem Blatt)
thread-answered-by = Gelöst durch
thread-proven-by = Belegt durch
becomes-none = Es gibt kein früheres Blatt zum Vergleichen. Den Plan aus dem Bestand füllen: Das geht im Blattverzeichnis des Schriftfelds.
becomes-from = Seit { $sheet }:
becomes-counts = { $kept } bleiben, { $changed } geändert, { $new } neu, { $removed } entfernt.
becomes-findings = { $cleared } Befunde behoben, { $left } übrig, { $brought } neu.
becomes-kept = bleibt
becomes-changed = geändert
becomes-new = neu
becomes-removed = entfernt
quote-findings = Anbieten, was die Befunde verlangen
quote-all = Alles
quote-no-price = noch kein Preis
quote-approved = Angenommen
edit-quote-findings = { $count ->
    [one] Eine Zeile anbieten
   *[other] { $count } Zeilen anbieten
}
thread-more = mehr
becomes-kept-all = { $count } bleiben
slip-mounting = Befestigung ({ $count })
slip-handling = Verbleib ({ $count })
slip-laying = Führung ({ $count })
pictures = Bilder
pictures-add = Bild hinzufügen
pictures-of = Bild von { $of }
pictures-what = was zu sehen ist
pictures-unread = Dieses Bild war nicht zu lesen: { $why }
pictures-added = Bild von { $of } hinzugefügt, { $size } kB

## Der Aufbauplan.

body-no-form = Die Form des Fahrzeugs wählen, dann wird sein Plan gezeichnet. Maße, die nicht angegeben sind, sind die für die Form üblichen.
body-lay-all = Alle Leitungen durch den Aufbau führen
body-lay-all-how = Zuleitungen getrennt von Signalleitungen, die Signalleitungen einer Endstufe zusammen, nichts unter einem Sitz oder über ein Scharnier, wo es einen Weg darum herum gibt. Leitungen mit festem Weg behalten ihn.
body-nowhere = Noch ohne Stelle
body-parts = Stellen der Bauteile
body-places = Was von einer Stelle oder einem Durchgang bekannt ist
body-places-how = Die Form weiß, was üblich ist. Hier steht, was bei diesem Fahrzeug anders ist: Hitze, Wasser, scharfes Blech, was dahinter liegt.
told-places = Stellen
told-passages = Durchgänge
told-dangers = Eine Leitung dort: { $dangers }.
told-no-danger = Dort ist nichts bekannt, was eine Leitung gefährdet.
told-add-place = Eine Stelle ergänzen
told-add-passage = Einen Durchgang ergänzen
told-new-place = neue Stelle
told-new-passage = neuer Durchgang
told-move = Stelle verschieben
told-move-how = Auf dem Plan ziehen, oder um { $step }:
told-move-front = Nach vorn
told-move-rear = Nach hinten
told-move-left = Zur linken Seite
told-move-right = Zur rechten Seite
told-take-back = Zurücknehmen, was hier angegeben ist
body-place-of = Stelle von { $part }
ways = Wege durch den Aufbau
ways-number = Weg { $number }: { $length }
ways-take = Diesen Weg nehmen
ways-taken = So liegt sie.
ways-none = Den Weg wieder wegnehmen
body-plan-drawer = Form und Stellen

## Die Papiere des Auftrags.

papers-which = Welches Papier
papers-print = Dieses Papier drucken
papers-csv = Als Tabellendatei (CSV)
papers-nothing = Auf diesem Blatt ist noch nichts.
papers-empty = Nichts aufzuführen.
papers-waste = Verschnitt
papers-prices = Ausgefüllte Preisliste einlesen
papers-no-prices = Dort waren keine Preise zu finden. Die Preisliste oder die Bestellliste als Tabellendatei ausgeben, die Spalten für Preise und Stunden ausfüllen und diese einlesen.
papers-prices-read = { $count } Preise eingelesen; dieser Browser behält sie.
print-part = Teil { $part } von { $count } der Zeichnung: Reihe { $row } von oben, Spalte { $column } von links. Was über den Rand hinausläuft, zeigt die Zeichnung im Ganzen.
papers-prices-unread = { $count ->
    [one] Zeile { $line } war nicht lesbar
   *[other] { $count } Zeilen waren nicht lesbar, die erste ist Zeile { $line }
}: Preise als 120.50 oder 120,50 schreiben, Einheiten als m, ft oder St.
papers-done = { $done } von { $count } erledigt

## Die Übergabe.

hand-out-title = Übergabe
hand-out-what = Eine Datei für den Kunden, in einfachen Worten mit der Zeichnung davor und danach, und für den nächsten Einbauer, mit Zeichnung, Leitungs- und Sicherungsliste, Messwerten und Einstellungen. Sie öffnet sich mit einem Doppelklick, ohne Netz, und druckt auf A4 und Letter.
hand-out-for = für
hand-out-for-both = beide
hand-out-for-customer = den Kunden
hand-out-for-installer = den nächsten Einbauer
hand-out-pictures = Bilder
hand-out-make = Übergabe erstellen
hand-out-how = Sie entsteht aus dem Blatt auf dem Tisch. Was abgelehnt wurde, steht als Erklärung darin.
hand-out-file = Übergabe
slip-tunings = Einstellung der Kanäle ({ $count })
tuning-channel = Kanal { $channel }
tuning-add = Kanal hinzufügen
pictures-vehicle = dem Fahrzeug
