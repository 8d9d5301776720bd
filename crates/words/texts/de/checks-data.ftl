## not-known

check-not-known-title = Nicht bekannt
check-not-known-holds = jeder Wert bekannt ist, der eine Prüfung entscheidet
check-not-known-looks = Werte, die als nicht bekannt gekennzeichnet sind, an beurteilten und benutzten Bauteilen und Leitungen, wo ein Wert sonst zur Hand ist. Was eine andere Prüfung offen lässt, wird dort gemeldet. Ebenso Stellen und Wege, die die angegebene Karosserie nicht hat. Angenommene Werte werden hier nicht gemeldet; jeder Befund nennt die, auf denen er beruht.
check-not-known-why = Was nicht bekannt ist, lässt sich nicht beurteilen, und eine Zeichnung, die das sagt, ist mehr wert als eine, die rät.
check-not-known-source = Allgemeine Praxis.
check-not-known-unmended = Eine Angabe wird ermittelt, nicht gewählt: messen oder ablesen und eintragen.
not-known-what = Nicht bekannt von { $of }: { $properties }.
not-known-place = { $part } sitzt an einer Stelle, die diese Karosserie nicht hat: { $place }.
not-known-route = Der Weg von { $run } nennt, was diese Karosserie nicht hat: { $names }.
not-known-place-find = Aus dieser Karosserie wählen, oder ihr die Stelle oder den Durchgang hinzufügen.
