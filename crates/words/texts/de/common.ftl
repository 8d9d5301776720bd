## Was jeder Satz brauchen kann.

list-and = und
list-nothing = nichts
list-more = { $shown } und { $more } weitere

## Nur in der Dokumentation dieses Pakets gezeigt.

sample-reach = { $fuse } sitzt { $far } Leitung entfernt. Nichts schützt { $runs }.
