## Querschnitte für alle Leitungen und Nennströme für alle Sicherungen.

sizing-edit = Leitungen und Sicherungen bemessen
sizing-edit-lock = Bemessung von { $thing } festhalten
sizing-edit-unlock = Bemessung von { $thing } freigeben
sizing-held-locked = festgehalten
sizing-held-kept = bleibt, wie es ist
sizing-held-makers = vom Fahrzeughersteller eingebaut
sizing-held-no-length = Länge nicht bekannt
sizing-held-no-insulation = Isolierung nicht bekannt
sizing-held-no-price = kein Preis für einen Querschnitt, der reicht
sizing-held-none-fits = kein Querschnitt der Reihe passt in die Klemmen
sizing-held-between = zwischen zwei Quellen: behält den Nennstrom
sizing-held-brings = bleibt, wie es ist, sonst käme ein Befund hinzu: { $check }
sizing-held-signal = Signalleitung: kein Querschnitt zu wählen
sizing-held-undriven = kein Ausgang speist sie: behält den Querschnitt
sizing-limit-smallest = kleinster der Reihe
sizing-limit-heat = Erwärmung durch den Dauerstrom
sizing-limit-fuse = Nennstrom von { $device }
sizing-limit-drop = Spannungsabfall zu { $load } und zurück
sizing-limit-ground = Masseleitung von { $amplifier } so gut wie die Zuleitung
sizing-limit-ending = Erwärmung der Leitungsenden
sizing-limit-lead = Widerstand der Masseleitung
sizing-limit-load = Dauerstrom der Verbraucher
sizing-limit-burst = Spitzen der Verbraucher
sizing-limit-check = { $check }
sizing-limit-price = die nächstkleinere kostet nicht weniger
sizing-limit-together = kostet mit den anderen zusammen am wenigsten
sizing-short-heat = { $run } führt mehr, als die dickste Leitung der Reihe verträgt.
sizing-short-terminal = { $run } führt mehr, als die dickste Leitung verträgt, die in die Klemmen passt.
sizing-short-fuse = { $run } verträgt mit keinem Querschnitt den kleinsten Nennstrom, den { $device } für die Verbraucher braucht.
sizing-short-rating = Kein Nennstrom der Bauform lässt { $device } die Verbraucher dauernd versorgen.
sizing-short-drop = Auch die dicksten Leitungen verlieren { $lost } auf dem Weg zu { $load } und zurück; { $most } ist der Grenzwert.
sizing-short-ground = Die Masseleitung von { $amplifier } kann nicht so gut leiten wie die Zuleitung.
sizing-short-check = Kein Querschnitt behebt dies an { $things }: { $check }.
sizing-short-no-answer = Das Netz hat auch mit den dicksten Leitungen keinen Arbeitspunkt.
sizing-short-heat-worst = Im schlimmsten Fall führt { $run } mehr, als die dickste Leitung der Reihe verträgt. Wie eingestellt verträgt sie ihren Strom.
sizing-short-terminal-worst = Im schlimmsten Fall führt { $run } mehr, als die dickste Leitung verträgt, die in die Klemmen passt. Wie eingestellt verträgt sie ihren Strom.
sizing-short-fuse-worst = { $run } verträgt mit keinem Querschnitt den Nennstrom, den { $device } im schlimmsten Fall für die Verbraucher braucht. Den, der wie eingestellt reicht, verträgt die Leitung.
sizing-short-rating-worst = Im schlimmsten Fall lässt kein Nennstrom der Bauform { $device } die Verbraucher dauernd versorgen. Wie eingestellt reicht einer.
sizing-short-drop-worst = Im schlimmsten Fall ({ $state }, { $duty }) verlieren auch die dicksten Leitungen { $lost } auf dem Weg zu { $load } und zurück; { $most } ist der Grenzwert. Er ist wie eingestellt eingehalten, im schlimmsten Fall nicht.
sizing-short-check-worst = Im schlimmsten Fall behebt kein Querschnitt dies an { $things }: { $check }. Wie eingestellt tritt es nicht auf.
sizing-short-no-answer-worst = Im schlimmsten Fall hat das Netz auch mit den dicksten Leitungen keinen Arbeitspunkt. Die Grenzwerte sind wie eingestellt eingehalten, und überall, wo es einen hat.
sizing-proved-but-short = Manches lässt sich nicht bemessen, wie oben gesagt. Für den Rest hat keine andere Wahl weniger.
sizing-proved = Bewiesen: Keine andere Wahl, die alle Prüfungen besteht, braucht weniger.
sizing-meshed = Eine gute Lösung: Das Netz ist vermascht. Die beste liegt höchstens { $gap } darunter.
sizing-not-proved = Eine gute Lösung: Die beste liegt höchstens { $gap } darunter.
sizing-metal = Metall: jetzt { $before }, danach { $after }.
sizing-cost = Kosten: jetzt { $before }, danach { $after }.
sizing-cost-then = Kosten danach: { $after }. Nicht alles, was jetzt da ist, hat auf der Liste einen Preis.
sizing-cost-unknown = Nicht alles hat auf der Liste einen Preis; eine Summe lässt sich daher nicht nennen.
sizing-nothing = Alle Leitungen und Sicherungen sind schon so bemessen, dass es am wenigsten kostet.
sizing-none = Auf diesem Blatt ist nichts zu bemessen.
sizing-judged-worst = Beurteilt beim Schlimmsten: Prüfton bei stehendem Motor, im Leerlauf und während der Fahrt, und wie eingestellt.
sizing-judged-set = Beurteilt bei der eingestellten Aussteuerung und dem eingestellten Zustand.
sizing-care = Die Werte folgen aus der Zeichnung und ihren Annahmen. Am Fahrzeug nachprüfen; örtliches Recht und die Hersteller von Fahrzeug und Kabel gehen vor.

## Die Schublade auf der Seite.

sizing = Bemessung von Leitungen und Sicherungen
sizing-works = Querschnitte werden ermittelt …
sizing-findings = Befunde „Halt“ oder „Beheben“: jetzt { $now }, mit diesen Querschnitten { $then }.
sizing-take = { $count ->
    [one] Diesen Wert übernehmen
   *[other] Diese { $count } Werte übernehmen
}
sizing-imagined = Diese Werte gelten für das unten Gefragte, nicht für das Blatt, wie es ist; übernommen wird trotzdem auf das Blatt.
sizing-take-one = { $size } für { $thing } übernehmen
sizing-thing = Was
sizing-now = Jetzt
sizing-then = Dann
sizing-lock = festhalten
sizing-unlock = fest
sizing-lock-of = { $thing } festhalten
sizing-unlock-of = { $thing } freigeben
sizing-if = Was wäre, wenn?
sizing-duty = Aussteuerung
sizing-worst = die schlimmste
sizing-alternator = Lichtmaschine
sizing-battery = Batterie
sizing-length = Längen
sizing-series = Reihe
sizing-series-own = die jeder Leitung
sizing-series-metric = Quadratmillimeter
sizing-series-awg = AWG-Nummern
sizing-stay = { $count ->
    [one] Eine bleibt, wie sie ist
   *[other] { $count } bleiben, wie sie sind
}
sizing-by = Möglichst wenig
sizing-by-metal = Metall
sizing-by-cost = Kosten nach Preisliste
sizing-no-list = Hier liegt noch keine Preisliste, daher entscheidet das Metall. Die Liste ausgeben, eigene Preise eintragen und einlesen.
sizing-list = { $count ->
    [one] Hier liegt ein Preis; was keinen hat, wird nicht gewählt.
   *[other] Hier liegen { $count } Preise; was keinen hat, wird nicht gewählt.
}
sizing-list-out = Liste zum Ausfüllen ausgeben
sizing-moved = Gegenüber dem Ist
sizing-moved-size = { $thing }: { $then } statt { $now }
sizing-moved-new = Neu: { $finding }
sizing-moved-gone = Weg: { $finding }
sizing-moved-more = und { $count } weitere
sizing-moved-none = Dieselben Querschnitte und dieselben Befunde.
sizing-back = Zurück zum Ist
