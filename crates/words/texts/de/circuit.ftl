## Warum ein Lautsprecher stumm ist. Diese Texte stehen mitten im Satz nach einem Doppelpunkt und beginnen klein.

gap-nothing-on = an { $place } liegt nichts
gap-one-leg = beide Enden von { $speaker } führen zu { $leg } und nichts zum anderen Anschluss
gap-no-pair = { $speaker } hängt zwischen { $legs }, die kein Paar eines Ausgangs sind
gap-joined-by-run = beide Enden von { $speaker } sind über { $run } verbunden
gap-joined-in-part = beide Enden von { $speaker } sind in { $part } verbunden
gap-cut = Leitung { $run } ist durchtrennt
gap-apart = Stecker { $plug } ist getrennt, auf dem Weg von { $from }
gap-loop-open = Stecker { $plug } ist getrennt, deshalb ist seine Brücke von { $from } nach { $to } offen
gap-blown = { $device } ist durchgebrannt oder fehlt
gap-open = { $device } ist offen
gap-led-to-supply = { $speaker } führt zu { $terminal }, nicht zu einem Ausgang
gap-nothing-goes-on = von { $terminal } führt nichts weiter
gap-lead-ends = die Leitung von { $speaker } endet an { $terminal }
gap-run-on-nothing = ein Ende von Leitung { $run } liegt an nichts, was das Blatt hat
gap-run-loose = Leitung { $run } endet lose
gap-too-large = das Netz, in dem { $speaker } hängt, ist zu groß, um berechnet zu werden

## Bemerkungen dazu, was ein Kanal treibt.

channel-bridged-besides = die Kanäle { $one } und { $other } treiben neben ihrer eigenen eine gebrückte Last
channel-not-the-legs = eine Last liegt zwischen { $one } und { $other }, und das sind nicht die Anschlüsse zum Brücken
channel-not-bridged = eine Last liegt zwischen { $one } und { $other }, die der Hersteller nicht brücken lässt
channel-power-not-stated = für eine so niedrige Last ist keine Leistung angegeben; genommen wird die der kleinsten angegebenen Last
channel-legs-joined = seine beiden Anschlüsse sind verbunden
channel-not-solved = die Last über den Frequenzbereich ließ sich nicht berechnen
channel-leads-shared = er teilt sich Leitungen mit einem anderen Ausgang; die Phase zueinander ist nicht bekannt, gezeigt wird der ungünstigere Fall
channel-impedance-unknown = die Impedanz von { $speakers } ist nicht bekannt; für die Leistung werden { $taken } angenommen

## Bemerkungen dazu, was ein Bauteil tut.

part-below-cut-off = { $gets } liegen unter der Abschaltspannung von { $least }
part-below-some-cut-off = { $gets } liegen unter der Abschaltspannung
part-reversed = ist verpolt
part-no-supply = bekommt keine Versorgung
part-gives-most = liefert im Mittel das Maximum
part-gives-most-loud = liefert bei Spitzen das Maximum
part-charged = wird geladen
part-blocked = gibt nichts ab: Die Spannung liegt über der eigenen
part-restless = würde endlos hin- und herschalten; gilt als offen

## Bemerkungen zu einem Blatt, und warum es sich nicht berechnen ließ.

note-no-terminal = Leitung { $run }: Es gibt keine Klemme { $terminal }; dieses Ende gilt als lose
note-shorted = { $source }: Pluspol und Minuspol sind allein durch Leiter verbunden, das ist ein Kurzschluss
note-pole-on-body = { $source }: Der Pluspol liegt auf der Karosserie
note-no-source = auf dem Blatt ist keine Quelle
unbalanced = die Lösung geht nicht auf: Es fehlen { $current } des Stroms und { $power } der Leistung
