## Checklisten: Ausbau und Einbau.

paper-list-strip-out = Ausbaufolge
paper-list-build = Einbaufolge
paper-column-phase = Gruppe
paper-column-step-name = Name des Schritts

step-phase-isolate = Trennen
step-phase-record = Festhalten
step-phase-trim = Verkleidungen
step-phase-runs-out = Leitungen heraus
step-phase-parts-out = Bauteile heraus
step-phase-sweep = Aufräumen
step-phase-ground = Masse
step-phase-protection = Absicherung
step-phase-parts = Befestigen
step-phase-passages = Durchführungen
step-phase-runs = Leitungen
step-phase-cold = Bevor Spannung anliegt
step-phase-battery = Batterie, ganz zuletzt
step-phase-prove = Nachweis

## Ausbau.

step-off = Alles ausschalten, den Schlüssel vom Fahrzeug entfernen und so lange warten, wie der Fahrzeughersteller vorgibt, bis Steuergeräte und Airbags ruhen.
step-isolate = { $tag } ({ $name }) trennen: Minusklemme zuerst ab und so umwickeln, dass sie nicht zurückfedern kann.
step-discharge = { $tag } ({ $name }) über einen Widerstand oder eine Lampe entladen, nie mit dem Schraubenschlüssel.
step-dead = Von den Zuleitungen gegen Masse messen, dass nichts unter Spannung steht. Eine zweite Quelle kann sie noch speisen.
step-record = Den Zustand des Fahrzeugs mit Bildern festhalten, bevor eine Verkleidung abgenommen wird.
step-open = Öffnen bei: { $places }.
step-trim = Zugang schaffen: { $trim }.
step-trim-airbag = Zugang schaffen: { $trim }. Dort entfaltet sich ein Airbag: nach den Vorgaben des Fahrzeugherstellers vorgehen und nichts in seinen Weg legen.
step-run-out = { $tag } heraus: { $way }; { $then }.
step-part-out = { $tag } ({ $name }) heraus; { $then }.
step-then-refit = beschriften, wird wieder eingebaut
step-then-move = beschriften, kommt an eine andere Stelle
step-then-keep = vom Hersteller: unversehrt aufheben, einpacken und beschriften
step-then-ask = klären, was daraus wird
step-sweep = Nach losen Schrauben, Schnipseln und Leitungsenden suchen und sie entfernen: Eines davon ist der nächste Fehler.
step-stays = Jedes Ende isolieren und festbinden, das ohne sein anderes Ende zurückbleibt.

## Einbau.

step-isolated = Sicherstellen, dass die Versorgung noch getrennt ist.
step-place-open = wo der Plan es vorsieht
step-ground = Massepunkt { $tag } ({ $name }) herstellen, { $place }: Lack bis aufs blanke Blech abnehmen, Zahnscheibe, fest verschrauben, danach gegen Rost versiegeln.
step-ground-makers = Massebolzen des Herstellers für { $tag } ({ $name }) verwenden, { $place }: reinigen und nichts daran lösen, solange Spannung anliegt.
step-protection = { $tag } ({ $name }) befestigen, { $place }. Die Sicherungen bleiben draußen.
step-mount = { $tag } ({ $name }) befestigen, { $place }: in jedes Loch eine Schraube, senkrecht zur Fläche.
step-mount-on = { $tag } ({ $name }) befestigen, { $place }, auf: { $on }. In jedes Loch eine Schraube, senkrecht zur Fläche.
step-splice = Verbindung { $tag } ({ $name }) von { $runs } herstellen, { $place }.
step-refit = { $tag } ({ $name }) wieder einbauen, { $place }.
step-behind = Bevor für { $tag } gebohrt wird, dahinter sehen: { $behind }.
step-change = { $tag } ({ $name }): { $changes }.
step-mate = { $tag } ({ $name }) zusammenstecken, bis die Verriegelung einrastet.
step-guard = Vor dem Einziehen der Leitung anbringen ({ $passage }): { $guard }.
step-lay = { $tag } verlegen: { $length } von { $size } { $colour } zuschneiden, beide Enden beschriften; { $way }. { $through }
step-relay = { $tag } neu verlegen: { $way }. { $through }
step-way = Weg: { $places }.
step-way-open = Weg: nicht angegeben; fern von Hitze, Kanten, Scharnieren und Sitzen.
step-end = { $tag } an { $at }: { $method }.
step-end-pull = { $tag } an { $at }: { $method }. Eine Probequetschung muss { $force } halten ({ $source }{ $known ->
    [memory] , aus dem Gedächtnis
   *[read] {""}
}).
step-short = Ohne Sicherungen den Widerstand jeder Zuleitung gegen Masse messen. Keine Anzeige ist richtig; ein kleiner Wert ist ein Kurzschluss.
step-ohms = { $tag } Kanal { $channel }: { $ohms } an den Lautsprecherleitungen, und keine Anzeige von beiden Adern gegen Masse.
step-look = An jedem Anschluss ziehen, jede Durchführung und Kante ansehen, Türen, Klappen und Sitze über ihren ganzen Weg bewegen.
step-fuse = { $tag }: { $ratings } einsetzen.
step-battery = { $tag } ({ $name }) anschließen: Plusleitungen zuerst, Minusklemme zuletzt. Die Sicherung daneben ist noch draußen.
step-meter = Messblatt ausfüllen: { $count ->
    [one] eine Spannung
   *[other] { $count } Spannungen
} in jedem Zustand.
step-gain = { $tag } Kanal { $channel }: Gain mit dem Prüfton auf { $volts } einstellen.
step-moved = Noch einmal messen, dabei: { $moved }. Dann zeigen sich Fehler, die kommen und gehen.
step-prove = { $tag } nachweisen: „{ $words }“. Den Messwert festhalten, der es zeigt.
step-handover = Übergeben: beide Papiere, Ersatzsicherungen und was ausgebaut wurde und dem Kunden gehört.
