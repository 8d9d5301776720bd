## damaged-run

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
