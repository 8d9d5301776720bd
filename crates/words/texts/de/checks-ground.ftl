## ground-forbidden

check-ground-forbidden-title = Masse an verbotener Stelle
check-ground-forbidden-holds = keine Masse an einer Gurtverankerung, einer Sitzbefestigung oder einer Befestigung von Lenkung, Kraftstoffanlage oder Bremse liegt
check-ground-forbidden-looks = Benutzte Massepunkte an solchen Befestigungen. Ein Massepunkt, von dem niemand weiß, worauf er sitzt, bleibt hier offen, denn er könnte einer davon sein.
check-ground-forbidden-why = Eine Scheibe unter einer solchen Schraube ändert, wie sie beim Unfall hält; Strom durch Lenkungs- oder Bremsteile zerfrisst sie.
check-ground-forbidden-source = Anweisungen der Fahrzeughersteller für Befestigungen von Rückhaltesystem, Lenkung, Bremse und Kraftstoffanlage; allgemeine Praxis.
ground-forbidden-what = { $ground } sitzt an { $surface ->
    [seat-rail] einer Sitzschiene oder Sitzbefestigung
    [belt-anchor] einer Gurtverankerung
    [steering] einem Lenkungsteil
   *[brake-fuel] einer Befestigung von Bremse oder Kraftstoffanlage
}: Dort darf nichts befestigt werden.
ground-forbidden-remedy = { $ground } auf blankes Metall der festen Karosserie versetzen und die Befestigung nach Anweisung des Fahrzeugherstellers in Ordnung bringen lassen.
ground-forbidden-unknown = Nicht bekannt ist, worauf { $ground } sitzt.
ground-forbidden-find = { $ground } suchen und nachsehen, woran der Massepunkt verschraubt ist.

## ground-offset

check-ground-offset-title = Masseversatz
check-ground-offset-holds = die Massen von Geräten, die durch Signalleitungen verbunden sind, unter Last höchstens um den Grenzwert auseinanderliegen
check-ground-offset-looks = Die Spannung zwischen den Versorgungsmassen an beiden Enden einer Signalleitung, bei Spitzen, wo beide Eingänge ihre Signalmasse damit verbinden. Ein Befund je Paar. Eine schlechte, lange oder dünne Masse, die das verursacht, wird als solche gemeldet.
check-ground-offset-why = Der Unterschied liegt in Reihe mit dem Signal: Er ist als Pfeifen zu hören, das der Motordrehzahl folgt.
check-ground-offset-source = Allgemeine Praxis der Fahrzeug-Audiotechnik; beim Grenzwert steht die betrachtete Spanne.
ground-offset-what = Die Massen von { $parts } liegen bei Spitzen um { $differ } auseinander; der Grenzwert ist { $most }.
ground-offset-remedy = Beide an derselben Stelle mit kurzen, dicken Leitungen auf Masse legen oder getrennte Eingänge verwenden.

## ground-surface

check-ground-surface-title = Massepunkt ohne dauerhaften Kontakt
check-ground-surface-holds = Massepunkte auf blankem, festem Karosseriemetall sitzen
check-ground-surface-looks = Benutzte Massepunkte auf lackiertem Blech, an einem Scharnier, einer Tür oder einem Deckel oder an einem Verkleidungshalter. Was daraus folgt (ein großer Spannungsabfall, ein Masseversatz), wird nicht noch einmal gemeldet.
check-ground-surface-why = Lack isoliert, und ein Scharnier ist ein Lager, kein Leiter: Der Kontakt ist heute schlecht und im Winter schlechter.
check-ground-surface-source = NFPA 70 552.10(C): Kontaktflächen frei von Lack und Oxid; allgemeine Praxis.
ground-surface-what = { $ground } sitzt auf { $surface ->
    [painted] lackiertem Blech
    [hinge] einem Scharnier, einer Tür oder einem Deckel
   *[trim] einer Verkleidung oder einem Halter
}: Das gibt keinen dauerhaften Kontakt.
ground-surface-clean = Den Lack unter { $ground } bis aufs blanke Metall entfernen, verschrauben und versiegeln.
ground-surface-move = { $ground } auf blankes Metall der festen Karosserie versetzen.

## no-return

check-no-return-title = Kein Rückweg
check-no-return-holds = jeder versorgte Verbraucher zu jeder Quelle zurückführt, die ihn versorgt
check-no-return-looks = Ein Verbraucher, dessen Minusklemme weder die Karosserie noch einen Minuspol erreicht, und eine Quelle, zu deren Minuspol nichts zurückkommt. Verbraucher an einer unterbrochenen Rückleitung ergeben einen Befund. Eine durchtrennte Rückleitung meldet damaged-run, eine, die ihren Weg durch den Schirm einer Signalleitung findet, return-through-shield.
check-no-return-why = Ohne Weg zurück fließt kein Strom: Der Verbraucher ist tot. Schlimmer noch, der Strom sucht sich einen anderen Weg, durch Schirme und Antennenleitungen.
check-no-return-source = Allgemeine Praxis; folgt aus der kirchhoffschen Knotenregel.
no-return-apart = { $plug } ist getrennt: Die Rückleitung von { $loads } endet dort.
no-return-nothing = An { $terminal } liegt nichts: { $loads } wird versorgt, hat aber keinen Weg zurück zur Quelle.
no-return-what = Die Rückleitung von { $loads } erreicht weder die Karosserie noch einen Minuspol.
no-return-remedy = Die Rückleitung von { $loads } in der Nähe auf blankes Karosseriemetall oder an den Minuspol der Quelle legen.
no-return-source = { $source } versorgt { $loads }, aber zu ihrem Minuspol kommt nichts zurück.
no-return-source-remedy = Den Minuspol von { $source } mit der Karosserie verbinden oder mit dem, worauf die Verbraucher zurückführen.
no-return-coil = Die Spule von { $relay } wird versorgt, hat aber keinen Rückweg: Das Relais zieht nie an.
no-return-coil-remedy = Das andere Ende der Spule von { $relay } auf Masse legen.

## return-through-shield

check-return-through-shield-title = Rückstrom im Schirm
check-return-through-shield-holds = der Schirm einer Signalleitung nie Rückleitung der Versorgung ist und nie mehr führt, als er verträgt
check-return-through-shield-looks = Signalleitungen, deren Schirm Rückstrom eines Verbrauchers führt: weil der Verbraucher keine eigene Masse hat oder weil seine Masse so viel schlechter ist als die am anderen Ende, dass der Strom auch den Schirm nimmt.
check-return-through-shield-why = Ein Schirm besteht aus wenigen dünnen Drähten. Er glüht binnen Sekunden, mitten im Leitungssatz, hinter einer Verkleidung, und keine Sicherung liegt auf diesem Weg.
check-return-through-shield-source = Allgemeine Praxis der Fahrzeug-Audiotechnik; der Grenzwert gilt für ein dünnes Geflecht.
check-return-through-shield-unmended = Für ein Bauteil mit eigener Masse: Welche der Massen besser werden muss, zeigt eine Messung.
return-through-shield-what = { $carried } des Rückstroms von { $load } fließen durch den Schirm von { $runs }; der Grenzwert ist { $bears }.
return-through-shield-remedy = { $load } eine bessere Masse geben, nahe der Masse des Geräts, mit dem sie verbunden ist.
return-through-shield-only = { $load } hat keine eigene Masse: { $carried } fließen durch den Schirm von { $runs } zurück; der Grenzwert ist { $bears }.
return-through-shield-only-remedy = { $load } in der Nähe auf blankes Karosseriemetall legen, bevor wieder eingeschaltet wird.

## return-too-long

check-return-too-long-title = Rückweg zu lang
check-return-too-long-holds = Länge und Widerstand der Masseleitung einer Endstufe und ihres ganzen Rückwegs innerhalb der Grenzwerte bleiben
check-return-too-long-looks = Die Leitung von der Minusklemme einer Endstufe bis zum ersten Punkt auf der Karosserie, an der Leitung entlang; ihr Widerstand mit Anschlüssen und Kontakt des Massepunkts; und der Widerstand des ganzen Wegs zurück zur Quelle. Eine Endstufe, deren Rückleitung ganz verdrahtet ist, wird nur an diesem letzten gemessen. Ein schlechter Massepunkt, ein schlechter Anschluss oder eine beschädigte Leitung auf dem Weg wird als solches gemeldet und nicht hier.
check-return-too-long-why = Der ganze Strom der Endstufe läuft durch ihre Masseleitung. Was dort verloren geht, fehlt ihrer Versorgung und hebt die Masse der Endstufe über die des Radios, was als Pfeifen zu hören ist.
check-return-too-long-source = Allgemeine Praxis der Fahrzeug-Audiotechnik: 18 Zoll oder 0,45 m; die Widerstände sind Ermessenswerte mit der Spanne, die bei den Grenzwerten steht.
return-too-long-unknown = Ob die Masseleitung von { $load } kurz genug ist, bleibt offen: Die Länge von { $run } ist nicht bekannt.
return-too-long-find = { $run } messen.
return-too-long-what = Die Masseleitung von { $load } ist { $length } lang; der Grenzwert ist { $most }.
return-too-long-remedy = { $load } innerhalb von { $most } auf blankes Karosseriemetall legen.
return-too-long-lead = Die Masseleitung von { $load } hat { $ohms }, davon { $contact } im Kontakt ihres Massepunkts; der Grenzwert ist { $most }.
return-too-long-lead-remedy = Eine dickere Leitung verwenden und den Massepunkt bis aufs blanke Metall reinigen.
return-too-long-whole = Der ganze Rückweg von { $load } zu { $source } hat { $ohms }; der Grenzwert ist { $most }.
return-too-long-weakest = Der ganze Rückweg von { $load } zu { $source } hat { $ohms }, das meiste davon in { $weakest }; der Grenzwert ist { $most }.
return-too-long-whole-remedy = Dort, wo am meisten verloren geht, ein Masseband oder eine dickere Leitung hinzufügen.

## return-too-thin

check-return-too-thin-title = Rückleitung zu dünn
check-return-too-thin-holds = die Masseleitung einer Endstufe mindestens so gut leitet wie ihre Zuleitung und jedes Masseband zurück zu den Quellen seinen Strom trägt
check-return-too-thin-looks = Der Leitwert je Meter dessen, was an der Minusklemme einer Endstufe liegt, gegen den dessen, was an ihrer Plusklemme liegt; und den Strom im Masseband des Fahrzeugs von der Batterie zur Karosserie, wo etwas Hinzugefügtes darüber zurückführt.
check-return-too-thin-why = In beiden fließt derselbe Strom. Eine dünne Masseleitung verliert Spannung dort, wo es am meisten schadet, und erwärmt sich hinter einer Sicherung, die für die Zuleitung gewählt war.
check-return-too-thin-source = NFPA 70 552.10(C): Die Verbindung zur Karosserie ist nicht dünner als die Batterieleitung; allgemeine Praxis.
return-too-thin-what = Die Masseleitung von { $amplifier } ({ $back }) leitet { $share } so gut wie ihre Zuleitung ({ $feed }); mindestens { $least } sollten es sein.
return-too-thin-remedy = Für { $runs } Kupfer mit { $size } legen.
return-too-thin-copper = Zur Masse so viel Kupfer legen wie in der Zuleitung.
return-too-thin-strap = Das Masseband von der Batterie zur Karosserie in { $vehicle } führt { $carries }; tragen kann es { $can }.
return-too-thin-strap-remedy = Vom Minuspol der Batterie zur Karosserie ein weiteres Masseband für die fehlenden { $missing } legen.

## sensor-bypassed

check-sensor-bypassed-title = Stromsensor umgangen
check-sensor-bypassed-holds = Rückleitungen auf der Karosserieseite des Stromsensors der Batterie anschließen
check-sensor-bypassed-looks = In einem Fahrzeug mit Stromsensor an der Minusklemme der Batterie: hinzugefügte Leitungen unmittelbar an diesem Minuspol.
check-sensor-bypassed-why = Das Fahrzeug zählt, was durch den Sensor fließt. Was daran vorbeigeht, fehlt: Die Batterie wird zu wenig geladen, und Systeme schalten ab, die nicht abschalten sollten.
check-sensor-bypassed-source = Anweisungen der Fahrzeughersteller für Batteriesensoren; allgemeine Praxis.
sensor-bypassed-what = { $runs } { $runs ->
    [one] liegt
   *[other] liegen
} an { $terminal }, hinter dem Stromsensor: Diesen Strom sieht das Fahrzeug nicht.
sensor-bypassed-remedy = Auf die Karosserie legen oder auf den Massepunkt des Herstellers auf der Karosserieseite des Sensors.
