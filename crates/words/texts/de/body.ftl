### Die Karosserie des Fahrzeugs: Stellen und Durchgänge, und die Wege der Leitungen hindurch.

## Stellen. Eigene eines Auftrags heißen, wie der Auftrag sie nennt.

place-engine-bay-left = Motorraum links
place-engine-bay-right = Motorraum rechts
place-bulkhead-left = Spritzwand links
place-bulkhead-right = Spritzwand rechts
place-battery-tray = Batterieplatz
place-footwell-left = Fußraum links
place-footwell-right = Fußraum rechts
place-dash-left = Instrumententafel links
place-dash-middle = Instrumententafel Mitte
place-dash-right = Instrumententafel rechts
place-steering-column = Lenksäule
place-glovebox = hinter dem Handschuhfach
place-pedals = Pedale
place-a-pillar-left = A-Säule links
place-a-pillar-right = A-Säule rechts
place-b-pillar-left = B-Säule links
place-b-pillar-right = B-Säule rechts
place-c-pillar-left = C-Säule links
place-c-pillar-right = C-Säule rechts
place-sill-left = Schweller links
place-sill-right = Schweller rechts
place-tunnel = Mitteltunnel
place-under-seat-left = unter dem linken Vordersitz
place-under-seat-right = unter dem rechten Vordersitz
place-front-seat-back-left = Lehne des linken Vordersitzes
place-front-seat-back-right = Lehne des rechten Vordersitzes
place-door-left = Vordertür links
place-door-right = Vordertür rechts
place-rear-door-left = hintere Tür links
place-rear-door-right = hintere Tür rechts
place-sliding-door = Schiebetür
place-roof-front = Dachhimmel vorn
place-roof = Dachhimmel Mitte
place-roof-rear = Dachhimmel hinten
place-under-rear-seat-left = unter dem Rücksitz links
place-under-rear-seat-right = unter dem Rücksitz rechts
place-seat-back-left = Rücksitzlehne links
place-seat-back-right = Rücksitzlehne rechts
place-load-floor = Ladeboden
place-spare-well = Reserveradmulde
place-wheel-arch-left = hinteres Radhaus links
place-wheel-arch-right = hinteres Radhaus rechts
place-side-left = Laderaumwand links
place-side-right = Laderaumwand rechts
place-tail-panel = Heckabschluss
place-tail-pillar-left = hintere Ecksäule links
place-tail-pillar-right = hintere Ecksäule rechts
place-rear-shelf = Hutablage
place-boot-lid = Kofferraumdeckel
place-tailgate = Heckklappe
place-partition-left = Trennwand links
place-partition-right = Trennwand rechts
place-cupboard-left = Schrank links
place-cupboard-right = Schrank rechts
place-bench = Sitzbank
place-under-bed = unter dem Bett
place-cab-back-left = Kabinenrückwand links
place-cab-back-right = Kabinenrückwand rechts
place-frame-left = Rahmen links
place-frame-right = Rahmen rechts

## Stellen, die es auf beiden Seiten gibt, wie der Plan von oben sie nennt: Die Seite zeigt sich dort selbst.

spot-engine-bay = Motorraum
spot-bulkhead = Spritzwand
spot-footwell = Fußraum
spot-dash = Instrumententafel
spot-a-pillar = A-Säule
spot-b-pillar = B-Säule
spot-c-pillar = C-Säule
spot-sill = Schweller
spot-under-seat = unter dem Vordersitz
spot-front-seat-back = Lehne des Vordersitzes
spot-door = Vordertür
spot-rear-door = hintere Tür
spot-under-rear-seat = unter dem Rücksitz
spot-seat-back = Rücksitzlehne
spot-wheel-arch = hinteres Radhaus
spot-side = Laderaumwand
spot-tail-pillar = hintere Ecksäule
spot-partition = Trennwand
spot-cupboard = Schrank
spot-cab-back = Kabinenrückwand
spot-frame = Rahmen

## Durchgänge: die Art des Weges und die zwei Stellen, die er verbindet.

passage-between = { $kind }: { $a } – { $b }
passage-name-taken = der Durchgang `{ $passage }` heißt wie eine Stelle; er braucht einen anderen Namen
passage-without-end = der Durchgang `{ $passage }` endet an `{ $place }`, was diese Karosserie nicht hat; als Enden Namen von Stellen angeben
passage-to-itself = der Durchgang `{ $passage }` beginnt und endet an derselben Stelle

## Was eine Leitung gefährdet, mitten im Satz.

hazard-airbag = dort entfaltet sich ein Airbag
hazard-moving = sie wird dort bewegt
hazard-crush = sie kann dort gequetscht werden
hazard-sharp = blanke Blechkanten können sie dort zerschneiden
hazard-wet = dort kommt Wasser hin
hazard-heat = dort ist es so heiß wie im Motorraum

## Was für und gegen einen Weg spricht.

route-shortest = { $length } Leitung: der kürzeste Weg, den es gibt.
route-longer = { $length } Leitung, { $more } mehr als auf dem kürzesten Weg.
route-avoids = Der kürzeste Weg führt hier entlang: { $passage }; { $hazards }.
route-meets = { $passage }: { $hazards }.
route-clear = Kein Sitz, kein Scharnier, keine blanke Kante und kein Airbag auf dem Weg.
route-hot = { $length } davon liegen in der Hitze des Motorraums.
route-beside-feeds = Liegt auf bis zu { $length } neben Zu- oder Rückleitungen: { $runs }.
route-beside-signal = Liegt auf bis zu { $length } neben Signalleitungen: { $runs }.
route-apart-feeds = Liegt neben keiner Zu- oder Rückleitung.
route-apart-signal = Liegt neben keiner Signalleitung.
route-together = Liegt auf bis zu { $length } bei anderen Signalleitungen zum selben Gerät: { $runs }.
edit-route-all = { $count ->
    [one] Weg von { $count } Leitung neu legen
   *[other] Wege von { $count } Leitungen neu legen
}
