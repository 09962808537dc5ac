<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de_DE">
<context>
    <name></name>
    <message id="not put right">
        <source></source>
        <translation>nicht berichtigt</translation>
    </message>
    <message id="put right after {1}">
        <source></source>
        <translation>nach {1} berichtigt</translation>
    </message>
    <message id="not known yet">
        <source></source>
        <translation>noch nicht bekannt</translation>
    </message>
    <message id="on">
        <source></source>
        <translation>an</translation>
    </message>
    <message id="off">
        <source></source>
        <translation>aus</translation>
    </message>
    <message id="between">
        <source></source>
        <translation>dazwischen</translation>
    </message>
    <message id="it said nothing at all">
        <source></source>
        <translation>es meldete gar nichts</translation>
    </message>
    <message id="a control that says nothing cannot confirm a step">
        <source></source>
        <translation>ein Bedienteil, das nichts meldet, kann keinen Schritt bestätigen</translation>
    </message>
    <message id="move it; if nothing comes, see whether it is wired to this input with 'flowhand devices --watch'">
        <source></source>
        <translation>bewegen Sie es; kommt nichts, zeigt ‚flowhand devices --watch‘, ob es an diesem Eingang hängt</translation>
    </message>
    <message id="every report says {1}">
        <source></source>
        <translation>jede Meldung sagt {1}</translation>
    </message>
    <message id="it says nothing but {1} and {2}">
        <source></source>
        <translation>es meldet nur {1} und {2}</translation>
    </message>
    <message id="it is stuck, not connected, or was not moved">
        <source></source>
        <translation>es klemmt, ist nicht angeschlossen oder wurde nicht bewegt</translation>
    </message>
    <message id="that is a switch and no lever">
        <source></source>
        <translation>das ist ein Schalter und kein Hebel</translation>
    </message>
    <message id="move it from end to end; see to its wire, the rod and the supply of its potentiometer">
        <source></source>
        <translation>bewegen Sie es von Ende zu Ende; prüfen Sie Draht, Gestänge und die Versorgung des Potentiometers</translation>
    </message>
    <message id="wire it as a contact, or see to a broken track or wiper">
        <source></source>
        <translation>verdrahten Sie es als Kontakt, oder prüfen Sie Schleifbahn und Schleifer auf Bruch</translation>
    </message>
    <message id="it was never at rest">
        <source></source>
        <translation>es war nie in Ruhe</translation>
    </message>
    <message id="sigma {1} counts, in a travel of {2}">
        <source></source>
        <translation>Sigma {1} Zählwerte, bei einem Weg von {2}</translation>
    </message>
    <message id="no movement can be told from its noise">
        <source></source>
        <translation>keine Bewegung ist von seinem Rauschen zu unterscheiden</translation>
    </message>
    <message id="it was not moved, or its wire is open: an open input picks up whatever is near; see to wiper, ground and plug">
        <source></source>
        <translation>es wurde nicht bewegt, oder sein Draht ist offen: ein offener Eingang fängt alles auf, was in der Nähe ist; prüfen Sie Schleifer, Masse und Stecker</translation>
    </message>
    <message id="sigma {1} counts, peak to peak {2}; {3} effective and {4} noise-free bits of {5}">
        <source></source>
        <translation>Sigma {1} Zählwerte, Spitze-Spitze {2}; {3} effektive und {4} rauschfreie Bits von {5}</translation>
    </message>
    <message id="its noise (6.6 sigma) is {1} % of its travel; a step's band must be wider than that">
        <source></source>
        <translation>sein Rauschen (6,6 Sigma) ist {1} % seines Weges; das Band eines Schritts muss breiter sein</translation>
    </message>
    <message id="try a capacitor of 100 nF from wiper to ground at the card, a ground wire of its own, a shorter or shielded cable away from lamps and motors, and a potentiometer of 10 kilohms">
        <source></source>
        <translation>versuchen Sie einen Kondensator von 100 nF vom Schleifer zur Masse an der Karte, eine eigene Masseleitung, ein kürzeres oder geschirmtes Kabel fern von Lampen und Motoren und ein Potentiometer von 10 Kiloohm</translation>
    </message>
    <message id="it uses {1} % of the converter's range, counts {2} to {3}">
        <source></source>
        <translation>es nutzt {1} % des Wandlerbereichs, Zählwerte {2} bis {3}</translation>
    </message>
    <message id="that gives {1} places that noise does not blur; 100 are enough for 1 %">
        <source></source>
        <translation>das gibt {1} Stellen, die das Rauschen nicht verwischt; für 1 % genügen 100</translation>
    </message>
    <message id="let the lever turn the potentiometer further: a longer arm at the lever, a shorter one at the potentiometer, or a potentiometer of less travel">
        <source></source>
        <translation>lassen Sie den Hebel das Potentiometer weiter drehen: längerer Arm am Hebel, kürzerer am Potentiometer, oder ein Potentiometer mit weniger Weg</translation>
    </message>
    <message id="it was never left alone for {1} s">
        <source></source>
        <translation>es wurde nie {1} s in Ruhe gelassen</translation>
    </message>
    <message id="drift shows only in a long rest">
        <source></source>
        <translation>Drift zeigt sich nur in langer Ruhe</translation>
    </message>
    <message id="leave it alone for ten seconds">
        <source></source>
        <translation>lassen Sie es zehn Sekunden in Ruhe</translation>
    </message>
    <message id="it went by {1} counts in {2} s of rest, {3} % of its travel">
        <source></source>
        <translation>es wanderte in {2} s Ruhe um {1} Zählwerte, {3} % seines Weges</translation>
    </message>
    <message id="a lever that nobody touches must stay in its band">
        <source></source>
        <translation>ein Hebel, den niemand berührt, muss in seinem Band bleiben</translation>
    </message>
    <message id="see whether the lever sinks by its own weight (more friction), the shaft slips in its coupling, or the supply wanders as the card warms up">
        <source></source>
        <translation>prüfen Sie, ob der Hebel durch sein Gewicht sinkt (mehr Reibung), die Welle in der Kupplung rutscht oder die Versorgung wandert, während die Karte warm wird</translation>
    </message>
    <message id="{1}; {2}">
        <source></source>
        <translation>{1}; {2}</translation>
    </message>
    <message id="it counts in steps of {1}">
        <source></source>
        <translation>es zählt in Stufen von {1}</translation>
    </message>
    <message id="it counts one by one">
        <source></source>
        <translation>es zählt einzeln</translation>
    </message>
    <message id="{1} % of the counts on its way never come">
        <source></source>
        <translation>{1} % der Zählwerte auf seinem Weg kommen nie vor</translation>
    </message>
    <message id="moved too fast to see every count">
        <source></source>
        <translation>zu schnell bewegt, um jeden Zählwert zu sehen</translation>
    </message>
    <message id="fine enough for every step">
        <source></source>
        <translation>fein genug für jeden Schritt</translation>
    </message>
    <message id="a lever cannot stop where no count is">
        <source></source>
        <translation>ein Hebel kann nicht stehen, wo kein Zählwert ist</translation>
    </message>
    <message id="set the card to its full resolution, or use one whose converter has the bits that it reports">
        <source></source>
        <translation>stellen Sie die Karte auf volle Auflösung, oder nehmen Sie eine, deren Wandler die Bits hat, die sie meldet</translation>
    </message>
    <message id="{1} to {2}">
        <source></source>
        <translation>{1} bis {2}</translation>
    </message>
    <message id="{1} spikes, the largest of {2} counts">
        <source></source>
        <translation>{1} Ausreißer, der größte von {2} Zählwerten</translation>
    </message>
    <message id="it moves without a jump">
        <source></source>
        <translation>es bewegt sich ohne Sprung</translation>
    </message>
    <message id="{1}; it jumps at the counts {2}">
        <source></source>
        <translation>{1}; es springt bei den Zählwerten {2}</translation>
    </message>
    <message id="its track is whole">
        <source></source>
        <translation>die Schleifbahn ist heil</translation>
    </message>
    <message id="so does a worn or dirty track, or a loose plug">
        <source></source>
        <translation>so verhält sich eine abgenutzte oder schmutzige Schleifbahn oder ein loser Stecker</translation>
    </message>
    <message id="turn it quickly from end to end fifty times, then see to plug and solder; if it stays, change the potentiometer. Until then a 'spike_limit' keeps spikes out">
        <source></source>
        <translation>drehen Sie es fünfzigmal schnell von Ende zu Ende, dann prüfen Sie Stecker und Lötstellen; bleibt es, tauschen Sie das Potentiometer. Bis dahin hält ‚spike_limit‘ Ausreißer fern</translation>
    </message>
    <message id="no place was come to from both sides">
        <source></source>
        <translation>keine Stelle wurde von beiden Seiten angefahren</translation>
    </message>
    <message id="hysteresis is the difference between coming to a place from above and from below">
        <source></source>
        <translation>Hysterese ist der Unterschied, ob man von oben oder von unten an eine Stelle kommt</translation>
    </message>
    <message id="move it to its places both upwards and downwards, and hold it there for a second">
        <source></source>
        <translation>fahren Sie seine Stellen aufwärts und abwärts an und halten Sie es dort eine Sekunde</translation>
    </message>
    <message id="the same place reads {1} counts apart from above and from below, {2} % of its travel ({3} % of the applied voltage)">
        <source></source>
        <translation>dieselbe Stelle liest von oben und von unten um {1} Zählwerte verschieden, {2} % seines Weges ({3} % der angelegten Spannung)</translation>
    </message>
    <message id="a lever of a training device may be off by 3 % at most">
        <source></source>
        <translation>ein Hebel eines Übungsgeräts darf höchstens 3 % danebenliegen</translation>
    </message>
    <message id="take the play out of the rod, its joints and the coupling: tighter eyes, a preloading spring, a set screw on a flat">
        <source></source>
        <translation>nehmen Sie das Spiel aus Gestänge, Gelenken und Kupplung: engere Augen, eine Feder zum Vorspannen, eine Madenschraube auf einer Fläche</translation>
    </message>
    <message id="it was not seen to spring back twice">
        <source></source>
        <translation>es federte nicht zweimal sichtbar zurück</translation>
    </message>
    <message id="the error of its return is what several returns differ by">
        <source></source>
        <translation>der Rückstellfehler ist, worin sich mehrere Rückstellungen unterscheiden</translation>
    </message>
    <message id="push it to one side and let go, three times from each side, two seconds apart">
        <source></source>
        <translation>drücken Sie es zur Seite und lassen Sie los, dreimal von jeder Seite, im Abstand von zwei Sekunden</translation>
    </message>
    <message id="its returns lie within {1} counts of their middle, {2} % of its travel">
        <source></source>
        <translation>seine Rückstellungen liegen innerhalb von {1} Zählwerten um ihre Mitte, {2} % seines Weges</translation>
    </message>
    <message id="what it does not come back by, the dead band has to cover">
        <source></source>
        <translation>was es nicht zurückkommt, muss das Totband decken</translation>
    </message>
    <message id="a stronger or second spring, less friction at the axle, and a cam or detent that pulls it to the middle">
        <source></source>
        <translation>eine stärkere oder zweite Feder, weniger Reibung an der Achse und eine Kurve oder Raste, die es zur Mitte zieht</translation>
    </message>
    <message id="independent linearity {1} % of the applied voltage">
        <source></source>
        <translation>unabhängige Linearität {1} % der angelegten Spannung</translation>
    </message>
    <message id="the furthest that a place lies from the closest straight line; a rod at an angle bends it">
        <source></source>
        <translation>so weit liegt eine Stelle höchstens von der besten Geraden; ein schräges Gestänge biegt sie</translation>
    </message>
    <message id="let 'flowhand bench calibrate --values' bend the scale back, or mount arm and rod at right angles in the middle of the travel">
        <source></source>
        <translation>biegen Sie die Skala mit den wahren Werten beim Kalibrieren zurück, oder bauen Sie Arm und Gestänge in der Mitte des Weges rechtwinklig ein</translation>
    </message>
    <message id="{1} with its switch on">
        <source></source>
        <translation>{1} bei eingeschaltetem Schalter</translation>
    </message>
    <message id="{1} with its switch off">
        <source></source>
        <translation>{1} bei ausgeschaltetem Schalter</translation>
    </message>
    <message id="'{1}' is wired as '{2}'; values are given to an axis alone">
        <source></source>
        <translation>„{1}“ ist als ‚{2}‘ verdrahtet; Werte gibt man nur einer Achse</translation>
    </message>
    <message id="“{1}” is no value of it; write a number and its unit, as in {2}, with a point and no comma">
        <source></source>
        <translation>„{1}“ ist kein Wert davon; schreiben Sie eine Zahl und ihre Einheit wie in {2}, mit Punkt und ohne Komma</translation>
    </message>
    <message id="'{1}' is out of order; values rise from the low end to the high end, both of them included, within {2} to {3} {4}">
        <source></source>
        <translation>„{1}“ ist nicht in der Reihenfolge; die Werte steigen vom unteren zum oberen Ende, beide eingeschlossen, zwischen {2} und {3} {4}</translation>
    </message>
    <message id="give the values of two places or more, as in {1}">
        <source></source>
        <translation>geben Sie die Werte von zwei oder mehr Stellen an, wie in {1}</translation>
    </message>
    <message id="'{1}': the way from idle to one of its ends is too short to tell from idle">
        <source></source>
        <translation>„{1}“: der Weg vom Leerlauf zu einem Ende ist zu kurz, um ihn vom Leerlauf zu unterscheiden</translation>
    </message>
    <message id="jumps beyond {1} counts must last for {2}">
        <source></source>
        <translation>Sprünge über {1} Zählwerte müssen {2} dauern</translation>
    </message>
    <message id="median of {1}">
        <source></source>
        <translation>Median von {1}</translation>
    </message>
    <message id="low-pass of {1}">
        <source></source>
        <translation>Tiefpass von {1}</translation>
    </message>
    <message id="hysteresis {1} counts">
        <source></source>
        <translation>Hysterese {1} Zählwerte</translation>
    </message>
    <message id="debounce {1}">
        <source></source>
        <translation>Entprellung {1}</translation>
    </message>
    <message id="it did not move from end to end (counts {1} to {2}, never at rest); move it to one end, hold it there for a second, then to the other, three times">
        <source></source>
        <translation>es bewegte sich nicht von Ende zu Ende (Zählwerte {1} bis {2}, nie in Ruhe); bewegen Sie es an ein Ende, halten Sie es dort eine Sekunde, dann an das andere, dreimal</translation>
    </message>
    <message id="it did not move from end to end (counts {1} to {2}); move it to one end, hold it there for a second, then to the other, three times">
        <source></source>
        <translation>es bewegte sich nicht von Ende zu Ende (Zählwerte {1} bis {2}); bewegen Sie es an ein Ende, halten Sie es dort eine Sekunde, dann an das andere, dreimal</translation>
    </message>
    <message id="it reached its lowest counts ({1}) but was not held there; hold it at each end for a second">
        <source></source>
        <translation>es kam an seinen niedrigsten Zählwert ({1}), wurde dort aber nicht gehalten; halten Sie es an jedem Ende eine Sekunde</translation>
    </message>
    <message id="it reached its highest counts ({1}) but was not held there; hold it at each end for a second">
        <source></source>
        <translation>es kam an seinen höchsten Zählwert ({1}), wurde dort aber nicht gehalten; halten Sie es an jedem Ende eine Sekunde</translation>
    </message>
    <message id="it came to rest between its ends for a second only {1} times in one place; push it to one side, let it spring back and leave it alone for two seconds, three times from each side">
        <source></source>
        <translation>es kam zwischen seinen Enden nur {1}-mal an derselben Stelle für eine Sekunde zur Ruhe; drücken Sie es zur Seite, lassen Sie es zurückfedern und zwei Sekunden in Ruhe, dreimal von jeder Seite</translation>
    </message>
    <message id="it was let go from one side only">
        <source></source>
        <translation>es wurde nur von einer Seite losgelassen</translation>
    </message>
    <message id="its centre may lie elsewhere when it comes from the other">
        <source></source>
        <translation>von der anderen Seite mag seine Mitte woanders liegen</translation>
    </message>
    <message id="calibrate again and let it spring back from both sides">
        <source></source>
        <translation>kalibrieren Sie noch einmal und lassen Sie es von beiden Seiten zurückfedern</translation>
    </message>
    <message id="places, idle and both ends">
        <source></source>
        <translation>Stellen sein, Leerlauf und beide Enden</translation>
    </message>
    <message id="idle">
        <source></source>
        <translation>Leerlauf</translation>
    </message>
    <message id="there should be {1} {2}, and it was held at other places (count, how often): {3}; hold each for a second, from both sides, at least twice, and nothing between them">
        <source></source>
        <translation>es sollten {1} {2}, gehalten wurde es an anderen Stellen (Zählwert, wie oft): {3}; halten Sie jede eine Sekunde, von beiden Seiten, mindestens zweimal, und nichts dazwischen</translation>
    </message>
    <message id="gates">
        <source></source>
        <translation>Rasten sein</translation>
    </message>
    <message id="gate '{1}' was found within {2} counts, and the next gate is {3} away">
        <source></source>
        <translation>Raste „{1}“ wurde innerhalb von {2} Zählwerten gefunden, die nächste liegt {3} entfernt</translation>
    </message>
    <message id="gates so wide cannot be told apart safely">
        <source></source>
        <translation>so breite Rasten lassen sich nicht sicher unterscheiden</translation>
    </message>
    <message id="deepen the notch, take play out of the linkage, or use a longer arm">
        <source></source>
        <translation>vertiefen Sie die Kerbe, nehmen Sie Spiel aus dem Gestänge, oder nehmen Sie einen längeren Arm</translation>
    </message>
    <message id="gate '{1}'">
        <source></source>
        <translation>Raste „{1}“</translation>
    </message>
    <message id="places of the values given">
        <source></source>
        <translation>Stellen der angegebenen Werte sein</translation>
    </message>
    <message id="the place of {1}">
        <source></source>
        <translation>die Stelle von {1}</translation>
    </message>
    <message id="it springs back to count {1}, and none of the values is of that place; give the value of its centre too">
        <source></source>
        <translation>es federt auf Zählwert {1} zurück, und keiner der Werte gehört zu dieser Stelle; geben Sie auch den Wert der Mitte an</translation>
    </message>
    <message id="{1} was come to from one side only">
        <source></source>
        <translation>nur von einer Seite angefahren: {1}</translation>
    </message>
    <message id="its backlash is not known, and coming from the other side may miss its band">
        <source></source>
        <translation>das Spiel ist nicht bekannt, und von der anderen Seite mag es sein Band verfehlen</translation>
    </message>
    <message id="calibrate again and move through all places upwards and downwards">
        <source></source>
        <translation>kalibrieren Sie noch einmal und fahren Sie alle Stellen aufwärts und abwärts durch</translation>
    </message>
    <message id="not every place was held twice">
        <source></source>
        <translation>nicht jede Stelle wurde zweimal gehalten</translation>
    </message>
    <message id="whether it comes back to the same count is not known">
        <source></source>
        <translation>ob es auf denselben Zählwert zurückkommt, ist nicht bekannt</translation>
    </message>
    <message id="calibrate again and visit every place at least twice">
        <source></source>
        <translation>kalibrieren Sie noch einmal und fahren Sie jede Stelle mindestens zweimal an</translation>
    </message>
    <message id="comes back within {1} % of its travel">
        <source></source>
        <translation>kommt auf {1} % seines Weges genau zurück</translation>
    </message>
    <message id="well inside the 3 % that a lever of a training device may be off">
        <source></source>
        <translation>weit innerhalb der 3 %, die ein Hebel eines Übungsgeräts danebenliegen darf</translation>
    </message>
    <message id="look for play in the rod and its joints, a loose knob or a slipping shaft">
        <source></source>
        <translation>suchen Sie Spiel in Gestänge und Gelenken, einen losen Knopf oder eine rutschende Welle</translation>
    </message>
    <message id="its travel uses {1} of the converter's range and has {2} places that noise does not blur">
        <source></source>
        <translation>sein Weg nutzt {1} des Wandlerbereichs und hat {2} Stellen, die das Rauschen nicht verwischt</translation>
    </message>
    <message id="100 are enough to set it to 1 %">
        <source></source>
        <translation>100 genügen, um es auf 1 % einzustellen</translation>
    </message>
    <message id="fewer than 100 cannot be set to 1 %">
        <source></source>
        <translation>mit weniger als 100 lässt es sich nicht auf 1 % einstellen</translation>
    </message>
    <message id="use a longer arm or a rod that turns the potentiometer further, and see to the noise with 'flowhand bench health'">
        <source></source>
        <translation>nehmen Sie einen längeren Arm oder ein Gestänge, das das Potentiometer weiter dreht, und messen Sie das Signal, um dem Rauschen nachzugehen</translation>
    </message>
    <message id="bounces for {1} at most, {2} in the middle of {3} changes">
        <source></source>
        <translation>prellt höchstens {1}, im Mittel {2} bei {3} Wechseln</translation>
    </message>
    <message id="{1} (as far as a report every {2} shows)">
        <source></source>
        <translation>{1} (soweit eine Meldung alle {2} es zeigt)</translation>
    </message>
    <message id="measured switches bounce for 1.6 ms on average and 6.2 ms at most, paddle contacts for up to 10 ms">
        <source></source>
        <translation>gemessene Schalter prellen im Mittel 1,6 ms und höchstens 6,2 ms, Paddle-Kontakte bis zu 10 ms</translation>
    </message>
    <message id="raise 'debounce' above it; clean or change the switch, and see that the lever presses it firmly">
        <source></source>
        <translation>setzen Sie ‚debounce‘ höher; reinigen oder tauschen Sie den Schalter, und sorgen Sie, dass der Hebel ihn fest drückt</translation>
    </message>
    <message id="stays as it is put">
        <source></source>
        <translation>bleibt, wie es gestellt ist</translation>
    </message>
    <message id="changed for a moment and back {1} times">
        <source></source>
        <translation>wechselte {1}-mal für einen Augenblick und zurück</translation>
    </message>
    <message id="no change that a hand did not make">
        <source></source>
        <translation>kein Wechsel, den nicht eine Hand machte</translation>
    </message>
    <message id="a hand cannot press and let go within 25 ms">
        <source></source>
        <translation>eine Hand kann nicht binnen 25 ms drücken und loslassen</translation>
    </message>
    <message id="see to plug, solder and crimp, to a lever that only just touches the switch, and to a cable beside motors or lamps">
        <source></source>
        <translation>prüfen Sie Stecker, Lötstellen und Crimps, ob der Hebel den Schalter nur gerade berührt, und ob das Kabel neben Motoren oder Lampen liegt</translation>
    </message>
    <message id="stayed closed all the time">
        <source></source>
        <translation>blieb die ganze Zeit geschlossen</translation>
    </message>
    <message id="stayed open all the time">
        <source></source>
        <translation>blieb die ganze Zeit offen</translation>
    </message>
    <message id="it was worked and did not change">
        <source></source>
        <translation>es wurde betätigt und wechselte nicht</translation>
    </message>
    <message id="nobody worked it">
        <source></source>
        <translation>niemand betätigte es</translation>
    </message>
    <message id="see to its wire and whether the lever reaches it; 'flowhand devices --watch' shows which input stirs">
        <source></source>
        <translation>prüfen Sie den Draht und ob der Hebel ihn erreicht; ‚flowhand devices --watch‘ zeigt, welcher Eingang sich rührt</translation>
    </message>
    <message id="work it a few times while it is measured">
        <source></source>
        <translation>betätigen Sie es ein paarmal, während es gemessen wird</translation>
    </message>
    <message id="two contacts closed together for {1} at most">
        <source></source>
        <translation>zwei Kontakte waren höchstens {1} zugleich geschlossen</translation>
    </message>
    <message id="within the transit time; a switch that makes before it breaks does so">
        <source></source>
        <translation>innerhalb der Umschaltzeit; so verhält sich ein Schalter, der schließt, bevor er öffnet</translation>
    </message>
    <message id="longer than the transit time of {1}">
        <source></source>
        <translation>länger als die Umschaltzeit von {1}</translation>
    </message>
    <message id="look for a bridge of solder, two wires at one terminal, or a second switch on the same inputs">
        <source></source>
        <translation>suchen Sie eine Lötbrücke, zwei Drähte an einer Klemme oder einen zweiten Schalter an denselben Eingängen</translation>
    </message>
    <message id="between two positions none was closed for {1} at most, {2} usually">
        <source></source>
        <translation>zwischen zwei Stellungen war höchstens {1} lang keiner geschlossen, gewöhnlich {2}</translation>
    </message>
    <message id="a switch that breaks before it makes does so; that is no fault">
        <source></source>
        <translation>so verhält sich ein Schalter, der öffnet, bevor er schließt; das ist kein Fehler</translation>
    </message>
    <message id="turn it from click to click without stopping between; if that does not help, a contact or its wire is open there, or 'transit' is too short for your hand">
        <source></source>
        <translation>drehen Sie von Raste zu Raste, ohne dazwischen anzuhalten; hilft das nicht, ist dort ein Kontakt oder sein Draht offen, oder ‚transit‘ ist zu kurz für Ihre Hand</translation>
    </message>
    <message id="never closed: {1}">
        <source></source>
        <translation>nie geschlossen: {1}</translation>
    </message>
    <message id="each position has to be reached when it is turned through all">
        <source></source>
        <translation>beim Drehen durch alle Stellungen muss jede erreicht werden</translation>
    </message>
    <message id="it was not turned through all positions">
        <source></source>
        <translation>es wurde nicht durch alle Stellungen gedreht</translation>
    </message>
    <message id="see to these wires and their solder, and to the stop of the switch">
        <source></source>
        <translation>prüfen Sie diese Drähte und ihre Lötstellen und den Anschlag des Schalters</translation>
    </message>
    <message id="turn it through all positions while it is measured">
        <source></source>
        <translation>drehen Sie es durch alle Stellungen, während es gemessen wird</translation>
    </message>
    <message id="{1} is not wired">
        <source></source>
        <translation>{1} ist nicht verdrahtet</translation>
    </message>
    <message id="{1} reports">
        <source></source>
        <translation>{1} Meldungen</translation>
    </message>
    <message id="{1} reports, only when something changed">
        <source></source>
        <translation>{1} Meldungen, nur bei Änderungen</translation>
    </message>
    <message id="gaps show only where reports come at a pace of their own">
        <source></source>
        <translation>Lücken zeigen sich nur, wo Meldungen im eigenen Takt kommen</translation>
    </message>
    <message id="measure for longer">
        <source></source>
        <translation>messen Sie länger</translation>
    </message>
    <message id="a report every {1}">
        <source></source>
        <translation>eine Meldung alle {1}</translation>
    </message>
    <message id="a control should be seen within 100 ms">
        <source></source>
        <translation>ein Bedienteil sollte binnen 100 ms gesehen werden</translation>
    </message>
    <message id="set the card to a shorter report interval, if it can">
        <source></source>
        <translation>stellen Sie die Karte auf kürzere Abstände der Meldungen, wenn sie es kann</translation>
    </message>
    <message id="intervals differ by {1} (sigma)">
        <source></source>
        <translation>die Abstände schwanken um {1} (Sigma)</translation>
    </message>
    <message id="steady enough for every step">
        <source></source>
        <translation>stetig genug für jeden Schritt</translation>
    </message>
    <message id="times are known only as well as the reports come">
        <source></source>
        <translation>Zeiten sind nur so genau bekannt, wie die Meldungen kommen</translation>
    </message>
    <message id="plug it in directly instead of through a hub">
        <source></source>
        <translation>stecken Sie es direkt ein statt über einen Hub</translation>
    </message>
    <message id="{1} gaps, the longest of {2}">
        <source></source>
        <translation>{1} Lücken, die längste von {2}</translation>
    </message>
    <message id="nothing was missed">
        <source></source>
        <translation>nichts wurde verpasst</translation>
    </message>
    <message id="what moves in a gap is seen late or not at all">
        <source></source>
        <translation>was sich in einer Lücke bewegt, wird spät oder gar nicht gesehen</translation>
    </message>
    <message id="try another cable and socket, plug it in directly instead of through a hub, and see whether the computer was busy">
        <source></source>
        <translation>versuchen Sie ein anderes Kabel und eine andere Buchse, stecken Sie es direkt ein statt über einen Hub, und sehen Sie nach, ob der Rechner beschäftigt war</translation>
    </message>
    <message id="nothing follows for its filters">
        <source></source>
        <translation>für seine Filter folgt nichts</translation>
    </message>
    <message id="it was not moved, or no movement can be told from its noise: no filter mends that">
        <source></source>
        <translation>es wurde nicht bewegt, oder keine Bewegung ist vom Rauschen zu unterscheiden: das heilt kein Filter</translation>
    </message>
    <message id="its noise (6 sigma, {1} counts) is narrower than {2}">
        <source></source>
        <translation>sein Rauschen (6 Sigma, {1} Zählwerte) ist schmaler als {2}</translation>
    </message>
    <message id="no step judges it in a band">
        <source></source>
        <translation>kein Schritt beurteilt es in einem Band</translation>
    </message>
    <message id="'smooth' is not needed and makes it late by {1}">
        <source></source>
        <translation>‚smooth‘ wird nicht gebraucht und verzögert es um {1}</translation>
    </message>
    <message id="none is needed">
        <source></source>
        <translation>keiner wird gebraucht</translation>
    </message>
    <message id="remove it">
        <source></source>
        <translation>nehmen Sie ihn heraus</translation>
    </message>
    <message id="the narrowest band of {1} counts ({2})">
        <source></source>
        <translation>das schmalste Band von {1} Zählwerten ({2})</translation>
    </message>
    <message id="filters may make it late by {1} at most">
        <source></source>
        <translation>Filter dürfen es höchstens um {1} verzögern</translation>
    </message>
    <message id="filters may make it late by {1} at most, a tenth of the time of '{2}'">
        <source></source>
        <translation>Filter dürfen es höchstens um {1} verzögern, ein Zehntel der Zeit von „{2}“</translation>
    </message>
    <message id="its noise (6 sigma, {1} counts) is wider than {2}">
        <source></source>
        <translation>sein Rauschen (6 Sigma, {1} Zählwerte) ist breiter als {2}</translation>
    </message>
    <message id="{1}; a low-pass would make it late by {2}">
        <source></source>
        <translation>{1}; ein Tiefpass würde es um {2} verzögern</translation>
    </message>
    <message id="{1}, which is hardly wider than a count">
        <source></source>
        <translation>{1}, das kaum breiter als ein Zählwert ist</translation>
    </message>
    <message id="take the noise away at its source, as 'noise' above says, or use more of the converter's range">
        <source></source>
        <translation>beseitigen Sie das Rauschen an der Quelle, wie oben zum Rauschen gesagt, oder nutzen Sie mehr vom Wandlerbereich</translation>
    </message>
    <message id="a low-pass of {1} brings 6 sigma from {2} to {3} counts, and makes it late by {4}, with the median by {5}">
        <source></source>
        <translation>ein Tiefpass von {1} bringt 6 Sigma von {2} auf {3} Zählwerte und verzögert es um {4}, mit dem Median um {5}</translation>
    </message>
    <message id="a low-pass of {1} brings 6 sigma from {2} to {3} counts, and makes it late by {4}">
        <source></source>
        <translation>ein Tiefpass von {1} bringt 6 Sigma von {2} auf {3} Zählwerte und verzögert es um {4}</translation>
    </message>
    <message id="spikes of {1} counts and more, for {2} at most">
        <source></source>
        <translation>Ausreißer von {1} Zählwerten und mehr, höchstens {2} lang</translation>
    </message>
    <message id="{1}; a median would make it late by {2}">
        <source></source>
        <translation>{1}; ein Median würde es um {2} verzögern</translation>
    </message>
    <message id="see to the track, as 'jumps' above says">
        <source></source>
        <translation>sehen Sie nach der Schleifbahn, wie oben zu den Sprüngen gesagt</translation>
    </message>
    <message id="{1}: a median of {2} leaves no trace of them, and makes it late by {3}">
        <source></source>
        <translation>{1}: ein Median von {2} lässt keine Spur davon und verzögert es um {3}</translation>
    </message>
    <message id="'spike_limit' alone does not quiet its noise">
        <source></source>
        <translation>‚spike_limit‘ allein beruhigt sein Rauschen nicht</translation>
    </message>
    <message id="a hand moves as fast, so 'spike_limit' cannot tell them from a movement">
        <source></source>
        <translation>eine Hand bewegt sich ebenso schnell, darum kann ‚spike_limit‘ sie nicht von einer Bewegung unterscheiden</translation>
    </message>
    <message id="{1}: a jump beyond {2} counts that does not last for {3} is none">
        <source></source>
        <translation>{1}: ein Sprung über {2} Zählwerte, der nicht {3} dauert, gilt nicht</translation>
    </message>
    <message id="that makes no movement of a hand late, which goes by {1} counts at most from report to report">
        <source></source>
        <translation>das verzögert keine Bewegung der Hand, die von Meldung zu Meldung höchstens {1} Zählwerte weit geht</translation>
    </message>
    <message id="changes below three times {1} counts, its noise, do not travel">
        <source></source>
        <translation>Änderungen unter dem Dreifachen von {1} Zählwerten, seinem Rauschen, werden nicht weitergegeben</translation>
    </message>
    <message id="as the rig file says">
        <source></source>
        <translation>wie in der Anlagendatei</translation>
    </message>
    <message id="the rig file says {1}">
        <source></source>
        <translation>in der Anlagendatei steht {1}</translation>
    </message>
    <message id="noise alone (6 sigma, {1} counts) must not bring it out and in">
        <source></source>
        <translation>Rauschen allein (6 Sigma, {1} Zählwerte) darf es nicht heraus- und hineinbringen</translation>
    </message>
    <message id="{1} counts are enough">
        <source></source>
        <translation>{1} Zählwerte genügen</translation>
    </message>
    <message id="it should be {1} counts, and there is room for {2}">
        <source></source>
        <translation>es sollten {1} Zählwerte sein, Platz ist für {2}</translation>
    </message>
    <message id="see to the noise, or calibrate again so that its places lie further apart">
        <source></source>
        <translation>gehen Sie dem Rauschen nach, oder kalibrieren Sie noch einmal, sodass die Stellen weiter auseinanderliegen</translation>
    </message>
    <message id="{1} counts are too few">
        <source></source>
        <translation>{1} Zählwerte sind zu wenig</translation>
    </message>
    <message id="nothing follows for 'debounce'">
        <source></source>
        <translation>für ‚debounce‘ folgt nichts</translation>
    </message>
    <message id="no contact changed">
        <source></source>
        <translation>kein Kontakt wechselte</translation>
    </message>
    <message id="it bounces for {1} at most">
        <source></source>
        <translation>es prellt höchstens {1}</translation>
    </message>
    <message id="{1}, and its shortest state lasts for {2}">
        <source></source>
        <translation>{1}, und sein kürzester Zustand dauert {2}</translation>
    </message>
    <message id="{1}: half as much again is {2}">
        <source></source>
        <translation>{1}: das Anderthalbfache ist {2}</translation>
    </message>
    <message id="a debounce longer than a state of the contact swallows it">
        <source></source>
        <translation>eine Entprellung, die länger ist als ein Zustand des Kontakts, verschluckt ihn</translation>
    </message>
    <message id="clean or change the switch">
        <source></source>
        <translation>reinigen oder tauschen Sie den Schalter</translation>
    </message>
    <message id="{1} are right">
        <source></source>
        <translation>{1} sind richtig</translation>
    </message>
    <message id="{1} are too short">
        <source></source>
        <translation>{1} sind zu kurz</translation>
    </message>
    <message id="{1} are too long">
        <source></source>
        <translation>{1} sind zu lang</translation>
    </message>
    <message id="{1}; the first edge passes at once, what follows within the debounce waits for its end">
        <source></source>
        <translation>{1}; die erste Flanke gilt sofort, was während der Entprellung folgt, wartet auf ihr Ende</translation>
    </message>
    <message id="no {1}">
        <source></source>
        <translation>kein {1}</translation>
    </message>
    <message id="no filters of '{1}' were written that could be taken back">
        <source></source>
        <translation>von „{1}“ wurden keine Filter geschrieben, die sich zurücknehmen ließen</translation>
    </message>
    <message id="'{1}' of '{2}' has been changed since; write yourself what it was before: {3}">
        <source></source>
        <translation>‚{1}‘ von „{2}“ wurde seither geändert; schreiben Sie selbst, was vorher dort stand: {3}</translation>
    </message>
    <message id="no filters were written that could be taken back">
        <source></source>
        <translation>es wurden keine Filter geschrieben, die sich zurücknehmen ließen</translation>
    </message>
    <message id="Put it into each gate and hold it there for a second: through all of them upwards, then downwards, twice. Do not stop between gates.">
        <source></source>
        <translation>Legen Sie es in jede Raste und halten Sie es dort eine Sekunde: alle aufwärts, dann abwärts, zweimal. Halten Sie nicht zwischen Rasten an.</translation>
    </message>
    <message id="Put it at {1}, and hold each for a second: through all of them upwards, then downwards, three times. Do not stop between them. Then let it spring back and leave it alone for two seconds; three times from each side.">
        <source></source>
        <translation>Stellen Sie es auf {1} und halten Sie jeden Wert eine Sekunde: alle aufwärts, dann abwärts, dreimal. Halten Sie nicht dazwischen an. Dann lassen Sie es zurückfedern und zwei Sekunden in Ruhe, dreimal von jeder Seite.</translation>
    </message>
    <message id="Put it at {1}, and hold each for a second: through all of them upwards, then downwards, three times. Do not stop between them.">
        <source></source>
        <translation>Stellen Sie es auf {1} und halten Sie jeden Wert eine Sekunde: alle aufwärts, dann abwärts, dreimal. Halten Sie nicht dazwischen an.</translation>
    </message>
    <message id="Hold it for a second at the far end of one part, at idle and at the far end of the other: through all three and back, three times. Do not stop between them.">
        <source></source>
        <translation>Halten Sie es eine Sekunde am äußersten Ende des einen Teils, im Leerlauf und am äußersten Ende des anderen: durch alle drei und zurück, dreimal. Halten Sie nicht dazwischen an.</translation>
    </message>
    <message id="With its switch off, move it to one end and hold it there for a second, then to the other; three times. Then the same with its switch on.">
        <source></source>
        <translation>Bewegen Sie es bei ausgeschaltetem Schalter an ein Ende und halten Sie es dort eine Sekunde, dann an das andere; dreimal. Dann dasselbe bei eingeschaltetem Schalter.</translation>
    </message>
    <message id="Move each of its parts from end to end and hold it at each end for a second, three times.">
        <source></source>
        <translation>Bewegen Sie jeden seiner Teile von Ende zu Ende und halten Sie ihn an jedem Ende eine Sekunde, dreimal.</translation>
    </message>
    <message id="Move it to one end and hold it there for a second, then to the other; three times.">
        <source></source>
        <translation>Bewegen Sie es an ein Ende und halten Sie es dort eine Sekunde, dann an das andere; dreimal.</translation>
    </message>
    <message id="{1} Then push it to one side, let it spring back and leave it alone for two seconds; three times from each side.">
        <source></source>
        <translation>{1} Dann drücken Sie es zur Seite, lassen es zurückfedern und zwei Sekunden in Ruhe; dreimal von jeder Seite.</translation>
    </message>
    <message id="move it slowly from end to end and back, three times">
        <source></source>
        <translation>es dreimal langsam von Ende zu Ende und zurück bewegen</translation>
    </message>
    <message id="move each lever slowly from end to end and back, three times">
        <source></source>
        <translation>jeden Hebel dreimal langsam von Ende zu Ende und zurück bewegen</translation>
    </message>
    <message id="hold it at each gate from both sides">
        <source></source>
        <translation>es von beiden Seiten in jeder Raste halten</translation>
    </message>
    <message id="let it spring back from both sides">
        <source></source>
        <translation>es von beiden Seiten zurückfedern lassen</translation>
    </message>
    <message id="turn it through all positions, three times">
        <source></source>
        <translation>es dreimal durch alle Stellungen drehen</translation>
    </message>
    <message id="turn each selector through all positions, three times">
        <source></source>
        <translation>jeden Wahlschalter dreimal durch alle Stellungen drehen</translation>
    </message>
    <message id="work it ten times">
        <source></source>
        <translation>es zehnmal betätigen</translation>
    </message>
    <message id="work each button and switch ten times">
        <source></source>
        <translation>jeden Knopf und Schalter zehnmal betätigen</translation>
    </message>
    <message id="Leave it alone for ten seconds. Then {1}.">
        <source></source>
        <translation>Lassen Sie es zehn Sekunden in Ruhe. Dann: {1}.</translation>
    </message>
    <message id="Leave all of it alone for ten seconds. Then {1}.">
        <source></source>
        <translation>Lassen Sie alles zehn Sekunden in Ruhe. Dann: {1}.</translation>
    </message>
    <message id="all places are found; go on until each was held three times">
        <source></source>
        <translation>alle Stellen sind gefunden; weiter, bis jede dreimal gehalten wurde</translation>
    </message>
    <message id="{1}: {2}; {3}">
        <source></source>
        <translation>{1}: {2}; {3}</translation>
    </message>
    <message id="{1}: {2}; work it">
        <source></source>
        <translation>{1}: {2}; betätigen Sie es</translation>
    </message>
    <message id="no recording is of {1}">
        <source></source>
        <translation>keine Aufnahme ist von {1}</translation>
    </message>
    <message id="'{1}' is wired as '{2}'; levers and pedals are calibrated, contacts need none">
        <source></source>
        <translation>„{1}“ ist als ‚{2}‘ verdrahtet; kalibriert werden Hebel und Pedale, Kontakte brauchen es nicht</translation>
    </message>
    <message id="{1}, {2}: {3}">
        <source></source>
        <translation>{1}, {2}: {3}</translation>
    </message>
    <message id="{1}: {2}">
        <source></source>
        <translation>{1}: {2}</translation>
    </message>
    <message id="Its calibration is written into the rig file.">
        <source></source>
        <translation>Die Kalibrierung ist in die Anlagendatei geschrieben.</translation>
    </message>
    <message id="It was calibrated again to compare; the rig file stays as it is.">
        <source></source>
        <translation>Es wurde zum Vergleich noch einmal kalibriert; die Anlagendatei bleibt, wie sie ist.</translation>
    </message>
    <message id="It is measured.">
        <source></source>
        <translation>Es ist gemessen.</translation>
    </message>
    <message id="{1}. {2}">
        <source></source>
        <translation>{1}. {2}</translation>
    </message>
    <message id="by the rig file">
        <source></source>
        <translation>nach der Anlagendatei</translation>
    </message>
    <message id="measured {1}">
        <source></source>
        <translation>gemessen am {1}</translation>
    </message>
    <message id="{1}, {2}">
        <source></source>
        <translation>{1}, {2}</translation>
    </message>
    <message id="what {1} can be as it is wired is not known">
        <source></source>
        <translation>was {1} so verdrahtet sein kann, ist nicht bekannt</translation>
    </message>
    <message id="{1} and {2} must agree within {3}, less than six times their noise together ({4}, {5} and {6})">
        <source></source>
        <translation>{1} und {2} müssen auf {3} übereinstimmen, weniger als das Sechsfache ihres gemeinsamen Rauschens ({4}, {5} und {6})</translation>
    </message>
    <message id="{1} or {2}">
        <source></source>
        <translation>{1} oder {2}</translation>
    </message>
    <message id="{1} must be {2}, and as it is wired it can only be {3}">
        <source></source>
        <translation>{1} muss {2} sein und kann so verdrahtet nur {3} sein</translation>
    </message>
    <message id="{1} must be {2} to {3}, outside its calibrated range of {4}">
        <source></source>
        <translation>{1} muss {2} bis {3} sein, außerhalb des kalibrierten Bereichs von {4}</translation>
    </message>
    <message id="the band of {1} is {2} wide, less than six times its noise ({3})">
        <source></source>
        <translation>das Band von {1} ist {2} breit, weniger als das Sechsfache des Rauschens ({3})</translation>
    </message>
    <message id="{1} must be moved over {2}, more than its calibrated range of {3}">
        <source></source>
        <translation>{1} muss über {2} bewegt werden, mehr als der kalibrierte Bereich von {3}</translation>
    </message>
    <message id="a movement of {1} over {2} is less than six times its noise ({3})">
        <source></source>
        <translation>eine Bewegung von {1} über {2} ist weniger als das Sechsfache des Rauschens ({3})</translation>
    </message>
    <message id="the band of {1} is {2} to {3}, outside its calibrated range of {4}">
        <source></source>
        <translation>das Band von {1} ist {2} bis {3}, außerhalb des kalibrierten Bereichs von {4}</translation>
    </message>
    <message id="the band of {1} is {2} wide within its calibrated range, less than six times its noise ({3})">
        <source></source>
        <translation>das Band von {1} ist im kalibrierten Bereich {2} breit, weniger als das Sechsfache des Rauschens ({3})</translation>
    </message>
    <message id="nothing">
        <source></source>
        <translation>nichts</translation>
    </message>
    <message id="low end">
        <source></source>
        <translation>unteres Ende</translation>
    </message>
    <message id="high end">
        <source></source>
        <translation>oberes Ende</translation>
    </message>
    <message id="centre">
        <source></source>
        <translation>Mitte</translation>
    </message>
    <message id="{1}: count {2}, {3} in the file: off by {4} % of the travel">
        <source></source>
        <translation>{1}: Zählwert {2}, in der Datei {3}: {4} % des Weges daneben</translation>
    </message>
    <message id="{1}, reads {2}">
        <source></source>
        <translation>{1}, liest {2}</translation>
    </message>
    <message id="that is outside its band of {1} counts either side">
        <source></source>
        <translation>das liegt außerhalb des Bandes von {1} Zählwerten zu jeder Seite</translation>
    </message>
    <message id="calibrate it again, and see whether its arm, rod or knob has slipped">
        <source></source>
        <translation>kalibrieren Sie es neu, und sehen Sie nach, ob Arm, Gestänge oder Knopf verrutscht ist</translation>
    </message>
    <message id="it is not wired yet, so it has no filters">
        <source></source>
        <translation>es ist noch nicht verdrahtet, also hat es keine Filter</translation>
    </message>
    <message id="Written into the rig file: {1}.">
        <source></source>
        <translation>In die Anlagendatei geschrieben: {1}.</translation>
    </message>
    <message id="no measurement of it asks for another filter; measure its signal first">
        <source></source>
        <translation>keine Messung verlangt einen anderen Filter; messen Sie zuerst sein Signal</translation>
    </message>
    <message id="Taken back; the rig file says again: {1}.">
        <source></source>
        <translation>Zurückgenommen; in der Anlagendatei steht wieder: {1}.</translation>
    </message>
    <message id="a tolerance is a number and its unit, as in 2.5 deg, with a point and no comma">
        <source></source>
        <translation>eine Toleranz ist eine Zahl mit ihrer Einheit, wie 2.5 deg, mit Punkt und ohne Komma</translation>
    </message>
    <message id="wire a control first; then there is a rig file for the tolerances">
        <source></source>
        <translation>verdrahten Sie zuerst ein Bedienteil; dann gibt es eine Anlagendatei für die Toleranzen</translation>
    </message>
    <message id="The tolerances of the check walk are written into the rig file.">
        <source></source>
        <translation>Die Toleranzen des Prüfgangs sind in die Anlagendatei geschrieben.</translation>
    </message>
    <message id="the gate '{1}'">
        <source></source>
        <translation>die Raste „{1}“</translation>
    </message>
    <message id="{1} (came to {2})">
        <source></source>
        <translation>{1} (kam bis {2})</translation>
    </message>
    <message id="a movement over {1}">
        <source></source>
        <translation>eine Bewegung über {1}</translation>
    </message>
    <message id="its low end">
        <source></source>
        <translation>sein unteres Ende</translation>
    </message>
    <message id="its high end">
        <source></source>
        <translation>sein oberes Ende</translation>
    </message>
    <message id="a return to its centre">
        <source></source>
        <translation>eine Rückkehr zur Mitte</translation>
    </message>
    <message id="the way between its ends, slowly">
        <source></source>
        <translation>der Weg zwischen den Enden, langsam</translation>
    </message>
    <message id="the way between its ends, slowly (nothing was seen from {1} to {2})">
        <source></source>
        <translation>der Weg zwischen den Enden, langsam (von {1} bis {2} war nichts zu sehen)</translation>
    </message>
    <message id="anything: as it is wired it can be nothing">
        <source></source>
        <translation>irgendetwas: so verdrahtet kann es nichts sein</translation>
    </message>
    <message id="{1}: still to be seen: {2}.">
        <source></source>
        <translation>{1}: noch zu zeigen: {2}.</translation>
    </message>
    <message id="No control is wired in this rig yet.">
        <source></source>
        <translation>In dieser Anlage ist noch kein Bedienteil verdrahtet.</translation>
    </message>
    <message id="{1} of {2} controls were confirmed.">
        <source></source>
        <translation>{1} von {2} Bedienteilen wurden bestätigt.</translation>
    </message>
    <message id="{1}, not seen: {2}.">
        <source></source>
        <translation>{1}, nicht gesehen: {2}.</translation>
    </message>
    <message id="{1} is wired to '{2}' already">
        <source></source>
        <translation>{1} ist schon mit „{2}“ verdrahtet</translation>
    </message>
    <message id="{1}. Shall it make both? If not, stop, and move only the one control.">
        <source></source>
        <translation>{1}. Soll es beide machen? Wenn nicht, brechen Sie ab und bewegen Sie nur das eine Bedienteil.</translation>
    </message>
    <message id="{1} are wired to {2} ({3}).">
        <source></source>
        <translation>{1} sind mit {2} verdrahtet ({3}).</translation>
    </message>
    <message id="{1} is wired to {2} ({3}).">
        <source></source>
        <translation>{1} ist mit {2} verdrahtet ({3}).</translation>
    </message>
    <message id="nothing moved and stood still again after: {1}">
        <source></source>
        <translation>nichts bewegte sich und stand wieder still nach: {1}</translation>
    </message>
    <message id="a wheel that counts moved; say how much a count is: {1}=relative_wheel:0.1 {2}">
        <source></source>
        <translation>ein zählendes Rad bewegte sich; wählen Sie „anders verdrahten“ und sagen Sie, wie viel ein Klick ist ({1}=relative_wheel:0.1 {2})</translation>
    </message>
    <message id="an axis">
        <source></source>
        <translation>eine Achse</translation>
    </message>
    <message id="{1} moved, but stands at the same place ({2}) at both ends; hold each end for a second">
        <source></source>
        <translation>{1} bewegte sich, steht aber an beiden Enden an derselben Stelle ({2}); halten Sie jedes Ende eine Sekunde</translation>
    </message>
    <message id="{1} does not rest between its two ends ({2}, {3}, {4}); was it let go at its centre?">
        <source></source>
        <translation>{1} ruht nicht zwischen seinen beiden Enden ({2}, {3}, {4}); wurde es in der Mitte losgelassen?</translation>
    </message>
    <message id="more than one contact moved; the first that follows the control was taken">
        <source></source>
        <translation>mehr als ein Kontakt bewegte sich; genommen wurde der erste, der dem Bedienteil folgt</translation>
    </message>
    <message id="only an axis moved ({1}); an on/off control needs a contact">
        <source></source>
        <translation>nur eine Achse bewegte sich ({1}); zum Ein- und Ausschalten braucht es einen Kontakt</translation>
    </message>
    <message id="a contact">
        <source></source>
        <translation>einen Kontakt</translation>
    </message>
    <message id="a switch, a hat or an axis">
        <source></source>
        <translation>einen Schalter, einen Rundblickschalter oder eine Achse</translation>
    </message>
    <message id="what moved ({1}) does not tell all {2} positions of {3} apart; hold each for a second, in their order">
        <source></source>
        <translation>was sich bewegte ({1}), unterscheidet nicht alle {2} Stellungen von {3}; halten Sie jede eine Sekunde, der Reihe nach</translation>
    </message>
    <message id="nothing moved and stood still again that could be {1}; is it connected, and was each place held for a second?">
        <source></source>
        <translation>nichts bewegte sich und stand wieder still, das {1} sein könnte; ist es angeschlossen, und wurde jede Stelle eine Sekunde gehalten?</translation>
    </message>
    <message id="what moved ({1}) is not {2}, which {3} needs; is it connected, and was each place held for a second?">
        <source></source>
        <translation>{3} braucht {2}, und das ist nicht, was sich bewegte ({1}); ist es angeschlossen, und wurde jede Stelle eine Sekunde gehalten?</translation>
    </message>
    <message id="{1} moved as well, by {2} counts; was another lever touched, or does one feel the other?">
        <source></source>
        <translation>{1} bewegte sich mit, um {2} Zählwerte; wurde ein anderer Hebel berührt, oder spürt einer den anderen?</translation>
    </message>
    <message id="{1} never stood still and was left out; is anything connected?">
        <source></source>
        <translation>{1} stand nie still und wurde ausgelassen; ist etwas angeschlossen?</translation>
    </message>
    <message id="only numbers can share one lever; wire '{1}' by itself">
        <source></source>
        <translation>nur Zahlen können sich einen Hebel teilen; verdrahten Sie ‚{1}‘ für sich</translation>
    </message>
    <message id="no {1} of {2} moved; is it connected, and was each place held for a second?">
        <source></source>
        <translation>für {2} fehlt: {1}; ist es angeschlossen, und wurde jede Stelle eine Sekunde gehalten?</translation>
    </message>
    <message id="axis">
        <source></source>
        <translation>eine Achse</translation>
    </message>
    <message id="idle ({1}) does not lie between the two ends ({2}, {3}) of {4}; start with the lever at idle">
        <source></source>
        <translation>der Leerlauf ({1}) liegt nicht zwischen den beiden Enden ({2}, {3}) von {4}; beginnen Sie mit dem Hebel im Leerlauf</translation>
    </message>
    <message id="the way from idle to the far end of the second one is too short to tell from idle">
        <source></source>
        <translation>der Weg vom Leerlauf zum äußersten Ende des zweiten ist zu kurz, um ihn vom Leerlauf zu unterscheiden</translation>
    </message>
    <message id="single contact for the switch">
        <source></source>
        <translation>ein einzelner Kontakt für den Schalter</translation>
    </message>
    <message id="{1} does not rest between its two ends">
        <source></source>
        <translation>{1} ruht nicht zwischen seinen beiden Enden</translation>
    </message>
    <message id="other axis of the stick">
        <source></source>
        <translation>die andere Achse des Knüppels</translation>
    </message>
    <message id="the stick's other movements twist it by half of its way; was it not twisted by hand?">
        <source></source>
        <translation>die anderen Bewegungen des Knüppels drehen ihn um den halben Weg; wurde er nicht von Hand gedreht?</translation>
    </message>
    <message id="the stick's other movements are not felt">
        <source></source>
        <translation>die anderen Bewegungen des Knüppels sind nicht zu spüren</translation>
    </message>
    <message id="first axis">
        <source></source>
        <translation>die erste Achse</translation>
    </message>
    <message id="second axis">
        <source></source>
        <translation>die zweite Achse</translation>
    </message>
    <message id="contact">
        <source></source>
        <translation>ein Kontakt</translation>
    </message>
    <message id="two zones have the same contacts closed ({1}); hold each for a second">
        <source></source>
        <translation>zwei Zonen haben dieselben Kontakte geschlossen ({1}); halten Sie jede eine Sekunde</translation>
    </message>
    <message id="{1} contacts changed; an encoder has two. One whose card counts is a relative_wheel, one whose card presses buttons is step_buttons">
        <source></source>
        <translation>{1} Kontakte wechselten; ein Drehgeber hat zwei. Zählt die Karte selbst, ist es ein zählendes Rad; drückt die Karte Knöpfe, sind es ein Knopf für mehr und einer für weniger</translation>
    </message>
    <message id="four clicks made {1} changes; an encoder makes 4, 8 or 16. Was it turned by just four clicks, one way?">
        <source></source>
        <translation>vier Klicks machten {1} Wechsel; ein Drehgeber macht 4, 8 oder 16. Wurde er genau vier Klicks weit in eine Richtung gedreht?</translation>
    </message>
    <message id="single button for less">
        <source></source>
        <translation>ein einzelner Knopf für weniger</translation>
    </message>
    <message id="single button for more">
        <source></source>
        <translation>ein einzelner Knopf für mehr</translation>
    </message>
    <message id="the same button was pressed both times">
        <source></source>
        <translation>beide Male wurde derselbe Knopf gedrückt</translation>
    </message>
    <message id="wheel that counts">
        <source></source>
        <translation>ein zählendes Rad</translation>
    </message>
    <message id="single wheel">
        <source></source>
        <translation>ein einzelnes Rad</translation>
    </message>
    <message id="pedal">
        <source></source>
        <translation>ein Pedal</translation>
    </message>
    <message id="single contact for the pull">
        <source></source>
        <translation>ein einzelner Kontakt für den Zug</translation>
    </message>
    <message id="only one pedal moved; it sets the brake alone">
        <source></source>
        <translation>nur ein Pedal bewegte sich; es setzt die Bremse allein</translation>
    </message>
    <message id="“{1}” is no value of it; as in {2}">
        <source></source>
        <translation>„{1}“ ist kein Wert davon; richtig ist etwa {2}</translation>
    </message>
    <message id="zones need their values: {1}=zones:0 %,50 %,100 %">
        <source></source>
        <translation>Zonen brauchen ihre Werte: {1}=zones:0 %,50 %,100 %</translation>
    </message>
    <message id="say how much one click or press is: {1}=encoder:0.1 {2}">
        <source></source>
        <translation>sagen Sie, wie viel ein Klick oder Druck ist: {1}=encoder:0.1 {2}</translation>
    </message>
    <message id="Put the lever of {1} at idle, hands off.">
        <source></source>
        <translation>Stellen Sie den Hebel von {1} auf Leerlauf, Hände weg.</translation>
    </message>
    <message id="Move it to the far end of {1} and hold it.">
        <source></source>
        <translation>Bewegen Sie ihn ganz zum Ende von {1} und halten Sie ihn.</translation>
    </message>
    <message id="Back to idle.">
        <source></source>
        <translation>Zurück auf Leerlauf.</translation>
    </message>
    <message id="Lever of {1} at its low end, its switch at {2}, hands off.">
        <source></source>
        <translation>Hebel von {1} am unteren Ende, sein Schalter auf {2}, Hände weg.</translation>
    </message>
    <message id="Move the lever to its high end and hold it.">
        <source></source>
        <translation>Bewegen Sie den Hebel an sein oberes Ende und halten Sie ihn.</translation>
    </message>
    <message id="Move the lever back to its low end.">
        <source></source>
        <translation>Bewegen Sie den Hebel zurück an sein unteres Ende.</translation>
    </message>
    <message id="Now move the switch to {1} and hold it.">
        <source></source>
        <translation>Stellen Sie nun den Schalter auf {1} und halten Sie ihn.</translation>
    </message>
    <message id="Move the switch back to {1}.">
        <source></source>
        <translation>Stellen Sie den Schalter zurück auf {1}.</translation>
    </message>
    <message id="Leave the stick of {1} alone, hands off.">
        <source></source>
        <translation>Lassen Sie den Knüppel von {1} in Ruhe, Hände weg.</translation>
    </message>
    <message id="Twist it fully to the left (or low) side and hold it.">
        <source></source>
        <translation>Drehen Sie ihn ganz nach links (oder zur niedrigen Seite) und halten Sie ihn.</translation>
    </message>
    <message id="Twist it fully to the right (or high) side and hold it.">
        <source></source>
        <translation>Drehen Sie ihn ganz nach rechts (oder zur hohen Seite) und halten Sie ihn.</translation>
    </message>
    <message id="Let it spring back.">
        <source></source>
        <translation>Lassen Sie ihn zurückfedern.</translation>
    </message>
    <message id="Push the stick fully to one side without twisting it, and hold it.">
        <source></source>
        <translation>Drücken Sie den Knüppel ganz zur Seite, ohne ihn zu drehen, und halten Sie ihn.</translation>
    </message>
    <message id="Let go.">
        <source></source>
        <translation>Loslassen.</translation>
    </message>
    <message id="Pull the stick fully towards you without twisting it, and hold it.">
        <source></source>
        <translation>Ziehen Sie den Knüppel ganz zu sich, ohne ihn zu drehen, und halten Sie ihn.</translation>
    </message>
    <message id="Leave both axes of {1} at rest, hands and feet off.">
        <source></source>
        <translation>Lassen Sie beide Achsen von {1} in Ruhe, Hände und Füße weg.</translation>
    </message>
    <message id="Press the one for the left (or low) side fully and hold it.">
        <source></source>
        <translation>Drücken Sie die für links (oder die niedrige Seite) ganz und halten Sie sie.</translation>
    </message>
    <message id="Press the one for the right (or high) side fully and hold it.">
        <source></source>
        <translation>Drücken Sie die für rechts (oder die hohe Seite) ganz und halten Sie sie.</translation>
    </message>
    <message id="Press the first one fully and hold it.">
        <source></source>
        <translation>Drücken Sie die erste ganz und halten Sie sie.</translation>
    </message>
    <message id="Press the second one fully and hold it.">
        <source></source>
        <translation>Drücken Sie die zweite ganz und halten Sie sie.</translation>
    </message>
    <message id="Leave {1} alone.">
        <source></source>
        <translation>Lassen Sie {1} in Ruhe.</translation>
    </message>
    <message id="Turn {1} by four clicks to the high side.">
        <source></source>
        <translation>Drehen Sie {1} um vier Klicks zur hohen Seite.</translation>
    </message>
    <message id="Turn {1} to the high side, as far as once round.">
        <source></source>
        <translation>Drehen Sie {1} zur hohen Seite, bis zu einer ganzen Umdrehung.</translation>
    </message>
    <message id="Press the button for more of {1} and hold it.">
        <source></source>
        <translation>Drücken Sie den Knopf für mehr von {1} und halten Sie ihn.</translation>
    </message>
    <message id="Press the button for less and hold it.">
        <source></source>
        <translation>Drücken Sie den Knopf für weniger und halten Sie ihn.</translation>
    </message>
    <message id="Leave the pedals and the pull of {1} alone.">
        <source></source>
        <translation>Lassen Sie die Pedale und den Zug von {1} in Ruhe.</translation>
    </message>
    <message id="Press both pedals (or the one there is) fully and hold them.">
        <source></source>
        <translation>Drücken Sie beide Pedale (oder das eine, das es gibt) ganz und halten Sie sie.</translation>
    </message>
    <message id="Let go of the pedals.">
        <source></source>
        <translation>Lassen Sie die Pedale los.</translation>
    </message>
    <message id="Pull the handle of {1} and hold it.">
        <source></source>
        <translation>Ziehen Sie den Griff von {1} und halten Sie ihn.</translation>
    </message>
    <message id="{1} and {2}">
        <source></source>
        <translation>{1} und {2}</translation>
    </message>
    <message id="One lever or switch of mine is for two controls">
        <source></source>
        <translation>Ein Hebel oder Schalter von mir ist für zwei Bedienteile</translation>
    </message>
    <message id="One lever: above idle it is this control, below idle another">
        <source></source>
        <translation>Ein Hebel: über dem Leerlauf ist er dieses Bedienteil, darunter ein anderes</translation>
    </message>
    <message id="One lever, and a switch that says which of two controls it is">
        <source></source>
        <translation>Ein Hebel und ein Schalter, der sagt, welches von zwei Bedienteilen er ist</translation>
    </message>
    <message id="Two pedals or levers: one less the other">
        <source></source>
        <translation>Zwei Pedale oder Hebel: eins weniger das andere</translation>
    </message>
    <message id="Two axes: one for the low side, one for the high side">
        <source></source>
        <translation>Zwei Achsen: eine für die niedrige, eine für die hohe Seite</translation>
    </message>
    <message id="Two axes, as of two seats: whichever is moved further">
        <source></source>
        <translation>Zwei Achsen, wie von zwei Sitzen: die weiter bewegte gilt</translation>
    </message>
    <message id="A lever made of contacts, with these values in turn">
        <source></source>
        <translation>Ein Hebel aus Kontakten, mit diesen Werten der Reihe nach</translation>
    </message>
    <message id="A knob without end stops that clicks, on two contacts">
        <source></source>
        <translation>Ein Drehknopf ohne Anschlag, der klickt, an zwei Kontakten</translation>
    </message>
    <message id="A button for more and one for less">
        <source></source>
        <translation>Ein Knopf für mehr und einer für weniger</translation>
    </message>
    <message id="A wheel whose card counts by itself">
        <source></source>
        <translation>Ein Rad, dessen Karte selbst zählt</translation>
    </message>
    <message id="Both toe brakes and a handle that is pulled, as a parking brake">
        <source></source>
        <translation>Beide Fußspitzenbremsen und ein Griff, den man zieht, als Parkbremse</translation>
    </message>
    <message id="its centre">
        <source></source>
        <translation>seine Mitte</translation>
    </message>
    <message id="its low end ({1})">
        <source></source>
        <translation>sein unteres Ende ({1})</translation>
    </message>
    <message id="its high end ({1})">
        <source></source>
        <translation>sein oberes Ende ({1})</translation>
    </message>
    <message id="Put {1} to {2}, hands off.">
        <source></source>
        <translation>Stellen Sie {1} auf {2}, Hände weg.</translation>
    </message>
    <message id="Move {1} to {2} and hold it.">
        <source></source>
        <translation>Bewegen Sie {1} auf {2} und halten Sie es.</translation>
    </message>
    <message id="Back to {1}.">
        <source></source>
        <translation>Zurück auf {1}.</translation>
    </message>
    <message id="No lever, pedal or switch unit is connected. Plug one in first.">
        <source></source>
        <translation>Kein Gerät mit Hebeln, Pedalen oder Schaltern ist angeschlossen. Stecken Sie zuerst eines ein.</translation>
    </message>
    <message id="None of the rig's devices is connected, or nothing is wired yet.">
        <source></source>
        <translation>Keines der Geräte der Anlage ist angeschlossen, oder es ist noch nichts verdrahtet.</translation>
    </message>
    <message id="New rig of the {1}">
        <source></source>
        <translation>Neue Anlage: {1}</translation>
    </message>
    <message id="{1} hears every computer that reaches this one; from:SENDER behind the port hears one.">
        <source></source>
        <translation>{1} hört jeden Rechner, der diesen erreicht; from:ABSENDER hinter dem Port hört nur einen.</translation>
    </message>
    <message id="This run is not stored. {1}">
        <source></source>
        <translation>Dieser Durchgang wird nicht gespeichert. {1}</translation>
    </message>
    <message id="{1} {2}">
        <source></source>
        <translation>{1} {2}</translation>
    </message>
    <message id="nothing can come: {1}">
        <source></source>
        <translation>es kann nichts kommen: {1}</translation>
    </message>
    <message id="nothing heard yet">
        <source></source>
        <translation>noch nichts gehört</translation>
    </message>
    <message id="silent for {1} s">
        <source></source>
        <translation>seit {1} s stumm</translation>
    </message>
    <message id="{1} messages/s">
        <source></source>
        <translation>{1} Meldungen/s</translation>
    </message>
    <message id="clock {1} s">
        <source></source>
        <translation>Uhr {1} s</translation>
    </message>
    <message id="delay {1} ms">
        <source></source>
        <translation>Verzug {1} ms</translation>
    </message>
    <message id="malformed">
        <source></source>
        <translation>fehlerhaft</translation>
    </message>
    <message id="bad checksum">
        <source></source>
        <translation>falsche Prüfsumme</translation>
    </message>
    <message id="oversized">
        <source></source>
        <translation>zu lang</translation>
    </message>
    <message id="unknown names">
        <source></source>
        <translation>unbekannte Namen</translation>
    </message>
    <message id="refused values">
        <source></source>
        <translation>abgelehnte Werte</translation>
    </message>
    <message id="out of time">
        <source></source>
        <translation>falsche Zeitfolge</translation>
    </message>
    <message id="from others">
        <source></source>
        <translation>von anderen</translation>
    </message>
    <message id="dropped">
        <source></source>
        <translation>verworfen</translation>
    </message>
    <message id="{1} was unplugged: plug it in again">
        <source></source>
        <translation>{1} wurde abgezogen: wieder einstecken</translation>
    </message>
    <message id="{1} sent more than the program could take; short movements may be missing">
        <source></source>
        <translation>{1} sendete mehr, als das Programm aufnehmen konnte; kurze Bewegungen können fehlen</translation>
    </message>
    <message id="{1} may have lost reports while the computer was busy; short movements may be missing">
        <source></source>
        <translation>{1} hat vielleicht Meldungen verloren, während der Rechner beschäftigt war; kurze Bewegungen können fehlen</translation>
    </message>
    <message id="{1} sends reports shorter than its descriptor says; what is missing changes nothing">
        <source></source>
        <translation>{1} sendet kürzere Meldungen, als sein Deskriptor sagt; was fehlt, ändert nichts</translation>
    </message>
    <message id="{1} sends reports longer than its descriptor says; the rest is ignored">
        <source></source>
        <translation>{1} sendet längere Meldungen, als sein Deskriptor sagt; der Rest wird nicht beachtet</translation>
    </message>
    <message id="{1} sends reports with an id that its descriptor does not have; they are ignored">
        <source></source>
        <translation>{1} sendet Meldungen mit einer Kennung, die sein Deskriptor nicht hat; sie werden nicht beachtet</translation>
    </message>
    <message id="{1} is not plugged in: plug it in">
        <source></source>
        <translation>{1} ist nicht eingesteckt: einstecken</translation>
    </message>
    <message id="{1} with serial {2} is not plugged in: plug it in">
        <source></source>
        <translation>{1} mit der Seriennummer {2} ist nicht eingesteckt: einstecken</translation>
    </message>
    <message id="Gate">
        <source></source>
        <translation>Gate</translation>
    </message>
    <message id="Taxi out">
        <source></source>
        <translation>Rollen zum Start</translation>
    </message>
    <message id="Line-up">
        <source></source>
        <translation>Aufstellen</translation>
    </message>
    <message id="Take-off">
        <source></source>
        <translation>Start</translation>
    </message>
    <message id="Climb">
        <source></source>
        <translation>Steigflug</translation>
    </message>
    <message id="Cruise">
        <source></source>
        <translation>Reiseflug</translation>
    </message>
    <message id="Descent">
        <source></source>
        <translation>Sinkflug</translation>
    </message>
    <message id="Approach">
        <source></source>
        <translation>Anflug</translation>
    </message>
    <message id="Landing">
        <source></source>
        <translation>Landung</translation>
    </message>
    <message id="Taxi in">
        <source></source>
        <translation>Rollen zum Gate</translation>
    </message>
    <message id="power law of practice">
        <source></source>
        <translation>Potenzgesetz der Übung</translation>
    </message>
    <message id="exponential">
        <source></source>
        <translation>Exponentialkurve</translation>
    </message>
    <message id="today">
        <source></source>
        <translation>heute</translation>
    </message>
    <message id="yesterday">
        <source></source>
        <translation>gestern</translation>
    </message>
    <message id="{1} days ago">
        <source></source>
        <translation>vor {1} Tagen</translation>
    </message>
    <message id="tomorrow">
        <source></source>
        <translation>morgen</translation>
    </message>
    <message id="in {1} days">
        <source></source>
        <translation>in {1} Tagen</translation>
    </message>
    <message id="Its last run, {1}, did not pass: {2}.">
        <source></source>
        <translation>Der letzte Durchgang, {1}, wurde nicht bestanden: {2}.</translation>
    </message>
    <message id="Last flown {1}: by the forgetting model hardly one of 10 flows practised like this would still go right.">
        <source></source>
        <translation>Zuletzt {1} geflogen: nach dem Modell des Vergessens ginge von 10 so geübten Abläufen kaum noch einer gut.</translation>
    </message>
    <message id="Last flown {1}: by the forgetting model about {2} of 10 flows practised like this would still go right.">
        <source></source>
        <translation>Zuletzt {1} geflogen: nach dem Modell des Vergessens gingen von 10 so geübten Abläufen noch etwa {2} gut.</translation>
    </message>
    <message id="Not flown yet: an abnormal flow, for when the others are known.">
        <source></source>
        <translation>Noch nicht geflogen: ein außergewöhnlicher Ablauf, wenn die anderen sitzen.</translation>
    </message>
    <message id="Not flown yet: the flight begins with it.">
        <source></source>
        <translation>Noch nicht geflogen: damit beginnt der Flug.</translation>
    </message>
    <message id="Not flown yet: it follows “{1}” in the flight.">
        <source></source>
        <translation>Noch nicht geflogen: folgt im Flug auf „{1}“.</translation>
    </message>
    <message id="Nothing is due. The next is “{1}”, {2}.">
        <source></source>
        <translation>Nichts ist fällig. Als Nächstes „{1}“, {2}.</translation>
    </message>
    <message id="on every rig">
        <source></source>
        <translation>auf jeder Anlage</translation>
    </message>
    <message id="on on-screen controls">
        <source></source>
        <translation>auf dem Bildschirm</translation>
    </message>
    <message id="on {1}">
        <source></source>
        <translation>auf {1}</translation>
    </message>
    <message id="every pilot">
        <source></source>
        <translation>alle Piloten</translation>
    </message>
    <message id="a pilot without a name">
        <source></source>
        <translation>ein Pilot ohne Namen</translation>
    </message>
    <message id="Run {1} cannot be read as a whole and is left out; 'flowhand runs check' says more.">
        <source></source>
        <translation>Durchgang {1} kann nicht ganz gelesen werden und bleibt außen vor; mehr sagt &apos;flowhand runs check&apos;.</translation>
    </message>
    <message id="The plan follows a forgetting model, half-life regression (Settles and Meeder 2016), measured on words of a language. For flows and the skill of the hand it is unproven: it says what to fly first, not what you can still do.">
        <source></source>
        <translation>Der Plan folgt einem Modell des Vergessens, der Halbwertszeit-Regression (Settles und Meeder 2016), gemessen an Vokabeln. Für Abläufe und Handgriffe ist es nicht belegt: es sagt, was zuerst zu fliegen ist, nicht, was Sie noch können.</translation>
    </message>
    <message id="wrong value">
        <source></source>
        <translation>falscher Wert</translation>
    </message>
    <message id="wrong control">
        <source></source>
        <translation>falsches Bedienteil</translation>
    </message>
    <message id="{1}: {2} moved to {3}">
        <source></source>
        <translation>{1}: {2} auf {3} gestellt</translation>
    </message>
    <message id="{1}, in place of '{2}'">
        <source></source>
        <translation>{1}, statt „{2}“</translation>
    </message>
    <message id="The program ended in mid-run; this is what was recovered of it.">
        <source></source>
        <translation>Das Programm endete mitten im Durchgang; dies ist, was davon gerettet wurde.</translation>
    </message>
    <message id="Damaged in the store: {1}.">
        <source></source>
        <translation>Im Speicher beschädigt: {1}.</translation>
    </message>
    <message id="Flown without a partner: the pilot did both seats' steps.">
        <source></source>
        <translation>Ohne Partner geflogen: der Pilot tat die Schritte beider Sitze.</translation>
    </message>
    <message id="Help while flying: {1}.">
        <source></source>
        <translation>Hilfe beim Fliegen: {1}.</translation>
    </message>
    <message id="Flown in slow time: a second of the run, as times are given here, took {1} s.">
        <source></source>
        <translation>Verlangsamt geflogen: eine Sekunde des Durchgangs, wie die Zeiten hier stehen, dauerte {1} s.</translation>
    </message>
    <message id="Simulated input: every step was done on screen or by scripted hands, none on a control.">
        <source></source>
        <translation>Simulierte Eingabe: jeder Schritt wurde auf dem Bildschirm oder von Hand nach Drehbuch getan, keiner an einem Bedienteil.</translation>
    </message>
    <message id="Simulated input, on screen or by scripted hands: {1}.">
        <source></source>
        <translation>Simulierte Eingabe, auf dem Bildschirm oder von Händen nach Drehbuch: {1}.</translation>
    </message>
    <message id="Scenario: {1}.">
        <source></source>
        <translation>Szenario: {1}.</translation>
    </message>
    <message id="Motion: {1}.">
        <source></source>
        <translation>Bewegung: {1}.</translation>
    </message>
    <message id="This rig could not observe '{1}'; it was left out of the score.">
        <source></source>
        <translation>Diese Anlage konnte „{1}“ nicht beobachten; es blieb aus der Wertung.</translation>
    </message>
    <message id="This rig could not observe '{1}': {2}; it was left out of the score.">
        <source></source>
        <translation>Diese Anlage konnte „{1}“ nicht beobachten: {2}; es blieb aus der Wertung.</translation>
    </message>
    <message id="The set-up was not as the flow wants it, and waived.">
        <source></source>
        <translation>Die Ausgangsstellung war nicht, wie der Ablauf sie will; es wurde trotzdem begonnen.</translation>
    </message>
    <message id="Waived at the start: {1} was not at {2}.">
        <source></source>
        <translation>Trotzdem begonnen: {1} stand nicht auf {2}.</translation>
    </message>
    <message id="Held at {1}.">
        <source></source>
        <translation>Angehalten bei {1}.</translation>
    </message>
    <message id="Held at {1}: {2}.">
        <source></source>
        <translation>Angehalten bei {1}: {2}.</translation>
    </message>
    <message id="Input was lost at {1}; the time without it is not counted.">
        <source></source>
        <translation>Eingabe verloren bei {1}; die Zeit ohne sie zählt nicht.</translation>
    </message>
    <message id="Input was lost at {1}: {2}; the time without it is not counted.">
        <source></source>
        <translation>Eingabe verloren bei {1}: {2}; die Zeit ohne sie zählt nicht.</translation>
    </message>
    <message id="Jumped at {1} to '{2}'; what was jumped over is not counted, and the run does not pass.">
        <source></source>
        <translation>Bei {1} zu „{2}“ gesprungen; das Übersprungene zählt nicht, und der Durchgang gilt nicht als bestanden.</translation>
    </message>
    <message id="The aircraft was put elsewhere at {1}: {2}.">
        <source></source>
        <translation>Das Flugzeug wurde bei {1} versetzt: {2}.</translation>
    </message>
    <message id="The scenario at {1}: {2}.">
        <source></source>
        <translation>Das Szenario bei {1}: {2}.</translation>
    </message>
    <message id="The flow ended in another way at {1}: {2}.">
        <source></source>
        <translation>Der Ablauf endete bei {1} anders: {2}.</translation>
    </message>
    <message id="'{1}' was not watched.">
        <source></source>
        <translation>„{1}“ wurde nicht überwacht.</translation>
    </message>
    <message id="'{1}' was {2}.">
        <source></source>
        <translation>„{1}“ war {2}.</translation>
    </message>
    <message id="note">
        <source></source>
        <translation>Notiz</translation>
    </message>
    <message id="the pilot's own account">
        <source></source>
        <translation>der eigene Bericht des Piloten</translation>
    </message>
    <message id="objective">
        <source></source>
        <translation>Ziel</translation>
    </message>
    <message id="ruling on '{1}': {2}">
        <source></source>
        <translation>Entscheid über „{1}“: {2}</translation>
    </message>
    <message id="cause of '{1}', as the instructor sees it: {2}">
        <source></source>
        <translation>Ursache von „{1}“, wie es der Ausbilder sieht: {2}</translation>
    </message>
    <message id="agreed to practise next">
        <source></source>
        <translation>als Nächstes zu üben, wie vereinbart</translation>
    </message>
    <message id="mark for {1}: {2} ({3})">
        <source></source>
        <translation>Note für {1}: {2} ({3})</translation>
    </message>
    <message id="{1}, {2} into '{3}'">
        <source></source>
        <translation>{1}, {2} nach Beginn von „{3}“</translation>
    </message>
    <message id="the same from run to run">
        <source></source>
        <translation>von Durchgang zu Durchgang gleich</translation>
    </message>
    <message id="{1} of {2}">
        <source></source>
        <translation>{1} von {2}</translation>
    </message>
    <message id="{1} points better a run">
        <source></source>
        <translation>je Durchgang {1} Punkte besser</translation>
    </message>
    <message id="{1} points worse a run">
        <source></source>
        <translation>je Durchgang {1} Punkte schlechter</translation>
    </message>
    <message id="{1} s slower a run">
        <source></source>
        <translation>je Durchgang {1} s langsamer</translation>
    </message>
    <message id="{1} s quicker a run">
        <source></source>
        <translation>je Durchgang {1} s schneller</translation>
    </message>
    <message id="{1} through {2} runs, typically {3} % of the time off; it shows no gain yet">
        <source></source>
        <translation>{1} durch {2} Durchgänge, üblicherweise {3} % der Zeit daneben; sie zeigt noch keinen Gewinn</translation>
    </message>
    <message id="{1} through {2} runs, typically {3} % of the time off; the next run about {4} s">
        <source></source>
        <translation>{1} durch {2} Durchgänge, üblicherweise {3} % der Zeit daneben; der nächste Durchgang etwa {4} s</translation>
    </message>
    <message id="By this flow the run would not have begun: the controls did not stand as its start wants them.">
        <source></source>
        <translation>Nach diesem Ablauf hätte der Durchgang nicht begonnen: die Bedienteile standen nicht, wie sein Beginn sie will.</translation>
    </message>
    <message id="{1} at {2}">
        <source></source>
        <translation>{1} auf {2}</translation>
    </message>
    <message id="{1} (the other: {2})">
        <source></source>
        <translation>{1} (der andere: {2})</translation>
    </message>
    <message id="reached for {1} first">
        <source></source>
        <translation>griff zuerst nach {1}</translation>
    </message>
    <message id="hesitated {1}">
        <source></source>
        <translation>zögerte {1}</translation>
    </message>
    <message id="went too far first">
        <source></source>
        <translation>ging erst zu weit</translation>
    </message>
    <message id="straight">
        <source></source>
        <translation>ohne Umweg</translation>
    </message>
    <message id="lost {1} points (the other: {2})">
        <source></source>
        <translation>verlor {1} Punkte (der andere: {2})</translation>
    </message>
    <message id="only in the other run">
        <source></source>
        <translation>nur im anderen Durchgang</translation>
    </message>
    <message id="not in the other run">
        <source></source>
        <translation>nicht im anderen Durchgang</translation>
    </message>
    <message id="none">
        <source></source>
        <translation>keine</translation>
    </message>
    <message id="rig: {1}">
        <source></source>
        <translation>Anlage: {1}</translation>
    </message>
    <message id="seat: {1}">
        <source></source>
        <translation>Sitz: {1}</translation>
    </message>
    <message id="partner: none (the other: with)">
        <source></source>
        <translation>Partner: ohne (der andere: mit)</translation>
    </message>
    <message id="partner: with (the other: none)">
        <source></source>
        <translation>Partner: mit (der andere: ohne)</translation>
    </message>
    <message id="motion: {1}">
        <source></source>
        <translation>Bewegung: {1}</translation>
    </message>
    <message id="the flow's file is not the same in both runs">
        <source></source>
        <translation>die Datei des Ablaufs ist nicht in beiden Durchgängen dieselbe</translation>
    </message>
    <message id="the aircraft's file is not the same in both runs">
        <source></source>
        <translation>die Datei des Flugzeugs ist nicht in beiden Durchgängen dieselbe</translation>
    </message>
    <message id="done in one only">
        <source></source>
        <translation>nur in einem getan</translation>
    </message>
    <message id="{1} earlier">
        <source></source>
        <translation>{1} früher</translation>
    </message>
    <message id="{1} later">
        <source></source>
        <translation>{1} später</translation>
    </message>
    <message id="{1} late">
        <source></source>
        <translation>{1} zu spät</translation>
    </message>
    <message id="not come to">
        <source></source>
        <translation>nicht so weit gekommen</translation>
    </message>
    <message id="open">
        <source></source>
        <translation>offen</translation>
    </message>
    <message id="not done">
        <source></source>
        <translation>nicht getan</translation>
    </message>
    <message id="done, found set">
        <source></source>
        <translation>getan, stand schon so</translation>
    </message>
    <message id="found set, not counted">
        <source></source>
        <translation>stand schon so, zählt nicht</translation>
    </message>
    <message id="void">
        <source></source>
        <translation>entfallen</translation>
    </message>
    <message id="left out">
        <source></source>
        <translation>ausgelassen</translation>
    </message>
    <message id="uncertain">
        <source></source>
        <translation>nicht sicher</translation>
    </message>
    <message id="too early">
        <source></source>
        <translation>zu früh</translation>
    </message>
    <message id="out of order">
        <source></source>
        <translation>außer der Reihe</translation>
    </message>
    <message id="done">
        <source></source>
        <translation>getan</translation>
    </message>
    <message id="No step of your own could be judged">
        <source></source>
        <translation>Keiner Ihrer Schritte konnte beurteilt werden</translation>
    </message>
    <message id="All {1} steps in order and on time">
        <source></source>
        <translation>Alle {1} Schritte in der Reihe und rechtzeitig</translation>
    </message>
    <message id="{1} of {2} steps in order and on time">
        <source></source>
        <translation>{1} von {2} Schritten in der Reihe und rechtzeitig</translation>
    </message>
    <message id="{1}.">
        <source></source>
        <translation>{1}.</translation>
    </message>
    <message id="{1}; every guard kept.">
        <source></source>
        <translation>{1}; jede Schutzregel eingehalten.</translation>
    </message>
    <message id="{1}; {2} of {3} guards kept.">
        <source></source>
        <translation>{1}; {2} von {3} Schutzregeln eingehalten.</translation>
    </message>
    <message id="The other aircraft file has no place for what was recorded of {1}.">
        <source></source>
        <translation>Die andere Flugzeugdatei hat keinen Platz für das, was aufgezeichnet wurde von: {1}.</translation>
    </message>
    <message id="{1} gates">
        <source></source>
        <translation>{1} Rasten</translation>
    </message>
    <message id="{1} gate">
        <source></source>
        <translation>{1} Raste</translation>
    </message>
    <message id="cue sounded {1}">
        <source></source>
        <translation>Signal ertönte {1}</translation>
    </message>
    <message id="cue ended {1}">
        <source></source>
        <translation>Signal endete {1}</translation>
    </message>
    <message id="due {1}">
        <source></source>
        <translation>fällig {1}</translation>
    </message>
    <message id="reached for {1} first, {2}">
        <source></source>
        <translation>griff zuerst nach {1}, {2}</translation>
    </message>
    <message id="first movement {1} ({2} after due)">
        <source></source>
        <translation>erste Bewegung {1} ({2} nach Fälligkeit)</translation>
    </message>
    <message id="first movement {1}">
        <source></source>
        <translation>erste Bewegung {1}</translation>
    </message>
    <message id="hesitated {1} from {2}">
        <source></source>
        <translation>zögerte {1} ab {2}</translation>
    </message>
    <message id="went {1} too far, {2}">
        <source></source>
        <translation>ging {1} zu weit, {2}</translation>
    </message>
    <message id="done {1}">
        <source></source>
        <translation>getan {1}</translation>
    </message>
    <message id="given up {1}">
        <source></source>
        <translation>aufgegeben {1}</translation>
    </message>
    <message id="at {1} kt">
        <source></source>
        <translation>bei {1} kt</translation>
    </message>
    <message id="turning">
        <source></source>
        <translation>in der Kurve</translation>
    </message>
    <message id="simulated">
        <source></source>
        <translation>simuliert</translation>
    </message>
    <message id="move it once from end to end whenever it was plugged in">
        <source></source>
        <translation>nach jedem Einstecken einmal von Anschlag zu Anschlag bewegen</translation>
    </message>
    <message id="stood at the far end when its device came; if nobody held it there, exchange the two numbers of its range">
        <source></source>
        <translation>stand am anderen Anschlag, als sein Gerät kam; wenn es niemand dort hielt, die beiden Zahlen seines Bereichs tauschen</translation>
    </message>
    <message id="move it once from end to end; until then its card does not know the range">
        <source></source>
        <translation>einmal von Anschlag zu Anschlag bewegen; bis dahin kennt seine Karte den Bereich nicht</translation>
    </message>
    <message id="its code {1} stands for no position; a bit is not connected, or the list of positions is too short">
        <source></source>
        <translation>sein Code {1} steht für keine Stellung; ein Bit ist nicht angeschlossen, oder die Liste der Stellungen ist zu kurz</translation>
    </message>
    <message id="{1} steps came too fast to be counted; what it shows may be off">
        <source></source>
        <translation>{1} Rastschritte kamen zu schnell zum Zählen; die Anzeige kann falsch sein</translation>
    </message>
    <message id="closed at the same time: {1}; this switch closes one of them only">
        <source></source>
        <translation>gleichzeitig geschlossen: {1}; dieser Schalter schließt nur einen davon</translation>
    </message>
    <message id="{1}: say how it stands, for its switch cannot tell">
        <source></source>
        <translation>{1}: sagen, wie es steht, denn sein Schalter kann es nicht</translation>
    </message>
    <message id="No mechanical interlock ({1}): {2}">
        <source></source>
        <translation>Keine mechanische Verriegelung ({1}): {2}</translation>
    </message>
    <message id="no contact is closed: it stands between two positions, or a wire is off">
        <source></source>
        <translation>kein Kontakt ist geschlossen: es steht zwischen zwei Stellungen, oder ein Draht ist ab</translation>
    </message>
    <message id="closed at the same time: {1}; two wires touch, or a contact sticks">
        <source></source>
        <translation>gleichzeitig geschlossen: {1}; zwei Drähte berühren sich, oder ein Kontakt klemmt</translation>
    </message>
    <message id="no zone has just these closed: {1}; a contact sticks, or a zone is missing">
        <source></source>
        <translation>zu keiner Zone gehören genau diese geschlossenen Kontakte: {1}; ein Kontakt klemmt, oder eine Zone fehlt</translation>
    </message>
    <message id="practice aircraft">
        <source></source>
        <translation>Übungsflugzeug</translation>
    </message>
    <message id="practice aircraft from {1}">
        <source></source>
        <translation>Übungsflugzeug ab {1}</translation>
    </message>
    <message id="practice aircraft: {1}">
        <source></source>
        <translation>Übungsflugzeug: {1}</translation>
    </message>
    <message id="nothing: {1}">
        <source></source>
        <translation>nichts: {1}</translation>
    </message>
    <message id="guided">
        <source></source>
        <translation>geführt</translation>
    </message>
    <message id="prompted">
        <source></source>
        <translation>mit Stichwort</translation>
    </message>
    <message id="from memory">
        <source></source>
        <translation>aus dem Kopf</translation>
    </message>
    <message id="{1} at {2}, wanted {3}">
        <source></source>
        <translation>{1} auf {2}, verlangt: {3}</translation>
    </message>
    <message id="{1}: undone again, {2} at {3}">
        <source></source>
        <translation>{1}: wieder aufgehoben, {2} auf {3}</translation>
    </message>
    <message id="{1} at {2} instead of: {3}">
        <source></source>
        <translation>{1} auf {2} statt: {3}</translation>
    </message>
    <message id="{1} at {2}, which no step asked for">
        <source></source>
        <translation>{1} auf {2}, was kein Schritt verlangte</translation>
    </message>
    <message id="{1} is not known here">
        <source></source>
        <translation>{1} ist hier nicht bekannt</translation>
    </message>
    <message id="it could not be seen any more: what it needs to know was lost">
        <source></source>
        <translation>es war nicht mehr zu sehen: was dazu nötig ist, ging verloren</translation>
    </message>
    <message id="jumped over">
        <source></source>
        <translation>übersprungen</translation>
    </message>
    <message id="it cannot be judged: nothing tells {1}">
        <source></source>
        <translation>nicht zu beurteilen: nichts meldet {1}</translation>
    </message>
    <message id="not watched: nothing tells {1}">
        <source></source>
        <translation>nicht überwacht: nichts meldet {1}</translation>
    </message>
    <message id="there is no reply button to say it with">
        <source></source>
        <translation>es gibt keinen Antwortknopf dafür</translation>
    </message>
    <message id="this rig has no {1}">
        <source></source>
        <translation>diese Anlage hat kein Bedienteil „{1}“</translation>
    </message>
    <message id="done, {1} late">
        <source></source>
        <translation>getan, {1} zu spät</translation>
    </message>
    <message id="the run jumped, so it is not the whole flow">
        <source></source>
        <translation>es wurde gesprungen, darum ist es nicht der ganze Ablauf</translation>
    </message>
    <message id="seen">
        <source></source>
        <translation>gesehen</translation>
    </message>
    <message id="done, out of order">
        <source></source>
        <translation>getan, außer der Reihe</translation>
    </message>
    <message id="{1}, undone again">
        <source></source>
        <translation>{1}, wieder aufgehoben</translation>
    </message>
    <message id="found set">
        <source></source>
        <translation>stand schon so</translation>
    </message>
    <message id="uncertain: too close to the noise of the control">
        <source></source>
        <translation>nicht sicher: zu nah am Rauschen des Bedienteils</translation>
    </message>
    <message id="no longer called for">
        <source></source>
        <translation>nicht mehr nötig</translation>
    </message>
    <message id="left out: {1}">
        <source></source>
        <translation>ausgelassen: {1}</translation>
    </message>
    <message id="{1} report may have been lost from {2}: the computer was too busy to read them in time.">
        <source></source>
        <translation>{1} Meldung von {2} ist vielleicht verloren: der Rechner war zu beschäftigt, sie rechtzeitig zu lesen.</translation>
    </message>
    <message id="{1} reports may have been lost from {2}: the computer was too busy to read them in time.">
        <source></source>
        <translation>{1} Meldungen von {2} sind vielleicht verloren: der Rechner war zu beschäftigt, sie rechtzeitig zu lesen.</translation>
    </message>
    <message id="{1} change of {2} gave way to newer ones before they could be taken.">
        <source></source>
        <translation>{1} Änderung von {2} wich neueren, bevor sie aufgenommen werden konnte.</translation>
    </message>
    <message id="{1} changes of {2} gave way to newer ones before they could be taken.">
        <source></source>
        <translation>{1} Änderungen von {2} wichen neueren, bevor sie aufgenommen werden konnten.</translation>
    </message>
    <message id="{1} change of the controls came in late, by at most {2}.">
        <source></source>
        <translation>{1} Änderung der Bedienteile kam zu spät, um höchstens {2}.</translation>
    </message>
    <message id="{1} changes of the controls came in late, by at most {2}.">
        <source></source>
        <translation>{1} Änderungen der Bedienteile kamen zu spät, um höchstens {2}.</translation>
    </message>
    <message id="{1} is taken to be {2}; put it there now.">
        <source></source>
        <translation>{1} gilt als „{2}“; bitte jetzt so stellen.</translation>
    </message>
    <message id="{1} has fallen silent.">
        <source></source>
        <translation>{1} ist verstummt.</translation>
    </message>
    <message id="{1} is silent. The run goes on by itself when it speaks again">
        <source></source>
        <translation>{1} ist stumm. Der Durchgang geht von selbst weiter, sobald wieder etwas kommt</translation>
    </message>
    <message id="{1} speaks again.">
        <source></source>
        <translation>{1} meldet sich wieder.</translation>
    </message>
    <message id="{1} is heard.">
        <source></source>
        <translation>{1} ist zu hören.</translation>
    </message>
    <message id="This run is no longer recorded. {1}">
        <source></source>
        <translation>Dieser Durchgang wird nicht mehr aufgezeichnet. {1}</translation>
    </message>
    <message id="{1} is lost. Plug it in again; the run goes on by itself">
        <source></source>
        <translation>{1} ist weg. Wieder einstecken; der Durchgang geht von selbst weiter</translation>
    </message>
    <message id="{1} is back.">
        <source></source>
        <translation>{1} ist wieder da.</translation>
    </message>
    <message id="Not heard of yet: {1}. Move each once, so that the program knows where it stands.">
        <source></source>
        <translation>Noch nichts gehört von: {1}. Jedes einmal bewegen, damit das Programm weiß, wie es steht.</translation>
    </message>
    <message id="The flight goes on: {1}.">
        <source></source>
        <translation>Der Flug geht weiter: {1}.</translation>
    </message>
    <message id="The run begins as soon as {1} is heard.">
        <source></source>
        <translation>Der Durchgang beginnt, sobald {1} zu hören ist.</translation>
    </message>
    <message id="guard broken: {1}">
        <source></source>
        <translation>Schutzregel verletzt: {1}</translation>
    </message>
    <message id="{1}: uncertain, too close to the noise of the control to be sure">
        <source></source>
        <translation>{1}: nicht sicher, zu nah am Rauschen des Bedienteils</translation>
    </message>
    <message id="{1}: not done">
        <source></source>
        <translation>{1}: nicht getan</translation>
    </message>
    <message id="{1}: done too early">
        <source></source>
        <translation>{1}: zu früh getan</translation>
    </message>
    <message id="{1}: done out of order">
        <source></source>
        <translation>{1}: außer der Reihe getan</translation>
    </message>
    <message id="{1}: {2} late ({3}, within {4})">
        <source></source>
        <translation>{1}: {2} zu spät ({3}, erlaubt {4})</translation>
    </message>
    <message id="{1}: small margin, {2} of the room in its band">
        <source></source>
        <translation>{1}: knapp, {2} des Spielraums in seinem Band</translation>
    </message>
    <message id="given back: a score does not go below 0">
        <source></source>
        <translation>zurückgegeben: eine Wertung geht nicht unter 0</translation>
    </message>
    <message id="a critical guard was broken: {1}">
        <source></source>
        <translation>eine entscheidende Schutzregel wurde verletzt: {1}</translation>
    </message>
    <message id="a critical step was not surely done: {1}">
        <source></source>
        <translation>ein entscheidender Schritt wurde nicht sicher getan: {1}</translation>
    </message>
    <message id="a critical step was done too early: {1}">
        <source></source>
        <translation>ein entscheidender Schritt wurde zu früh getan: {1}</translation>
    </message>
    <message id="a critical step was done out of order: {1}">
        <source></source>
        <translation>ein entscheidender Schritt wurde außer der Reihe getan: {1}</translation>
    </message>
    <message id="{1} points, the target is {2}">
        <source></source>
        <translation>{1} Punkte, das Ziel ist {2}</translation>
    </message>
    <message id="late">
        <source></source>
        <translation>spät</translation>
    </message>
    <message id="small margin">
        <source></source>
        <translation>knapp</translation>
    </message>
    <message id="undone again">
        <source></source>
        <translation>wieder aufgehoben</translation>
    </message>
    <message id="guard broken">
        <source></source>
        <translation>Schutzregel verletzt</translation>
    </message>
    <message id="floor">
        <source></source>
        <translation>Untergrenze</translation>
    </message>
    <message id="no step of this flow could be judged, so there is no score">
        <source></source>
        <translation>kein Schritt dieses Ablaufs konnte beurteilt werden, darum gibt es keine Wertung</translation>
    </message>
    <message id="Nothing tells: {1}.">
        <source></source>
        <translation>Nichts meldet: {1}.</translation>
    </message>
    <message id="{1} of {2} steps cannot be judged without that and are left out: {3}.">
        <source></source>
        <translation>{1} von {2} Schritten sind ohne das nicht zu beurteilen und werden ausgelassen: {3}.</translation>
    </message>
    <message id="Not watched without that: {1}.">
        <source></source>
        <translation>Ohne das nicht überwacht: {1}.</translation>
    </message>
    <message id="Not noticed without that: {1}.">
        <source></source>
        <translation>Ohne das nicht bemerkt: {1}.</translation>
    </message>
    <message id="unsafe or without effect: few of the things looked for, and rarely">
        <source></source>
        <translation>unsicher oder wirkungslos: wenig vom Erwarteten, und selten</translation>
    </message>
    <message id="not unsafe, just acceptable: some of the things looked for, now and then">
        <source></source>
        <translation>nicht unsicher, gerade annehmbar: einiges vom Erwarteten, hin und wieder</translation>
    </message>
    <message id="safe and adequate: many of the things looked for, regularly">
        <source></source>
        <translation>sicher und angemessen: vieles vom Erwarteten, regelmäßig</translation>
    </message>
    <message id="safe and effective: most of the things looked for, regularly">
        <source></source>
        <translation>sicher und wirksam: das meiste vom Erwarteten, regelmäßig</translation>
    </message>
    <message id="an example to others, made it safer: nearly all of the things looked for, always">
        <source></source>
        <translation>ein Vorbild, machte es sicherer: fast alles vom Erwarteten, immer</translation>
    </message>
    <message id="stands">
        <source></source>
        <translation>bleibt</translation>
    </message>
    <message id="excused">
        <source></source>
        <translation>entschuldigt</translation>
    </message>
    <message id="did not know">
        <source></source>
        <translation>wusste es nicht</translation>
    </message>
    <message id="forgot">
        <source></source>
        <translation>vergaß es</translation>
    </message>
    <message id="slipped">
        <source></source>
        <translation>vergriff sich</translation>
    </message>
    <message id="was rushed">
        <source></source>
        <translation>war in Eile</translation>
    </message>
</context>
</TS>
