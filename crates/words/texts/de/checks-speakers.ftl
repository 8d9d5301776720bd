## coils-oppose

coils-oppose-what = Spule { $coil } von { $speaker } arbeitet gegen die andere: Plus und Minus sind vertauscht.
coils-oppose-remedy = Die Leitungen von Spule { $coil } an { $speaker } tauschen.

## lead-loss

lead-loss-what = { $speaker } verliert in den Leitungen { $lost }; der Grenzwert ist { $most }.
lead-loss-remedy = Dickere oder kürzere Leitungen verwenden.

## load-too-low

load-too-low-what = { $who } { $bridged ->
    [yes] treiben
   *[no] treibt
} { $drives }; erlaubt sind mindestens { $allows }.
load-too-low-dips = Die Last an { $who } fällt bis auf { $dips }; sie sollte nicht unter { $allows } liegen.
load-too-low-dips-at = Die Last an { $who } fällt bei { $at } bis auf { $dips }; sie sollte nicht unter { $allows } liegen.
load-too-low-higher = Anstelle von { $speaker } einen Lautsprecher mit höherer Impedanz verwenden oder seine Spulen in Reihe schalten.
load-too-low-series = Die Lautsprecher in Reihe schalten oder auf mehr Kanäle verteilen.
load-too-low-not-stated = { $amplifier } ist über die Kanäle { $channel } und { $second } gebrückt; das gibt der Hersteller nicht an.
load-too-low-not-stated-remedy = Jedem Kanal einen eigenen Lautsprecher geben.
load-too-low-impedance = Ob die Last an { $who } erlaubt ist, bleibt offen: Die Impedanz von { $speakers } ist nicht bekannt.
load-too-low-impedance-find = Die Impedanz an { $speakers } ablesen oder den Widerstand jeder Spule messen.
load-too-low-minimum = Ob die Last an { $who } erlaubt ist, bleibt offen: Die kleinste erlaubte Last ist nicht bekannt.
load-too-low-minimum-find = Die kleinste erlaubte Last in den Daten von { $amplifier } nachlesen.

## no-high-pass

no-high-pass-low = { $speakers } { $speakers ->
    [one] bekommt
   *[other] bekommen
} Bass bis hinab zu { $from }; für einen { $band ->
    [mid] Mitteltöner
   *[tweeter] Hochtöner
} sind mindestens { $least } nötig.
no-high-pass-low-remedy = Den Hochpass höher einstellen oder einen Kondensator in die Leitung setzen.
no-high-pass-what = Nichts hält den Bass von { $speakers } ({ $band ->
    [mid] Mitteltöner
   *[tweeter] Hochtöner
}) fern.
no-high-pass-remedy = In der Endstufe einen Hochpass ab { $least } einstellen oder einen Kondensator oder eine Frequenzweiche in die Leitung setzen.

## output-touches-chassis

output-touches-chassis-what = { $who } { $who ->
    [one] berührt die Karosserie oder die Versorgung: An beiden Anschlüssen liegt Spannung.
   *[other] berühren die Karosserie oder die Versorgung: An all ihren Anschlüssen liegt Spannung.
}
output-touches-chassis-remedy = Jedem Anschluss eine eigene Leitung zum Lautsprecher geben und sonst nichts.
output-touches-chassis-tied = { $who } sind ohne Lautsprecher dazwischen miteinander verbunden.
output-touches-chassis-tied-remedy = Trennen: Jeder Ausgang hat seine eigenen zwei Leitungen zu seinem eigenen Lautsprecher.

## reversed-speaker

reversed-speaker-what = { $speaker } bewegt sich gegen { $partners }: Plus und Minus sind vertauscht.
reversed-speaker-remedy = Die beiden Leitungen an { $speaker } tauschen und die Farben entlang der Leitung prüfen.

## silent-speaker

silent-speaker-what = { $speakers } { $speakers ->
    [one] ist
   *[other] sind
} stumm: { $why }.
silent-speaker-remedy = Den Kreis an dieser Stelle schließen.
silent-speaker-loop = der Kreis ist nicht geschlossen

## speaker-overpowered

speaker-overpowered-what = { $who } kann { $speaker } { $gives } geben; verträglich sind { $takes }.
speaker-overpowered-others = Auch { $speakers } { $speakers ->
    [one] bekommt
   *[other] bekommen
} zu viel.
speaker-overpowered-channel = Der Kanal
speaker-overpowered-remedy = Einen Lautsprecher verwenden, der das verträgt, oder die Eingangsempfindlichkeit (Gain) auf die verträgliche Leistung einstellen und die Einstellung versiegeln.
speaker-overpowered-unknown = Bis zu { $power } erreichen { $speaker }; was er verträgt, ist nicht bekannt.
speaker-overpowered-find = Die Dauerleistung an { $speaker } oder in seinen Daten ablesen.

## uneven-coils

uneven-coils-what = Die Spulen von { $speaker } bekommen { $powers }: nicht gleich viel.
uneven-coils-remedy = Beide Spulen gleich verdrahten: in Reihe, parallel oder jede an einem eigenen Kanal mit gleicher Leistung.
