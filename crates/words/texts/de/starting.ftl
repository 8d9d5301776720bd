# Eine geplante Anlage aus wenigen Worten: assist/src/starting.

edit-start = Anlage beginnen

## Was nicht verstanden wurde, und was geht

start-too-long = Der Text ist { $bytes } Byte lang; gelesen werden höchstens { $most }. Weniger schreiben oder den Rest danach zeichnen.
start-unknown = „{ $word }“ ist hier kein bekanntes Wort. Anders sagen, oder weglassen und danach zeichnen.
start-unknown-meant = „{ $word }“ ist hier kein bekanntes Wort. Ist „{ $meant }“ gemeint?
start-hook-up-chosen = Wie Spulen geschaltet werden, wird hier gewählt, so wie es der Ausgang verträgt: weglassen.
start-no-volts = Hier hat alles 12 V: weglassen.
start-no-sign = Dieses Zeichen sagt hier nichts: weglassen, oder die Dinge durch Kommas trennen.
start-number-alone = Eine Zahl wovon? W, Ω, A oder Ah dahinter schreiben, oder wovon es so viele gibt.
start-two-things = Zwei Dinge in einem Atemzug: vor dieses ein Komma setzen.
start-does-not-fit = Das gehört nicht zu dem, was daneben steht: neben das schreiben, wovon es handelt, vom Rest durch Kommas getrennt.
start-told-twice = Diese Lautsprecher stehen schon da: alles über sie an einer Stelle sagen.
start-too-many = Mehr als { $most } davon werden nicht geplant: weniger schreiben und den Rest danach zeichnen.
start-no-solar = Ein Solarmodul und sein Regler werden nicht geplant: Das Programm hat kein Bauteil, das gibt, was die Sonne gibt. Weglassen, und die Leitung an der Batterie so absichern, wie es der Hersteller angibt.

## Warum ein Wunsch nicht zu erfüllen ist, und was geht

start-empty = Noch steht nichts da, was sich zeichnen ließe.
start-empty-instead = Eine Endstufe, Lautsprecher, eine Zusatzbatterie oder einen Verbraucher nennen.
start-centre = Ein Centerlautsprecher spielt, was links und rechts gemeinsam haben: Das macht nur ein Prozessor.
start-centre-instead = Einen Prozessor dazunehmen oder den Centerlautsprecher weglassen.
start-idle = Für Endstufe { $number } bleibt nichts anzutreiben.
start-idle-instead = Die Lautsprecher nennen, für die sie da ist, oder sie weglassen.
start-no-load = Kein Ausgang darf die { $speakers } treiben: Ihre Spulen lassen sich zu { $loads } verschalten, und das Kleinste, was ein Ausgang treiben darf, sind { $least }.
start-no-load-instead = Lautsprecher nehmen, deren Spulen sich zu { $least } oder mehr verschalten lassen, oder eine Endstufe, die weniger treiben darf.
start-too-strong = Die { $speakers } vertragen zusammen { $bears }, und das Kleinste, was ein Ausgang ihnen gibt, sind { $power }.
start-too-strong-instead = Lautsprecher nehmen, die je { $power } vertragen, oder eine schwächere Endstufe.
start-no-output = Für die { $speakers } ist kein Ausgang übrig.
start-no-output-instead = Eine Endstufe für sie dazunehmen, oder ein Radio mit eigenen Ausgängen.
start-too-few = Für { $speakers } zusammen reichen die Ausgänge nicht.
start-too-few-instead = Eine Endstufe dazunehmen, oder ein Radio mit eigenen Ausgängen.
start-few-outputs = Der Prozessor hat { $outputs } Ausgänge, und die Endstufen brauchen { $needed } Signale.
start-few-outputs-instead = Einen Prozessor mit { $needed } oder mehr Ausgängen nehmen.
start-offer-wired = Mit einer Rückleitung zur Batterie ginge es.
start-offer-second = Mit einer Zusatzbatterie im Laderaum ginge es.
start-offer-both = Mit einer Zusatzbatterie im Laderaum und einer Rückleitung ginge es.
start-offer-alternator = Mit einer Lichtmaschine von { $current } ginge es.

## Was gewählt wurde, und warum

start-chose-output = { $amplifier }, { $kind ->
    [bridged] Kanäle { $channels } gebrückt
    [pair] Kanäle { $channels }
   *[one] Kanal { $channels }
}: die { $speakers }, { $how }. Sie sind eine Last von { $load }, erlaubt sind mindestens { $least }, und { $amplifier } gibt daran { $power } ab.
start-chose-gain = Die { $speakers } vertragen { $kind ->
    [pair] je { $power }
   *[other] { $power }
}, und { $amplifier } könnte dort { $could } abgeben: an { $kind ->
    [bridged] den gebrückten Kanälen { $channels }
    [pair] den Kanälen { $channels }
   *[one] Kanal { $channels }
} die Verstärkung so einstellen, dass der Prüfton nicht mehr als { $volts } ergibt.
start-chose-head = { $head } treibt die { $speakers } selbst: je { $power } an { $load }.
start-how-one = je Ausgang einer
start-how-alone = nichts sonst an diesem Ausgang
start-how-series = { $coils } Spulen in Reihe
start-how-parallel = { $coils } Spulen parallel
start-how-both = { $parallel } Reihen parallel, in jeder { $series } Spulen
start-how-coil = an jedem Ausgang eine Schwingspule
start-how-both-parallel = parallel zu den „{ $with }“, da es nicht mehr Ausgänge gibt
start-how-both-series = in Reihe mit den „{ $with }“, da beide parallel eine zu kleine Last wären
start-chose-link = { $isolator } lädt { $battery }, mit einer Sicherung an jedem Ende der Verbindung. Was dazukam, hängt an { $battery }, damit die Starterbatterie fürs Starten bleibt.
start-chose-bank = { $count } Batterien stehen nebeneinander an { $bus }, jede mit einer eigenen Sicherung: Was in einer nicht stimmt, wird von den anderen nicht gespeist.
start-chose-feeds = { $feeds } Hauptleitungen teilen sich die Last: Auf einer ginge zu viel verloren, oder ihre Anschlüsse würden zu warm.
start-chose-wired = Der Rückweg geht als Leitung über { $bus } zur Batterie, so dick wie die Hauptleitung.
start-chose-speaker-level = { $head } hat keine Line-Ausgänge: Das Signal wird an den Lautsprecherausgängen abgenommen.
start-chose-sensing = Das Werksradio hat keinen Einschaltausgang: Jede Endstufe schaltet sich durch ihr Signal ein.
start-chose-turn-on = Die Einschalteingänge ziehen zusammen { $draws } aus { $from }, was dessen Ausgang trägt.

start-sums = { $parts } Bauteile, { $runs } Leitungen; im Mittel werden, wenn es laut ist, { $draw } gezogen, von { $available }, die die Lichtmaschine gibt; { $wire } Leitung mit { $copper } Kupfer.

## Was angenommen wurde

start-assumed-alternator = Die Lichtmaschine gibt bei Reisedrehzahl { $current } ab.
start-assumed-battery = { $battery } fasst { $capacity }.
start-assumed-charger = { $charger } gibt { $current }, und nur bei laufendem Motor.
start-assumed-load = { $load } ({ $name }) nimmt { $power } auf.
start-assumed-power = { $amplifier } gibt { $power } an { $load } ab, { $channels ->
    [one] aus ihrem einen Kanal
   *[other] aus jedem von { $channels } Kanälen
}.
start-assumed-load-of-power = Die Leistung von { $amplifier } gilt für { $load }.
start-assumed-speakers = Es gibt { $speakers }.
start-assumed-impedance = Die { $speakers } haben { $impedance } je Spule.
start-assumed-processor = Ein Signalprozessor teilt den Klang für die Lautsprecher mit eigenem Ausgang auf.
start-assumed-built-in = Die Endstufe im Aktivsubwoofer gibt { $power } ab und ist neben ihrem Lautsprecher gezeichnet.
start-assumed-bridged = Zwei Kanäle von { $amplifier } geben gebrückt { $power } an { $load } ab.
start-assumed-bridging = { $amplifier } darf gebrückt werden und gibt dann an die doppelte Last ab, was zwei ihrer Kanäle abgeben.

## Wie die Lautsprecher in diesen Sätzen heißen

start-group-front = Frontlautsprecher
start-group-rear = Hecklautsprecher
start-group-centre = Centerlautsprecher
start-group-bass = Basslautsprecher
start-group-low = Tieftöner der { $of }
start-group-middle = Mitteltöner der { $of }
start-group-high = Hochtöner der { $of }

## Wie der Auftrag heißt

start-job-sound = { $power ->
    [none] Klanganlage
   *[other] Klanganlage { $power }
}
start-job-second = Zusatzbatterie
start-job-loads = weitere Verbraucher

## Namen auf der Zeichnung

start-label-battery = Hauptbatterie
start-label-second = Zusatzbatterie
start-label-plug = Radiostecker
start-label-permanent = Dauerplus
start-label-switched = Zündungsplus
start-label-earth = Masse
start-label-head = Radio
start-label-head-fuse = Sicherung der Zuleitung { $feed }
start-label-main-fuse = Hauptsicherung
start-label-front-fuse = Sicherung fürs Armaturenbrett
start-label-link-fuse = Ladesicherung, { $end }
start-label-fuse-of = Sicherung { $of }
start-label-small-block = Sicherungsverteiler
start-label-switch = Schalter { $of }
start-label-bus = Masse-Sammelschiene
start-label-plus-bus = Plus-Sammelschiene
start-label-charger = Ladebooster
start-label-ground = Masse { $of }
start-label-turn-on = Einschaltverbinder
start-label-amplifier = { $channels ->
    [one] Endstufe, ein Kanal
   *[other] Endstufe, { $channels } Kanäle
}
start-label-bass-amplifier = Bassendstufe
start-label-front-left = Vorn links
start-label-front-right = Vorn rechts
start-label-rear-left = Hinten links
start-label-rear-right = Hinten rechts
start-label-centre = Mitte
start-label-subwoofer = Tiefbass
start-label-crossover = { $of }, Weiche
start-label-woofer = { $of }, Tieftöner
start-label-midrange = { $of }, Mitteltöner
start-label-tweeter = { $of }, Hochtöner
start-load-lights = Licht
start-load-two-way-radio = Funkgerät
start-load-inverter = Wechselrichter
start-load-cool-box = Kühlbox
start-load-pump = Wasserpumpe
start-load-heater = Heizung
start-load-camera = Kamera am Armaturenbrett
start-load-socket = Ladebuchse
start-load-winch = Seilwinde
start-load-other = Verbraucher

## Auf der Seite

start-line = Was da ist und was gewünscht wird, mit Kommas dazwischen
start-understood = Verstanden
start-examples = Zum Beispiel
start-example-1 = Schrägheck, Endstufe 4 × 75 W, Monoblock 500 W an 2 Ohm, Frontkomponenten, Hecklautsprecher, Subwoofer Doppelschwingspule 2 × 4 Ohm
start-example-2 = Kombi, Werksradio, Endstufe 2 × 100 W, Frontkomponenten
start-example-3 = Wohnmobil, Zusatzbatterie Lithium 100 Ah, Wechselrichter 500 W, Licht 40 W, Wasserpumpe
start-form = Dasselbe mit Schaltflächen
start-clean = Kein Befund der Grade Halt und Beheben.
start-troubles = Was nicht erfüllt ist
start-chosen = Was gewählt wurde, und warum
start-assumed = Was angenommen wurde
start-what-does = Was ginge?
start-nothing-does = Keine der üblichen Änderungen reicht: weniger Leistung, oder ein kürzerer Weg.
start-draw = Zeichnen
start-draw-new = Als neuen Auftrag zeichnen
start-draw-rest = Zeichnen, was verstanden wurde
start-draw-new-rest = Als neuen Auftrag zeichnen, was verstanden wurde
start-care = Ein Plan ist ein Vorschlag: ihn mit dem Fahrzeug vergleichen, bevor etwas geschnitten oder geschraubt wird, und eine Fachkraft entscheiden lassen.
start-vehicle = Fahrzeug
start-driver = Fahrer
start-battery = Batterie
start-head = Radio
start-factory = Werksradio
start-pairs = { $pairs ->
    [one] { $pairs } Paar Line-Ausgänge
   *[other] { $pairs } Paar Line-Ausgänge
}
start-amplifiers = Endstufen
start-watts-of = Leistung je Kanal, { $amplifier }
start-without = Entfernen: { $amplifier }
start-speakers-front = Frontlautsprecher
start-speakers-rear = Hecklautsprecher
start-speakers-centre = Centerlautsprecher
start-speakers-bass = Subwoofer
start-full = Breitbänder
start-components = mit Hochtönern
start-three-way = 3-Wege
start-active = aktiv
start-one = einer
start-one-single = einer, Einfachspule
start-one-dual = einer, Doppelspule
start-two-single = zwei, Einfachspule
start-two-dual = zwei, Doppelspule
start-second = Zusatzbatterie
start-loads = Andere Verbraucher
start-others = Außerdem
start-processor = Signalprozessor
start-wired = Rückleitung zur Batterie
start-no-harness = ohne Originalstecker
