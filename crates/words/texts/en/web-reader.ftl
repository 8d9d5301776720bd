## Who reads: language and units, as one chooses them on the page.

reader = Language and units
reader-language = Language
reader-lengths = Lengths
reader-lengths-metres = metres
reader-lengths-feet = feet and inches
reader-sizes = Wire sizes
reader-sizes-area = mm²
reader-sizes-gauge = AWG
# $language: the name of the language in itself.
reader-not-there = The texts in { $language } could not be fetched. The page stays in English.
