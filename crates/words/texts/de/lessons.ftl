## Die Liste der Lektionen.

lessons-title = Lektionen
lessons-back = Zurück zum Tisch
lessons-count = { $count } kleine Anlagen, jede falsch und richtig. Pfeile gehen, Eingabe öffnet.
lessons-shows = { $count } kleine Anlagen, falsch und richtig nebeneinander, für den Unterricht.

## Eine Lektion, vorgeführt.

lesson-bad = Falsch
lesson-good = Richtig
lesson-step = Schritt der Lektion
lesson-step-on = Schritt { $place } von { $count }: { $kind }.
lesson-numbered = { $name } { $number } von { $count }
lesson-story = Die Geschichte
lesson-look = Hinsehen
lesson-break = Fehler setzen
lesson-question = Frage
lesson-why = Warum
lesson-sources = Woher es kommt
lesson-care = Vorsicht.
lesson-right = Richtig:
lesson-back = Zurück
lesson-next = Weiter
lesson-throw = Fehler setzen
lesson-overlays = Ebenen
lesson-findings = Befunde
lesson-close = Näher
lesson-pointer = Zeiger
lesson-keys = Tasten
lesson-open = Als Auftrag öffnen
lesson-version-title = { $title } ({ $version ->
    [bad] falsch
   *[good] richtig
})
lesson-picture = { $version }: { $parts } Teile, { $runs } Leitungen
lesson-outline = { $version }, als Gliederung
lesson-of-version = { $version }: { $told }
lesson-not-there = nicht vorhanden.
lesson-more = und { $count } weitere
lesson-nothing-found = Kein Befund.

## Was ein gesetzter Fehler bewirkt.

lesson-break-open = { $things } unterbrochen
lesson-break-reversed = { $things } verpolt
lesson-break-dead = { $things } ausgefallen
lesson-break-joined = { $things } berühren sich
lesson-break-try = Was folgt daraus, in der falschen und in der richtigen Anlage?
lesson-sign-open = offen
lesson-sign-reversed = verpolt
lesson-sign-dead = ausgefallen
lesson-sign-joined = berührt
lesson-plays-on = { $things ->
    [one] { $things } spielt weiter.
   *[other] { $things } spielen weiter.
}
lesson-falls-silent = { $things ->
    [one] { $things } verstummt.
   *[other] { $things } verstummen.
}
lesson-falls-silent-off = { $things ->
    [one] { $things } verstummt mit { $off }.
   *[other] { $things } verstummen mit { $off }.
}
lesson-begins-to-play = { $things ->
    [one] { $things } beginnt zu spielen.
   *[other] { $things } beginnen zu spielen.
}
lesson-stays-silent = { $things ->
    [one] { $things } bleibt stumm.
   *[other] { $things } bleiben stumm.
}
lesson-stays-silent-off = { $things ->
    [one] { $things } bleibt stumm ohne { $off }.
   *[other] { $things } bleiben stumm ohne { $off }.
}
lesson-stays-on = { $things ->
    [one] { $things } bleibt an.
   *[other] { $things } bleiben an.
}
lesson-goes-off = { $things ->
    [one] { $things } geht aus.
   *[other] { $things } gehen aus.
}
lesson-comes-on = { $things ->
    [one] { $things } geht an.
   *[other] { $things } gehen an.
}
lesson-stays-off = { $things ->
    [one] { $things } bleibt aus.
   *[other] { $things } bleiben aus.
}
lesson-opens = { $things ->
    [one] { $things } muss auslösen.
   *[other] { $things } müssen auslösen.
}
lesson-holds = { $things ->
    [one] { $things } löst nicht aus.
   *[other] { $things } lösen nicht aus.
}
lesson-finding-stays = Weiterhin Befund: { $check }.
lesson-finding-comes = Jetzt Befund: { $check }.
lesson-finding-goes = Kein Befund mehr: { $check }.
lesson-finding-none = Kein Befund: { $check }.
lesson-no-number = nichts
lesson-number-turns = { $name } { $at }: von { $was } auf { $is }.
lesson-number-turns-alone = { $name }: von { $was } auf { $is }.
lesson-nothing-happens = Nichts ändert sich.
lesson-cannot-break = So lässt sich hier nichts setzen.

lesson-measure-current = Strom
lesson-measure-rms = Effektivwert des Stroms,
lesson-measure-burst = Strom in Spitzen
lesson-measure-drop = Spannungsabfall
lesson-measure-feed-drop = Spannungsabfall der Zuleitung,
lesson-measure-return-drop = Spannungsabfall der Rückleitung,
lesson-measure-volts = Spannung
lesson-measure-mean-volts = Mittlere Spannung
lesson-measure-temperature = Temperatur
lesson-measure-ambient = Umgebungstemperatur
lesson-measure-insulation = Zulässige Temperatur
lesson-measure-allowable = Zulässiger Strom
lesson-measure-resistance = Widerstand
lesson-measure-loss = Verlustleistung
lesson-measure-length = Länge
lesson-measure-size = Querschnitt
lesson-measure-unprotected = Ungeschützter Weg bis
lesson-measure-offset = Spannung zwischen den Massen von
lesson-measure-shield = Strom im Schirm von
lesson-measure-rating = Nennstrom
lesson-measure-prospective = Kurzschlussstrom hinter
lesson-measure-return = Widerstand der Rückleitung,
lesson-measure-load = Last an
lesson-measure-least = Kleinste Last an
lesson-measure-minimum = Kleinste zulässige Last,
lesson-measure-power = Leistung
lesson-measure-coil = Leistung in der Schwingspule
lesson-measure-lead-loss = Pegelverlust in den Leitungen von
lesson-measure-hours = Stunden bis leer,
lesson-measure-charge = Restladung von
lesson-measure-draw = Bezogener Strom
lesson-measure-available = Verfügbarer Strom
lesson-measure-standing = Ruhestrom
lesson-measure-found = Befund
lesson-measure-limit = Grenze

## Tasten für die Vorführung.

lesson-key-next = Weiter: erst die Antwort oder der Fehler, dann der nächste Schritt
lesson-key-back = Zurück
lesson-key-ends = Erster und letzter Schritt
lesson-key-end = Ende
lesson-key-answer = Antwort zeigen oder verbergen
lesson-key-break = Fehler in beiden setzen; nochmals behebt ihn
lesson-key-other-break = Einen anderen Fehler setzen
lesson-key-overlay = Ebene auf beide legen; nochmals oder 0 nimmt sie ab
lesson-key-findings = Befunde anzeichnen und auflisten, oder nicht
lesson-key-close = Näher: das Beleuchtete füllt die Bilder
lesson-key-pointer = Zeiger: ein Ring, der Maus oder Finger folgt, auf beiden
lesson-key-walk = Den Zeiger von Teil zu Teil führen
lesson-key-keys = Diese Tasten
lesson-key-leave = Zeiger weglegen; zurück zur Liste

## Was an einer Lektion nicht stimmt, für den, der sie schreibt.

lesson-bad-without-finding = Die falsche Anlage hat keinen Befund „{ $check }“.
lesson-about-nothing = Sie handelt von nichts: unter „about“ eine Prüfung nennen oder einen „fault“ schreiben.
lesson-good-with-finding = Die richtige Anlage hat einen Befund „{ $check }“: { $what }
lesson-no-source = Ihre Erklärung nennt keine Quelle.
lesson-brace-open = Eine Klammer ist nicht geschlossen in: { $text }
lesson-place-empty = Für „{ $place }“ gibt es keine Zahl: { $why }
lesson-place-form = So schreiben: „current W3“ oder „good drop A1“.
lesson-no-break = Die Lektion setzt keinen Fehler.
lesson-break-problem = { $break }, { $version }: { $why }
lesson-effect-problem = „{ $effect }“: { $why }
lesson-does-not-follow = Das folgt daraus nicht.
lesson-write-still = Das ist schon vorher so: „still“ schreiben.
lesson-write-then = Das ist vorher nicht so: „then“ schreiben.
lesson-no-limit = Es gibt keinen Grenzwert „{ $limit }“.
lesson-no-found-number = Kein Befund „{ $check }“ nennt eine Zahl.
lesson-no-measure = „{ $measure }“ lässt sich für „{ $thing }“ nicht berechnen.
lesson-no-thing = Es gibt keine Leitung und kein Bauteil „{ $thing }“.
lesson-no-part = Es gibt kein Bauteil „{ $part }“.
lesson-no-speaker = „{ $part }“ ist kein Lautsprecher.
lesson-no-device = Es gibt kein Schutzorgan „{ $device }“.
lesson-no-rating = Der Nennstrom von „{ $device }“ ist nicht bekannt.
lesson-other-unit = „{ $measure }“ wird in { $of } angegeben, nicht in { $unit }.

## Was am Text einer Lektion falsch ist und was ginge.

lesson-text-blocks = mehr als { $most } Abschnitte
lesson-text-two = zwei Lektionen daraus machen
lesson-text-long = die Lektion ist länger, als ein Auftrag sein darf
lesson-text-key-first = eine Lektion beginnt mit ihrem Schlüssel
lesson-text-key = ein Schlüssel besteht aus Kleinbuchstaben, Ziffern und Bindestrichen
lesson-text-key-help = so schreiben: `lesson fuse-too-far`
lesson-text-things = mehr als { $most } Dinge sind genannt
lesson-text-things-help = die wichtigsten nennen
lesson-text-fault = ein Fehler hat einen Namen, Dinge und einen Satz
lesson-text-fault-help = `fault signal-beside-feed W4 W2` schreiben und darunter eingerückt, was falsch ist
lesson-text-unasked = was nicht gefragt ist, trägt den Namen einer Prüfung
lesson-text-unasked-help = so schreiben: `unasked lead-loss W5`
lesson-text-begins = eine Zeile beginnt mit { $words } oder ist eingerückt
lesson-text-no-block = `{ $word }` beginnt keinen Abschnitt
lesson-text-overlay = es gibt keine Ebene `{ $word }`
lesson-text-look = zum Hinsehen gehören Dinge und ein Satz
lesson-text-look-help = `look heat W2` schreiben und darunter eingerückt, was dort zu sehen ist
lesson-text-break = `{ $word }` ist keine Art von Fehler
lesson-text-break-help = so schreiben: `break open W3`, `break reversed LS1`, `break dead B2` oder `break joined LS1.+ E1.stud`
lesson-text-break-things = `{ $word }` nennt { $count } Dinge
lesson-text-break-things-help = { $count ->
    [one] { $count } Ding nennen
   *[other] { $count } Dinge nennen, wie `LS1.+ E1.stud`
}
lesson-text-version = in welcher Anlage?
lesson-text-version-help = so schreiben: `then bad silent LS1` oder `still good plays LS1`
lesson-text-effect = das ist keine Folge
lesson-text-effect-word = `{ $word }` ist keine Folge; möglich sind { $words } oder `current W3 > 20 A`
lesson-text-effect-form = eine Folge so schreiben: `silent LS1` oder `current W3 > 20 A`
lesson-text-in-break = `{ $word }` hat bei einem Fehler keinen Platz
lesson-text-in-break-help = then, still oder says schreiben
lesson-text-in-question = `{ $word }` hat bei einer Frage keinen Platz
lesson-text-in-question-help = right, wrong oder why schreiben
lesson-text-question = zu einer Frage gehören eine richtige und eine falsche Antwort
lesson-text-question-help = darunter eingerückt `right …` und `wrong …` ergänzen
lesson-text-own-line = eine Lektion hat schon einen Titel und ihre beiden Anlagen
lesson-text-own-line-help = diese Zeile herausnehmen
lesson-text-no-thing = in der Anlage gibt es kein `{ $tag }`
lesson-text-no-thing-help = ein Bauteil oder eine Leitung der Anlage nennen
lesson-text-no-check = es gibt keine Prüfung `{ $name }`
lesson-text-about-help = `about` weglassen, wenn keine Prüfung davon handelt, und einen `fault` schreiben
lesson-text-checks-help = `loomwright explain` nennt alle Prüfungen

## Was an den Worten einer Lektion oder eines Beispiels in einer anderen Sprache falsch ist.

lesson-words-surplus = die Lektion hat kein weiteres `{ $word }`
lesson-words-surplus-help = herausnehmen oder erst in der Lektion ergänzen
lesson-words-in-question-help = answer oder why schreiben
lesson-words-answers = { $count ->
    [one] { $count } Antwort
   *[other] { $count } Antworten
}, wo die Lektion { $wanted } hat
lesson-words-answers-help = jeder Antwort der Lektion ihre Worte geben, in ihrer Reihenfolge
lesson-words-part-help = ein Bauteil davon nennen
lesson-words-missing = { $count } von { $wanted } Abschnitten `{ $word }`
lesson-words-missing-help = die fehlenden ergänzen
worked-words-no-thing = im Auftrag gibt es kein `{ $tag }`
worked-words-thread-help = eine Zeile seines Verlaufs nennen
