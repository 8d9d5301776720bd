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
