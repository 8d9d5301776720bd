## coils-oppose

check-coils-oppose-title = Spulen arbeiten gegeneinander
check-coils-oppose-holds = die Spulen eines Lautsprechers in dieselbe Richtung arbeiten
check-coils-oppose-looks = Lautsprecher mit zwei Schwingspulen, von denen eine gegen die andere arbeitet.
check-coils-oppose-why = Die Membran bewegt sich kaum, während beide Spulen die volle Leistung als Wärme aufnehmen.
check-coils-oppose-source = Allgemeine Praxis der Fahrzeug-Audiotechnik.
coils-oppose-what = Spule { $coil } von { $speaker } arbeitet gegen die andere: Plus und Minus sind vertauscht.
coils-oppose-remedy = Die Leitungen von Spule { $coil } an { $speaker } tauschen.

## lead-loss

check-lead-loss-title = Verlust in der Lautsprecherleitung
check-lead-loss-holds = ein Lautsprecher in seinen Leitungen höchstens ein halbes Dezibel verliert
check-lead-loss-looks = Der Pegel, den ein Lautsprecher am Widerstand seiner Leitungen und ihrer Anschlüsse verliert, bei seiner Nennimpedanz, gegen den Grenzwert.
check-lead-loss-why = Die Leistung ist bezahlt und wärmt eine Leitung; zuerst verliert der Bass an Kontrolle.
check-lead-loss-source = 20 log10((Z + R)/Z); der Grenzwert ist allgemeine Praxis mit der angegebenen Spanne.
lead-loss-what = { $speaker } verliert in den Leitungen { $lost }; der Grenzwert ist { $most }.
lead-loss-remedy = Dickere oder kürzere Leitungen verwenden.

## load-too-low

check-load-too-low-title = Last zu niedrig
check-load-too-low-holds = die Nennlast jedes Kanals mindestens das angegebene Minimum seiner Betriebsart ist und die Impedanz über den Frequenzbereich mindestens 80 % davon
check-load-too-low-looks = Was ein Kanal oder ein gebrücktes Paar wirklich treibt: alle Lautsprecher, Spulen, Weichen und Kondensatoren daran. Die Nennlast ist die der Nennimpedanzen. Ein Lautsprecher darf auf 80 % seiner Nennimpedanz absinken, deshalb wird die kleinste Impedanz zwischen 20 Hz und 20 kHz an 80 % des Minimums gemessen. Der Widerstand, den ein Messgerät anzeigt, entscheidet hier nichts.
check-load-too-low-why = Die halbe Last zieht den doppelten Strom. Die Endstufe überhitzt, schaltet wieder und wieder ab und fällt zuletzt aus.
check-load-too-low-source = Das vom Hersteller der Endstufe angegebene Minimum; IEC 60268-5 Abschnitt 16.1 für die 80 % (aus dem Gedächtnis).
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

check-no-high-pass-title = Kein Hochpass
check-no-high-pass-holds = kleine Lautsprecher keinen Bass bekommen
check-no-high-pass-looks = Hoch- und Mitteltöner, von denen kein Filter, keine Weiche und kein Kondensator den Bass fernhält oder nur unterhalb des Grenzwerts. Lautsprecher eines Frequenzbereichs an einer Endstufe teilen sich einen Befund.
check-no-high-pass-why = Eine kleine Membran, die Bass bekommt, bewegt sich weiter, als sie kann, verzerrt und reißt.
check-no-high-pass-source = Allgemeine Praxis der Fahrzeug-Audiotechnik; beim Grenzwert steht die betrachtete Spanne.
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

check-output-touches-chassis-title = Ausgang berührt die Karosserie
check-output-touches-chassis-holds = massefreie Ausgänge weder die Karosserie noch die Versorgung noch einander berühren
check-output-touches-chassis-looks = Ein Anschluss eines massefreien Lautsprecherausgangs, der mit der Karosserie oder der Versorgung verbunden ist oder ohne Lautsprecher dazwischen mit dem Anschluss eines anderen Ausgangs. Miteinander verbundene Kanäle ergeben einen Befund. Brücken, wie der Hersteller sie angibt, bleiben außen vor.
check-output-touches-chassis-why = An beiden Anschlüssen eines massefreien Ausgangs liegt etwa die halbe Versorgungsspannung. Mit der Karosserie verbunden treibt der Ausgang einen Kurzschluss: Bestenfalls schaltet er ab, schlimmstenfalls brennt er durch.
check-output-touches-chassis-source = Allgemeine Praxis; Hersteller gebrückter Ausgänge verbieten es.
output-touches-chassis-what = { $who } { $who ->
    [one] berührt die Karosserie oder die Versorgung: An beiden Anschlüssen liegt Spannung.
   *[other] berühren die Karosserie oder die Versorgung: An all ihren Anschlüssen liegt Spannung.
}
output-touches-chassis-remedy = Jedem Anschluss eine eigene Leitung zum Lautsprecher geben und sonst nichts.
output-touches-chassis-tied = { $who } sind ohne Lautsprecher dazwischen miteinander verbunden.
output-touches-chassis-tied-remedy = Trennen: Jeder Ausgang hat seine eigenen zwei Leitungen zu seinem eigenen Lautsprecher.

## reversed-speaker

check-reversed-speaker-title = Lautsprecher verpolt
check-reversed-speaker-holds = die Lautsprecher eines Frequenzbereichs und Kanalpaars gleich gepolt sind
check-reversed-speaker-looks = Unter den Lautsprechern eines Frequenzbereichs, die als Paar spielen (vorn links und rechts, hinten links und rechts, alle, die Bass spielen), diejenigen, die sich beim selben Signal anders herum bewegen als die übrigen. Gehen gleich viele in jede Richtung, so werden die genannt, die gegen die Kennzeichnung der Endstufe gehen.
check-reversed-speaker-why = Zwei Lautsprecher, die sich gegeneinander bewegen, löschen aus, was sie verstärken sollten: Der Bass ist dünn und die Mitte der Bühne leer.
check-reversed-speaker-source = Allgemeine Praxis; IEC 60268-5 kennzeichnet die Klemme, an der eine positive Spannung die Membran nach außen bewegt.
reversed-speaker-what = { $speaker } bewegt sich gegen { $partners }: Plus und Minus sind vertauscht.
reversed-speaker-remedy = Die beiden Leitungen an { $speaker } tauschen und die Farben entlang der Leitung prüfen.

## silent-speaker

check-silent-speaker-title = Stummer Lautsprecher
check-silent-speaker-holds = jeder Lautsprecher einen geschlossenen Kreis zu einem Kanal hat
check-silent-speaker-looks = Ein Lautsprecher, von dem keine Schwingspule mit beiden Anschlüssen eines Kanals verbunden ist, und die erste Lücke auf dem Weg: eine Klemme, an der nichts liegt, ein getrennter Stecker, eine Leitung ins Leere. Lautsprecher, die eine Lücke stumm macht, teilen sich einen Befund.
check-silent-speaker-why = Er spielt nicht. Wo der Kreis durch einen Stecker zu einem zweiten Lautsprecher weiterläuft, macht ein getrennter Stecker beide stumm.
check-silent-speaker-source = Allgemeine Praxis; folgt aus der kirchhoffschen Knotenregel.
silent-speaker-what = { $speakers } { $speakers ->
    [one] ist
   *[other] sind
} stumm: { $why }.
silent-speaker-remedy = Den Kreis an dieser Stelle schließen.
silent-speaker-loop = der Kreis ist nicht geschlossen

## speaker-overpowered

check-speaker-overpowered-title = Zu viel Leistung am Lautsprecher
check-speaker-overpowered-holds = die angegebene Leistung der Endstufe an der wirklichen Last nicht größer ist, als jeder Lautsprecher verträgt
check-speaker-overpowered-looks = Die Leistung, die die Kanäle einem Lautsprecher geben können, alle seine Spulen zusammen, gegen die Leistung, die er auf Dauer verträgt. Eine eingestellte Eingangsempfindlichkeit zählt: Mehr, als ihre Volt beim Messton ergeben, gilt nicht als zugeführt. Lautsprecher an einem Kanal teilen sich einen Befund.
check-speaker-overpowered-why = Die Schwingspule überhitzt und brennt durch, am ehesten mit einer Endstufe, die übersteuert wird.
check-speaker-overpowered-source = Allgemeine Praxis; Dauerleistung, wie ANSI/CTA-2006 und IEC 60268-5 sie angeben (aus dem Gedächtnis).
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

check-uneven-coils-title = Spulen ungleich belastet
check-uneven-coils-holds = die Spulen eines Lautsprechers gleich viel Leistung bekommen
check-uneven-coils-looks = Lautsprecher mit zwei Schwingspulen, von denen eine mehr als ihren Anteil bekommt oder gar nichts.
check-uneven-coils-why = Eine Spule leistet die Arbeit von zweien: Sie überhitzt bei der Hälfte der Leistung, die der Lautsprecher verträgt, und eine offene zweite Spule bremst sogar die Membran.
check-uneven-coils-source = Allgemeine Praxis der Fahrzeug-Audiotechnik; der Spielraum ist ein Ermessenswert dieses Projekts.
uneven-coils-what = Die Spulen von { $speaker } bekommen { $powers }: nicht gleich viel.
uneven-coils-remedy = Beide Spulen gleich verdrahten: in Reihe, parallel oder jede an einem eigenen Kanal mit gleicher Leistung.
