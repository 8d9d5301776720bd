## over-budget

over-budget-what = Im Mittel werden { $draws } entnommen, { $state ->
    [idle] bei Motor im Leerlauf
   *[cruise] bei Fahrt
}; { $alternators } { $alternators ->
    [one] kann
   *[other] können
} heiß { $gives } liefern.
over-budget-remedy = { $over } wegnehmen oder eine größere Lichtmaschine mit passender Ladeleitung einbauen.

## standing-drain

standing-drain-what = Nach { $days } Tagen Standzeit sind noch { $left } in { $battery }; zum Starten sind mindestens { $least } nötig. Im Stand werden { $standing } entnommen.
standing-drain-remedy = Feststellen, was im Stand Strom zieht, und es hinter die Zündung oder einen Schalter legen.
standing-drain-unknown = Wie lange das Fahrzeug steht, ist nicht bekannt; was zum Starten bleibt, bleibt damit offen.
standing-drain-find = Nachfragen, wie lange es höchstens steht.
