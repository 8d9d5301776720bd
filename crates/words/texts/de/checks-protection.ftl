## feed-unprotected

feed-unprotected-what = { $runs } { $runs ->
    [one] steht
   *[other] stehen
} von { $sources } her unter Spannung, ohne Sicherung auf dem Weg: Ein Kurzschluss verbrennt die Leitung.
feed-unprotected-remedy = Eine Sicherung, die die Leitung verträgt, neben { $sources } setzen, vor allem anderen an dieser Zuleitung.
feed-unprotected-bridged = { $runs } { $runs ->
    [one] steht
   *[other] stehen
} von { $sources } her unter Spannung, ohne Sicherung auf dem Weg, weil { $devices } überbrückt { $devices ->
    [one] ist
   *[other] sind
}: Ein Kurzschluss verbrennt die Leitung.
feed-unprotected-bridged-remedy = Die Brücke entfernen und eine Sicherung mit dem richtigen Nennstrom einsetzen.
feed-unprotected-bypassed = { $runs } { $runs ->
    [one] steht
   *[other] stehen
} von { $sources } her unter Spannung, ohne Sicherung auf dem Weg, weil eine andere Leitung um { $devices } herumführt: Ein Kurzschluss verbrennt die Leitung.
feed-unprotected-bypassed-remedy = Diese Leitung entfernen oder alles durch eine einzige Sicherung neben { $sources } führen.

## fuse-breaking-capacity

fuse-breaking-capacity-what = Ein Kurzschluss hinter { $device } zieht bis zu { $draws }; abschalten kann sie { $breaks }.
fuse-breaking-capacity-remedy = Neben der Quelle, vor dieser hier, eine Schraubsicherung setzen, die diesen Strom abschalten kann.
fuse-breaking-capacity-unknown = Ein Kurzschluss hinter { $device } zieht bis zu { $draws }; ob sie das abschalten kann, ist nicht bekannt.
fuse-breaking-capacity-find = Das Ausschaltvermögen von { $device } am Gerät oder in seinen Daten ablesen.

## fuse-in-return

fuse-in-return-what = { $device } sitzt in der Rückleitung von { $loads ->
    [0] ihrem Verbraucher
   *[other] { $loads }
}: Ein Kurzschluss der Zuleitung läuft nie durch sie.
fuse-in-return-remedy = { $device } herausnehmen und die Rückleitung durchverbinden.
fuse-in-return-open = { $device } sitzt in der Rückleitung von { $loads ->
    [0] ihrem Verbraucher
   *[other] { $loads }
}, und die Zuleitung { $runs } schützt nichts: Ihr Kurzschluss zur Karosserie läuft nie durch { $device }.
fuse-in-return-open-remedy = { $device } in die Zuleitung neben die Quelle setzen und die Rückleitung durchverbinden.

## fuse-outsizes-wire

fuse-outsizes-wire-what = { $run } trägt dort, wo sie liegt, { $can }; { $device } lässt { $lets } durch.
fuse-outsizes-wire-either = In { $device } { $rating } einsetzen oder für { $run } Kupfer mit { $size } legen.
fuse-outsizes-wire-fit = In { $device } { $rating } einsetzen.
fuse-outsizes-wire-lay = Für { $run } Kupfer mit { $size } legen oder ihr an ihrem Anfang eine eigene Sicherung geben.
fuse-outsizes-wire-own = { $run } an ihrem Anfang eine eigene Sicherung geben.
fuse-outsizes-wire-no-rating = Der Nennstrom von { $device } ist nicht bekannt; ob { $runs } damit geschützt { $runs ->
    [one] ist
   *[other] sind
}, bleibt offen.
fuse-outsizes-wire-unknown = Ob { $device } ({ $rating }) die Leitung { $run } schützt, bleibt offen. Nicht bekannt: { $missing }.

## fuse-too-far

fuse-too-far-what = { $first ->
    [0] Die erste Sicherung sitzt
    [one] { $first } sitzt
   *[other] { $first } sitzen
} { $far } Leitung von { $sources } entfernt; der Grenzwert ist { $allowed }. Bis dorthin schützt nichts { $runs }.
fuse-too-far-remedy = Die Sicherung innerhalb von { $allowed } von { $sources } setzen, an der Leitung entlang gemessen.
fuse-too-far-unknown = Wie weit { $first ->
    [0] die erste Sicherung
   *[other] { $first }
} von { $sources } entfernt sitzt, bleibt offen: Eine Länge von { $runs } ist nicht bekannt.
fuse-too-far-find = { $runs } von { $sources } bis { $first ->
    [0] zur ersten Sicherung
   *[other] { $first }
} messen, an der Leitung entlang.

## fuse-undersized

fuse-undersized-what = { $device } führt dauernd { $carries }; mit { $rating } Nennstrom trägt sie { $lasting }.
fuse-undersized-bursts = Stromspitzen von { $peaks } laufen durch { $device }; mit { $rating } Nennstrom muss sie ab { $opens } auslösen.
fuse-undersized-remedy = In { $device } { $rating } einsetzen; die Leitung dahinter verträgt das.
fuse-undersized-wire = Nötig sind mindestens { $needs }: Zuerst eine Leitung legen, die eine solche Sicherung verträgt, oder Verbraucher wegnehmen.
fuse-undersized-unknown = Ob { $device } ihren Verbrauchern genügt, bleibt offen: Der Nennstrom ist nicht bekannt.

## second-source

second-source-what = { $runs } { $runs ->
    [one] liegt
   *[other] liegen
} zwischen zwei Quellen; von { $sources } her schützt { $runs ->
    [one] sie
   *[other] sie
} nichts.
second-source-remedy = Auch neben { $sources } eine Sicherung setzen, die die Leitung verträgt.

## self-resetting-main

self-resetting-main-what = { $device } ist das erste Schutzorgan hinter der Quelle und schaltet von selbst wieder ein.
self-resetting-main-remedy = Anstelle von { $device } eine Sicherung einsetzen oder einen Automaten, der von Hand zurückgestellt wird.

## uneven-parallel

uneven-parallel-alone = { $runs } liegen nebeneinander hinter { $device } ({ $lets }); { $run } allein trägt { $can }.
uneven-parallel-alone-remedy = Eine einzige Leitung legen, die { $rating } verträgt, oder jeder an beiden Enden eine eigene Sicherung geben.
uneven-parallel-shares = Von den { $carried } in { $runs } nimmt { $run } { $takes }; bis { $share } gilt als gleicher Anteil.
uneven-parallel-shares-remedy = Querschnitt, Länge, Werkstoff und Anschlüsse angleichen oder eine einzige Leitung an ihre Stelle legen.
