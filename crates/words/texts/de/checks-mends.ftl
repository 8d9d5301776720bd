## Was einen Befund behebt, wie die Liste der Schritte es nennt.

mend-fit = { $rating } in { $device } einsetzen
mend-fit-several = { $ratings } einsetzen
mend-rating-in = { $rating } in { $device }
mend-put-fuse = Sicherung { $fuse }, { $rating }, in { $run } setzen
mend-and-lay-behind = { $first } und dahinter { $sizes } legen
mend-join-through = { $device } herausnehmen und { $run } durchverbinden
mend-then-join-through = { $first }, dann { $device } herausnehmen und { $run } durchverbinden
mend-take-to = { $run } an { $terminal } legen
mend-lay-copper = Für { $run } Kupfer legen
mend-lay-size = Für { $run } { $size } legen
mend-lay-thicker = Für { $load } dickere Leitungen legen
mend-lay-thicker-behind = Hinter { $device } dickere Leitungen legen
mend-swap-coil = Leitungen von Spule { $coil } an { $speaker } tauschen
mend-swap-wires = Leitungen an { $speaker } tauschen
mend-swap-inputs = Eingänge { $one } und { $other } von { $part } tauschen
mend-lay-anew = { $run } neu verlegen
mend-fit-anew = { $devices } neu einsetzen
mend-clean-ground = { $ground } blank machen
mend-move-ground = { $ground } auf blankes Karosseriemetall versetzen
mend-take-out = { $run } entfernen
mend-crimp = { $splice } quetschen
mend-remake-ends = Anschlüsse von { $run } neu machen
mend-reset-by-hand = Als { $device } einen Automaten mit Rückstellung von Hand einsetzen
mend-land-on-body = { $runs } auf die Karosserieseite legen
mend-mate = { $plug } zusammenstecken
mend-guard = { $run } schützen: { $guards }
mend-route = { $runs } anders führen: { $way }
mend-lay-with = { $runs } mit { $other } verlegen
mend-insulation = { $run } mit Isolierung für { $rating } verlegen
mend-support = { $run } alle { $most } halten
mend-mount = { $part } anders befestigen: { $on }
mend-screw = Fehlende Schrauben in { $part } setzen und gerade ausrichten
mend-move-part = { $part } umsetzen: { $place }
mend-and-lay-back = { $first }, und { $sizes } für { $runs } zur Masse
mend-add-ground = Massepunkt { $ground } für { $terminal } anlegen
mend-ground-closer = { $ground } nahe an { $part } versetzen
mend-ground-own = Für { $run } in der Nähe Massepunkt { $ground } anlegen
mend-add-run = { $run } von { $from } nach { $to } legen
mend-add-signal = { $runs } zu den Eingängen von { $part } legen
mend-in-series = { $speakers } in Reihe schalten
mend-in-parallel = { $speakers } parallel schalten
mend-in-strings = { $speakers } in { $strings } parallelen Strängen schalten
mend-lay-sizes = { $sizes } legen
mend-split-feed = { $runs } an { $outputs } legen
mend-fuse-form = Als { $device } eine Sicherung anderer Bauform einsetzen: { $form }, { $rating }

## Was jemand entscheiden muss, bevor behoben wird: der Rest eines Satzes, der mit „zu entscheiden:“ beginnt.

mend-choice-ground = wo an der Karosserie die Masse hinkommt
mend-choice-end = wo { $run } enden soll, oder ob die Leitung überhaupt gebraucht wird
mend-choice-output = welcher Ausgang es einschaltet
mend-choice-hook-up = welche der Schaltungen es sein soll
mend-choice-lead = welche der Leitungen bleibt
