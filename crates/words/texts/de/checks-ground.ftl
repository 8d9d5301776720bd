## ground-forbidden

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

ground-offset-what = Die Massen von { $parts } liegen bei Spitzen um { $differ } auseinander; der Grenzwert ist { $most }.
ground-offset-remedy = Beide an derselben Stelle mit kurzen, dicken Leitungen auf Masse legen oder getrennte Eingänge verwenden.

## ground-surface

ground-surface-what = { $ground } sitzt auf { $surface ->
    [painted] lackiertem Blech
    [hinge] einem Scharnier, einer Tür oder einem Deckel
   *[trim] einer Verkleidung oder einem Halter
}: Das gibt keinen dauerhaften Kontakt.
ground-surface-clean = Den Lack unter { $ground } bis aufs blanke Metall entfernen, verschrauben und versiegeln.
ground-surface-move = { $ground } auf blankes Metall der festen Karosserie versetzen.

## no-return

no-return-apart = { $plug } ist getrennt: Die Rückleitung von { $loads } endet dort.
no-return-nothing = An { $terminal } liegt nichts: { $loads } wird versorgt, hat aber keinen Weg zurück zur Quelle.
no-return-what = Die Rückleitung von { $loads } erreicht weder die Karosserie noch einen Minuspol.
no-return-remedy = Die Rückleitung von { $loads } in der Nähe auf blankes Karosseriemetall oder an den Minuspol der Quelle legen.
no-return-source = { $source } versorgt { $loads }, aber zu ihrem Minuspol kommt nichts zurück.
no-return-source-remedy = Den Minuspol von { $source } mit der Karosserie verbinden oder mit dem, worauf die Verbraucher zurückführen.
no-return-coil = Die Spule von { $relay } wird versorgt, hat aber keinen Rückweg: Das Relais zieht nie an.
no-return-coil-remedy = Das andere Ende der Spule von { $relay } auf Masse legen.

## return-through-shield

return-through-shield-what = { $carried } des Rückstroms von { $load } fließen durch den Schirm von { $runs }; der Grenzwert ist { $bears }.
return-through-shield-remedy = { $load } eine bessere Masse geben, nahe der Masse des Geräts, mit dem sie verbunden ist.
return-through-shield-only = { $load } hat keine eigene Masse: { $carried } fließen durch den Schirm von { $runs } zurück; der Grenzwert ist { $bears }.
return-through-shield-only-remedy = { $load } in der Nähe auf blankes Karosseriemetall legen, bevor wieder eingeschaltet wird.

## return-too-long

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

return-too-thin-what = Die Masseleitung von { $amplifier } ({ $back }) leitet { $share } so gut wie ihre Zuleitung ({ $feed }); mindestens { $least } sollten es sein.
return-too-thin-remedy = Für { $runs } Kupfer mit { $size } legen.
return-too-thin-copper = Zur Masse so viel Kupfer legen wie in der Zuleitung.
return-too-thin-strap = Das Masseband von der Batterie zur Karosserie in { $vehicle } führt { $carries }; tragen kann es { $can }.
return-too-thin-strap-remedy = Vom Minuspol der Batterie zur Karosserie ein weiteres Masseband für die fehlenden { $missing } legen.

## sensor-bypassed

sensor-bypassed-what = { $runs } { $runs ->
    [one] liegt
   *[other] liegen
} an { $terminal }, hinter dem Stromsensor: Diesen Strom sieht das Fahrzeug nicht.
sensor-bypassed-remedy = Auf die Karosserie legen oder auf den Massepunkt des Herstellers auf der Karosserieseite des Sensors.
