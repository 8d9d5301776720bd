## Fehlersuche: wo die Messspitzen hinkommen, was im Verdacht steht, was nicht zu lesen ist.

fault-at-volts = Spannung, Rot an { $red }, Schwarz an { $black }
fault-at-tone = Wechselspannung des Prüftons zwischen { $red } und { $black }
fault-at-ohms = Widerstand zwischen { $red } und { $black }, Versorgung abgeklemmt
fault-at-amps = Strom in { $run } mit der Zange
fault-nothing-broken = kein Fehler
fault-pair = { $one } und { $other }
fault-open = offen

## Was zum Ergebnis gesagt wird.

fault-found = Gefunden: { $what } ({ $share }).
fault-alike = Keine Messung kann diese auseinanderhalten:
fault-suspected = Im Verdacht:
fault-next = Als Nächstes: { $at }. Etwa { $minutes } min; bringt { $bits } Bit.
fault-would-read = bei { $what }: { $number }
fault-unexplained = Bei „{ $what }“ wären { $foretold } zu erwarten, gemessen sind { $read }: { $at }. Noch einmal messen oder den Messwert streichen; bleibt er so, ist mehr als das defekt.
fault-no-supply = Auf diesem Blatt wird nichts versorgt: Es gibt nichts zu messen.
fault-none = Aus dem Bekannten spricht kein Fehler.
fault-leads = Widerstände gelten ohne die Messleitungen; diese bringen etwa { $ohms } hinzu.
fault-caution = Wo es geht, mit einer Hand messen, Widerstände nur bei abgeklemmter Versorgung. Messwerte engen einen Fehler ein; sie beweisen nicht, dass die Verkabelung in Ordnung ist.

## Was an einem Messwert oder Anzeichen nicht stimmt.

fault-not-number = „{ $text }“ ist keine Zahl.
fault-no-number = „{ $text }“ nennt keinen Messwert; geschrieben wird er wie in „F1.out B1.- 12.1 V on“ oder „LS1.+ LS1.- open“.
fault-no-points = „{ $text }“ sagt nicht, wo; anzugeben sind zwei Klemmen wie in „F1.out B1.- 12.1 V“ oder für Strom eine Leitung wie in „W3 4 A“.
fault-amps-in-run = „{ $text }“: Strom wird mit der Zange um eine Leitung gemessen, wie in „W3 4 A“.
fault-no-run = Es gibt keine Leitung „{ $tag }“; ist „{ $meant }“ gemeint?
fault-no-part = Es gibt kein Bauteil „{ $tag }“; ist „{ $meant }“ gemeint?
fault-no-terminal = „{ $part }“ hat keine Klemme „{ $terminal }“; vorhanden sind { $names }.
fault-no-speaker = „{ $part }“ ist kein Lautsprecher: Von einem Lautsprecher wird gesagt, ob er stumm oder schwach ist oder spielt.
fault-symptoms = „{ $text }“ ist kein Anzeichen; zu schreiben ist „LS1 silent“, „LS1 weak“, „LS1 plays“, „A1 off“, „A1 on“, „F1 opened“ oder „A1 hum“.

## Auf der Seite.

fault-head = Fehler suchen
fault-known = Was zu sehen und zu hören ist
fault-thing = Bauteil
fault-thing-none = Bauteil wählen
fault-silent = ist stumm
fault-weak = ist schwach
fault-plays = spielt
fault-off = schaltet nicht ein
fault-on = schaltet ein
fault-opened = hat ausgelöst
fault-hum = brummt
fault-symptom-line = { $tag } { $what }
fault-measure = Als Nächstes messen
fault-show = Messspitzen auf dem Plan
fault-reads = Das Messgerät zeigt, in { $unit }
fault-enter = Eintragen
fault-skip-open = Kein Durchgang
fault-effort = etwa { $minutes } min · bringt { $bits } Bit
fault-readings = Gemessen
fault-while = Beim Messen
fault-while-nothing = nichts bewegt
fault-keep = { $count ->
    [one] Beim Blatt behalten
   *[other] Diese { $count } beim Blatt behalten
}
fault-kept = { $count } auf diesem Blatt behaltene übernehmen
fault-suspects = Im Verdacht
fault-done = Gefunden
fault-left = Keine Messung hält diese auseinander
fault-start = Angeben, was nicht geht, oder wie vorgeschlagen messen.
fault-own = Eigene Messung
fault-own-like = F1.out B1.- 12.1 V ±0.2 on
fault-within = { $number } ± { $tolerance }
fault-foretold = zu erwarten: { $numbers }
fault-remove = { $what } entfernen
fault-line = { $at }: { $number }
