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
damaged-run-remedy = { $run } neu verlegen und von dem fernhalten, was das verursacht hat.
damaged-run-unknown = Der Zustand von { $run } ist nicht bekannt.
damaged-run-find = { $run } auf ganzer Länge ansehen.

## poor-ending

check-poor-ending-title = Schlechter Anschluss
check-poor-ending-holds = Enden auf eine Weise angeschlossen sind, die hält: gequetscht, gelötet und abgestützt oder geschraubt
check-poor-ending-looks = Enden und Verbinder, die von Hand verdrillt oder mit einem Schneidklemmverbinder gemacht sind oder blank auf einer Klemme liegen. Halt, wo eine Quelle sie unter Spannung setzt, sonst Beheben.
check-poor-ending-why = Solche Verbindungen lösen sich durch Erschütterung oder korrodieren und werden warm. Ein Ende unter Spannung, das sich löst, findet die Karosserie.
check-poor-ending-source = Allgemeine Praxis; 33 CFR 183.420 und ABYC E-11 verbieten Verbindungen, die allein auf Zug halten (aus dem Gedächtnis).
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
