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
