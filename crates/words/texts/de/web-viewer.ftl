## Wo man nur ansieht.

viewer-no-page = Diese Seite lässt sich nicht öffnen
viewer-no-link = Dieser Link lässt sich nicht öffnen
viewer-without = Das Programm ohne ihn öffnen
