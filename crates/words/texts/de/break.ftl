## Was ausfällt, wie es in einer Liste und als Name einer Änderung heißt.

break-cut = { $run } durchtrennt
break-cut-at = { $run } bei { $at } durchtrennt
break-off = { $run } von { $end } ab
break-open = { $part } offen
break-grounded = { $run } berührt bei { $at } die Karosserie
break-grounded-through = { $run } berührt bei { $at } die Karosserie über { $ohms }
break-joined = { $one } und { $other } berühren sich
break-joined-through = { $one } und { $other } berühren sich über { $ohms }
break-point-along = { $run } bei { $at }
break-point-body = die Karosserie
break-more = { $thing } mit { $ohms } zu viel
break-reversed = { $part } verpolt
break-dead = { $part } ausgefallen

## Warum etwas so nicht ausfallen kann, und was ginge.

break-nothing-said = Angeben, was ausfällt, zum Beispiel „W3 cut“.
break-no-word = Angeben, was mit { $thing } geschieht: { $words }.
break-other-word = „{ $word }“ nennt keinen Fehler; das tun { $words }.
break-more-said = Mit „{ $text }“ nach „{ $word }“ ist nichts anzufangen.
break-how-many-ohms = Angeben, wie viele Ohm zu viel sind, zum Beispiel „0.2 Ω“.
break-joined-to-what = Angeben, was { $terminal } berührt, zum Beispiel „{ $terminal } joined E1.stud“.
break-joined-to-itself = { $terminal } kann sich nicht selbst berühren.
break-off-what = Angeben, welches Ende von { $run } ab ist: { $ends }, oder „from“ oder „to“.
break-which-terminal = Angeben, welche Klemme von { $thing } gemeint ist, zum Beispiel „{ $thing }.in“.
break-no-thing = Es gibt keine Leitung und kein Bauteil „{ $thing }“.
break-no-run = Es gibt keine Leitung „{ $run }“.
break-no-part = Es gibt kein Bauteil „{ $part }“.
break-part-not-run = „{ $part }“ ist ein Bauteil; so kann nur eine Leitung ausfallen.
break-run-not-part = „{ $run }“ ist eine Leitung; so kann nur ein Bauteil ausfallen.
break-no-terminal = „{ $part }“ hat keine Klemme „{ $terminal }“; es hat { $names }.
break-no-coil = „{ $part }“ hat keine Spule „{ $coil }“; Spulen heißen a und b.
break-cannot-open = „{ $part }“ lässt sich nicht unterbrechen; Leitung, Stecker, Schalter, Relais, Trennrelais, Sicherung, Automat, Massepunkt und Klemme lassen sich unterbrechen.
break-open-output = „{ $part }“ hat mehrere Ausgänge; einer davon lässt sich unterbrechen: { $outputs }.
break-cannot-be-poor = „{ $part }“ leitet keinen Strom weiter; das tun Massepunkt, Sicherung, Automat, Schalter, Relais, Trennrelais und Verteiler.
break-cannot-reverse = An keiner Plus- oder Minusklemme von „{ $part }“ liegt eine Leitung: Verpolen ist nicht möglich.
break-nothing-on = An { $terminal } liegt keine Leitung.
break-job-full = Der Auftrag fasst keine weiteren Bauteile.

## Was nach einem Fehler geschieht, in einer Liste.

event-opens = { $device } löst aus
event-closes = { $device } schließt wieder
event-damaged = { $run }: Isolierung beschädigt
event-melts = { $run } schmilzt durch
event-off = { $part } geht aus
event-on = { $part } ist wieder an
event-lets = { $part } fällt ab
event-pulls = { $part } schließt
event-unloaded = { $part } dreht ohne Batterie: Überspannung möglich, nicht simuliert
event-times = { $what }, bis zu { $times } Mal
time-at-once = sofort
time-about = { $time }
time-within = { $least } bis { $most }
current-about = { $most }
current-within = { $least } bis { $most }
certainty-no = nein
certainty-possible = möglich
certainty-certain = gewiss

## Was aus einem Kurzschluss wird.

outcome-nothing = Es gibt keinen Kurzschluss, den ein Schutzorgan abschalten müsste.
outcome-clears = Abgeschaltet nach { $time }, bevor eine Leitung Schaden nimmt; die Leitungen hielten mindestens { $margin }-mal so lange aus.
outcome-clears-cool = Abgeschaltet nach { $time }; keine Leitung hätte Schaden genommen.
outcome-wire = Die Leitung gibt zuerst nach: Die Isolierung von { $run } ist nach { $time } beschädigt.
outcome-wire-perhaps = Die Leitung gibt womöglich zuerst nach: Im schlimmsten Fall ist die Isolierung von { $run } nach { $time } beschädigt.
outcome-never = Kein Schutzorgan löst aus: { $current } fließen weiter.
outcome-never-perhaps = Ein Schutzorgan muss nicht auslösen: Dann fließen { $current } weiter.
outcome-not-known = Was daraus wird, ließ sich nicht zu Ende rechnen.
break-caution = Nicht am Fahrzeug ausprobieren. Mit abgeklemmter Batterie arbeiten, Fahrzeughersteller und örtliches Recht beachten und im Zweifel eine Fachkraft fragen.

## Die Lade, in der man etwas versagen lässt und sieht, was folgt.

breaking-head = Versagen lassen
breaking-pick = Mit der Schere durchtrennen, mit dem Prüfkabel verbinden, oder auf der Zeichnung eine Leitung oder ein Bauteil wählen und sagen, was damit geschieht.
breaking-cut = Durchtrennen
breaking-grounded = An die Karosserie kommen lassen
breaking-open = Öffnen
breaking-reversed = Plus und Minus vertauschen
breaking-dead = Ausfallen lassen
breaking-write = Oder aufschreiben
breaking-throw = Auslösen
breaking-thrown = Ausgelöst
breaking-along = Wo auf { $run }
breaking-remove = Zurücknehmen: { $what }
breaking-draws = Der Kurzschluss zieht zuerst { $current }.
breaking-carries = Über die Berührungsstelle fließen zuerst { $current }.
breaking-events = Was geschieht
breaking-none = Weiter geschieht nichts.
breaking-when = Wann
breaking-what = Was
breaking-sure = Sicher
breaking-moment = Zeitpunkt
breaking-at = Nach { $time }
breaking-at-first = Im ersten Augenblick
breaking-flows = { $current } an der Berührungsstelle, { $volts } an der Quelle
breaking-hottest = { $run } bei { $temperature }; sie verträgt { $limit }
breaking-case = Gezeigt für
breaking-case-strong-slow = starke Quellen, langsame Sicherungen
breaking-case-strong-fast = starke Quellen, schnelle Sicherungen
breaking-case-weak-slow = schwache Quellen, langsame Sicherungen
breaking-case-weak-fast = schwache Quellen, schnelle Sicherungen
breaking-sign-open = offen
breaking-sign-off = aus
breaking-sign-damaged = beschädigt
breaking-sign-here = hier
breaking-clip-body = Karosserie
breaking-let-go = Hier loslassen, um es zurückzunehmen.
breaking-taken-back = Zurückgenommen: { $what }
breaking-no-step = An den gesetzten Fehlern gibt es nichts mehr rückgängig zu machen.
breaking-same-point = Beide Enden liegen auf demselben Punkt.
breaking-tools = In der Hand
breaking-tool-scissors = Schere
breaking-tool-lead = Prüfkabel
breaking-event = { $time }: { $what }
breaking-event-perhaps = { $event } (möglich)
breaking-events-more = und { $count } weitere
breaking-all-back = Alles zurücknehmen
