## feed-unprotected

check-feed-unprotected-title = Zuleitung ungesichert
check-feed-unprotected-holds = zwischen jedem unter Spannung stehenden Leiter und jeder Quelle ein Überstromschutz liegt
check-feed-unprotected-looks = Leitungen unter Spannung, in die eine Quelle Strom treiben kann, ohne dass er durch eine wirksame Sicherung oder einen Automaten läuft, und die dort enden, wo Strom verbraucht wird, oder im Leeren. Eine Sicherung hinter dem ersten Verbraucher, eine Ringzuleitung mit Sicherung nur in einem Arm, eine Sicherung, um die eine zweite Leitung herumführt, und eine überbrückte Sicherung lassen alle solche Leitungen übrig. Eine Leitung, die innerhalb des Grenzwerts zu ihrem ersten Schutzorgan führt, bleibt der Sicherung selbst überlassen; eine, die von zu weit her dorthin führt, meldet fuse-too-far. Alle Leitungen hinter einer fehlenden Sicherung ergeben einen Befund.
check-feed-unprotected-why = Ein Kurzschluss einer solchen Leitung zur Karosserie zieht alles, was die Batterie hergibt, oft mehr als tausend Ampere. Die Leitung glüht binnen Sekunden, und nichts hält das auf als das Feuer selbst oder eine durchgebrannte Leitung.
check-feed-unprotected-source = 33 CFR 183.455 für Sportboote; allgemeine Praxis der Fahrzeug-Audiotechnik.
feed-unprotected-what = { $runs } { $runs ->
    [one] steht
   *[other] stehen
} von { $sources } her unter Spannung, ohne Sicherung auf dem Weg: Ein Kurzschluss verbrennt die Leitung.
feed-unprotected-remedy = Eine Sicherung, die die Leitung verträgt, neben { $sources } setzen, vor allem anderen an dieser Zuleitung.
feed-unprotected-bridged = { $runs } { $runs ->
    [one] steht
   *[other] stehen
} von { $sources } her unter Spannung, ohne Sicherung auf dem Weg, weil { $devices } überbrückt { $devices ->
    [one] ist
   *[other] sind
}: Ein Kurzschluss verbrennt die Leitung.
feed-unprotected-bridged-remedy = Die Brücke entfernen und eine Sicherung mit dem richtigen Nennstrom einsetzen.
feed-unprotected-bypassed = { $runs } { $runs ->
    [one] steht
   *[other] stehen
} von { $sources } her unter Spannung, ohne Sicherung auf dem Weg, weil eine andere Leitung um { $devices } herumführt: Ein Kurzschluss verbrennt die Leitung.
feed-unprotected-bypassed-remedy = Diese Leitung entfernen oder alles durch eine einzige Sicherung neben { $sources } führen.

## fuse-breaking-capacity

check-fuse-breaking-capacity-title = Ausschaltvermögen zu klein
check-fuse-breaking-capacity-holds = der Strom eines Kurzschlusses unmittelbar hinter einem Schutzorgan nicht größer ist, als es abschalten kann
check-fuse-breaking-capacity-looks = Der größte Strom, den die Quellen in einen Kurzschluss unmittelbar hinter einer Sicherung oder einem Automaten treiben können, bei warmer und geladener Batterie, gegen das, was das Schutzorgan abschalten kann: wie eingetragen, sonst wie für seine Bauform üblich. Diese Angabe gilt für eine höhere Spannung als 12 V, was das Regelwerk berücksichtigen darf. Bei einem Automaten und bei einer Glassicherung muss sie angegeben sein.
check-fuse-breaking-capacity-why = Ein Schutzorgan, das mehr abschalten soll, als es kann, platzt womöglich oder zieht einen Lichtbogen, der weiterbrennt.
check-fuse-breaking-capacity-source = Anwendungsbereich von ISO 8820-3:2015 für Flachsicherungen (1000 A); Streifensicherungen nach üblichen veröffentlichten Angaben (aus dem Gedächtnis). Der Strom folgt aus dem Kaltstartstrom der Batterie.
check-fuse-breaking-capacity-unmended = Ein Verteiler, dessen Sicherungen es in seinen Nennströmen in keiner stärkeren Bauform gibt, und die Sicherungen des Fahrzeugs: Das ist Sache des Herstellers oder einer neuen Aufteilung.
fuse-breaking-capacity-what = Ein Kurzschluss hinter { $device } zieht bis zu { $draws }; abschalten kann sie { $breaks }.
fuse-breaking-capacity-remedy = Neben der Quelle, vor dieser hier, eine Schraubsicherung setzen, die diesen Strom abschalten kann.
fuse-breaking-capacity-unknown = Ein Kurzschluss hinter { $device } zieht bis zu { $draws }; ob sie das abschalten kann, ist nicht bekannt.
fuse-breaking-capacity-find = Das Ausschaltvermögen von { $device } am Gerät oder in seinen Daten ablesen.

## fuse-in-return

check-fuse-in-return-title = Sicherung in der Rückleitung
check-fuse-in-return-holds = jede Sicherung und jeder Automat auf der Plusseite vor dem Verbraucher sitzt
check-fuse-in-return-looks = Eine Sicherung oder ein Automat zwischen einem Verbraucher und dem Weg zurück zur Quelle, wo ein Minuspol ohne Umweg über einen Verbraucher erreichbar ist und kein Pluspol. Schützt nichts die Zuleitung desselben Verbrauchers, so gehört das zu diesem Befund und wird nicht noch einmal gemeldet.
check-fuse-in-return-why = Ein Kurzschluss der Zuleitung zur Karosserie läuft nie durch eine solche Sicherung, sie schützt also nichts. Löst sie doch einmal aus, so bleibt der Verbraucher durch und durch unter Spannung, und eine Hand oder ein Werkzeug, das ihn berührt, schließt den Stromkreis.
check-fuse-in-return-source = Allgemeine Praxis; 46 CFR 183.380(b) für die Regel, dass eine Rückleitung nur zusammen mit der Zuleitung getrennt wird.
fuse-in-return-what = { $device } sitzt in der Rückleitung von { $loads ->
    [0] ihrem Verbraucher
   *[other] { $loads }
}: Ein Kurzschluss der Zuleitung läuft nie durch sie.
fuse-in-return-remedy = { $device } herausnehmen und die Rückleitung durchverbinden.
fuse-in-return-open = { $device } sitzt in der Rückleitung von { $loads ->
    [0] ihrem Verbraucher
   *[other] { $loads }
}, und die Zuleitung { $runs } schützt nichts: Ihr Kurzschluss zur Karosserie läuft nie durch { $device }.
fuse-in-return-open-remedy = { $device } in die Zuleitung neben die Quelle setzen und die Rückleitung durchverbinden.

## fuse-outsizes-wire

check-fuse-outsizes-wire-title = Sicherung zu groß für die Leitung
check-fuse-outsizes-wire-holds = der Nennstrom jedes Schutzorgans höchstens so groß ist wie der Strom, den jede dahinterliegende Leitung trägt, mal dem Faktor des Regelwerks
check-fuse-outsizes-wire-looks = Eine Sicherung oder ein Automat, dessen Nennstrom über dem zulässigen Strom einer Leitung dahinter liegt, bis zum nächsten Schutzorgan. Leitungen, die nebeneinander zwischen denselben zwei Punkten liegen, zählen zusammen; jede für sich betrachtet uneven-parallel. Alle zu dünnen Leitungen hinter einem Schutzorgan ergeben einen Befund.
check-fuse-outsizes-wire-why = Im Fehlerfall gibt dann nicht die Sicherung nach, sondern die Leitung: Sie kann das Feuer durch das ganze Fahrzeug tragen, ehe die Sicherung auslöst.
check-fuse-outsizes-wire-source = ISO 13297 Abschnitt 13.1.5 in strenger Fassung; 33 CFR 183.455(c)(1) erlaubt unter 50 V 150 %, dem folgt das Regelwerk für Sportboote.
fuse-outsizes-wire-what = { $run } trägt dort, wo sie liegt, { $can }; { $device } lässt { $lets } durch.
fuse-outsizes-wire-either = In { $device } { $rating } einsetzen oder für { $run } Kupfer mit { $size } legen.
fuse-outsizes-wire-fit = In { $device } { $rating } einsetzen.
fuse-outsizes-wire-lay = Für { $run } Kupfer mit { $size } legen oder ihr an ihrem Anfang eine eigene Sicherung geben.
fuse-outsizes-wire-own = { $run } an ihrem Anfang eine eigene Sicherung geben.
fuse-outsizes-wire-no-rating = Der Nennstrom von { $device } ist nicht bekannt; ob { $runs } damit geschützt { $runs ->
    [one] ist
   *[other] sind
}, bleibt offen.
fuse-outsizes-wire-unknown = Ob { $device } ({ $rating }) die Leitung { $run } schützt, bleibt offen. Nicht bekannt: { $missing }.

## wire-before-fuse

check-wire-before-fuse-title = Leitung vor Sicherung
check-wire-before-fuse-holds = bei einem Kurzschluss am fernen Ende jeder Leitung ihr Schutzorgan auslöst, bevor die Leitung Schaden nimmt
check-wire-before-fuse-looks = Jede Leitung unter Spannung wird an ihrem fernen Ende gegen die Karosserie kurzgeschlossen und über die Zeit verfolgt: Das Schutzorgan altert nach seinen Auslösezeiten, der Leiter erwärmt sich, und seine Isolierung nimmt oberhalb dessen Schaden, was sie kurzzeitig verträgt. Veröffentlichte Auslösezeiten sind ein Band, und eine Batterie gibt mehr oder weniger. Schaden in jedem Fall oder nach Auslösezeiten, die für das Schutzorgan eingetragen sind, hat den Grad Halt; Schaden nur in manchen Fällen, etwa bei der längsten veröffentlichten Zeit, den Grad Beheben.
check-wire-before-fuse-why = Dann ist die Leitung die Sicherung: Ihre Isolierung schmilzt und raucht auf ganzer Länge, ehe etwas auslöst.
check-wire-before-fuse-source = Regel: IEC 60364-4-43 Abschnitt 434.5.2, I²t ≤ k²S², dazu die Wärme, die abfließt. Grenzen der Isolierung: BS 7671 Tabelle 43.1, 160 °C für Thermoplast (gelesen). Auslösezeiten: ISO 8820-3, ISO 8820-5, SAE J553 (aus dem Gedächtnis); die des Datenblatts eintragen, wo sie vorliegen.
check-wire-before-fuse-unmended = Wo sich Schutzorgane mehrerer Wege den Strom teilen, verlagert ihn jede Änderung auf die anderen; und wo keine dickere Leitung in die Klemmen geht.
wire-before-fuse-what = Ein Kurzschluss am fernen Ende von { $run } zieht bis zu { $draws }. Die Leitung hält { $lasts } aus; { $devices } darf { $soonest } bis { $latest } brauchen.
wire-before-fuse-holds-on = Ein Kurzschluss am fernen Ende von { $run } zieht bis zu { $draws }. Die Leitung hält { $lasts } aus; { $devices } muss nicht auslösen.
wire-before-fuse-remedy = Vor { $run } eine flinkere oder kleinere Sicherung setzen oder die Leitung dicker legen.
wire-before-fuse-data-sheet = Die Auslösezeiten von { $devices } aus dem Datenblatt eintragen; sind sie nicht besser, vor { $run } eine flinkere oder kleinere Sicherung setzen oder die Leitung dicker legen.

## short-never-clears

check-short-never-clears-title = Kurzschluss ohne Ende
check-short-never-clears-holds = ein Kurzschluss am fernen Ende jeder Leitung genug Strom zieht, um ihr Schutzorgan auszulösen
check-short-never-clears-looks = Der Kurzschluss von wire-before-fuse, wo die Leitung ihn verträgt: der Strom, den die schwächste glaubhafte Batterie durch die warme Leitung treibt, gegen den, der das Schutzorgan auslöst. Löst es nur in manchen Fällen aus, bei der kürzesten seiner Zeiten oder mit starker Batterie, ist der Grad Beheben.
check-short-never-clears-why = Das Schutzorgan hält den Kurzschluss für einen Verbraucher. Der Strom fließt, bis die Batterie leer ist, und jede schlechte Verbindung auf seinem Weg glüht.
check-short-never-clears-source = Allgemeine Praxis; Auslösezeiten wie bei wire-before-fuse.
check-short-never-clears-unmended = Wo sich Schutzorgane mehrerer Wege den Strom teilen, verlagert ihn jede Änderung auf die anderen; und wo keine dickere Leitung in die Klemmen geht.
short-never-clears-what = Ein Kurzschluss am fernen Ende von { $run } zieht höchstens { $draws }: { $devices } löst nie aus.
short-never-clears-perhaps = Ein Kurzschluss am fernen Ende von { $run } zieht womöglich nur { $draws }: { $devices } muss nicht auslösen.
short-never-clears-remedy = Statt { $devices } eine kleinere Sicherung setzen oder { $run } dicker legen, damit ein Kurzschluss mehr Strom zieht.

## fuse-order

check-fuse-order-title = Reihenfolge der Sicherungen
check-fuse-order-holds = von zwei Schutzorganen hintereinander das dem Fehler nächste zuerst auslöst
check-fuse-order-looks = Zwei Sicherungen oder Automaten hintereinander, bei einem Kurzschluss gleich hinter dem zweiten. Gemeldet wird das erste, wenn es an beiden Rändern seiner veröffentlichten Zeiten das flinkere ist.
check-fuse-order-why = Sonst legt ein Fehler in einem Zweig alles an der Zuleitung still, und die durchgebrannte Sicherung verrät nicht, wo der Fehler liegt.
check-fuse-order-source = Allgemeine Praxis der Selektivität von Schutzorganen in Reihe; Auslösezeiten wie bei wire-before-fuse.
check-fuse-order-unmended = Wo beide Schutzorgane so klein sind, wie es die Verbraucher zulassen, und so groß, wie es die Leitungen vertragen; und für die Sicherungen des Fahrzeugs, deren Nennströme bleiben.
fuse-order-what = Ein Kurzschluss gleich hinter { $near } zieht bis zu { $draws }; { $far }, weiter vorn, löst zuerst aus.
fuse-order-remedy = Als { $far } eine größere oder trägere Sicherung setzen, wenn ihre Leitungen das tragen, oder als { $near } eine kleinere oder flinkere.

## fuse-too-far

check-fuse-too-far-title = Sicherung zu weit weg
check-fuse-too-far-holds = die ungesicherte Länge von jeder Quelle bis zu ihrem ersten Schutzorgan innerhalb des Grenzwerts bleibt
check-fuse-too-far-looks = Das längste Stück Leitung von der Klemme einer Quelle bis zur ersten Sicherung oder zum ersten Automaten, an der Leitung entlang. Bei zwei Quellen zählt jedes Ende. Regeln für Sportboote erlauben mehr, wo das ganze Stück in einer Umhüllung oder einem Schutzrohr liegt.
check-fuse-too-far-why = Zwischen Batterie und Sicherung hält nichts einen Kurzschluss auf. Je länger dieses Stück, an desto mehr Kanten, Scharnieren und Schrauben führt es vorbei.
check-fuse-too-far-source = Allgemeine Praxis der Fahrzeug-Audiotechnik, 18 Zoll oder 0,45 m an der Leitung entlang; 33 CFR 183.455 und ABYC E-11 für Sportboote.
fuse-too-far-what = { $first ->
    [0] Die erste Sicherung sitzt
    [one] { $first } sitzt
   *[other] { $first } sitzen
} { $far } Leitung von { $sources } entfernt; der Grenzwert ist { $allowed }. Bis dorthin schützt nichts { $runs }.
fuse-too-far-remedy = Die Sicherung innerhalb von { $allowed } von { $sources } setzen, an der Leitung entlang gemessen.
fuse-too-far-unknown = Wie weit { $first ->
    [0] die erste Sicherung
   *[other] { $first }
} von { $sources } entfernt sitzt, bleibt offen: Eine Länge von { $runs } ist nicht bekannt.
fuse-too-far-find = { $runs } von { $sources } bis { $first ->
    [0] zur ersten Sicherung
   *[other] { $first }
} messen, an der Leitung entlang.

## fuse-undersized

check-fuse-undersized-title = Sicherung zu klein
check-fuse-undersized-holds = der Dauerstrom höchstens 80 % des Nennstroms beträgt und Spitzen unter dem Strom bleiben, bei dem das Schutzorgan auslösen muss
check-fuse-undersized-looks = Der Effektivwert des Stroms durch eine Sicherung oder einen Automaten bei der gewählten Aussteuerung gegen den Anteil des Nennstroms, den sie auf Dauer trägt, und der Spitzenstrom gegen den kleinsten Strom, bei dem ihre Bauart auslösen muss. Werkseitige Sicherungen werden dort beurteilt, wo etwas Hinzugefügtes daran hängt.
check-fuse-undersized-why = Eine Sicherung nahe ihrem Nennstrom altert und löst eines Tages aus, ohne dass jemand einen Grund findet. Die nächste Hand setzt dann eine größere ein.
check-fuse-undersized-source = NFPA 70 210.20 und Praxis der Bauteilhersteller für die 80 % (aus dem Gedächtnis); ISO 8820-3 und -5 für den Strom, bei dem eine Bauart auslösen muss (aus dem Gedächtnis).
check-fuse-undersized-unmended = Für eine Sicherung des Fahrzeugs: Ihr Nennstrom bleibt, und der Verbraucher muss von ihrem Stromkreis herunter.
fuse-undersized-what = { $device } führt dauernd { $carries }; mit { $rating } Nennstrom trägt sie { $lasting }.
fuse-undersized-bursts = Stromspitzen von { $peaks } laufen durch { $device }; mit { $rating } Nennstrom muss sie ab { $opens } auslösen.
fuse-undersized-remedy = In { $device } { $rating } einsetzen; die Leitung dahinter verträgt das.
fuse-undersized-wire = Nötig sind mindestens { $needs }: Zuerst eine Leitung legen, die eine solche Sicherung verträgt, oder Verbraucher wegnehmen.
fuse-undersized-unknown = Ob { $device } ihren Verbrauchern genügt, bleibt offen: Der Nennstrom ist nicht bekannt.

## second-source

check-second-source-title = Zweite Quelle
check-second-source-holds = ein Leiter zwischen zwei Quellen an beiden Enden geschützt ist
check-second-source-looks = Leitungen zwischen zwei Batterien oder zwischen einer Batterie und einem Ladegerät, das seinen Strom nicht selbst begrenzt, ohne eigenes Schutzorgan an einem der Enden. Eine Sicherung für beide Enden ist eine zu wenig.
check-second-source-why = Ein Kurzschluss wird von beiden Enden gespeist. Die Sicherung am einen Ende löst aus, und die andere Batterie verbrennt die Leitung weiter.
check-second-source-source = ISO 13297 Abschnitt 12.3 und ABYC E-11: Gegen jede Quelle, die einen Leiter speist, ist er geschützt; allgemeine Praxis.
second-source-what = { $runs } { $runs ->
    [one] liegt
   *[other] liegen
} zwischen zwei Quellen; von { $sources } her schützt sie nichts.
second-source-remedy = Auch neben { $sources } eine Sicherung setzen, die die Leitung verträgt.

## self-resetting-main

check-self-resetting-main-title = Hauptautomat schaltet selbst wieder ein
check-self-resetting-main-holds = das erste Schutzorgan hinter einer Quelle nicht von selbst wieder einschaltet
check-self-resetting-main-looks = Ein Automat, der nach dem Abkühlen wieder einschaltet, als erstes Schutzorgan zwischen einer Quelle und allem Übrigen.
check-self-resetting-main-why = In einen bleibenden Kurzschluss schaltet er wieder und wieder ein, und jedes Mal wird die Leitung neu erhitzt, bis etwas brennt, das nicht brennen sollte.
check-self-resetting-main-source = Allgemeine Praxis; ABYC E-11 verlangt Automaten mit Freiauslösung, die von Hand zurückgestellt werden (aus dem Gedächtnis).
self-resetting-main-what = { $device } ist das erste Schutzorgan hinter der Quelle und schaltet von selbst wieder ein.
self-resetting-main-remedy = Anstelle von { $device } eine Sicherung einsetzen oder einen Automaten, der von Hand zurückgestellt wird.

## uneven-parallel

check-uneven-parallel-title = Parallele Leitungen ungleich
check-uneven-parallel-holds = nebeneinanderliegende Leitungen sich den Strom teilen und eine allein übrig gebliebene noch geschützt ist
check-uneven-parallel-looks = Leitungen zwischen denselben zwei Punkten. Erstens, ob eine davon mehr als ihren gleichen Anteil nimmt, nach den Widerständen der Leitungen und ihrer Anschlüsse. Zweitens, bei Zuleitungen, ob das Schutzorgan davor für jede allein zu groß ist.
check-uneven-parallel-why = Die Leitung mit dem besseren Anschluss führt das meiste. Löst sich eine, so fällt das nicht auf, und die andere verbrennt hinter einer Sicherung, die für beide gewählt war.
check-uneven-parallel-source = NFPA 70 310.10(G) verlangt für parallele Leiter gleiche Länge, gleichen Werkstoff, Querschnitt und Anschluss (aus dem Gedächtnis); der Spielraum ist ein Ermessenswert dieses Projekts.
check-uneven-parallel-unmended = Wo eine einzige Leitung statt ihrer nicht in die Klemmen ginge.
uneven-parallel-alone = { $runs } liegen nebeneinander hinter { $device } ({ $lets }); { $run } allein trägt { $can }.
uneven-parallel-alone-remedy = Eine einzige Leitung legen, die { $rating } verträgt, oder jeder an beiden Enden eine eigene Sicherung geben.
uneven-parallel-shares = Von den { $carried } in { $runs } nimmt { $run } { $takes }; bis { $share } gilt als gleicher Anteil.
uneven-parallel-shares-remedy = Querschnitt, Länge, Werkstoff und Anschlüsse angleichen oder eine einzige Leitung an ihre Stelle legen.
