## Wer liest: Sprache und Einheiten, wie man sie auf der Seite wählt.

reader = Sprache und Einheiten
reader-language = Sprache
reader-lengths = Längen
reader-lengths-metres = Meter
reader-lengths-feet = Fuß und Zoll
reader-sizes = Querschnitte
reader-sizes-area = mm²
reader-sizes-gauge = AWG
reader-not-there = Die Texte auf { $language } waren nicht zu laden. Die Seite bleibt englisch.
