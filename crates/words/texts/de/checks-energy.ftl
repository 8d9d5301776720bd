## over-budget

check-over-budget-title = Mehr Strom, als die Lichtmaschine liefert
check-over-budget-holds = der mittlere Verbrauch samt dem des Fahrzeugs nicht größer ist als das, was die Lichtmaschine bei der gewählten Drehzahl heiß liefert
check-over-budget-looks = Bei laufendem Motor: der mittlere Strom von allem auf dem Blatt bei der gewählten Aussteuerung, den Bedarf des Fahrzeugs eingeschlossen, gegen das, was die Lichtmaschinen heiß liefern können, im Leerlauf oder bei Fahrt.
check-over-budget-why = Die Batterie gleicht den Rest aus, wird nie voll, sulfatiert und startet eines Morgens den Motor nicht mehr.
check-over-budget-source = Allgemeine Praxis; die Leistung einer Lichtmaschine sinkt mit Hitze und Drehzahl (ISO 8854 gibt sie kalt und bei Prüfdrehzahl an, aus dem Gedächtnis).
over-budget-what = Im Mittel werden { $draws } entnommen, { $state ->
    [idle] bei Motor im Leerlauf
   *[cruise] bei Fahrt
}; { $alternators } { $alternators ->
    [one] kann
   *[other] können
} heiß { $gives } liefern.
over-budget-remedy = { $over } wegnehmen oder eine größere Lichtmaschine mit passender Ladeleitung einbauen.

## standing-drain

check-standing-drain-title = Ruhestrom zu groß
check-standing-drain-holds = der Ruhestrom über die Standzeit der Batterie genug lässt, um den Motor zu starten
check-standing-drain-looks = Die Ladung, die nach der Standzeit der Bedingungen in der Batterie bleibt, mit allem, was im Stand Strom zieht, das Fahrzeug eingeschlossen. Ist ein Fahrzeug auf dem Blatt, so wird dessen eigene Batterie betrachtet. Schalter zählen als ausgeschaltet, außer einem Batteriehauptschalter: Der zählt als eingeschaltet, solange das Blatt nichts anderes sagt; gemeint ist einer im einzigen Plus- oder Rückweg einer Batterie zum Fahrzeug oder zu zwei oder mehr Bauteilen. Was parallele Batterien untereinander austauschen, zählt nicht. Eine Einschaltleitung an Dauerplus meldet always-on.
check-standing-drain-why = Nach zwei Wochen am Flughafen springt der Motor nicht an, und eine Batterie, die einmal leer war, speichert auf Dauer weniger.
check-standing-drain-source = Allgemeine Praxis; beim verbleibenden Anteil steht die betrachtete Spanne.
check-standing-drain-unmended = Wo das, was Strom zieht, kein Verbraucher ist, der sich abschalten lässt, und keine Batterie üblicher Größe reicht: Erst muss gefunden werden, was Strom zieht.
standing-drain-what = Nach { $days } Tagen Standzeit sind noch { $left } in { $battery }; zum Starten sind mindestens { $least } nötig. Im Stand werden { $standing } entnommen.
standing-drain-remedy = Feststellen, was im Stand Strom zieht, und es hinter die Zündung oder einen Schalter legen.
standing-drain-unknown = Wie lange das Fahrzeug steht, ist nicht bekannt; was zum Starten bleibt, bleibt damit offen.
standing-drain-find = Nachfragen, wie lange es höchstens steht.
