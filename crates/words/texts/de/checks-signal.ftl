## always-on

check-always-on-title = Immer eingeschaltet
check-always-on-holds = kein Einschalteingang an einer Dauerversorgung hängt
check-always-on-looks = Einschalteingänge an einer Zuleitung, die weder Zündung noch Schalter noch Relais abschaltet. Was das im Stand mit der Batterie macht, wird nicht noch einmal gemeldet.
check-always-on-why = Das Gerät schaltet nie ab und leert die Batterie.
check-always-on-source = Allgemeine Praxis.
always-on-what = { $terminal } hängt an Dauerplus: { $part } schaltet nie ab.
always-on-remedy = { $terminal } an einen Einschaltausgang legen oder an eine Zuleitung, die die Zündung schaltet.

## crossed-signal

check-crossed-signal-title = Signal vertauscht
check-crossed-signal-holds = jeder Eingang von einem einzigen Ausgang gespeist wird, und zwar von dem der Seite, auf der seine Lautsprecher sitzen
check-crossed-signal-looks = Eingänge an mehr als einem Ausgang und Eingänge, deren Signal das linke ist, während die Lautsprecher dahinter rechts sitzen, oder umgekehrt. Was an einem Gerät vertauscht ist, ergibt einen Befund.
check-crossed-signal-why = Die Bühne ist seitenverkehrt, oder die Ausgänge arbeiten gegeneinander.
check-crossed-signal-source = Allgemeine Praxis.
crossed-signal-tied = Eingang { $input } von { $part } hängt an { $outputs }.
crossed-signal-tied-remedy = Nur einen Ausgang daran lassen: Ausgänge vertragen es nicht, miteinander verbunden zu sein.
crossed-signal-what = An { $part } sind links und rechts vertauscht: { $inputs }.
crossed-signal-left = Eingang { $input } bekommt das linke Signal und treibt die rechte Seite
crossed-signal-right = Eingang { $input } bekommt das rechte Signal und treibt die linke Seite
crossed-signal-remedy = Die Signalleitungen an { $part } tauschen.

## no-signal

check-no-signal-title = Kein Signal
check-no-signal-holds = jeder Eingang, hinter dem Lautsprecher hängen, von einem Ausgang gespeist wird
check-no-signal-looks = Auf einem Blatt mit einer Signalquelle: Eingänge von Endstufen, Prozessoren und Pegelwandlern, die kein Ausgang speist, obwohl Lautsprecher dahinter hängen. Ein Befund je Gerät.
check-no-signal-why = Diese Lautsprecher bleiben stumm oder spielen, was einstreut.
check-no-signal-source = Allgemeine Praxis.
no-signal-what = Nichts speist { $inputs ->
    [one] Eingang
   *[other] die Eingänge
} { $inputs } von { $part }, und dahinter hängen Lautsprecher.
no-signal-remedy = An den Ausgang anschließen, der zu diesen Lautsprechern gehört.

## no-turn-on

check-no-turn-on-title = Kein Einschaltsignal
check-no-turn-on-holds = eine Einschaltleitung, eine geschaltete Zuleitung oder ein Signal jede Endstufe und jeden Prozessor einschaltet
check-no-turn-on-looks = Auf einem Blatt mit Quelle: Geräte, die eine Einschaltleitung brauchen und keine bekommen, weder von einem Ausgang noch von einer geschalteten Zuleitung, und die auch kein Signal erkennen.
check-no-turn-on-why = Es schaltet nie ein.
check-no-turn-on-source = Allgemeine Praxis.
no-turn-on-nothing = An { $terminal } liegt nichts: { $part } schaltet nie ein.
no-turn-on-what = Was an { $terminal } liegt, kommt von keinem Einschaltausgang: { $part } schaltet nie ein.
no-turn-on-remedy = { $terminal } an einen Einschaltausgang (Remote) von Radio oder Prozessor anschließen.

## turn-on-overloaded

check-turn-on-overloaded-title = Einschaltausgang überlastet
check-turn-on-overloaded-holds = ein Einschaltausgang die Summe dessen trägt, was an ihm hängt
check-turn-on-overloaded-looks = Die Ströme der Einschalteingänge, Relaisspulen und Ähnlichem an einem Einschaltausgang gegen das, was er liefern kann: wie angegeben, sonst wie üblich.
check-turn-on-overloaded-why = Der Ausgang fällt aus und nimmt einen Teil des Radios mit.
check-turn-on-overloaded-source = Allgemeine Praxis der Fahrzeug-Audiotechnik; bei der üblichen Belastbarkeit steht die betrachtete Spanne.
check-turn-on-overloaded-unmended = Wo die Zuleitung des Geräts nicht auf dem Blatt steht, aus der ein Relais seinen Strom nähme.
turn-on-overloaded-what = { $parts } { $parts ->
    [one] verlangt
   *[other] verlangen
} { $asked } von { $terminal }; liefern kann er { $can }.
turn-on-overloaded-remedy = Den Ausgang ein Relais mit kleiner Spule schalten lassen und das Relais alles Übrige.

## wrong-level

check-wrong-level-title = Falscher Pegel
check-wrong-level-holds = jeder Eingang den Pegel bekommt, den er verarbeitet
check-wrong-level-looks = Eingänge, die Lautsprecherpegel bekommen und Line-Pegel verarbeiten oder umgekehrt. Ein Befund je Gerät.
check-wrong-level-why = Lautsprecherpegel an einem Line-Eingang übersteuert ihn und kann ihn zerstören; Line-Pegel an einem Eingang für Lautsprecherpegel ist kaum zu hören.
check-wrong-level-source = Allgemeine Praxis.
wrong-level-what = { $inputs ->
    [one] Eingang { $inputs } von { $part } bekommt
   *[other] Die Eingänge { $inputs } von { $part } bekommen
} einen Pegel, für den { $inputs ->
    [one] er nicht gemacht ist
   *[other] sie nicht gemacht sind
}.
wrong-level-remedy = Den Eingang für den richtigen Pegel verwenden oder einen Pegelwandler dazwischensetzen.

## signal-beside-feed

check-signal-beside-feed-title = Signal neben Zuleitung
check-signal-beside-feed-holds = Signalleitungen nicht lange neben Zu- oder Rückleitungen liegen
check-signal-beside-feed-looks = Signalleitungen, die über mehr als den Grenzwert in denselben Durchgängen liegen wie Zu- oder Rückleitungen. Was in einem Durchgang liegt, gilt als näher als der Abstand, der zählt; wo sie weiter auseinander gehalten werden, bekommt eine davon auf dem Plan einen eigenen Durchgang. Wo sie sich nur kreuzen, gibt es nichts zu melden. Leitungen, die in denselben Durchgängen neben denselben Zuleitungen liegen, ergeben einen Befund.
check-signal-beside-feed-why = Der Strom einer Endstufe ändert sich mit der Musik, der der Lichtmaschine mit dem Motor. Eine Signalleitung daneben fängt beides auf.
check-signal-beside-feed-source = Allgemeine Praxis.
check-signal-beside-feed-unmended = Wo jeder andere Weg durch die Karosserie schlechter ist, an einem Sitz, einem Scharnier ohne Tülle oder einem Airbag vorbei, oder der Weg gesperrt ist.
signal-beside-feed-what = { $signals } { $signals ->
    [one] liegt
   *[other] liegen
} über { $length } näher als { $near } an { $feeds }, am längsten in { $longest }.
signal-beside-feed-remedy = Signal- und Zuleitungen auf verschiedenen Seiten führen; bis zu { $most } nebeneinander schadet nicht.

## signal-scattered

check-signal-scattered-title = Signalleitungen zerstreut
check-signal-scattered-holds = Signalleitungen zwischen denselben zwei Stellen beieinander liegen
check-signal-scattered-looks = Signalleitungen zu den Eingängen eines Bauteils, die an denselben Stellen beginnen und enden und deren Wege weiter auseinander liegen als der Grenzwert, gemessen am Weg, den die meisten nehmen.
check-signal-scattered-why = Zwei Leitungen und die Geräte an ihren Enden bilden eine Schleife. Was deren Fläche auffängt, hört man.
check-signal-scattered-source = Allgemeine Praxis: Signalleitungen einer Anlage liegen beieinander.
signal-scattered-what = { $runs } zu { $part } { $runs ->
    [one] entfernt
   *[other] entfernen
} sich bis zu { $far } von { $other }, die zwischen denselben Stellen verläuft.
signal-scattered-remedy = Alle Signalleitungen von { $part } zusammen verlegen.
