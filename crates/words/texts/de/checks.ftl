## Was die Befunde mehrerer Prüfungen sagen.

two-sentences = { $first } { $second }
same-holds-for = Dasselbe gilt für { $things }.
read-rating = Nennstrom von { $device } ablesen.
find-size = Querschnitt auf dem Mantel von { $run } ablesen oder die Einzeldrähte zählen und einen messen.
find-insulation = Temperaturangabe auf dem Mantel von { $run } ablesen.
find-out = Bei { $of } feststellen: { $what }.
size-of-run = { $size } für { $run }
channel-one = { $part } Kanal { $channel }
channel-bridged = { $part } Kanäle { $channel } und { $second } gebrückt

## Worauf ein Befund beruht: eine angenommene Eigenschaft eines Bauteils oder einer Leitung.

assumed-of = { $of }: { $property }
assumed-parking = Bedingungen: Standzeit

## Die Seite einer Prüfung.

explain-head = **{ $grade }** · { $group } · seit { $since }
explain-holds = Erfüllt, wenn { $holds }.
explain-looks = Wonach sie sucht
explain-why = Warum das wichtig ist
explain-example = Beispiel
explain-marks = Zeilen, die auf `#~` enden, kennzeichnen die dort genannten Prüfungen.
explain-instead = Stattdessen
explain-unmended = Wo keine Behebung vorgeschlagen wird
explain-care = Vorsicht
explain-limits = Grenzwerte
explain-limit = Grenzwert
explain-what = was
explain-value = Wert
explain-value-in = { $value } ({ $profile })
explain-source-in = { $profile }: { $source }
explain-source-column = Quelle
explain-source = Quelle

## Was jeder gesagt bekommt, der solche Arbeit macht.

care = Vor jeder Arbeit die Batterie abklemmen. Von Airbag- und Hochvoltkreisen fernbleiben. Die Anweisungen des Fahrzeugherstellers und das geltende Recht befolgen und eine Fachkraft entscheiden lassen. Das Programm kennt die Zeichnung, nicht das Fahrzeug.

## Grade und Gruppen.

grade-stop = Halt
grade-fix = Beheben
grade-tidy = Ordnen
check-group-protection = Absicherung
check-group-conductors = Leitungen
check-group-ground = Masse
check-group-speakers = Lautsprecher
check-group-signal = Signal und Steuerung
check-group-workmanship = Karosserie und Ausführung
check-group-energy = Energie
check-group-data = Angaben
