## Alles beheben, und was eine Behebung bewirken würde.

mend-all-edit = { $count ->
    [one] { $count } Behebung vornehmen
   *[other] { $count } Behebungen vornehmen
}
mending-of-one = { $what }
mending-of-several = { $what } (×{ $count })
mending-clears = Behebt: { $findings }.
mending-brings = Brächte: { $findings }.
mending-brings-nothing = Brächte nichts Neues.
mending-counts = Halt { $stop } → { $stop_after }, Beheben { $fix } → { $fix_after }, Ordnen { $tidy } → { $tidy_after }
mending-choice = Zu entscheiden: { $choice }.
mending-found = Dieses Blatt sagt, was vorgefunden wurde. Behoben sagt es das nicht mehr: Soll es bleiben, den Plan beheben, der daraus gemacht wird.

## Warum ein Befund bleibt, nachdem alles behoben ist, was keine Entscheidung braucht.

left-brings = Was sich ohne Entscheidung beheben lässt, brächte: { $findings }.
left-same = Was sich ohne Entscheidung beheben lässt, ließe ebenso viel übrig, wie es behebt.
left-unknown = Eine Angabe fehlt. { $find }
left-no-edit = Keine Änderung der Zeichnung behebt das.

## Auf der Befehlszeile.

cli-command-mend = Zeigt, was jeden Befund behebt und was das brächte; nimmt eine Behebung vor, oder alle, die keine Entscheidung brauchen
cli-option-all-mend = Nimmt jede Behebung vor, die keine Entscheidung braucht und nichts verschlechtert
cli-option-finding = Nimmt die Behebung eines Befunds vor, nach seiner Nummer in der Liste
cli-option-way = Welche seiner Behebungen, wo es mehrere gibt
cli-option-output-mend = Wohin der Auftrag geschrieben wird, wie er dann ist; ohne das wird nichts geschrieben
cli-option-dry_run = Sagt nur, was getan würde, und schreibt nichts
cli-column-number = Nr.
cli-column-mend = Behebung
cli-column-finding = Für den Befund
cli-column-does = Was sie bewirkt
cli-column-why = Warum er bleibt
cli-mend-steps = Was getan wird, in dieser Reihenfolge:
cli-mend-left = Was bleibt:
cli-mend-nothing = Ohne Entscheidung ist nichts zu beheben.
cli-mend-none = Keine Behebung ist bekannt.
cli-mend-no-finding = es gibt keinen Befund { $number }; die Liste hat { $count }
cli-mend-no-way = Befund { $number } hat { $count ->
    [0] keine Behebung
    [one] eine Behebung
   *[other] { $count } Behebungen
}: { $what }

## Auf der Seite.

mend-all = Alles beheben, was keine Entscheidung braucht
mend-all-working = Es wird ermittelt, was sich beheben lässt: bisher { $made } …
mend-all-make = { $count ->
    [one] Diese { $count } Behebung vornehmen
   *[other] Diese { $count } Behebungen vornehmen
}
mend-all-nothing = Ohne Entscheidung ist nichts zu beheben.
mend-all-steps = Was getan wird, in dieser Reihenfolge
mend-all-left = Was bleibt
mend-all-none-left = Nichts bleibt. Die Prüfungen kennen die Zeichnung, nicht das Fahrzeug: eine Fachkraft darüber schauen lassen.
mend-all-undo = Einmal Rückgängig nimmt alles zurück.
mend-look = Zeigen, was sie bewirkt
