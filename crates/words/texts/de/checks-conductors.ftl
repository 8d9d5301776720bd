## clad-feed

clad-feed-weak = { $run } ist kupferkaschiertes Aluminium: Ihre { $size } leiten wie { $equal } Kupfer. Verlangt werden { $asks }; tragen kann sie { $can }.
clad-feed-lossy = { $run } ist kupferkaschiertes Aluminium: Ihre { $size } leiten wie { $equal } Kupfer. { $load } verliert auf dem Weg { $drop }.
clad-feed-remedy = An ihrer Stelle Kupfer mit { $size } legen.
clad-feed-copper = An ihrer Stelle Kupfer legen, nach Sicherung und Länge bemessen.

## hot-joint

hot-joint-what = { $run } setzt am Anschluss an { $place } { $lost } in Wärme um ({ $carries } durch { $ohms }); der Grenzwert ist { $most }.
hot-joint-melts = { $run } setzt am Anschluss an { $place } { $lost } in Wärme um ({ $carries } durch { $ohms }); { $most } können Kunststoff schmelzen.
hot-joint-other = Auch das andere Ende, an { $place }, wird zu warm.
hot-joint-remedy = Den Anschluss an { $place } neu machen: blankes Metall, neue Quetschung, richtiges Drehmoment.
hot-joint-end = ihrem Ende

## loose-end

loose-end-unguarded = { $run } steht unter Spannung, keine Sicherung schützt sie, und ein Ende liegt lose.
loose-end-live = { $run } steht unter Spannung, und ein Ende liegt lose.
loose-end-what = { $run } endet nirgends.
loose-end-remedy = { $run } dort anschließen, wo sie hingehört, oder entfernen.

## no-feed

no-feed-coil = Die Spule von { $relay } wird nicht versorgt: Das Relais zieht nie an.
no-feed-coil-remedy = Die Spule von { $relay } an eine gesicherte Zuleitung oder einen Einschaltausgang anschließen.
no-feed-apart = { $plug } ist getrennt: { $parts } { $parts ->
    [one] bleibt
   *[other] bleiben
} ohne Versorgung.
no-feed-apart-remedy = Die Hälften von { $plug } zusammenstecken.
no-feed-nothing = An { $terminals } liegt nichts: Keine Quelle erreicht { $parts }.
no-feed-nowhere = Was an { $terminals } liegt, führt zu keiner Quelle.
no-feed-remedy = An eine gesicherte Zuleitung anschließen.
no-feed-blown = { $device } ist durchgebrannt oder herausgenommen{ $parts ->
    [0] .
    [one] : { $parts } bleibt ohne Versorgung.
   *[other] : { $parts } bleiben ohne Versorgung.
}
no-feed-blown-remedy = Erst klären, warum sie ausgelöst hat, dann als { $device } eine neue mit gleichem Nennstrom einsetzen.

## overloaded-run

overloaded-run-what = { $run } führt { $carries }; dort, wo sie liegt, trägt sie { $can }.
overloaded-run-remedy = Kupfer mit { $size } legen oder Verbraucher wegnehmen.
overloaded-run-thicker = Eine dickere Leitung legen oder Verbraucher wegnehmen.
overloaded-run-unknown = { $run } führt { $carries }; ob sie das trägt, bleibt offen. Nicht bekannt: { $missing }.

## supply-collapse

supply-collapse-what = Die Versorgung kann { $share } der Leistung liefern, die bei Spitzen verlangt wird.
supply-collapse-most = Am meisten geht in { $things } verloren.
supply-collapse-remedy = Dickere und kürzere Leitungen, eine stärkere Batterie oder weniger Leistung verwenden.
supply-collapse-failed = Ströme und Spannungen ließen sich nicht berechnen: { $why }.
supply-collapse-failed-find = Nach verpolten Quellen suchen und nach Werten, die nicht stimmen können.
supply-collapse-cut-off = Bei Spitzen bekommt { $amplifier } { $gets }; unter { $needs } schaltet sie sich ab.

## terminal-overfull

terminal-overfull-many = An { $terminal } liegen { $count } Leitungen: { $runs }; vorgesehen sind höchstens { $most }.
terminal-overfull-many-remedy = Leitungen auf eine eigene Klemme, einen Verteiler oder eine Sammelschiene legen.
terminal-overfull-unknown = Ob { $run } in { $terminal } passt, bleibt offen: Der Querschnitt ist nicht bekannt.
terminal-overfull-thick = { $run } hat { $size }; { $terminal } nimmt { $takes } auf.
terminal-overfull-thick-remedy = Eine Klemme für { $size } oder ein dafür gemachtes Reduzierstück verwenden; keine Drähte abschneiden.

## voltage-drop

voltage-drop-what = { $load } verliert zwischen Quelle und Klemmen { $lost }; der Grenzwert ist { $most }.
voltage-drop-in = { $load } verliert zwischen Quelle und Klemmen { $lost }, davon { $part } in { $run }; der Grenzwert ist { $most }.
voltage-drop-remedy = Kupfer legen: { $sizes }.
voltage-drop-thicker = Hin und zurück dickere oder kürzere Leitungen legen.
