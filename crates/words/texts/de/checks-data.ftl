## not-known

check-not-known-title = Nicht bekannt
check-not-known-holds = jeder Wert bekannt ist, der eine Prüfung entscheidet
check-not-known-looks = Werte, die als nicht bekannt gekennzeichnet sind, an beurteilten und benutzten Bauteilen und Leitungen, wo ein Wert sonst zur Hand ist. Was eine andere Prüfung offen lässt, wird dort gemeldet. Angenommene Werte werden hier nicht gemeldet; jeder Befund nennt die, auf denen er beruht.
check-not-known-why = Was nicht bekannt ist, lässt sich nicht beurteilen, und eine Zeichnung, die das sagt, ist mehr wert als eine, die rät.
check-not-known-source = Allgemeine Praxis.
not-known-what = Nicht bekannt von { $of }: { $properties }.
