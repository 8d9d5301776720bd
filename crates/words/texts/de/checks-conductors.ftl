## clad-feed

check-clad-feed-title = Kaschiertes Aluminium statt Kupfer
check-clad-feed-holds = kupferkaschiertes Aluminium in einer Zu- oder Rückleitung als das bemessen ist, was es ist, und nicht als Kupfer
check-clad-feed-looks = Eine Zu- oder Rückleitung aus kupferkaschiertem Aluminium, die, als solche genommen, ihren Strom oder den Nennstrom des Schutzorgans davor nicht trägt oder auf deren Weg zu viel Spannung verloren geht. Was daraus für die Sicherung folgt, meldet auch fuse-outsizes-wire, da es brennen kann.
check-clad-feed-why = Es leitet etwa zwei Drittel so gut wie Kupfer gleichen Querschnitts und trägt etwa vier Fünftel des Stroms. Oft steht auf dem Mantel ein Querschnitt, der gar nicht da ist, und seine Anschlüsse lockern sich und korrodieren früher.
check-clad-feed-source = ASTM B566 für den spezifischen Widerstand (aus dem Gedächtnis); 33 CFR 183.425(a) lässt in Sportbooten nur Kupfer zu.
clad-feed-weak = { $run } ist kupferkaschiertes Aluminium: Ihre { $size } leiten wie { $equal } Kupfer. Verlangt werden { $asks }; tragen kann sie { $can }.
clad-feed-lossy = { $run } ist kupferkaschiertes Aluminium: Ihre { $size } leiten wie { $equal } Kupfer. { $load } verliert auf dem Weg { $drop }.
clad-feed-remedy = An ihrer Stelle Kupfer mit { $size } legen.
clad-feed-copper = An ihrer Stelle Kupfer legen, nach Sicherung und Länge bemessen.

## hot-joint

check-hot-joint-title = Heißer Anschluss
check-hot-joint-holds = in jedem Anschluss nur wenig Leistung verloren geht
check-hot-joint-looks = Wärme in den Enden von Leitungen: der Widerstand eines Anschlusses mal dem Quadrat des Effektivstroms. Grad Halt, wo Kunststoff schmelzen kann. Ein Anschluss einer Art, die nicht hält, oder an einer korrodierten Leitung wird als solcher gemeldet.
check-hot-joint-why = Eine Verbindung, die warm wird, lockert sich, korrodiert und wird noch wärmer. Die meisten geschmolzenen Halter und Klemmen haben so angefangen.
check-hot-joint-source = Stromwärme (joulesches Gesetz); die Grenzwerte sind Ermessenswerte dieses Projekts, mit der betrachteten Spanne dabei.
check-hot-joint-unmended = Eine Verbindung, die schon so ausgeführt ist, wie sie sein soll, und deren Widerstand niemand gemessen hat: unter Last den Spannungsabfall daran messen und eintragen.
hot-joint-what = { $run } setzt am Anschluss an { $place } { $lost } in Wärme um ({ $carries } durch { $ohms }); { $verdict }.
hot-joint-melts = { $most } können Kunststoff schmelzen
hot-joint-limit = der Grenzwert ist { $most }
hot-joint-other = Auch das andere Ende, an { $place }, wird zu warm.
hot-joint-remedy = Den Anschluss an { $place } neu machen: blankes Metall, neue Quetschung, richtiges Drehmoment.
hot-joint-end = ihrem Ende

## loose-end

check-loose-end-title = Loses Ende
check-loose-end-holds = keine Leitung im Leeren endet
check-loose-end-looks = Leitungen, von denen ein Ende lose liegt, auch eines, das abgeknipst und im Auto gelassen wurde, oder an einer Klemme, die es nicht gibt. Halt, wo das andere Ende unter Spannung stehen kann, mit Hinweis, wenn keine Sicherung es schützt; sonst Ordnen. Ein loses Ende, das die Lücke von etwas anderem ist (einer Rückleitung, eines Lautsprechers), wird dort gemeldet.
check-loose-end-why = Ein loses Ende unter Spannung berührt eines Tages etwas. Ein totes gibt dem Nächsten Rätsel auf.
check-loose-end-source = Allgemeine Praxis.
loose-end-unguarded = { $run } steht unter Spannung, keine Sicherung schützt sie, und ein Ende liegt lose.
loose-end-live = { $run } steht unter Spannung, und ein Ende liegt lose.
loose-end-what = { $run } endet im Leeren.
loose-end-remedy = { $run } dort anschließen, wo sie hingehört, oder entfernen.

## no-feed

check-no-feed-title = Keine Versorgung
check-no-feed-holds = eine Quelle alles erreicht, was Strom verbraucht
check-no-feed-looks = Auf einem Blatt mit Quelle: eine Versorgungsklemme, die kein Pluspol erreicht, auch wenn jeder Schalter, jedes Relais und jedes Trennrelais geschlossen ist, und wo der Weg endet: nichts an der Klemme, eine Leitung ins Leere, ein getrennter Stecker, eine durchgebrannte oder herausgenommene Sicherung. Bauteile an einer toten Zuleitung teilen sich einen Befund. Eine durchtrennte Zuleitung meldet damaged-run.
check-no-feed-why = Es funktioniert nicht.
check-no-feed-source = Allgemeine Praxis; folgt aus der kirchhoffschen Knotenregel.
check-no-feed-unmended = Für mehreres an einer Leitung, die ins Leere führt, und für Leitungen, die anderswo enden: Für welche Quelle sie gedacht waren, steht nirgends auf dem Blatt.
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

check-overloaded-run-title = Leitung überlastet
check-overloaded-run-holds = der Dauerstrom jeder Leitung nicht größer ist, als sie an ihrem Platz trägt
check-overloaded-run-looks = Der Strom, den eine Leitung bei der gewählten Aussteuerung führt, als Effektivwert, gegen den Strom, der ihren Leiter auf die Grenztemperatur seiner Isolierung bringt: nach Querschnitt, Werkstoff, Isolierung, wärmster Umgebung auf dem Weg und der Zahl belasteter Leitungen daneben. Werkseitige Leitungen werden dort beurteilt, wo etwas Hinzugefügtes daran hängt. Eine hier gemeldete Leitung melden fuse-outsizes-wire und voltage-drop nicht noch einmal: Die Leitung ist für alle drei zu dünn.
check-overloaded-run-why = Die Isolierung wird weich, altert und schmilzt zuletzt. Keine Sicherung löst aus, weil der Strom der ist, den der Verbraucher ziehen soll.
check-overloaded-run-source = 33 CFR 183.425 Tabelle 5 mit ihren Korrekturen, wie das Modell der zulässigen Ströme in diesem Programm sie angibt.
overloaded-run-what = { $run } führt { $carries }; dort, wo sie liegt, trägt sie { $can }.
overloaded-run-remedy = Kupfer mit { $size } legen oder Verbraucher wegnehmen.
overloaded-run-thicker = Eine dickere Leitung legen oder Verbraucher wegnehmen.
overloaded-run-unknown = { $run } führt { $carries }; ob sie das trägt, bleibt offen. Nicht bekannt: { $missing }.

## supply-collapse

check-supply-collapse-title = Versorgung bricht zusammen
check-supply-collapse-holds = das Netz liefern kann, was die Verbraucher verlangen, und jede Endstufe über ihrer Abschaltspannung bleibt
check-supply-collapse-looks = Verbraucher, die mehr Leistung verlangen, als die Zuleitung bei irgendeiner Spannung durchlassen kann, mit dem lieferbaren Anteil und dem, woran es liegt; und Endstufen, deren Versorgung bei Spitzen unter die Spannung fällt, bei der sie sich abschalten. Die Batterie zählt mit dem höchsten glaubhaften Widerstand, kalt und halb entladen. Liegt auf dem Weg eine überlastete Leitung, ein schlechter Anschluss oder eine schlechte Masse, so wird stattdessen das gemeldet. Offen, wo sich das Netz nicht berechnen ließ.
check-supply-collapse-why = Der Ton setzt im lautesten Augenblick aus, kommt wieder und setzt wieder aus.
check-supply-collapse-source = Allgemeine Praxis; größte übertragbare Leistung einer Quelle mit Innenwiderstand.
check-supply-collapse-unmended = Bei mehreren Batterien, und wo weder dickere Leitungen noch eine größere Batterie reichen: Dann muss der Versorgung weniger abverlangt werden.
supply-collapse-what = Die Versorgung kann { $share } der Leistung liefern, die bei Spitzen verlangt wird.
supply-collapse-most = Am meisten geht in { $things } verloren.
supply-collapse-remedy = Dickere und kürzere Leitungen, eine stärkere Batterie oder weniger Leistung verwenden.
supply-collapse-failed = Ströme und Spannungen ließen sich nicht berechnen: { $why }.
supply-collapse-failed-find = Nach verpolten Quellen suchen und nach Werten, die nicht stimmen können.
supply-collapse-cut-off = Bei Spitzen bekommt { $amplifier } { $gets }; unter { $needs } schaltet sie sich ab.

## terminal-overfull

check-terminal-overfull-title = Klemme überfüllt
check-terminal-overfull-holds = jede Klemme Querschnitt und Zahl ihrer Leitungen aufnimmt
check-terminal-overfull-looks = Versorgungsklemmen von Endstufen und Schrauben von Verteilern: je eine Leitung, nicht dicker, als sie aufnehmen. Bolzen (Batteriepole, Massepunkte, Plätze einer Sammelschiene): nicht mehr Ringkabelschuhe als der Grenzwert.
check-terminal-overfull-why = Einzeldrähte, die abgeschnitten wurden, damit eine Leitung passt, führen keinen Strom. Eine Schraube auf zwei Leitungen hält nur eine davon.
check-terminal-overfull-source = Allgemeine Praxis; ABYC E-11 für vier Ringkabelschuhe auf einem Bolzen.
check-terminal-overfull-unmended = Eine Leitung, die zu dick ist und so bleiben muss, wegen ihres Stroms oder ihrer Sicherung: Eine Klemme, in die sie geht, hat nur ein anderes Gerät.
terminal-overfull-many = An { $terminal } liegen { $count } Leitungen: { $runs }; vorgesehen sind höchstens { $most }.
terminal-overfull-many-remedy = Leitungen auf eine eigene Klemme, einen Verteiler oder eine Sammelschiene legen.
terminal-overfull-unknown = Ob { $run } in { $terminal } passt, bleibt offen: Der Querschnitt ist nicht bekannt.
terminal-overfull-thick = { $run } hat { $size }; { $terminal } nimmt { $takes } auf.
terminal-overfull-thick-remedy = Eine Klemme für { $size } oder ein dafür gemachtes Reduzierstück verwenden; keine Drähte abschneiden.
terminal-overfull-thinner-remedy = { $size } legen, das trägt, was die Leitung führt und was sie schützt; oder eine Klemme für { $takes } oder ein dafür gemachtes Reduzierstück verwenden; keine Drähte abschneiden.

## voltage-drop

check-voltage-drop-title = Spannungsabfall zu groß
check-voltage-drop-holds = das, was von der Quelle bis zum Verbraucher und zurück verloren geht, bei Spitzen der gewählten Aussteuerung innerhalb des Grenzwerts bleibt
check-voltage-drop-looks = Die Spannung an den Polen der Quelle weniger die Spannung an den Klemmen des Verbrauchers, Zu- und Rückleitung zusammen, bei Spitzen. Endstufen haben einen Grenzwert in Volt, alles andere einen in Prozent der Nennspannung. Verbraucher, die das meiste in derselben Leitung verlieren, teilen sich einen Befund. Was in etwas verloren geht, das einen eigenen Befund hat (eine überlastete Leitung, ein schlechter Anschluss, eine schlechte Masse), wird nicht noch einmal gemeldet.
check-voltage-drop-why = Eine Endstufe an schwacher Versorgung übersteuert früher und wird heißer, Lichter leuchten trüb, Pumpen laufen langsam, und Geräte schalten sich im lautesten Augenblick ab.
check-voltage-drop-source = Endstufen: allgemeine Praxis. Andere: ABYC E-11 Abschnitt 11.14.2.6 und ISO 10133 für Sportboote, IEC 60364-5-52 Anhang G.
voltage-drop-what = { $load } verliert zwischen Quelle und Klemmen { $lost }; der Grenzwert ist { $most }.
voltage-drop-in = { $load } verliert zwischen Quelle und Klemmen { $lost }, davon { $part } in { $run }; der Grenzwert ist { $most }.
voltage-drop-remedy = Kupfer legen: { $sizes }.
voltage-drop-thicker = Hin und zurück dickere oder kürzere Leitungen legen.

## false-size

check-false-size-title = Falscher Querschnitt
check-false-size-holds = eine Leitung den Querschnitt und den Leitwert hat, die ihr Mantel angibt
check-false-size-looks = Leitungen, deren Einzeldrähte gezählt und gemessen sind oder deren Spannungsabfall bei bekanntem Strom gemessen ist, wo deutlich weniger da ist, als auf dem Mantel steht. Beides zusammen zeigt den wahrscheinlichen Werkstoff. Gerechnet wird mit dem, was gezählt oder gemessen ist, nicht mit dem Mantel; was daraus für Sicherungen und Ströme folgt, melden deren eigene Prüfungen, denn es kann brennen. Fehlt zu einer Zählung oder Messung die andere Hälfte, bleibt der Befund offen.
check-false-size-why = Der Mantel ist bedruckt, bevor das Kupfer darin ist. Dicke, weiche Isolierung um wenige dünne Drähte oder Aluminium mit einer Kupferhaut sieht nach einem großen Kabel aus und ist keins.
check-false-size-source = Der Querschnitt aus den Einzeldrähten ist Geometrie; Widerstand der Querschnitte nach IEC 60228 und ASTM B258; der Grenzwert ist eine Einschätzung dieses Projekts und nennt, was er einschließt.
false-size-counted = Auf dem Mantel von { $run } steht { $size }; die Einzeldrähte ergeben zusammen { $counted }.
false-size-also = Nach dem gemessenen Spannungsabfall leitet sie wie { $like } Kupfer.
false-size-like = Auf dem Mantel von { $run } steht { $size }; nach dem gemessenen Spannungsabfall leitet sie wie { $like } Kupfer.
false-size-material = Dazu passt: { $material }.
false-size-unknown = Was an { $run } gezählt oder gemessen ist, sagt nichts ohne: { $missing }.
false-size-remedy = { $size } Kupfer verlegen, dessen Einzeldrähte den Querschnitt ergeben, oder sie als das absichern und belasten, was sie ist.
