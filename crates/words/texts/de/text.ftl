## Was an einem Text falsch ist, der ein Auftrag sein soll, und was ginge.

text-error = Zeile { $line }, Spalte { $column }: { $what }
text-meant = war `{ $meant }` gemeint?

## Anführungszeichen.

text-quote-joined = hinter einem schließenden Anführungszeichen folgt sofort etwas
text-quote-joined-help = ein Leerzeichen dazwischensetzen oder ein Anführungszeichen im Text als \" schreiben
text-quote-inside = ein Anführungszeichen mitten in einem Wort
text-quote-inside-help = ein Text in Anführungszeichen steht allein oder gleich hinter `=`
text-quote-open = ein Anführungszeichen, das auf dieser Zeile nicht geschlossen wird
text-quote-open-help = mit " schließen; ein Zeilenumbruch im Text wird \n geschrieben
text-escape-unknown = ein Zeichen, vor dem kein umgekehrter Schrägstrich stehen kann
text-escape-unknown-help = es gibt \" \\ \n \r \t; ein einzelner umgekehrter Schrägstrich wird \\ geschrieben

## Zeilen.

text-too-long = der Text ist länger als { $most } Byte
text-too-long-help = in mehrere Aufträge teilen
text-begins-nothing = damit kann keine Zeile beginnen
text-line-words = eine Zeile beginnt mit { $words } oder dem Wort einer Bauteilart
text-no-such-word = es gibt keine Bauteilart und keine Zeile `{ $word }`
text-kinds = die Bauteilarten sind { $words }
text-line-twice = `{ $word }` steht ein zweites Mal da
text-join-lines = die beiden Zeilen zusammenfassen
text-title = hinter `job` steht der Titel und sonst nichts
text-title-help = so schreiben: job "Titel"
text-title-long = der Titel { $why }
text-limit = hinter `limit` stehen ein Name und eine Zahl
text-limit-help = so schreiben: limit NAME 3.5
text-limit-twice = der Grenzwert `{ $key }` ist ein zweites Mal gesetzt
text-limit-number = `{ $text }` ist keine Zahl
text-limit-number-help = ein Grenzwert ist eine bloße Zahl in seiner Einheit
text-allow = hinter `allow` stehen die Namen der Prüfungen, die nicht laufen sollen
text-allow-name = das ist kein Name einer Prüfung
text-sheet = hinter `sheet` steht eines von { $words }
text-no-sheet = es gibt kein Blatt `{ $word }`
text-sheets = die Blätter sind { $words }
text-name-missing = { $whose } braucht einen Namen
text-name-missing-help = hinter das Wort einen Namen schreiben, zum Beispiel ablage-links
text-name-twice = { $whose } `{ $name }` steht ein zweites Mal da
text-step-word = ein Schritt einer Liste zum Abhaken ist ein einziges Wort
text-step-word-help = in Anführungszeichen setzen
text-step-long = der Schritt { $why }
text-full = { $what ->
    [limits] mehr als { $most } Grenzwerte
    [checks] mehr als { $most } Prüfungen
    [own-places] der Auftrag beschreibt mehr als { $most } davon
    [steps] mehr als { $most } Schritte
    [readings] mehr als { $most } Messwerte
    [tunings] mehr als { $most } Einstellzeilen
    [complaints] mehr als { $most } Beanstandungen
    [intake] mehr als { $most } Zeilen der Zustandsaufnahme
    [offers] mehr als { $most } Zeilen des Angebots
    [parts] mehr als { $most } Bauteile auf einem Blatt
    [runs] mehr als { $most } Leitungen auf einem Blatt
   *[bends] mehr als { $most } Knicke
}

## Wessen Eigenschaften eine Zeile angibt.

text-whose-part = ein Bauteil der Art { $kind }
text-whose = { $of ->
    [run] eine Leitung
    [title-block] das Schriftfeld
    [conditions] die Liste der Bedingungen
    [body] die Karosserie
    [place] eine Stelle
    [passage] ein Durchgang
    [reading] ein Messwert
    [tuning] eine Einstellzeile
    [complaint] eine Beanstandung
    [intake] eine Zeile der Zustandsaufnahme
    [offer] eine Zeile des Angebots
   *[rates] die Liste der Stundensätze
}

## Eigenschaften und ihre Werte.

text-no-property = { $whose } hat kein `{ $key }`
text-there-are = es gibt { $words }
text-key-twice = `{ $key }` ist in dieser Zeile ein zweites Mal gesetzt
text-key-twice-help = eines davon weglassen; ein Text allein ist die Bezeichnung
text-leave-one = eines davon weglassen
text-unnamed = ein Text ohne Namen
text-unnamed-help = so schreiben: name="Text"
text-value = { $key }: { $why }
text-choices = { $words }
text-choice = { $word } ({ $title })
text-range = möglich ist { $least } bis { $most }
text-count = möglich ist eine ganze Zahl von { $least } bis { $most }
text-yes-no = yes oder no schreiben
text-like = so schreiben: { $example }
text-of-what = `{ $text }` sagt nicht, wovon es ein Wert ist
text-with-name = mit dem Namen davor schreiben: { $words }
text-set-already = { $key } ist in dieser Zeile schon gesetzt
text-set-already-help = `{ $text }` wäre ein zweiter Wert dafür
text-not-assumed = { $key } kann nicht angenommen sein
text-not-assumed-help = { $text } ohne ~ schreiben
text-no-value = { $whose } nimmt den Wert `{ $text }` nicht
text-write-key = so schreiben: { $key }=…
text-colours = Farben werden { $colour } geschrieben
text-no-properties = es gibt dafür keine Eigenschaften
text-has = es gibt { $words }
text-text-long = der Text { $why }
text-no-fitter = `{ $text }` ist niemand, der etwas einbaut
text-no-fitter-help = möglich sind maker, earlier und us
text-no-turn = `{ $text }` ist keine Drehung
text-no-turn-help = möglich sind 0, 90, 180 und 270, im Uhrzeigersinn
text-no-point = `{ $text }` ist kein Punkt des Bretts
text-no-point-help = zwei ganze Zahlen schreiben wie 200,80: nach rechts, dann nach unten
text-channels = das sieht nach Kanälen aus, nicht nach einer Bezeichnung
text-channels-help = die Kanäle als sections="4x 75W@4ohm" schreiben; ein Text allein ist die Bezeichnung

## Kennzeichen und Enden.

text-tag-first = zuerst steht das Kennzeichen: C1
text-tag-missing = das Kennzeichen fehlt
text-tag-like = hinter das Wort eines wie { $example } schreiben
text-tag-taken = das Kennzeichen `{ $tag }` gibt es auf diesem Blatt schon
text-tag-taken-help = jedes Bauteil und jede Leitung hat ein eigenes Kennzeichen
text-id-taken = die Nummer { $id } gehört schon zu `{ $tag }`
text-id-taken-help = `id=` weglassen oder eine freie Nummer nehmen
text-two-ends = eine Leitung hat zwei Enden
text-two-ends-help = so schreiben: run W1 B1.+ F1.in; ein Ende im Nirgendwo ist loose@100,50
text-no-end = `{ $text }` ist kein Ende einer Leitung
text-end-form = Kennzeichen und Klemme schreiben wie F1.in, oder loose@100,50
text-end-terminals = { $tag } und eine seiner Klemmen schreiben: { $words }
text-terminal-long = der Name einer Klemme hat höchstens { $most } Byte
text-no-terminal = `{ $tag }` ({ $word }) hat keine Klemme `{ $terminal }`
text-meant-has = war `{ $meant }` gemeint? Es gibt { $words }
text-is-run = `{ $tag }` ist eine Leitung, kein Bauteil
text-is-run-help = Leitungen enden an Klemmen von Bauteilen; zum Abzweigen einen Verbinder in die Leitung setzen
text-no-part = auf diesem Blatt gibt es kein Bauteil `{ $tag }`
text-no-parts = auf diesem Blatt gibt es keine Bauteile
text-parts-are = die Bauteile auf diesem Blatt sind { $words }
