# Wörterbuch. Alle Texte sagen dasselbe mit demselben Wort.
#
# Ton: knapp und sachlich. Anweisungen stehen im Infinitiv wie auf Zeichnungen („Sicherung neben B1 setzen“), ohne „Sie“.
# Nie „sicher“ oder „ungefährlich“ im Sinn von „da kann nichts passieren“. Nach einem Doppelpunkt folgt ein ganzer Satz
# groß, sonst klein. Kennzeichen (B1, F1, W1) stehen ohne Artikel.
#
# sheet Blatt · job Auftrag · part Bauteil · run, wire Leitung · lead …leitung (Ladeleitung, Signalleitung) · loom Leitungssatz
# terminal Klemme (im Satz: „an A1.+“) · stud Bolzen · pole Pol · tag Kennzeichen · plug Stecker · cavity Kammer · adapter Adapter
# source Quelle · battery Batterie, main Hauptbatterie, second Zusatzbatterie · alternator Lichtmaschine · converter Ladewandler
# load Verbraucher · amplifier Endstufe · head unit Radio · processor Prozessor · line converter Pegelwandler
# speaker, driver Lautsprecher · subwoofer Subwoofer · woofer Tieftöner · midrange Mitteltöner · tweeter Hochtöner
# full range Breitbänder · voice coil Schwingspule, kurz Spule · crossover Frequenzweiche, kurz Weiche · capacitor Kondensator
# channel Kanal · output stage Endstufenausgang · bridged (Endstufe) gebrückt · gain Eingangsempfindlichkeit (Gain)
# high-pass Hochpass · line level Line-Pegel · speaker level Lautsprecherpegel · shield Schirm · phono plug Cinchstecker
# turn-on lead Einschaltleitung (Remote) · turn-on output Einschaltausgang · turn-on input Einschalteingang
# feed Zuleitung · return Rückleitung, Rückweg · permanent feed Dauerplus · switched feed Zündungsplus · live unter Spannung
# ground Masse · ground point Massepunkt · ground lead Masseleitung · strap Masseband · body Karosserie
# fuse Sicherung · breaker Sicherungsautomat, Automat · device (fuse or breaker) Schutzorgan · fuse holder Sicherungshalter
# rating Nennstrom · breaking capacity Ausschaltvermögen · opens löst aus · bridged (Sicherung) überbrückt · guards schützt
# block Verteiler · bus Sammelschiene · splice Verbinder · relay Relais · switch Schalter · isolator Trennrelais
# size Querschnitt · gauge AWG · material Werkstoff · copper-clad aluminium kupferkaschiertes Aluminium · insulation Isolierung
# jacket Mantel · sheath Umhüllung, Schutzrohr · strand Einzeldraht · bundle Häufung · surroundings Umgebung
# crimp quetschen, Quetschung · crimped splice Quetschverbinder · ring terminal Ringkabelschuh · spade Flachsteckhülse
# ferrule Aderendhülse · insulation-piercing tap Schneidklemmverbinder · twisted verdrillt · torque Drehmoment
# current Strom · voltage Spannung · power Leistung · resistance Widerstand · impedance Impedanz · drop Spannungsabfall
# carries führt · can carry trägt · bears verträgt · steady, RMS dauernd, Effektivwert · burst Spitze · duty Aussteuerung
# standing current Ruhestrom · short Kurzschluss · loss Verlust · cut-off Abschaltspannung · charge Ladezustand
# check Prüfung · finding Befund · remedy Abhilfe · mend Behebung · limit Grenzwert · profile Regelwerk · example Beispiel
# undecided offen · not known nicht bekannt · assumed angenommen · given angegeben · overlay Ebene · undo rückgängig
# Stop Halt · Fix Beheben · Tidy Ordnen · care Vorsicht · vehicle maker Fahrzeughersteller · qualified person Fachkraft
# place Stelle · passage Durchgang · route Weg · body plan Aufbauplan · trim Verkleidung (Ort nur: „Recht am Ort“)
# lesson Lektion · version bad/good falsche/richtige Anlage · fault Fehler · break gesetzter Fehler (Fehler setzen, beheben)
# common practice allgemeine Praxis · from memory aus dem Gedächtnis · small craft Sportboote

## Was jeder Satz brauchen kann.

list-and = und
list-nothing = nichts
as-it-stands = { $text }
list-more = { $shown } und { $more } weitere

## Nur in der Dokumentation dieses Pakets gezeigt.

sample-reach = { $fuse } sitzt { $far } Leitung entfernt. Nichts schützt { $runs }.

## Wie viele Dinge.

things-parts = { $count ->
    [one] { $count } Bauteil
   *[other] { $count } Bauteile
}
things-runs = { $count ->
    [one] { $count } Leitung
   *[other] { $count } Leitungen
}
things-both = { $parts } und { $runs }
