## Was in einer Auftragsdatei falsch ist.

file-problem = { $place }: { $what }
file-problems-more = … und { $count } weitere
file-unreadable = das lässt sich nicht lesen
file-no-object = sie enthält kein JSON-Objekt
file-no-format = es fehlt die Angabe "format": "{ $format }"
file-no-version = es fehlt die Angabe der Version, etwa "version": { $version }
file-keeps = { $count ->
    [one] die Datei bewahrt { $count } Stück auf, das sich beim früheren Öffnen nicht lesen ließ
   *[other] die Datei bewahrt { $count } Stücke auf, die sich beim früheren Öffnen nicht lesen ließen
}
file-not-a = { $of ->
    [text] ist kein Text
    [list] ist keine Liste
   *[object] ist kein Objekt
}
file-no-sheet = so ein Blatt gibt es nicht; es gibt { $words }
file-too-many = { $of ->
    [bends] { $count } Knicke; höchstens { $most } sind möglich
   *[them] davon gibt es { $count }; höchstens { $most } sind möglich
}
file-sheet-full = ein Blatt hat höchstens { $parts } Bauteile und { $runs } Leitungen
file-steps = hat zu viele oder zu lange Schritte
file-tag-twice = das Kennzeichen `{ $tag }` steht auf diesem Blatt zweimal
file-no-tag = das Kennzeichen fehlt oder ist kein Text
file-called = { $why }; vorläufig heißt es { $tag }
file-end-nowhere = die Leitung { $run } endet an { $part }, das nicht auf diesem Blatt ist
file-end-no-terminal = die Leitung { $run } endet an { $part }.{ $terminal }, und { $part } hat keine solche Klemme
file-picture-form = die Bytes sind nicht die eines Bildes der Form { $form }

## Was im JSON steht und was dort möglich ist.

json-cut = der Text endet, bevor er vollständig ist
json-syntax = was hier steht, hat in JSON keinen Platz
json-deep = er ist tiefer als { $most } Stufen verschachtelt
json-many = er enthält mehr als { $most } Werte
json-key-twice = der Schlüssel steht in einem Objekt zweimal; einen davon herausnehmen
json-missing = `{ $key }` fehlt
json-not = erwartet: { $wanted }, gefunden: { $found }
json-wanted = { $of ->
    [object] ein Objekt
    [empty] ein leeres Objekt
    [string] eine Zeichenkette
    [number] eine Zahl
    [whole] eine ganze Zahl
    [byte] eine ganze Zahl von 0 bis 255
    [two-bytes] eine ganze Zahl von 0 bis 65535
    [truth] true oder false
    [list] eine Liste
    [change] eine Änderung
    [entry] ein Eintrag des Verlaufs
    [end] {"{"}"on": {"{"}…{"}"}{"}"} oder {"{"}"loose": {"{"}…{"}"}{"}"}
   *[kind] die Bauteilart mit ihren Eigenschaften, {"{"}"fuse": {"{"}…{"}"}{"}"}
}
json-number = die Zahl { $number }
json-string = die Zeichenkette "{ $text }"
json-both = `{ $first }` und `{ $second }` zugleich
json-no-kind = es gibt keine Bauteilart `{ $word }`; es gibt { $words }
json-no-change = es gibt keine Änderung `{ $word }`
json-no-entry = es gibt keinen Eintrag `{ $word }`
json-no-base64 = das ist kein base64
json-beside-assumed = hier steht `{ $key }`, möglich ist aber nur `assumed`
json-assumed-empty = ein leeres Objekt; es sollte {"{"}"assumed": …{"}"} sein
