## Die gedruckte Übergabe: was der Kunde bekommt, und was der Nächste bekommt, der daran arbeitet.

paper-list-parts = Bauteile
paper-column-mounted = Befestigt an

handover-vehicle = Fahrzeug
handover-sheet = Blatt
handover-drawn-by = Gezeichnet von
handover-date = Datum
handover-revision = Änderungsstand
handover-for-customer = Dieses Papier sagt, was im Fahrzeug vorgefunden und was daran getan wurde und was zu wissen ist. Es gehört zu den Fahrzeugpapieren: Wer als Nächstes daran arbeitet, braucht es.
handover-came-with = Weshalb das Fahrzeug kam
handover-complaint = „{ $words }“ – { $state }
handover-complaint-done = „{ $words }“ – ausgeführt: { $done }. { $state }
handover-proven = Behoben und durch Messung belegt.
handover-settled = Erledigt.
handover-still-open = Noch offen.
handover-dangerous = Was gefährlich war
handover-dangerous-about = Das hätte einen Brand auslösen, jemanden verletzen oder das Fahrzeug stehen lassen können. Die Nummern sind die auf der Zeichnung.
handover-no-danger = Es fand sich nichts, was einen Brand auslösen, jemanden verletzen oder das Fahrzeug stehen lassen könnte.
handover-numbered = { $number }. { $title }
handover-danger-gone = Behoben: Es ist nicht mehr da.
handover-danger-left = Es ist noch da, mindestens zum Teil: siehe unten.
handover-before = Vorher
handover-before-shows = Wie vorgefunden. Die Nummern sind die der Gefahren oben.
handover-after = Nachher
handover-after-shows = Blatt { $sheet }.
handover-as-it-is = Die Anlage
handover-done = Was getan wurde
handover-done-extra = { $what } (während der Arbeit gefunden, { $on })
handover-became = { $becomes }: { $what }.
handover-called = { $tag } ({ $name })
handover-runs = { $count ->
    [one] eine Leitung
   *[other] { $count } Leitungen
}
handover-parts-and-runs = { $parts } und { $count ->
    [one] eine Leitung
   *[other] { $count } Leitungen
}
handover-left = Was bleibt, wie es ist
handover-found = Was vorgefunden wurde
handover-nothing-left = Die Prüfungen melden nichts mehr. Sie kennen die Zeichnung, nicht das Fahrzeug.
handover-finding = { $grade }: { $what }
handover-isolate = Wie die Anlage vom Strom getrennt wird
handover-isolate-off = Alles ausschalten und den Schlüssel vom Fahrzeug entfernen.
handover-isolate-battery = Die Minusklemme von { $battery } abnehmen, { $place }, und vom Pol fernhalten.
handover-isolate-fuse = Um nur diese Anlage zu trennen: { $fuse } herausnehmen, { $rating }, { $place }.
handover-isolate-fuse-any = Um nur diese Anlage zu trennen: { $fuse } herausnehmen, { $place }.
handover-place-unknown = Stelle nicht festgehalten
handover-fuse-rule = Löst eine Sicherung aus, hat das einen Grund. Einmal durch eine mit gleichem Nennstrom und gleicher Bauform ersetzen; löst sie wieder aus, den Grund suchen lassen. Nie eine größere einsetzen, und nie etwas anderes an ihrer Stelle.
handover-declined = Was abgelehnt wurde
handover-declined-about = Das Folgende wurde angeboten und begründet und abgelehnt. Es bleibt, wie es vorgefunden wurde.
handover-money = Preise
handover-condition = Zustand des Fahrzeugs bei der Annahme
handover-intake = { $words } ({ $at }, { $on })
handover-intake-at = { $words } ({ $at })
handover-intake-on = { $words } ({ $on })
handover-pictures = Bilder
handover-picture = { $of }: { $words }
handover-picture-on = { $words } ({ $on })
handover-picture-of-on = { $of }: { $words } ({ $on })
handover-sign-date = Ort, Datum
handover-sign-customer = Kunde
handover-sign-shop = Betrieb
handover-for-installer = Für den Nächsten, der daran arbeitet: { $title }
handover-conditions = Die Zahlen sind berechnet für: { $state }, { $duty }. Beurteilt nach: { $profile }.
handover-drawing = Zeichnung: { $sheet }
handover-drawing-part = Zeichnung: { $sheet }, Teil { $part } von { $count }
handover-drawing-place = Reihe { $row } von oben, Spalte { $column } von links. Was über den Rand hinausläuft, zeigt die Zeichnung im Ganzen.
handover-difference = Was anders ist als vorher
handover-from-above = Wo alles im Fahrzeug ist
handover-from-above-shows = Von oben gesehen, vorn ist links.
