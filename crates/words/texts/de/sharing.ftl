### Links, Seitendateien, Adressen: warum sie nicht gehen.

## Die Adresse, mit der Links beginnen.

address-no-host = Eine Adresse beginnt mit https:// und dem Namen eines Rechners, wie https://wiring.example/board/
address-character = Eine Adresse kann das Zeichen { $character } nicht enthalten
address-fragment = Eine Adresse für Links hat kein #: Dahinter kommt die Zeichnung
address-long = Eine Adresse für Links hat höchstens { $most } Zeichen

## Seitendateien.

page-no-template = Das ist nicht die Seite, in die Zeichnungen kommen: Sie hat keinen leeren Platz dafür. Sie liegt neben der index.html des Programms und heißt page.html.
page-no-job = In dieser Seite ist keine Zeichnung. Noch einmal darum bitten.
page-damaged = Die Zeichnung in dieser Seite wurde unterwegs gekürzt oder verändert, deshalb wurde sie nicht geöffnet. Noch einmal um die Datei bitten.
page-packed = sie ist mit Version { $version } gepackt
page-not-understood = Diese Seite enthält eine Zeichnung, die das Programm darin nicht versteht: { $why }. Darum bitten, die Seite neu zu machen.

## Links.

link-far-too-long = { $what ->
    [job] dieser Auftrag ist viel zu groß für einen Link. Stattdessen als Seitendatei schicken
   *[lesson] diese Lektion ist viel zu groß für einen Link. Stattdessen als Datei schicken
}
link-too-long = { $what ->
    [job] als Link hätte dieser Auftrag { $characters } Zeichen; Mailprogramme schneiden ab, was über { $most } ist. Stattdessen als Seitendatei schicken
   *[lesson] als Link hätte diese Lektion { $characters } Zeichen; Mailprogramme schneiden ab, was über { $most } ist. Stattdessen als Datei schicken
}
link-no-job = In diesem Link ist keine Zeichnung: Hinter dem # sollten { $key } und eine lange Reihe von Buchstaben und Ziffern stehen. Um den ganzen Link bitten.
link-no-lesson = In diesem Link ist keine Lektion: Hinter dem # sollten { $key } und eine lange Reihe von Buchstaben und Ziffern stehen. Um den ganzen Link bitten.
link-is-lesson = Dieser Link trägt eine Lektion, keine Zeichnung.
link-is-job = Dieser Link trägt eine Zeichnung, keine Lektion.
link-longer = Dieser Link ist länger als jeder, der hier entsteht, deshalb wurde er nicht geöffnet. Beim Absender um die Seitendatei bitten.
link-damaged = Dieser Link wurde unterwegs gekürzt oder verändert, deshalb wurde er nicht geöffnet. Noch einmal darum bitten, am besten als Seitendatei oder Code zum Scannen.
link-newer = Dieser Link stammt aus einer neueren Version des Programms (Linkversion { $version }, diese hier liest bis { $reads }). Die Seite neu laden, um die neueste Version zu bekommen.
link-not-understood = Dieser Link enthält etwas, das diese Version nicht versteht: { $why }. Die Seite neu laden, um die neueste Version zu bekommen.
