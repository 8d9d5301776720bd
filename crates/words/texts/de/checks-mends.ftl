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
