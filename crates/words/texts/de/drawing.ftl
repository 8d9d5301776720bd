### Was auf der Zeichnung selbst steht. Kurz: der Platz wird mit diesen Wörtern gemessen.

## Ebenen, die über der Zeichnung liegen.

overlay-none = Keine Ebene
overlay-current = Strom
overlay-voltage = Spannung
overlay-heat = Wärme
overlay-protection = Absicherung
overlay-signal = Signal
overlay-speakers = Lautsprecher

## Zahlen von Teilen und Leitungen.

drawn-main-fuse = Hauptsicherung { $amps }
drawn-gets = erhält { $power }
drawn-heat-limit = { $temperature }, Grenze nach { $time }
drawn-silent = stumm
drawn-takes = nimmt { $amps }
drawn-gives = gibt { $amps }
drawn-channel = { $part } Kanal { $channels }
drawn-left = links
drawn-right = rechts
drawn-bass = Bass
drawn-no-source = keine Quelle
drawn-turn-on = Einschalten
drawn-unguarded = ungeschützt

## Ein Blatt, unter ein anderes gelegt.

drawn-under = { $kind } unter { $on }: { $kept } gleich, { $changed } geändert, { $new } neu, { $removed } entfernt
drawn-new-on = neu auf { $on }
drawn-differs = anders als { $kind }
drawn-gone = entfernt: nur auf { $kind }
drawn-goes = entfernt auf { $kind }
drawn-comes = neu: nur auf { $kind }
drawn-more = { $one } und { $more } weitere

## Der Plan der Karosserie.

drawn-front = vorn
drawn-no-place = noch ohne Stelle in der Karosserie:
drawn-key-grave = Bewegung, Quetschen oder Airbag
drawn-key-hot = heiß wie der Motorraum
