## damaged-run

check-damaged-run-title = Leitung beschädigt
check-damaged-run-holds = jede Leitung in einwandfreiem Zustand ist
check-damaged-run-looks = Leitungen, die durchgescheuert, gequetscht, geschmolzen, korrodiert, nass oder durchtrennt vorgefunden wurden. Halt, wo eine Quelle sie unter Spannung setzen kann, und überall, wo Isolierung geschmolzen ist; sonst Beheben. Was eine durchtrennte oder korrodierte Leitung weiter verursacht (keine Versorgung, kein Rückweg, ein stummer Lautsprecher, ein heißer Anschluss), wird nicht noch einmal gemeldet.
check-damaged-run-why = Blankes Metall unter Spannung findet die Karosserie. Eine Leitung, die einmal geschmolzen ist, zeigt, dass etwas nicht stimmte und vielleicht noch immer nicht stimmt.
check-damaged-run-source = Allgemeine Praxis; 33 CFR 183.445 verlangt, dass Leiter vor Beschädigung geschützt sind.
damaged-run-what = { $run } ist { $state ->
    [chafed] durchgescheuert
    [pinched] gequetscht
    [melted] geschmolzen
    [corroded] korrodiert
    [wet] nass
   *[cut] durchtrennt
}{ $danger ->
    [heated] : Vor dem Neuverlegen klären, was sie erhitzt hat
    [live-end] , und ein Ende steht unter Spannung
    [live] , und sie steht unter Spannung
    [bare] : Blankes Metall steht hier unter Spannung
   *[none] { "" }
}.
damaged-run-remedy = { $state ->
    [corroded] { $run } so weit neu verlegen, bis das Kupfer blank ist: Grünspan frisst unter der Isolierung weiter, deshalb wird ersetzt und nicht gereinigt.
   *[other] { $run } neu verlegen und von dem fernhalten, was das verursacht hat.
}
damaged-run-unknown = Der Zustand von { $run } ist nicht bekannt.
damaged-run-find = { $run } auf ganzer Länge ansehen.

## poor-ending

check-poor-ending-title = Schlechter Anschluss
check-poor-ending-holds = Enden auf eine Weise angeschlossen sind, die hält: gequetscht, gelötet und abgestützt oder geschraubt
check-poor-ending-looks = Enden und Verbinder, die von Hand verdrillt oder mit einem Schneidklemmverbinder gemacht sind oder blank auf einer Klemme liegen. Halt, wo eine Quelle sie unter Spannung setzt, sonst Beheben.
check-poor-ending-why = Solche Verbindungen lösen sich durch Erschütterung oder korrodieren und werden warm. Ein Ende unter Spannung, das sich löst, findet die Karosserie.
check-poor-ending-source = Allgemeine Praxis: Enden von Lautsprecher- und Versorgungsleitungen werden in einem richtigen Kabelschuh gequetscht oder gelötet, nicht verdrillt; 33 CFR 183.420 und ABYC E-11 verbieten Verbindungen, die allein auf Zug halten (aus dem Gedächtnis).
poor-ending-splice = { $splice } ist { $method ->
    [tap] ein Schneidklemmverbinder
   *[twisted] von Hand verdrillt
}: Eine solche Verbindung hält nicht.
poor-ending-splice-remedy = { $splice } mit einem Quetschverbinder der richtigen Größe neu machen und abdecken.
poor-ending-what = { $run } ist { $ends }.
poor-ending-at = an { $terminal } { $method ->
    [twisted] von Hand verdrillt
    [tap] mit einem Schneidklemmverbinder angeschlossen
   *[loose] gar nicht befestigt
}
poor-ending-heat = Dort werden { $heat } zu Wärme.
poor-ending-remedy = { $run } bis aufs blanke Metall zurückschneiden und neu quetschen.

## Was mehrere Prüfungen von Wegen sagen.

way-spot = „{ $spot }“
way-guard-unknown = Was { $run } hier schützt, ist nicht bekannt ({ $spots }).
way-guard-find = Nachsehen, was { $run } dort schützt, und eintragen: Tülle, Faltenbalg, Schlauch, Wellrohr, Leitungssatz des Herstellers oder nichts.
way-untold = Welchen Weg { $run } nimmt, ist nicht vollständig angegeben; der kürzeste führt hier entlang ({ $spots }).
way-untold-find = Nachsehen, wo { $run } wirklich liegt, und den Weg eintragen.

## airbag-way

check-airbag-way-title = Im Weg eines Airbags
check-airbag-way-holds = nichts dort liegt oder sitzt, wo sich ein Airbag entfaltet
check-airbag-way-looks = Leitungen, die durch eine Stelle oder einen Durchgang führen, wo sich ein Airbag entfaltet, und Bauteile, die an eine solche Stelle gesetzt wurden. Wo sich ein Airbag entfaltet, folgt aus der Form der Karosserie und lässt sich Stelle für Stelle anders angeben. Was der Fahrzeughersteller dort angebracht hat, wird nicht beurteilt. Lässt der Weg dieses Stück offen, bleibt der Befund offen.
check-airbag-way-why = Ein Airbag füllt sich in wenigen hundertstel Sekunden. Was ihm im Weg liegt, hält ihn auf oder wird gegen Menschen geschleudert, und was an seinem Modul befestigt ist, kann ihn auslösen oder das Auslösen verhindern.
check-airbag-way-source = Allgemeine Praxis; die Vorschriften des Fahrzeugherstellers für sein Rückhaltesystem gehen vor, und Arbeiten daran sind Sache von Fachkräften.
airbag-way-what = { $run } liegt dort, wo sich ein Airbag entfaltet ({ $spots }).
airbag-way-remedy = { $run } einen anderen Weg führen, hinter und unter dem, was sich entfaltet, so wie der Fahrzeughersteller seine Leitungssätze führt.
airbag-way-part = { $part } sitzt dort, wo sich ein Airbag entfaltet ({ $place }).
airbag-way-part-remedy = { $part } an eine andere Stelle setzen, oder eintragen, dass dieses Fahrzeug dort keinen Airbag hat.

## bare-edge

check-bare-edge-title = Blanke Kante
check-bare-edge-holds = jeder Weg durch Blech und an einer blanken Kante vorbei eine Tülle, einen Schlauch, ein Wellrohr oder den Leitungssatz des Herstellers hat
check-bare-edge-looks = Leitungen, die durch ein Loch oder eine Tülle im Blech oder an blanken Kanten vorbei führen und von denen nichts das Blech fernhält. Halt, wo eine Quelle sie unter Spannung setzen kann, sonst Beheben. Hat niemand angegeben, was die Leitung schützt, bleibt der Befund offen. Den Weg über ein Scharnier meldet moving-joint. Leitungssätze des Herstellers werden nur beurteilt, wo jemand festgestellt hat, dass ihr Schutz fehlt.
check-bare-edge-why = Blech schneidet sich bei Erschütterung in Monaten durch die Isolierung. Was unter Spannung steht, findet dann die Karosserie, und zwar vor jeder Sicherung, die erst weiter hinten sitzt.
check-bare-edge-source = ISO 10133:2012 Abschnitt 7.5 verlangt Schutz vor Scheuern an Schotten und Kanten; SAE J1292 und 33 CFR 183.445 eine Tülle in jedem Loch im Metall (aus dem Gedächtnis).
bare-edge-what = Nichts hält blankes Blech von { $run } fern ({ $spots }){ $live ->
    [yes] , und sie steht unter Spannung
   *[no] { "" }
}.
bare-edge-kind = Ob { $run } hier durch Blech führt, ist nicht bekannt ({ $spots }).
bare-edge-kind-find = Eintragen, was für ein Weg das ist: { $spots }.
bare-edge-remedy = Eine Tülle setzen, die zu Loch und Leitung passt, oder einen Schlauch über { $run } ziehen und dort befestigen.

## blind-fixing

check-blind-fixing-title = Blind verschraubt
check-blind-fixing-holds = nirgends geschraubt oder gebohrt wird, wo dahinter ein Tank, eine Brems- oder Kraftstoffleitung, ein Hochvoltkabel oder ein Airbag liegen kann
check-blind-fixing-looks = Bauteile an Stellen, hinter deren Blech so etwas liegen kann und zu denen angegeben ist, dass niemand dahinter gesehen hat. Hat niemand etwas dazu angegeben, bleibt der Befund offen. Nach Bauteilen auf einem Brett, an einem Bolzen des Fahrzeugherstellers, ohne Schrauben oder dort, wo der Hersteller sie angebracht hat, wird nicht gefragt.
check-blind-fixing-why = Eine Schraube findet einen Kraftstofftank, eine Bremsleitung oder ein Kabel mit einigen hundert Volt ebenso leicht wie Luft. Man sieht es nur von der anderen Seite.
check-blind-fixing-source = Allgemeine Praxis; die Karosserieanleitung des Fahrzeugherstellers geht vor, und Hochvoltteile sind Sache von Fachkräften.
blind-fixing-what = { $part } ist angeschraubt ({ $place }), und niemand hat dahinter gesehen. Dort kann liegen: { $behind }.
blind-fixing-remedy = Von der anderen Seite nachsehen, wo jede Schraube von { $part } herauskommt. Wo man das nicht sehen kann, eine andere Stelle wählen.
blind-fixing-unknown = Ob jemand hinter die Schrauben von { $part } gesehen hat, ist nicht bekannt ({ $place }). Dort kann liegen: { $behind }.
blind-fixing-find = Vor dem Bohren von der anderen Seite nachsehen, wo jede Schraube von { $part } herauskommt oder herauskäme, und es eintragen.

## crush

check-crush-title = Leitung wird gequetscht
check-crush-holds = nichts ungeschützt unter einem Sitz, einer Sitzschiene oder einer Klemmung der Verkleidung liegt
check-crush-looks = Leitungen, die dort entlang führen, wo Gewicht oder bewegte Teile sie quetschen können, und um die nichts oder nur ein Geflecht liegt; als Schutz gelten Wellrohr und Leitungssatz des Herstellers. Halt, wo eine Quelle sie unter Spannung setzen kann, sonst Beheben. Hat niemand angegeben, was die Leitung schützt, bleibt der Befund offen. Leitungssätze des Herstellers werden nur beurteilt, wo jemand festgestellt hat, dass ihr Schutz fehlt.
check-crush-why = Keine Leitung ist dafür gemacht, dass ein Sitz auf ihr lastet. Schiene und Gestell drücken durch die Isolierung, und ein Sitz, der zurückgeschoben wird, schneidet.
check-crush-source = Allgemeine Praxis: Kein Sitz lastet auf einer Leitung; 33 CFR 183.445 verlangt, dass Leiter vor Beschädigung geschützt sind (aus dem Gedächtnis).
crush-what = { $run } kann hier gequetscht werden ({ $spots }){ $live ->
    [yes] , und sie steht unter Spannung
   *[no] { "" }
}.
crush-remedy = { $run } um den Sitz herum führen. Wo kein Weg herum führt, in ein Wellrohr legen, das das Gewicht trägt, und von Schienen und Federn fernhalten.

## hot-place

check-hot-place-title = Zu heiße Stelle
check-hot-place-holds = die Isolierung die heißeste Stelle auf dem Weg verträgt
check-hot-place-looks = Leitungen, deren Isolierung für weniger gemacht ist, als die heißeste Umgebung auf dem Weg hat; diese folgt aus dem Weg, wo einer angegeben ist. Halt, wo eine Quelle sie unter Spannung setzen kann, sonst Beheben. Dass eine solche Leitung gar keinen Strom verträgt, wird nicht noch einmal gemeldet.
check-hot-place-why = Isolierung, die wärmer wird, als sie verträgt, härtet aus, reißt und fällt ab, auch ganz ohne Strom.
check-hot-place-source = 33 CFR 183.425 gibt zulässige Ströme je nach Temperatur der Isolierung an, für Motorräume weniger; ohne Strom ist diese Temperatur selbst die Grenze.
hot-place-what = { $run } liegt dort, wo es { $hot } heiß wird ({ $around }); ihre Isolierung verträgt { $bears }.
hot-place-remedy = Eine Leitung mit Isolierung für diese Stelle verlegen oder { $run } dort führen, wo es kühler ist.

## intermittent

check-intermittent-title = Wackelkontakt
check-intermittent-holds = keine Leitung den Kontakt verliert, wenn etwas bewegt wird
check-intermittent-looks = Leitungen, bei denen jemand festgestellt hat, dass sie in einem Zustand, der kommt und geht, den Kontakt verlieren: wenn Türen, Klappe oder Sitze bewegt werden, die Leitung gebogen, warm oder erschüttert wird. Halt, wo eine Quelle sie unter Spannung setzen kann, sonst Beheben. Eine Leitung, die als beschädigt bekannt ist, wird als solche gemeldet.
check-intermittent-why = Drähte, die einer nach dem anderen brechen, oder eine Hülse, die nicht mehr federt, bestehen im Stand noch jede Messung. Was übrig ist, führt den ganzen Strom und wird warm, und ein Ende unter Spannung, das sich trennt, findet die Karosserie.
check-intermittent-source = Allgemeine Praxis.
intermittent-what = { $run } verliert den Kontakt, wenn { $state ->
    [doors-open] Türen geöffnet werden
    [lid-open] die Klappe geöffnet wird
    [seats-moved] Sitze verstellt oder umgeklappt werden
    [flexed] sie gebogen wird
    [warm] sie warm ist
   *[shaken] sie erschüttert wird
}.
intermittent-remedy = Zu zweit { $state ->
    [doors-open] die Türen öffnen und schließen
    [lid-open] die Klappe öffnen und schließen
    [seats-moved] die Sitze verstellen und umklappen
    [flexed] sie Stück für Stück biegen
    [warm] sie mit Heißluft vorsichtig erwärmen
   *[shaken] an ihr entlang klopfen
} und dabei den Widerstand von { $run } samt Steckern und Enden messen; das Stück oder den Anschluss ersetzen, bei dem die Anzeige springt.
intermittent-look = Zuerst hier nachsehen: { $spots }.

## mounted-on-moving

check-mounted-on-moving-title = Auf Beweglichem befestigt
check-mounted-on-moving-holds = Endstufen, Verteiler, Sicherungen und Ähnliches an etwas Festem sitzen
check-mounted-on-moving-looks = Endstufen, Batterien, Ladewandler, Pufferkondensatoren, Prozessoren, Verteiler, Sammelschienen, Sicherungen, Automaten, Relais und Trennrelais an einem Sitz, einer umklappbaren Lehne, einer Tür oder Klappe, nach dem, was von ihrer Befestigung und sonst von ihrer Stelle bekannt ist; und die schweren davon an Verkleidung.
check-mounted-on-moving-why = Ihre Leitungen biegen sich bei jedem Umklappen und ihre Schrauben lockern sich. Bei einem Aufprall schlägt die Endstufe in die Lehne, an der sie hängt.
check-mounted-on-moving-source = Allgemeine Praxis: Eine umklappbare Lehne trägt keine Geräte.
mounted-on-moving-what = { $part } ist an etwas befestigt, das nicht stillhält ({ $on }).
mounted-on-moving-remedy = { $part } an Karosserieblech befestigen oder an einem Brett oder Halter, der daran fest ist.
mounted-on-moving-place = { $part } sitzt auf etwas, das sich bewegt ({ $place }).
mounted-on-moving-place-remedy = { $part } an eine Stelle setzen, die stillhält, etwa an die Seitenwand oder den Ladeboden.

## loose-metal

check-loose-metal-title = Loses Metall
check-loose-metal-holds = weder eine Schraube noch ein Abschnitt oder anderes loses Metall im Auto liegen blieb
check-loose-metal-looks = Bauteile, bei denen eine lose Schraube, ein Abschnitt oder anderes Metall liegen gesehen wurde. Halt bei einer Batterie oder Lichtmaschine, sonst Beheben. Beurteilt wird es, gleich wer es liegen ließ.
check-loose-metal-why = Was im Auto lose liegt, wandert und bleibt an Anschlüssen und in bewegten Teilen hängen. Quer über den Polen einer Batterie lässt es mehr als tausend Ampere fließen, ohne Sicherung auf dem Weg; unter dem Teppich arbeitet es sich in eine Leitung.
check-loose-metal-source = Allgemeine Praxis: Nichts bleibt im Auto, was vorher nicht darin war, und jede herausgefallene Schraube wird gefunden.
loose-metal-what = Bei { $part } liegt loses Metall{ $source ->
    [yes] , und die Bolzen dort stehen ohne Sicherung davor unter Spannung
   *[no] { "" }
}.
loose-metal-remedy = Batterie trennen, aufheben, was bei { $part } liegt, und herausfinden, woher es kommt.

## mounting-loose

check-mounting-loose-title = Lose Befestigung
check-mounting-loose-holds = jedes Befestigungsloch seine Schraube hat, gerade zur Fläche, und nichts lose liegt
check-mounting-loose-looks = Bauteile, deren Befestigungslöcher und Schrauben gezählt sind und denen Schrauben fehlen, die schief sitzen oder lose liegen. Beheben, wo ein Bauteil lose liegt oder die Hälfte der Schrauben oder mehr fehlt, sonst Ordnen. Was angesehen wurde, wird beurteilt, wer immer es angebracht hat.
check-mounting-loose-why = Was halb befestigt ist, klappert, schnarrt und fällt ab. Und eine fehlende Schraube ist irgendwo: Lose im Auto findet sie Klemmen und bewegte Teile.
check-mounting-loose-source = Allgemeine Praxis: Jedes Befestigungsloch eines Lautsprechers oder einer Endstufe bekommt seine Schraube, gerade zur Fläche, und keine lose Schraube bleibt im Auto.
mounting-loose-lies = { $part } liegt lose.
mounting-loose-fix = { $part } an Karosserieblech befestigen oder an einem Brett oder Halter, der daran fest ist.
mounting-loose-what = { $part } fehlen { $missing } von { $holes } Schrauben.
mounting-loose-unknown = { $missing ->
    [screws] Wie viele Schrauben { $part } hat, ist nicht bekannt.
   *[holes] Wie viele Befestigungslöcher { $part } hat, ist nicht bekannt.
}
mounting-loose-count = { $missing ->
    [screws] Die Schrauben
   *[holes] Die Befestigungslöcher
} von { $part } zählen.
mounting-loose-crooked = { $part } sitzt nicht gerade auf seiner Fläche.
mounting-loose-remedy = Jedem Loch von { $part } seine Schraube geben und nach den herausgefallenen suchen: Keine bleibt lose im Auto.
mounting-loose-square = { $part } abnehmen, die Auflage frei machen und gerade anschrauben.

## moving-joint

check-moving-joint-title = Bewegte Stelle
check-moving-joint-holds = eine Leitung nur im Faltenbalg des Herstellers oder in einem dafür gemachten Leitungssatz über ein Scharnier oder in einen Sitz führt
check-moving-joint-looks = Leitungen, die sich biegen, wenn eine Tür, eine Klappe oder ein Sitz bewegt wird, und weder im Faltenbalg des Herstellers noch in einem dafür gemachten Leitungssatz liegen. Halt, wo eine Quelle sie unter Spannung setzen kann, sonst Beheben. Hat niemand angegeben, was die Leitung schützt, bleibt der Befund offen. Leitungssätze des Herstellers werden nur beurteilt, wo jemand festgestellt hat, dass ihr Faltenbalg gerissen ist oder fehlt.
check-moving-joint-why = Eine Leitung bricht nach einigen tausend Biegungen, Draht für Draht, und zuerst dort, wo ein Binder oder eine Kante sie festhält. Ein gerissener Faltenbalg schneidet, was er schützen soll, und lässt Wasser ein.
check-moving-joint-source = Allgemeine Praxis: Eine Leitung biegt sich nur im Faltenbalg des Herstellers.
moving-joint-what = { $run } biegt sich hier ohne Faltenbalg oder dafür gemachten Leitungssatz ({ $spots }){ $live ->
    [yes] , und sie steht unter Spannung
   *[no] { "" }
}.
moving-joint-remedy = { $run } mit einer Schlaufe zum Biegen durch den Faltenbalg des Herstellers führen, oder auf einem Weg, der sich nicht bewegt.

## unsupported

check-unsupported-title = Leitung hängt frei
check-unsupported-holds = die Befestigungen dicht genug beieinander sitzen
check-unsupported-looks = Leitungen, bei denen der größte Abstand zwischen zwei Befestigungen gemessen ist und über dem Grenzwert liegt. Nach Leitungen, die einen Weg haben und länger als der Grenzwert sind, bei denen ihn aber niemand gemessen hat, wird in einem Befund gefragt.
check-unsupported-why = Eine Leitung, die hängt, schwingt, scheuert und zieht an ihren Enden.
check-unsupported-source = ISO 10133:2012 Abschnitte 7.3 und 7.4; ABYC E-11 11.15 (aus dem Gedächtnis).
unsupported-what = { $run } hängt über { $hangs } frei; der Grenzwert ist { $most }.
unsupported-remedy = { $run } mindestens alle { $most } mit Clips oder Bindern an etwas Festem halten.
unsupported-unknown = Wie weit die Befestigungen von { $runs } auseinander liegen, ist nicht bekannt.
unsupported-find = Den größten Abstand zwischen zwei Befestigungen von { $runs } messen.

## water-way

check-water-way-title = Weg für Wasser
check-water-way-holds = Öffnungen nach außen dicht sind
check-water-way-looks = Leitungen, die von außen, wo Wasser hinkommt oder der Motor sitzt, durch eine Öffnung im Blech führen und dabei nur in einem Schlauch oder Wellrohr liegen. Eine Öffnung ganz ohne Schutz meldet bare-edge, einen fehlenden Faltenbalg moving-joint.
check-water-way-why = Wasser läuft an der Leitung entlang bis zur tiefsten Stelle im Innern: Teppich, Stecker, ein Steuergerät. Denselben Weg nehmen Abgase und Feuer.
check-water-way-source = Allgemeine Praxis.
water-way-what = { $run } kommt von außen, und nichts dichtet ihren Weg ab ({ $spots }).
water-way-remedy = Eine Tülle setzen, die { $run } umschließt, und davor eine Schlaufe lassen, von der Wasser abtropft.
