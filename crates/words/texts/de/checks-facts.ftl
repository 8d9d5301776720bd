## Angaben, die Befunde mitten im Satz anders nennen, als das Feld beschriftet ist (`field-…`).

fact-body-strap = Masseband der Karosserie
fact-closes-at = Einschaltspannung
fact-cut-off = Abschaltspannung
fact-ending-resistance = Übergangswiderstand
fact-high-pass = Hochpass
fact-hot-share = Anteil bei Hitze
fact-input-takes = größter Querschnitt des Eingangs
fact-minimum-load = kleinste erlaubte Last
fact-on-current = Strom im Betrieb
fact-output-takes = größter Querschnitt der Ausgänge
fact-permanent-fuse = Sicherung des Dauerplus
fact-pull-in = Anzugsspannung
fact-running-load = Strombedarf des Fahrzeugs in Betrieb
fact-standing-load = Ruhestrom des Fahrzeugs
fact-strap-current = Belastbarkeit des Massebands
fact-switched-fuse = Sicherung des Zündungsplus
fact-takes = größter Querschnitt
fact-turn-on-capacity = Belastbarkeit des Einschaltausgangs
fact-turn-on-current = Strom des Einschalteingangs
