## Kürzester Nachweis: was das Fahrzeug tut, wo die Messspitzen hinkommen, was in Ordnung ist, worauf ein Wert außerhalb deutet.

proof-doing-fuses-out = Versorgung abgeklemmt, alle Sicherungen gezogen, alle Automaten offen
proof-doing-isolated = Versorgung abgeklemmt, Sicherungen eingesetzt
proof-doing-parked = Versorgung an, geparkt, alles aus
proof-doing-on = Eingeschaltet, Motor aus, nichts spielt
proof-doing-tone = Eingeschaltet, Motor aus, { $duty } auf allen Kanälen
proof-doing-idling = Motor im Leerlauf, { $duty } auf allen Kanälen
proof-at-volts = Spannung: Rot an { $red }, Schwarz an { $black }
proof-at-ohms = Widerstand: eine Spitze an { $red }, die andere an { $black }
proof-at-amps = Strom: Zange um { $run }
proof-expected = erwartet { $expected }; in Ordnung von { $least } bis { $most }
proof-expected-open = kein Durchgang erwartet; in Ordnung ab { $least }
proof-touches = { $run } berührt die Karosserie
proof-bad-joint = eine schlechte Verbindung an { $run }
proof-bad-contact = ein schlechter Kontakt in { $part }
proof-thinner = { $run } nur mit { $size }
proof-larger = { $device } mit { $rating }
proof-bridged = statt { $device } etwas, das keine Sicherung ist
proof-harm-live-end = ein blankes Ende unter Spannung
proof-harm-short = die Quelle ist kurzgeschlossen
proof-harm-hot-joint = eine Verbindung, an der Kunststoff schmilzt
proof-harm-overload = eine andere Leitung führt mehr, als sie verträgt
proof-harm-fuse = die Sicherung lässt mehr durch, als die Leitung verträgt
proof-look-rating = Ablesen, was auf { $device } steht, und nachsehen, dass dort ein Schutzorgan sitzt und nichts anderes
proof-look-size = Nachmessen, ob { $run } { $size } hat: Einzeldrähte zählen oder blanken Leiter messen
proof-look-run = An beiden Enden von { $run } ziehen und der Leitung entlang nach blanken, gequetschten oder verfärbten Stellen sehen
proof-look-part = Kontakte von { $part } ansehen: fest, sauber, nicht verfärbt, nichts, was sich berührt
proof-why-rating = durch eine größere misst man dasselbe
proof-why-size = für das Messgerät ist die Leitung zu kurz
proof-why-small = kein Messwert weicht stärker ab, als gute Anlagen voneinander abweichen

## Die Liste als Ganzes.

proof-count =
    { $count ->
        [one] { $count } Messung
       *[other] { $count } Messungen
    }
proof-summary = { $readings }: aufgedeckt würden { $exposed } von { $all } Einzelfehlern der Stufe Halt; etwa { $minutes } min.
proof-none-grave = Auf diesem Blatt lässt sich kein Einzelfehler der Stufe Halt setzen: Es gibt nichts nachzuweisen.
proof-shortest = Keine Liste, die ebenso viel aufdeckt, ist kürzer.
proof-bound = Keine Liste, die ebenso viel aufdeckt, hat weniger als { $least }; dort wurde die Suche beendet.
proof-unseen = Diese deckt keine Messung auf; stattdessen nachsehen:
proof-stops =
    { $count ->
        [one] Das Blatt selbst hat { $count } Befund der Stufe Halt. Über das, was so gezeichnet ist, sagen Messwerte nichts.
       *[other] Das Blatt selbst hat { $count } Befunde der Stufe Halt. Über das, was so gezeichnet ist, sagen Messwerte nichts.
    }
proof-caution = Widerstände nur bei abgeklemmter Versorgung messen und vorher die Messspitzen aneinanderhalten; mit dem Pol einer Batterie ist dabei die abgenommene Klemme gemeint, nie die Batterie selbst. Unter Prüfton zügig messen, Gehör und Lautsprecher schützen und von bewegten Teilen fernbleiben. Aufgedeckt wird jeweils ein einzelner Fehler: Zwei können einander verdecken, und was kommt und geht, zeigt sich nur, solange es da ist. Messwerte beweisen nicht, dass die Verkabelung in Ordnung ist; die Anweisungen des Fahrzeugherstellers und das Recht am Ort gehen vor, und eine Fachkraft entscheidet.
proof-points = Außerhalb deutet er auf { $faults }
proof-kept = gelesen { $read }: { $verdict }
proof-faults = { $faults }
proof-look-line = – { $look }
proof-pass = in Ordnung
proof-fail = außerhalb

## Auf der Seite.

proof-head = Kürzester Nachweis
proof-working = Die Messungen werden bestimmt: { $done } …
proof-progress = Messung { $number } von { $count } · { $good } in Ordnung · { $bad } außerhalb · { $left } offen
proof-black = Schwarz
proof-red = Rot
proof-lead = Spitze
proof-clamp = Zange um
proof-as-expected = Wie erwartet
proof-enter = Eintragen
proof-erase = Letzte Ziffer löschen
proof-sign = Plus oder Minus
proof-back = Zurück
proof-skip = Auslassen
proof-next = Weiter
proof-points-to = Er deutet auf
proof-more = { $count } weitere
proof-light = Auf dem Plan zeigen
proof-find = Fehler suchen
proof-end-good = Alle Messwerte liegen innerhalb ihrer Grenzen.
proof-end-open = Durchgegangen; einige Messungen wurden ausgelassen.
proof-end-outside = Durchgegangen; einige Messwerte liegen außerhalb ihrer Grenzen.
