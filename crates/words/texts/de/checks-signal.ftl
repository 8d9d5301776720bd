## always-on

always-on-what = { $terminal } hängt an Dauerplus: { $part } schaltet nie ab.
always-on-remedy = { $terminal } an einen Einschaltausgang legen oder an eine Zuleitung, die die Zündung schaltet.

## crossed-signal

crossed-signal-tied = Eingang { $input } von { $part } hängt an { $outputs }.
crossed-signal-tied-remedy = Nur einen Ausgang daran lassen: Ausgänge vertragen es nicht, miteinander verbunden zu sein.
crossed-signal-what = An { $part } sind links und rechts vertauscht: { $inputs }.
crossed-signal-left = Eingang { $input } bekommt das linke Signal und treibt die rechte Seite
crossed-signal-right = Eingang { $input } bekommt das rechte Signal und treibt die linke Seite
crossed-signal-remedy = Die Signalleitungen an { $part } tauschen.

## no-signal

no-signal-what = Nichts speist { $inputs ->
    [one] Eingang
   *[other] die Eingänge
} { $inputs } von { $part }, und dahinter hängen Lautsprecher.
no-signal-remedy = An den Ausgang anschließen, der zu diesen Lautsprechern gehört.

## no-turn-on

no-turn-on-nothing = An { $terminal } liegt nichts: { $part } schaltet nie ein.
no-turn-on-what = Was an { $terminal } liegt, kommt von keinem Einschaltausgang: { $part } schaltet nie ein.
no-turn-on-remedy = { $terminal } an einen Einschaltausgang (Remote) von Radio oder Prozessor anschließen.

## turn-on-overloaded

turn-on-overloaded-what = { $parts } { $parts ->
    [one] verlangt
   *[other] verlangen
} { $asked } von { $terminal }; liefern kann er { $can }.
turn-on-overloaded-remedy = Den Ausgang ein Relais mit kleiner Spule schalten lassen und das Relais alles Übrige.

## wrong-level

wrong-level-what = { $inputs ->
    [one] Eingang { $inputs } von { $part } bekommt
   *[other] Die Eingänge { $inputs } von { $part } bekommen
} einen Pegel, für den { $inputs ->
    [one] er nicht gemacht ist
   *[other] sie nicht gemacht sind
}.
wrong-level-remedy = Den Eingang für den richtigen Pegel verwenden oder einen Pegelwandler dazwischensetzen.
