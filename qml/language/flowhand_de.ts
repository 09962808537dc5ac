<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de_DE">
<context>
    <name>BenchControlLine</name>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>%1, %2 · %3</source>
        <translation>%1, %2 · %3</translation>
    </message>
</context>
<context>
    <name>BenchPlace</name>
    <message>
        <source>The rig could not be put on the bench</source>
        <translation>Die Anlage konnte nicht auf die Werkbank gelegt werden</translation>
    </message>
    <message>
        <source>Try again</source>
        <translation>Noch einmal versuchen</translation>
    </message>
</context>
<context>
    <name>BenchVoice</name>
    <message>
        <source>en</source>
        <comment>code of this language</comment>
        <translation>de</translation>
    </message>
</context>
<context>
    <name>BriefingCard</name>
    <message>
        <source>Briefing</source>
        <translation>Einweisung</translation>
    </message>
</context>
<context>
    <name>ButtonFace</name>
    <message>
        <source>pressed</source>
        <translation>gedrückt</translation>
    </message>
    <message>
        <source>press</source>
        <translation>drücken</translation>
    </message>
</context>
<context>
    <name>CardView</name>
    <message>
        <source>The cockpit&apos;s areas, with the numbers of the steps at their controls</source>
        <translation>Die Bereiche des Cockpits, mit den Nummern der Schritte an ihren Bedienteilen</translation>
    </message>
    <message>
        <source>There is no card while the text has an error.</source>
        <translation>Es gibt keine Karte, solange der Text einen Fehler hat.</translation>
    </message>
</context>
<context>
    <name>ChoiceCard</name>
    <message>
        <source>Return</source>
        <translation>Eingabe</translation>
    </message>
</context>
<context>
    <name>ChoiceTile</name>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
</context>
<context>
    <name>ChooseView</name>
    <message>
        <source>The flow could not begin: %1</source>
        <translation>Der Ablauf konnte nicht beginnen: %1</translation>
    </message>
    <message>
        <source>A file was left out: %1</source>
        <translation>Eine Datei wurde ausgelassen: %1</translation>
    </message>
    <message>
        <source>There are no flows yet. Put flow files into a folder below “procedures”; they are listed here at once.</source>
        <translation>Es gibt noch keine Abläufe. Legen Sie Ablaufdateien in einen Ordner unter „procedures“; sie stehen dann sofort hier.</translation>
    </message>
</context>
<context>
    <name>CockpitStrip</name>
    <message>
        <source>The controls at the held time</source>
        <translation>Die Bedienteile zur festgehaltenen Zeit</translation>
    </message>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>The aircraft on the ground from above, at the held time</source>
        <translation>Das Flugzeug am Boden von oben, zur festgehaltenen Zeit</translation>
    </message>
</context>
<context>
    <name>CompareLine</name>
    <message>
        <source>%1: behind %2, %3</source>
        <translation>%1: zurück %2, %3</translation>
    </message>
</context>
<context>
    <name>CompareTable</name>
    <message>
        <source>Beside %1</source>
        <translation>Neben %1</translation>
    </message>
    <message>
        <source>No other run of this flow is stored yet. Fly it again, and the two can be compared.</source>
        <translation>Von diesem Ablauf ist noch kein anderer Durchgang gespeichert. Fliegen Sie ihn noch einmal, dann lassen sich beide vergleichen.</translation>
    </message>
    <message>
        <source>Another run</source>
        <translation>Ein anderer Durchgang</translation>
    </message>
    <message>
        <source>Step</source>
        <translation>Schritt</translation>
    </message>
    <message>
        <source>Done</source>
        <translation>Fertig</translation>
    </message>
    <message>
        <source>Other</source>
        <translation>Anderer</translation>
    </message>
    <message>
        <source>Behind</source>
        <translation>Zurück</translation>
    </message>
    <message>
        <source>Of it</source>
        <translation>Davon</translation>
    </message>
    <message>
        <source>What differed</source>
        <translation>Was anders war</translation>
    </message>
    <message>
        <source>Behind: seconds after the other run since the start; of it: what came with this step. Time held is not counted.</source>
        <translation>Zurück: Sekunden nach dem anderen Durchgang seit dem Beginn; davon: was bei diesem Schritt hinzukam. Angehaltene Zeit zählt nicht.</translation>
    </message>
</context>
<context>
    <name>ControlPanel</name>
    <message>
        <source>On-screen controls</source>
        <translation>Bedienteile auf dem Bildschirm</translation>
    </message>
</context>
<context>
    <name>CoverageLine</name>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
</context>
<context>
    <name>CoverageTable</name>
    <message>
        <source>Shown: %1</source>
        <translation>Gezeigt: %1</translation>
    </message>
    <message>
        <source>every flow</source>
        <translation>jeder Ablauf</translation>
    </message>
    <message>
        <source>Shows the steps of the next flow alone</source>
        <translation>Zeigt nur die Schritte des nächsten Ablaufs</translation>
    </message>
    <message>
        <source>One seat</source>
        <translation>Ein Sitz</translation>
    </message>
    <message>
        <source>Both seats</source>
        <translation>Beide Sitze</translation>
    </message>
    <message>
        <source>First seat</source>
        <translation>Erster Sitz</translation>
    </message>
    <message>
        <source>Shows the steps of both seats, or of the first alone</source>
        <translation>Zeigt die Schritte beider Sitze oder nur des ersten</translation>
    </message>
    <message>
        <source>Save as CSV</source>
        <translation>Als CSV speichern</translation>
    </message>
    <message>
        <source>Save check sheet</source>
        <translation>Prüfblatt speichern</translation>
    </message>
    <message>
        <source>Open it</source>
        <translation>Öffnen</translation>
    </message>
    <message>
        <source>The check sheet that was saved</source>
        <translation>Das gespeicherte Prüfblatt</translation>
    </message>
</context>
<context>
    <name>DataSettings</name>
    <message>
        <source>Folder of runs and rigs</source>
        <translation>Ordner der Durchgänge und Anlagen</translation>
    </message>
    <message>
        <source>Use this folder</source>
        <translation>Diesen Ordner nehmen</translation>
    </message>
    <message>
        <source>Use the usual one</source>
        <translation>Den üblichen nehmen</translation>
    </message>
    <message>
        <source>Runs and rigs of the folder before stay there; choose it again to see them. The command line uses the same folder.</source>
        <translation>Durchgänge und Anlagen des vorigen Ordners bleiben dort; wählen Sie ihn wieder, um sie zu sehen. Die Befehlszeile nimmt denselben Ordner.</translation>
    </message>
    <message>
        <source>What is chosen here is kept in %1.</source>
        <translation>Was hier gewählt wird, steht in %1.</translation>
    </message>
</context>
<context>
    <name>DelaySetting</name>
    <message>
        <source>Delay of sound and hands: %1 ms</source>
        <translation>Verzug von Ton und Händen: %1 ms</translation>
    </message>
    <message>
        <source>Delay of sound and hands: not measured</source>
        <translation>Verzug von Ton und Händen: nicht gemessen</translation>
    </message>
    <message>
        <source>Tap any button or switch of your cockpit to each click: %1 of %2.</source>
        <translation>Tippen Sie zu jedem Klick einen Knopf oder Schalter Ihres Cockpits: %1 von %2.</translation>
    </message>
    <message>
        <source>Tap the space bar to each click: %1 of %2.</source>
        <translation>Tippen Sie zu jedem Klick die Leertaste: %1 von %2.</translation>
    </message>
    <message>
        <source>Of the rig “%1”. It is taken off the time that you need for each step.</source>
        <translation>Der Anlage „%1“. Er wird von der Zeit abgezogen, die Sie für jeden Schritt brauchen.</translation>
    </message>
    <message>
        <source>Of the controls on the screen. It is taken off the time that you need for each step.</source>
        <translation>Der Bedienteile auf dem Bildschirm. Er wird von der Zeit abgezogen, die Sie für jeden Schritt brauchen.</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Stopp</translation>
    </message>
    <message>
        <source>Measure</source>
        <translation>Messen</translation>
    </message>
    <message>
        <source>Ten taps to a click</source>
        <translation>Zehnmal zu einem Klick tippen</translation>
    </message>
    <message>
        <source>Forget it</source>
        <translation>Vergessen</translation>
    </message>
    <message>
        <source>Nothing is taken off any more</source>
        <translation>Es wird nichts mehr abgezogen</translation>
    </message>
</context>
<context>
    <name>DeviationLine</name>
    <message>
        <source>%1 points: %2</source>
        <translation>%1 Punkte: %2</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
</context>
<context>
    <name>DeviationList</name>
    <message>
        <source>Nothing cost points in this run.</source>
        <translation>In diesem Durchgang kostete nichts Punkte.</translation>
    </message>
</context>
<context>
    <name>DueCard</name>
    <message>
        <source>%1: “%2”</source>
        <translation>%1: „%2“</translation>
    </message>
    <message>
        <source>Held: this comes when you go on</source>
        <translation>Angehalten: das kommt, wenn Sie fortfahren</translation>
    </message>
    <message>
        <source>Nothing is due yet</source>
        <translation>Noch ist nichts fällig</translation>
    </message>
    <message>
        <source>Every step is over</source>
        <translation>Jeder Schritt ist vorbei</translation>
    </message>
    <message>
        <source>The %1 does this now</source>
        <translation>Das tut jetzt: %1</translation>
    </message>
    <message>
        <source>Scripted hands do this now</source>
        <translation>Das tun jetzt die Hände der Vorführung</translation>
    </message>
    <message>
        <source>Seen. Leave it there.</source>
        <translation>Gesehen. So lassen.</translation>
    </message>
    <message>
        <source>Your step, now</source>
        <translation>Ihr Schritt, jetzt</translation>
    </message>
    <message>
        <source>Next: %1</source>
        <translation>Danach: %1</translation>
    </message>
    <message>
        <source>Answer: “%1”</source>
        <translation>Antwort: „%1“</translation>
    </message>
</context>
<context>
    <name>EvidenceLine</name>
    <message>
        <source>%1: %2 %3</source>
        <translation>%1: %2 %3</translation>
    </message>
</context>
<context>
    <name>EvidenceView</name>
    <message>
        <source>Ruling</source>
        <translation>Entscheid</translation>
    </message>
    <message>
        <source>The instructor&apos;s word on it, with its reason; the score stays as it is</source>
        <translation>Das Wort des Ausbilders dazu, mit Grund; die Wertung bleibt, wie sie ist</translation>
    </message>
    <message>
        <source>Cause</source>
        <translation>Ursache</translation>
    </message>
    <message>
        <source>Why it happened, as the instructor sees it</source>
        <translation>Warum es geschah, wie es der Ausbilder sieht</translation>
    </message>
</context>
<context>
    <name>FactList</name>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
</context>
<context>
    <name>FeedCard</name>
    <message>
        <source>Fly by the motion of a simulator or receiver</source>
        <translation>Nach der Bewegung eines Simulators oder Empfängers fliegen</translation>
    </message>
    <message>
        <source>Write the format (json, nmea or gdl90), a colon, and where it comes in: a UDP port as in json:49100, a program as in nmea:tcp:localhost:10110, or a serial line as in nmea:serial:/dev/ttyUSB0:4800.</source>
        <translation>Schreiben Sie das Format (json, nmea oder gdl90), einen Doppelpunkt und woher es kommt: einen UDP-Port wie in json:49100, ein Programm wie in nmea:tcp:localhost:10110 oder eine serielle Leitung wie in nmea:serial:/dev/ttyUSB0:4800.</translation>
    </message>
    <message>
        <source>Feed</source>
        <translation>Datenstrom</translation>
    </message>
    <message>
        <source>Stop trying</source>
        <translation>Nicht mehr versuchen</translation>
    </message>
    <message>
        <source>Try it</source>
        <translation>Versuchen</translation>
    </message>
    <message>
        <source>Shows what comes in</source>
        <translation>Zeigt, was hereinkommt</translation>
    </message>
    <message>
        <source>It says: %1.</source>
        <translation>Er sagt: %1.</translation>
    </message>
    <message>
        <source>It does not say: %1. Which steps cannot be judged without is told before each start.</source>
        <translation>Er sagt nicht: %1. Welche Schritte ohne das nicht beurteilt werden können, steht vor jedem Start.</translation>
    </message>
    <message>
        <source>Not taken: %1.</source>
        <translation>Nicht angenommen: %1.</translation>
    </message>
    <message>
        <source>Use this feed</source>
        <translation>Diesen nehmen</translation>
    </message>
    <message>
        <source>Use the practice aircraft</source>
        <translation>Das Übungsflugzeug nehmen</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Abbrechen</translation>
    </message>
</context>
<context>
    <name>FilterPanel</name>
    <message>
        <source>Use these filters</source>
        <translation>Diese Filter nehmen</translation>
    </message>
    <message>
        <source>Writes them into the rig file</source>
        <translation>Schreibt sie in die Anlagendatei</translation>
    </message>
    <message>
        <source>Take the last change back</source>
        <translation>Letzte Änderung zurücknehmen</translation>
    </message>
    <message>
        <source>The filters that the rig file had before</source>
        <translation>Die Filter, die vorher in der Anlagendatei standen</translation>
    </message>
</context>
<context>
    <name>FindingInText</name>
    <message>
        <source>Line %1, %2: %3</source>
        <translation>Zeile %1, %2: %3</translation>
    </message>
    <message>
        <source>line %1 · %2 · %3</source>
        <translation>Zeile %1 · %2 · %3</translation>
    </message>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
</context>
<context>
    <name>FindingLine</name>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
</context>
<context>
    <name>FindingList</name>
    <message>
        <source>Its signal</source>
        <translation>Sein Signal</translation>
    </message>
</context>
<context>
    <name>FindingsCard</name>
    <message>
        <source>Next</source>
        <translation>Danach</translation>
    </message>
    <message>
        <source>What the check says of the text</source>
        <translation>Was die Prüfung vom Text sagt</translation>
    </message>
</context>
<context>
    <name>FirstStartView</name>
    <message>
        <source>What will your hands be on?</source>
        <translation>Worauf liegen Ihre Hände?</translation>
    </message>
    <message>
        <source>Flowhand watches the levers and switches you move, says which step is due, and shows at once whether it was done.</source>
        <translation>Flowhand sieht die Hebel und Schalter, die Sie bewegen, sagt, welcher Schritt fällig ist, und zeigt sofort, ob er getan wurde.</translation>
    </message>
    <message>
        <source>I have controls</source>
        <translation>Ich habe Bedienteile</translation>
    </message>
    <message>
        <source>Levers, pedals or switches on USB, wired as in the rig “%1”.</source>
        <translation>Hebel, Pedale oder Schalter an USB, verdrahtet wie in der Anlage „%1“.</translation>
    </message>
    <message>
        <source>Use my controls</source>
        <translation>Meine Bedienteile</translation>
    </message>
    <message>
        <source>None yet</source>
        <translation>Noch keine</translation>
    </message>
    <message>
        <source>A cockpit on the screen, moved by mouse and keys. You can watch each flow being flown first.</source>
        <translation>Ein Cockpit auf dem Bildschirm, mit Maus und Tasten bewegt. Jeden Ablauf können Sie zuerst vorführen lassen.</translation>
    </message>
    <message>
        <source>Use the screen</source>
        <translation>Den Bildschirm</translation>
    </message>
    <message>
        <source>Wire my controls</source>
        <translation>Meine Bedienteile verdrahten</translation>
    </message>
    <message>
        <source>First look at sample runs, flown well and badly</source>
        <translation>Erst Beispiel-Durchgänge ansehen, gut und schlecht geflogen</translation>
    </message>
    <message>
        <source>Levers, pedals or switches on USB. The bench shows how they move, and asks for a basic set of them, one after the other.</source>
        <translation>Hebel, Pedale oder Schalter an USB. Die Werkbank zeigt, wie sie sich bewegen, und fragt eine Grundausstattung ab, ein Bedienteil nach dem anderen.</translation>
    </message>
</context>
<context>
    <name>FlightParts</name>
    <message>
        <source>%1: %2 points</source>
        <translation>%1: %2 Punkte</translation>
    </message>
</context>
<context>
    <name>FlightSettings</name>
    <message>
        <source>Choose a scenario</source>
        <translation>Ein Szenario wählen</translation>
    </message>
    <message>
        <source>Choose a flow</source>
        <translation>Einen Ablauf wählen</translation>
    </message>
    <message>
        <source>Hands on</source>
        <translation>Hände auf</translation>
    </message>
    <message>
        <source>the screen (simulated)</source>
        <translation>dem Bildschirm (simuliert)</translation>
    </message>
    <message>
        <source>Changes what your hands are on</source>
        <translation>Ändert, worauf Ihre Hände liegen</translation>
    </message>
    <message>
        <source>Motion from</source>
        <translation>Bewegung von</translation>
    </message>
    <message>
        <source>the practice aircraft</source>
        <translation>dem Übungsflugzeug</translation>
    </message>
    <message>
        <source>Changes where the aircraft&apos;s motion comes from</source>
        <translation>Ändert, woher die Bewegung des Flugzeugs kommt</translation>
    </message>
    <message>
        <source>Begins at</source>
        <translation>Beginnt bei</translation>
    </message>
    <message>
        <source>Changes where the flight begins, with which step, and how fast it goes</source>
        <translation>Ändert, wo der Flug beginnt, mit welchem Schritt und wie schnell er geht</translation>
    </message>
</context>
<context>
    <name>FlowCard</name>
    <message>
        <source>%1 · %2 steps · %3 of 100 points to pass</source>
        <translation>%1 · %2 Schritte · mit %3 von 100 Punkten bestanden</translation>
    </message>
    <message>
        <source>Fly it</source>
        <translation>Fliegen</translation>
    </message>
    <message>
        <source>Return</source>
        <translation>Eingabe</translation>
    </message>
    <message>
        <source>Watch it flown</source>
        <translation>Vorführen</translation>
    </message>
</context>
<context>
    <name>FlowTrendCard</name>
    <message>
        <source>Fly it</source>
        <translation>Fliegen</translation>
    </message>
    <message>
        <source>Score, points of 100</source>
        <translation>Wertung, Punkte von 100</translation>
    </message>
    <message>
        <source>Pace of whole runs, s</source>
        <translation>Tempo ganzer Durchgänge, s</translation>
    </message>
    <message>
        <source>Filled: passed. Dashed: %1.</source>
        <translation>Gefüllt: bestanden. Gestrichelt: %1.</translation>
    </message>
    <message>
        <source>Filled: passed. A trend is told from 4 runs, a learning curve from 6 whole ones.</source>
        <translation>Gefüllt: bestanden. Einen Trend gibt es ab 4 Durchgängen, eine Lernkurve ab 6 ganzen.</translation>
    </message>
    <message>
        <source>Went wrong in the one run</source>
        <translation>Ging in dem einen Durchgang schief</translation>
    </message>
    <message>
        <source>Goes wrong, of the last %1 runs</source>
        <translation>Geht schief, in den letzten %1 Durchgängen</translation>
    </message>
    <message>
        <source>No step went wrong in the one run.</source>
        <translation>In dem einen Durchgang ging kein Schritt schief.</translation>
    </message>
    <message>
        <source>No step went wrong in the last %1 runs.</source>
        <translation>In den letzten %1 Durchgängen ging kein Schritt schief.</translation>
    </message>
    <message>
        <source>The steps that go wrong, and what was done instead</source>
        <translation>Die Schritte, die schiefgehen, und was stattdessen getan wurde</translation>
    </message>
</context>
<context>
    <name>FlownFlowList</name>
    <message>
        <source>The flows that were flown</source>
        <translation>Die geflogenen Abläufe</translation>
    </message>
    <message>
        <source>%1, %2. %3</source>
        <translation>%1, %2. %3</translation>
    </message>
</context>
<context>
    <name>FlyingSettings</name>
    <message>
        <source>Help while flying</source>
        <translation>Hilfe beim Fliegen</translation>
    </message>
    <message>
        <source>The step that is due, where its control is and where it has to go, and the steps to come.</source>
        <translation>Der fällige Schritt, wo sein Bedienteil steht und wohin es muss, und die Schritte danach.</translation>
    </message>
    <message>
        <source>The step that is due, and its control as it stands. Where it has to go and what comes next is yours to know.</source>
        <translation>Der fällige Schritt und sein Bedienteil, wie es steht. Wohin es muss und was danach kommt, wissen Sie selbst.</translation>
    </message>
    <message>
        <source>That a step is due, and what became of it. Which one it is, is yours to know.</source>
        <translation>Dass ein Schritt fällig ist und was daraus wurde. Welcher es ist, wissen Sie selbst.</translation>
    </message>
    <message>
        <source>guided</source>
        <translation>geführt</translation>
    </message>
    <message>
        <source>prompted</source>
        <translation>mit Stichwort</translation>
    </message>
    <message>
        <source>from memory</source>
        <translation>aus dem Kopf</translation>
    </message>
    <message>
        <source>It holds from the next run on and stands in the run&apos;s record: runs with different help are not alike. A demonstration is always guided.</source>
        <translation>Sie gilt vom nächsten Durchgang an und steht in seinem Protokoll: Durchgänge mit anderer Hilfe sind nicht gleich. Eine Vorführung ist immer geführt.</translation>
    </message>
</context>
<context>
    <name>Footer</name>
    <message>
        <source>Flowhand is a hobby trainer and is not for real-world flight training.</source>
        <translation>Flowhand ist ein Hobbytrainer und nicht für die Ausbildung zum wirklichen Fliegen.</translation>
    </message>
    <message>
        <source>Settings</source>
        <translation>Einstellungen</translation>
    </message>
    <message>
        <source>Look, sound, help, pilots and data</source>
        <translation>Aussehen, Ton, Hilfe, Piloten und Daten</translation>
    </message>
    <message>
        <source>On, quiet, off: of the voice and the tones</source>
        <translation>An, leise, aus: Stimme und Töne</translation>
    </message>
    <message>
        <source>Keys</source>
        <translation>Tasten</translation>
    </message>
    <message>
        <source>Manual</source>
        <translation>Handbuch</translation>
    </message>
    <message>
        <source>Ctrl 6</source>
        <translation>Strg 6</translation>
    </message>
</context>
<context>
    <name>GroundCard</name>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>The ground from above: %1</source>
        <translation>Der Boden von oben: %1</translation>
    </message>
</context>
<context>
    <name>GroupBar</name>
    <message>
        <source>Aircraft</source>
        <translation>Flugzeug</translation>
    </message>
</context>
<context>
    <name>GuardList</name>
    <message>
        <source>Now: %1</source>
        <translation>Jetzt: %1</translation>
    </message>
    <message>
        <source>Guard broken: %1</source>
        <translation>Schutzregel verletzt: %1</translation>
    </message>
</context>
<context>
    <name>HappenedCard</name>
    <message>
        <source>What happened</source>
        <translation>Was geschah</translation>
    </message>
    <message>
        <source>Nothing unexpected.</source>
        <translation>Nichts Unerwartetes.</translation>
    </message>
</context>
<context>
    <name>HeldControl</name>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
</context>
<context>
    <name>HoldBar</name>
    <message>
        <source>Held: %1</source>
        <translation>Angehalten: %1</translation>
    </message>
    <message>
        <source>Held. Time does not count.</source>
        <translation>Angehalten. Die Zeit zählt nicht.</translation>
    </message>
    <message>
        <source>To go on, put %1 to %2; it is at %3.</source>
        <translation>Um fortzufahren, %1 auf %2 stellen; jetzt %3.</translation>
    </message>
    <message>
        <source>The partner moved it: put %1 to %2 as well.</source>
        <translation>Der Partner hat es bewegt: auch %1 auf %2 stellen.</translation>
    </message>
    <message>
        <source>Go on as it is</source>
        <translation>So fortfahren</translation>
    </message>
    <message>
        <source>The debrief will say that the set-up was not right.</source>
        <translation>In der Nachbesprechung steht, dass die Ausgangsstellung nicht stimmte.</translation>
    </message>
    <message>
        <source>Go on</source>
        <translation>Fortfahren</translation>
    </message>
    <message>
        <source>Return</source>
        <translation>Eingabe</translation>
    </message>
</context>
<context>
    <name>JumpCard</name>
    <message>
        <source>Go on with</source>
        <translation>Fortfahren mit</translation>
    </message>
    <message>
        <source>Jump there</source>
        <translation>Dorthin springen</translation>
    </message>
    <message>
        <source>Return</source>
        <translation>Eingabe</translation>
    </message>
    <message>
        <source>Stay</source>
        <translation>Bleiben</translation>
    </message>
</context>
<context>
    <name>JumpPair</name>
    <message>
        <source>%1 before</source>
        <translation>%1 davor</translation>
    </message>
    <message>
        <source>%1 ›</source>
        <translation>%1 ›</translation>
    </message>
    <message>
        <source>Next: %1</source>
        <translation>Danach: %1</translation>
    </message>
</context>
<context>
    <name>KeyChoiceLine</name>
    <message>
        <source>Press a key …</source>
        <translation>Taste drücken …</translation>
    </message>
    <message>
        <source>Press the new key for: %1</source>
        <translation>Drücken Sie die neue Taste für: %1</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>Gives it another key; Esc leaves it as it is</source>
        <translation>Gibt ihm eine andere Taste; Esc lässt sie, wie sie ist</translation>
    </message>
    <message>
        <source>As usual</source>
        <translation>Wie üblich</translation>
    </message>
    <message>
        <source>The usual key again for: %1</source>
        <translation>Wieder die übliche Taste für: %1</translation>
    </message>
</context>
<context>
    <name>KeySettings</name>
    <message>
        <source>Press a key&apos;s button, then the key that is to do the same. Return, Esc, Tab and the Page keys stay as they are.</source>
        <translation>Drücken Sie den Knopf einer Taste, dann die Taste, die dasselbe tun soll. Eingabe, Esc, Tab und die Bildtasten bleiben, wie sie sind.</translation>
    </message>
    <message>
        <source>All as usual</source>
        <translation>Alle wie üblich</translation>
    </message>
</context>
<context>
    <name>KeySheet</name>
    <message>
        <source>Keys</source>
        <translation>Tasten</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>On-screen controls</source>
        <translation>Bedienteile auf dem Bildschirm</translation>
    </message>
</context>
<context>
    <name>KeyTable</name>
    <message>
        <source>show or hide the keys</source>
        <translation>die Tasten zeigen oder verbergen</translation>
    </message>
    <message>
        <source>sound on, quiet, off</source>
        <translation>Ton an, leise, aus</translation>
    </message>
    <message>
        <source>settings; not while a run goes on</source>
        <translation>Einstellungen; nicht während eines Durchgangs</translation>
    </message>
    <message>
        <source>Tab</source>
        <translation>Tab</translation>
    </message>
    <message>
        <source>to the next button or control</source>
        <translation>zum nächsten Knopf oder Bedienteil</translation>
    </message>
    <message>
        <source>Return</source>
        <translation>Eingabe</translation>
    </message>
    <message>
        <source>the main button</source>
        <translation>der Hauptknopf</translation>
    </message>
    <message>
        <source>hold, and go on</source>
        <translation>anhalten und fortfahren</translation>
    </message>
    <message>
        <source>repeat the step</source>
        <translation>den Schritt wiederholen</translation>
    </message>
    <message>
        <source>show or hide the on-screen controls</source>
        <translation>die Bedienteile auf dem Bildschirm zeigen oder verbergen</translation>
    </message>
    <message>
        <source>jump to another step</source>
        <translation>zu einem anderen Schritt springen</translation>
    </message>
    <message>
        <source>stop the run</source>
        <translation>den Durchgang beenden</translation>
    </message>
    <message>
        <source>a note at this moment; Return keeps it</source>
        <translation>eine Notiz zu diesem Augenblick; Eingabe behält sie</translation>
    </message>
    <message>
        <source>Esc</source>
        <translation>Esc</translation>
    </message>
    <message>
        <source>back to the flows, between runs</source>
        <translation>zurück zu den Abläufen, zwischen Durchgängen</translation>
    </message>
    <message>
        <source>Page</source>
        <translation>Bild</translation>
    </message>
    <message>
        <source>Page Up, Page Down: another aircraft, or its scenarios</source>
        <translation>Bild auf, Bild ab: ein anderes Flugzeug oder seine Szenarien</translation>
    </message>
    <message>
        <source>choose a flow; move the control that Tab has reached</source>
        <translation>einen Ablauf wählen; das Bedienteil bewegen, das mit Tab erreicht ist</translation>
    </message>
    <message>
        <source>choose a control</source>
        <translation>ein Bedienteil wählen</translation>
    </message>
    <message>
        <source>wire it</source>
        <translation>es verdrahten</translation>
    </message>
    <message>
        <source>wire it another way</source>
        <translation>es anders verdrahten</translation>
    </message>
    <message>
        <source>calibrate it</source>
        <translation>es kalibrieren</translation>
    </message>
    <message>
        <source>give its true values</source>
        <translation>seine wahren Werte angeben</translation>
    </message>
    <message>
        <source>check its calibration again</source>
        <translation>seine Kalibrierung nachprüfen</translation>
    </message>
    <message>
        <source>measure its signal</source>
        <translation>sein Signal messen</translation>
    </message>
    <message>
        <source>check walk of all controls</source>
        <translation>Prüfgang über alle Bedienteile</translation>
    </message>
    <message>
        <source>set its tolerances</source>
        <translation>seine Toleranzen setzen</translation>
    </message>
    <message>
        <source>use the filters that the measurement asks for</source>
        <translation>die Filter nehmen, die die Messung verlangt</translation>
    </message>
    <message>
        <source>take that back</source>
        <translation>das zurücknehmen</translation>
    </message>
    <message>
        <source>stop what goes on</source>
        <translation>anhalten, was gerade läuft</translation>
    </message>
    <message>
        <source>steps of the next flow alone</source>
        <translation>nur die Schritte des nächsten Ablaufs</translation>
    </message>
    <message>
        <source>steps of both seats, or of the first</source>
        <translation>Schritte beider Sitze oder des ersten</translation>
    </message>
    <message>
        <source>save the table as CSV</source>
        <translation>die Tabelle als CSV speichern</translation>
    </message>
    <message>
        <source>save the check sheet</source>
        <translation>das Prüfblatt speichern</translation>
    </message>
    <message>
        <source>open the check sheet</source>
        <translation>das Prüfblatt öffnen</translation>
    </message>
    <message>
        <source>go through the chosen run</source>
        <translation>den gewählten Durchgang durchgehen</translation>
    </message>
    <message>
        <source>search in the list; fit the whole run in its timeline</source>
        <translation>in der Liste suchen; den ganzen Durchgang in seine Zeitleiste einpassen</translation>
    </message>
    <message>
        <source>make the chosen run the reference, in the list</source>
        <translation>den gewählten Durchgang zum Vergleichsdurchgang machen, in der Liste</translation>
    </message>
    <message>
        <source>tag the chosen run, in the list</source>
        <translation>den gewählten Durchgang mit einem Stichwort versehen, in der Liste</translation>
    </message>
    <message>
        <source>delete the chosen run, in the list</source>
        <translation>den gewählten Durchgang löschen, in der Liste</translation>
    </message>
    <message>
        <source>take a deletion back</source>
        <translation>ein Löschen zurücknehmen</translation>
    </message>
    <message>
        <source>back to the list</source>
        <translation>zurück zur Liste</translation>
    </message>
    <message>
        <source>deviations</source>
        <translation>Abweichungen</translation>
    </message>
    <message>
        <source>steps</source>
        <translation>Schritte</translation>
    </message>
    <message>
        <source>notes</source>
        <translation>Notizen</translation>
    </message>
    <message>
        <source>compare</source>
        <translation>vergleichen</translation>
    </message>
    <message>
        <source>signals</source>
        <translation>Signale</translation>
    </message>
    <message>
        <source>the run as a whole</source>
        <translation>der Durchgang im Ganzen</translation>
    </message>
    <message>
        <source>to that deviation; two figures where there are more</source>
        <translation>zu dieser Abweichung; zwei Ziffern, wo es mehr sind</translation>
    </message>
    <message>
        <source>the next one of the list</source>
        <translation>das nächste der Liste</translation>
    </message>
    <message>
        <source>PgUp PgDn</source>
        <translation>Bild↑ Bild↓</translation>
    </message>
    <message>
        <source>deviation before, next</source>
        <translation>vorige, nächste Abweichung</translation>
    </message>
    <message>
        <source>step before</source>
        <translation>voriger Schritt</translation>
    </message>
    <message>
        <source>next step</source>
        <translation>nächster Schritt</translation>
    </message>
    <message>
        <source>visible change before</source>
        <translation>vorige sichtbare Änderung</translation>
    </message>
    <message>
        <source>next visible change</source>
        <translation>nächste sichtbare Änderung</translation>
    </message>
    <message>
        <source>hold an earlier, a later time; farther with Shift</source>
        <translation>eine frühere, eine spätere Zeit festhalten; weiter mit Umschalt</translation>
    </message>
    <message>
        <source>Home End</source>
        <translation>Pos1 Ende</translation>
    </message>
    <message>
        <source>to the start, to the end</source>
        <translation>zum Anfang, zum Ende</translation>
    </message>
    <message>
        <source>zoom in at the held time</source>
        <translation>an der festgehaltenen Zeit vergrößern</translation>
    </message>
    <message>
        <source>zoom out at the held time</source>
        <translation>an der festgehaltenen Zeit verkleinern</translation>
    </message>
    <message>
        <source>set A</source>
        <translation>A setzen</translation>
    </message>
    <message>
        <source>set B</source>
        <translation>B setzen</translation>
    </message>
    <message>
        <source>clear A and B</source>
        <translation>A und B löschen</translation>
    </message>
    <message>
        <source>Space</source>
        <translation>Leertaste</translation>
    </message>
    <message>
        <source>play, stop</source>
        <translation>abspielen, anhalten</translation>
    </message>
    <message>
        <source>faster; deleted runs, in the list</source>
        <translation>schneller; gelöschte Durchgänge, in der Liste</translation>
    </message>
    <message>
        <source>loop from A to B, or what is shown</source>
        <translation>von A bis B wiederholen, oder was gezeigt ist</translation>
    </message>
    <message>
        <source>a note at the held time; Return keeps it</source>
        <translation>eine Notiz zur festgehaltenen Zeit; Eingabe behält sie</translation>
    </message>
    <message>
        <source>the pilot&apos;s own account</source>
        <translation>der eigene Bericht des Piloten</translation>
    </message>
    <message>
        <source>the objective</source>
        <translation>das Ziel</translation>
    </message>
    <message>
        <source>what to practise</source>
        <translation>was zu üben ist</translation>
    </message>
    <message>
        <source>ruling on what is chosen</source>
        <translation>Entscheid über das Gewählte</translation>
    </message>
    <message>
        <source>cause of what is chosen</source>
        <translation>Ursache des Gewählten</translation>
    </message>
    <message>
        <source>compare with another run</source>
        <translation>mit einem anderen Durchgang vergleichen</translation>
    </message>
    <message>
        <source>write the debrief down</source>
        <translation>die Nachbesprechung schreiben</translation>
    </message>
    <message>
        <source>show or hide the cockpit</source>
        <translation>das Cockpit zeigen oder verbergen</translation>
    </message>
    <message>
        <source>to and fro</source>
        <translation>hin und her</translation>
    </message>
    <message>
        <source>press</source>
        <translation>drücken</translation>
    </message>
    <message>
        <source>right</source>
        <translation>rechts</translation>
    </message>
    <message>
        <source>left</source>
        <translation>links</translation>
    </message>
    <message>
        <source>pull</source>
        <translation>ziehen</translation>
    </message>
    <message>
        <source>push</source>
        <translation>drücken</translation>
    </message>
    <message>
        <source>more, or next</source>
        <translation>mehr, oder das nächste</translation>
    </message>
    <message>
        <source>less, or back</source>
        <translation>weniger, oder zurück</translation>
    </message>
    <message>
        <source>Ctrl 1 … 5</source>
        <translation>Strg 1 … 5</translation>
    </message>
    <message>
        <source>to Fly, Bench, Review, Progress, Library; not during a run</source>
        <translation>zum Fliegen, zu Werkbank, Nachlese, Fortschritt, Bibliothek; nicht während eines Durchgangs</translation>
    </message>
    <message>
        <source>Ctrl 6</source>
        <translation>Strg 6</translation>
    </message>
    <message>
        <source>the manual; not during a run</source>
        <translation>das Handbuch; nicht während eines Durchgangs</translation>
    </message>
    <message>
        <source>fly what the plan has first</source>
        <translation>fliegen, was der Plan zuerst hat</translation>
    </message>
    <message>
        <source>choose a flow</source>
        <translation>einen Ablauf wählen</translation>
    </message>
    <message>
        <source>fly the chosen flow</source>
        <translation>den gewählten Ablauf fliegen</translation>
    </message>
    <message>
        <source>the next pilot or rig</source>
        <translation>der nächste Pilot oder die nächste Anlage</translation>
    </message>
    <message>
        <source>mix pilots and rigs, or not</source>
        <translation>Piloten und Anlagen mischen oder nicht</translation>
    </message>
    <message>
        <source>change your own file, or make a copy to change</source>
        <translation>die eigene Datei ändern oder eine Kopie zum Ändern machen</translation>
    </message>
    <message>
        <source>choose a file</source>
        <translation>eine Datei wählen</translation>
    </message>
    <message>
        <source>flows, checklists, scenarios, aircraft</source>
        <translation>Abläufe, Checklisten, Szenarien, Flugzeuge</translation>
    </message>
    <message>
        <source>turn the card</source>
        <translation>die Karte wenden</translation>
    </message>
    <message>
        <source>show the text</source>
        <translation>den Text zeigen</translation>
    </message>
    <message>
        <source>print the card as PDF</source>
        <translation>die Karte als PDF drucken</translation>
    </message>
    <message>
        <source>search</source>
        <translation>suchen</translation>
    </message>
    <message>
        <source>Ctrl S</source>
        <translation>Strg S</translation>
    </message>
    <message>
        <source>save the text</source>
        <translation>den Text speichern</translation>
    </message>
    <message>
        <source>to the next finding in the text</source>
        <translation>zum nächsten Befund im Text</translation>
    </message>
    <message>
        <source>take the file as it is on the disk</source>
        <translation>die Datei nehmen, wie sie auf der Platte ist</translation>
    </message>
    <message>
        <source>keep yours, where both were changed</source>
        <translation>die eigene behalten, wo beide geändert wurden</translation>
    </message>
    <message>
        <source>act a step out on the on-screen controls</source>
        <translation>einen Schritt auf den Bedienteilen vorspielen</translation>
    </message>
    <message>
        <source>write the step that was acted out</source>
        <translation>den vorgespielten Schritt schreiben</translation>
    </message>
    <message>
        <source>choose a page</source>
        <translation>eine Seite wählen</translation>
    </message>
    <message>
        <source>turn it</source>
        <translation>sie umblättern</translation>
    </message>
    <message>
        <source>back to where you were</source>
        <translation>zurück, wo Sie waren</translation>
    </message>
    <message>
        <source>slower; sample runs, in the list</source>
        <translation>langsamer; Beispiel-Durchgänge, in der Liste</translation>
    </message>
    <message>
        <source>wire the basic set, one control after the other</source>
        <translation>die Grundausstattung verdrahten, ein Bedienteil nach dem anderen</translation>
    </message>
</context>
<context>
    <name>LaneLine</name>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
</context>
<context>
    <name>LanesCard</name>
    <message>
        <source>Held: %1</source>
        <translation>Angehalten: %1</translation>
    </message>
</context>
<context>
    <name>LedgerCard</name>
    <message>
        <source>What it cost</source>
        <translation>Was es kostete</translation>
    </message>
    <message>
        <source>No point was lost.</source>
        <translation>Kein Punkt ging verloren.</translation>
    </message>
    <message>
        <source>There was nothing to score in this run.</source>
        <translation>In diesem Durchgang war nichts zu werten.</translation>
    </message>
</context>
<context>
    <name>LedgerLine</name>
    <message>
        <source>%1 points: %2</source>
        <translation>%1 Punkte: %2</translation>
    </message>
</context>
<context>
    <name>LibraryEditorView</name>
    <message>
        <source>This file was changed outside while you changed it here. Both are still there: take the file as it is, or keep yours.</source>
        <translation>Diese Datei wurde außerhalb geändert, während Sie sie hier änderten. Beide sind noch da: nehmen Sie die Datei, wie sie ist, oder behalten Sie Ihre.</translation>
    </message>
    <message>
        <source>Move a control, here or on %1: the step is written for where it then stands.</source>
        <translation>Bewegen Sie ein Bedienteil, hier oder an %1: der Schritt wird dafür geschrieben, wo es dann steht.</translation>
    </message>
    <message>
        <source>Move a control: the step is written for where it then stands.</source>
        <translation>Bewegen Sie ein Bedienteil: der Schritt wird dafür geschrieben, wo es dann steht.</translation>
    </message>
    <message>
        <source>Save</source>
        <translation>Speichern</translation>
    </message>
    <message>
        <source>Ctrl S</source>
        <translation>Strg S</translation>
    </message>
    <message>
        <source>Make my own copy</source>
        <translation>Eigene Kopie machen</translation>
    </message>
    <message>
        <source>Take the file as it is</source>
        <translation>Die Datei nehmen, wie sie ist</translation>
    </message>
    <message>
        <source>Your unsaved changes are gone then</source>
        <translation>Ihre ungespeicherten Änderungen sind dann fort</translation>
    </message>
    <message>
        <source>Keep mine</source>
        <translation>Meine behalten</translation>
    </message>
    <message>
        <source>Saving then replaces what was changed outside</source>
        <translation>Speichern ersetzt dann, was außerhalb geändert wurde</translation>
    </message>
    <message>
        <source>Put the controls away</source>
        <translation>Bedienteile weglegen</translation>
    </message>
    <message>
        <source>Act a step out</source>
        <translation>Einen Schritt vorspielen</translation>
    </message>
    <message>
        <source>What you move, here or on your rig, writes the step</source>
        <translation>Was Sie bewegen, hier oder an Ihrer Anlage, schreibt den Schritt</translation>
    </message>
    <message>
        <source>Write the step</source>
        <translation>Den Schritt schreiben</translation>
    </message>
    <message>
        <source>Back to the list</source>
        <translation>Zurück zur Liste</translation>
    </message>
    <message>
        <source>Esc</source>
        <translation>Esc</translation>
    </message>
    <message>
        <source>The step is: %1. F8 writes it behind the step that the cursor is in.</source>
        <translation>Der Schritt ist: %1. F8 schreibt ihn hinter den Schritt, in dem die Schreibmarke steht.</translation>
    </message>
</context>
<context>
    <name>LibraryLine</name>
    <message>
        <source>%1, yours. %2</source>
        <translation>%1, Ihre. %2</translation>
    </message>
    <message>
        <source>%1. %2</source>
        <translation>%1. %2</translation>
    </message>
    <message>
        <source>yours</source>
        <translation>Ihre</translation>
    </message>
</context>
<context>
    <name>LibraryListView</name>
    <message>
        <source>The files of this kind</source>
        <translation>Die Dateien dieser Art</translation>
    </message>
    <message>
        <source>Nothing here has these words.</source>
        <translation>Nichts hier hat diese Worte.</translation>
    </message>
    <message>
        <source>Change it</source>
        <translation>Ändern</translation>
    </message>
    <message>
        <source>Make my own copy</source>
        <translation>Eigene Kopie machen</translation>
    </message>
    <message>
        <source>What is shipped stays as it is; the copy is yours to change</source>
        <translation>Das Mitgelieferte bleibt, wie es ist; die Kopie dürfen Sie ändern</translation>
    </message>
    <message>
        <source>Return</source>
        <translation>Eingabe</translation>
    </message>
    <message>
        <source>Its text</source>
        <translation>Der Text</translation>
    </message>
    <message>
        <source>Print to PDF</source>
        <translation>Als PDF drucken</translation>
    </message>
</context>
<context>
    <name>LibraryPlace</name>
    <message>
        <source>Flows</source>
        <translation>Abläufe</translation>
    </message>
    <message>
        <source>Checklists</source>
        <translation>Checklisten</translation>
    </message>
    <message>
        <source>Scenarios</source>
        <translation>Szenarien</translation>
    </message>
    <message>
        <source>Aircraft</source>
        <translation>Flugzeug</translation>
    </message>
    <message>
        <source>Library</source>
        <translation>Bibliothek</translation>
    </message>
    <message>
        <source>Search</source>
        <translation>Suche</translation>
    </message>
    <message>
        <source>Search in titles, aircraft and file names</source>
        <translation>Suche in Titeln, Flugzeugen und Dateinamen</translation>
    </message>
</context>
<context>
    <name>LineView</name>
    <message>
        <source>The line on the ground, from above</source>
        <translation>Die Linie am Boden, von oben</translation>
    </message>
</context>
<context>
    <name>LookSettings</name>
    <message>
        <source>Language</source>
        <translation>Sprache</translation>
    </message>
    <message>
        <source>Of the window. Flows and aircraft speak as their files are written, and crews speak English.</source>
        <translation>Des Fensters. Abläufe und Flugzeuge sprechen, wie ihre Dateien geschrieben sind, und Besatzungen sprechen Englisch.</translation>
    </message>
    <message>
        <source>as the desktop</source>
        <translation>wie das System</translation>
    </message>
    <message>
        <source>Colours</source>
        <translation>Farben</translation>
    </message>
    <message>
        <source>light</source>
        <translation>hell</translation>
    </message>
    <message>
        <source>dark</source>
        <translation>dunkel</translation>
    </message>
    <message>
        <source>Text size</source>
        <translation>Schriftgröße</translation>
    </message>
    <message>
        <source>Motion on screen</source>
        <translation>Bewegung auf dem Bildschirm</translation>
    </message>
    <message>
        <source>Reduced: nothing fades or slides. The aircraft and the controls move as they are.</source>
        <translation>Verringert: nichts blendet über oder gleitet. Flugzeug und Bedienteile bewegen sich, wie sie sind.</translation>
    </message>
    <message>
        <source>full</source>
        <translation>voll</translation>
    </message>
    <message>
        <source>reduced</source>
        <translation>verringert</translation>
    </message>
    <message>
        <source>Distances on the ground</source>
        <translation>Entfernungen am Boden</translation>
    </message>
    <message>
        <source>Speeds and heights have the units of the aircraft&apos;s files.</source>
        <translation>Geschwindigkeiten und Höhen haben die Einheiten der Flugzeugdateien.</translation>
    </message>
    <message>
        <source>metres</source>
        <translation>Meter</translation>
    </message>
    <message>
        <source>feet</source>
        <translation>Fuß</translation>
    </message>
</context>
<context>
    <name>Main</name>
    <message>
        <source>Flowhand</source>
        <translation>Flowhand</translation>
    </message>
</context>
<context>
    <name>ManualPlace</name>
    <message>
        <source>Manual</source>
        <translation>Handbuch</translation>
    </message>
    <message>
        <source>The manual&apos;s pages</source>
        <translation>Die Seiten des Handbuchs</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Zurück</translation>
    </message>
    <message>
        <source>Esc</source>
        <translation>Esc</translation>
    </message>
</context>
<context>
    <name>MeasureActions</name>
    <message>
        <source>Wire it</source>
        <translation>Verdrahten</translation>
    </message>
    <message>
        <source>Calibrate it</source>
        <translation>Kalibrieren</translation>
    </message>
    <message>
        <source>Check again</source>
        <translation>Nachprüfen</translation>
    </message>
    <message>
        <source>Measure it</source>
        <translation>Messen</translation>
    </message>
    <message>
        <source>Check walk</source>
        <translation>Prüfgang</translation>
    </message>
    <message>
        <source>Finds the input that moves</source>
        <translation>Findet den Eingang, der sich bewegt</translation>
    </message>
    <message>
        <source>Finds its ends, centre and gates</source>
        <translation>Findet Enden, Mitte und Rasten</translation>
    </message>
    <message>
        <source>How far its calibration is off now</source>
        <translation>Wie weit die Kalibrierung jetzt daneben liegt</translation>
    </message>
    <message>
        <source>Noise, wear, bounce and timing of its signal</source>
        <translation>Rauschen, Abnutzung, Prellen und Zeitverhalten des Signals</translation>
    </message>
    <message>
        <source>Confirms every control of the rig through its whole range</source>
        <translation>Bestätigt jedes Bedienteil der Anlage über seinen ganzen Weg</translation>
    </message>
    <message>
        <source>Return</source>
        <translation>Eingabe</translation>
    </message>
    <message>
        <source>Wire anew</source>
        <translation>Neu verdrahten</translation>
    </message>
    <message>
        <source>Wire otherwise</source>
        <translation>Anders verdrahten</translation>
    </message>
    <message>
        <source>Two controls on one lever, two axes for one control, contacts, encoders</source>
        <translation>Zwei Bedienteile an einem Hebel, zwei Achsen für eines, Kontakte, Drehgeber</translation>
    </message>
    <message>
        <source>True values</source>
        <translation>Wahre Werte</translation>
    </message>
    <message>
        <source>Calibrate to angles that you measured</source>
        <translation>Nach Winkeln kalibrieren, die Sie gemessen haben</translation>
    </message>
    <message>
        <source>Tolerances</source>
        <translation>Toleranzen</translation>
    </message>
    <message>
        <source>How near to its ends and its centre a control must come in the check walk</source>
        <translation>Wie nah ein Bedienteil beim Prüfgang an Enden und Mitte kommen muss</translation>
    </message>
    <message>
        <source>Yes, both</source>
        <translation>Ja, beide</translation>
    </message>
    <message>
        <source>Leave this control out</source>
        <translation>Dieses auslassen</translation>
    </message>
    <message>
        <source>Done, go on</source>
        <translation>Fertig, weiter</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Stopp</translation>
    </message>
    <message>
        <source>Esc</source>
        <translation>Esc</translation>
    </message>
    <message>
        <source>Wire the basic set</source>
        <translation>Die Grundausstattung verdrahten</translation>
    </message>
    <message>
        <source>One control after the other: what steers, brakes, moves and reverses the aircraft, its flap and its gear</source>
        <translation>Ein Bedienteil nach dem anderen: was das Flugzeug lenkt, bremst, antreibt und umkehrt, seine Klappen und sein Fahrwerk</translation>
    </message>
    <message>
        <source>I do not have this one</source>
        <translation>Das habe ich nicht</translation>
    </message>
</context>
<context>
    <name>MeasureCard</name>
    <message>
        <source>No input of the rig makes this control yet. Wire it: move the control when asked, and the input that moves is found.</source>
        <translation>Noch macht kein Eingang der Anlage dieses Bedienteil. Verdrahten Sie es: bewegen Sie es, wenn Sie gefragt werden, und der Eingang wird gefunden.</translation>
    </message>
    <message>
        <source>The last ten seconds of %1, with its gates and the bands of the steps that judge it</source>
        <translation>Die letzten zehn Sekunden von %1, mit Rasten und den Bändern der Schritte, die es beurteilen</translation>
    </message>
</context>
<context>
    <name>MotionStrip</name>
    <message>
        <source>Time</source>
        <translation>Zeit</translation>
    </message>
    <message>
        <source>Slow time</source>
        <translation>Zeitlupe</translation>
    </message>
    <message>
        <source>times slower</source>
        <translation>mal langsamer</translation>
    </message>
    <message>
        <source>Controls</source>
        <translation>Bedienteile</translation>
    </message>
    <message>
        <source>Hide the on-screen controls</source>
        <translation>Die Bedienteile auf dem Bildschirm verbergen</translation>
    </message>
    <message>
        <source>Show the on-screen controls</source>
        <translation>Die Bedienteile auf dem Bildschirm zeigen</translation>
    </message>
    <message>
        <source>Hold</source>
        <translation>Anhalten</translation>
    </message>
    <message>
        <source>Repeat</source>
        <translation>Wiederholen</translation>
    </message>
    <message>
        <source>The due step again from its start</source>
        <translation>Der fällige Schritt noch einmal von vorn</translation>
    </message>
    <message>
        <source>Jump</source>
        <translation>Springen</translation>
    </message>
    <message>
        <source>Holds the run, and goes on with another step</source>
        <translation>Hält den Durchgang an und fährt mit einem anderen Schritt fort</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Stopp</translation>
    </message>
</context>
<context>
    <name>NoteBar</name>
    <message>
        <source>Keep it</source>
        <translation>Behalten</translation>
    </message>
    <message>
        <source>Return</source>
        <translation>Eingabe</translation>
    </message>
    <message>
        <source>Leave it</source>
        <translation>Lassen</translation>
    </message>
    <message>
        <source>Esc</source>
        <translation>Esc</translation>
    </message>
    <message>
        <source>Dismiss</source>
        <translation>Ausblenden</translation>
    </message>
</context>
<context>
    <name>NoteEditor</name>
    <message>
        <source>Keep it</source>
        <translation>Behalten</translation>
    </message>
    <message>
        <source>Return</source>
        <translation>Eingabe</translation>
    </message>
    <message>
        <source>Leave it</source>
        <translation>Lassen</translation>
    </message>
    <message>
        <source>Esc</source>
        <translation>Esc</translation>
    </message>
    <message>
        <source>↑ ↓ choose</source>
        <translation>↑ ↓ wählen</translation>
    </message>
</context>
<context>
    <name>NotesPanel</name>
    <message>
        <source>The pilot&apos;s own account comes first; then rulings, causes, marks and what is practised next.</source>
        <translation>Der eigene Bericht des Piloten kommt zuerst; dann Entscheide, Ursachen, Noten und was als Nächstes geübt wird.</translation>
    </message>
    <message>
        <source>Note here</source>
        <translation>Notiz hier</translation>
    </message>
    <message>
        <source>Account</source>
        <translation>Bericht</translation>
    </message>
    <message>
        <source>Objective</source>
        <translation>Ziel</translation>
    </message>
    <message>
        <source>Practise next</source>
        <translation>Als Nächstes üben</translation>
    </message>
    <message>
        <source>No note yet. N and Return put one at the held time.</source>
        <translation>Noch keine Notiz. N und Eingabe setzen eine an die festgehaltene Zeit.</translation>
    </message>
    <message>
        <source>Marks, 1 to 5</source>
        <translation>Noten, 1 bis 5</translation>
    </message>
</context>
<context>
    <name>OverviewStrip</name>
    <message>
        <source>The whole run, with its steps and losses</source>
        <translation>Der ganze Durchgang mit Schritten und Verlusten</translation>
    </message>
</context>
<context>
    <name>PanelCard</name>
    <message>
        <source>Deviations</source>
        <translation>Abweichungen</translation>
    </message>
    <message>
        <source>Steps</source>
        <translation>Schritte</translation>
    </message>
    <message>
        <source>Notes</source>
        <translation>Notizen</translation>
    </message>
    <message>
        <source>Compare</source>
        <translation>Vergleich</translation>
    </message>
    <message>
        <source>Signals</source>
        <translation>Signale</translation>
    </message>
    <message>
        <source>Run</source>
        <translation>Durchgang</translation>
    </message>
</context>
<context>
    <name>PassingNotice</name>
    <message>
        <source>Dismiss</source>
        <translation>Ausblenden</translation>
    </message>
</context>
<context>
    <name>PhaseMarkLine</name>
    <message>
        <source>%1: mark %2</source>
        <translation>%1: Note %2</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
</context>
<context>
    <name>PhaseRibbon</name>
    <message>
        <source>The flight from gate to gate, with its flows</source>
        <translation>Der Flug von Tor zu Tor, mit seinen Abläufen</translation>
    </message>
</context>
<context>
    <name>PickList</name>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
</context>
<context>
    <name>PilotSettings</name>
    <message>
        <source>Who flies</source>
        <translation>Wer fliegt</translation>
    </message>
    <message>
        <source>The name stands in each run from the next one on, but in no demonstration.</source>
        <translation>Der Name steht vom nächsten an in jedem Durchgang, aber in keiner Vorführung.</translation>
    </message>
    <message>
        <source>nobody in particular</source>
        <translation>niemand Bestimmtes</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>Name of a pilot</source>
        <translation>Name eines Piloten</translation>
    </message>
    <message>
        <source>Add</source>
        <translation>Hinzufügen</translation>
    </message>
    <message>
        <source>Adds this pilot, who flies from now on</source>
        <translation>Fügt diesen Piloten hinzu, der von jetzt an fliegt</translation>
    </message>
    <message>
        <source>Rename</source>
        <translation>Umbenennen</translation>
    </message>
    <message>
        <source>Rename %1</source>
        <translation>%1 umbenennen</translation>
    </message>
    <message>
        <source>Runs already flown keep the name they were flown under</source>
        <translation>Geflogene Durchgänge behalten den Namen, unter dem sie geflogen wurden</translation>
    </message>
    <message>
        <source>Runs already flown keep the name they were flown under.</source>
        <translation>Geflogene Durchgänge behalten den Namen, unter dem sie geflogen wurden.</translation>
    </message>
</context>
<context>
    <name>PlaceBar</name>
    <message>
        <source>Fly</source>
        <translation>Fliegen</translation>
    </message>
    <message>
        <source>Bench</source>
        <translation>Werkbank</translation>
    </message>
    <message>
        <source>Review</source>
        <translation>Nachlese</translation>
    </message>
    <message>
        <source>Progress</source>
        <translation>Fortschritt</translation>
    </message>
    <message>
        <source>Library</source>
        <translation>Bibliothek</translation>
    </message>
</context>
<context>
    <name>PlanCard</name>
    <message>
        <source>Today</source>
        <translation>Heute</translation>
    </message>
    <message>
        <source>What to fly today</source>
        <translation>Was heute zu fliegen ist</translation>
    </message>
    <message>
        <source>%1. %2</source>
        <translation>%1. %2</translation>
    </message>
    <message>
        <source>Fly it</source>
        <translation>Fliegen</translation>
    </message>
    <message>
        <source>Return</source>
        <translation>Eingabe</translation>
    </message>
    <message>
        <source>Flows that fall due this week, each flown and passed on its day</source>
        <translation>Abläufe, die diese Woche fällig werden, jeder an seinem Tag geflogen und bestanden</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
</context>
<context>
    <name>PlayBar</name>
    <message>
        <source>Stop</source>
        <translation>Stopp</translation>
    </message>
    <message>
        <source>Play</source>
        <translation>Abspielen</translation>
    </message>
    <message>
        <source>Space</source>
        <translation>Leertaste</translation>
    </message>
    <message>
        <source>Slower</source>
        <translation>Langsamer</translation>
    </message>
    <message>
        <source>Faster</source>
        <translation>Schneller</translation>
    </message>
    <message>
        <source>No loop</source>
        <translation>Keine Schleife</translation>
    </message>
    <message>
        <source>Loop</source>
        <translation>Schleife</translation>
    </message>
    <message>
        <source>Plays from A to B over and over, or what is shown</source>
        <translation>Spielt von A bis B immer wieder, oder was gezeigt ist</translation>
    </message>
    <message>
        <source>Mark A</source>
        <translation>Marke A</translation>
    </message>
    <message>
        <source>Mark B</source>
        <translation>Marke B</translation>
    </message>
    <message>
        <source>Deviation</source>
        <translation>Abweichung</translation>
    </message>
    <message>
        <source>PgDn</source>
        <translation>Bild↓</translation>
    </message>
    <message>
        <source>Step</source>
        <translation>Schritt</translation>
    </message>
    <message>
        <source>Change</source>
        <translation>Änderung</translation>
    </message>
    <message>
        <source>Fit</source>
        <translation>Einpassen</translation>
    </message>
</context>
<context>
    <name>ProgressPlace</name>
    <message>
        <source>Progress</source>
        <translation>Fortschritt</translation>
    </message>
    <message>
        <source>Next pilot or rig</source>
        <translation>Nächster Pilot, nächste Anlage</translation>
    </message>
    <message>
        <source>Do not mix them</source>
        <translation>Nicht mischen</translation>
    </message>
    <message>
        <source>Mix pilots and rigs</source>
        <translation>Piloten und Anlagen mischen</translation>
    </message>
    <message>
        <source>Nobody has flown yet. Fly a flow: from its run on, this place says how you get on and what to fly next. Demonstrations do not count.</source>
        <translation>Noch ist niemand geflogen. Fliegen Sie einen Ablauf: von da an sagt dieser Ort, wie Sie vorankommen und was als Nächstes zu fliegen ist. Vorführungen zählen nicht.</translation>
    </message>
    <message>
        <source>Choose a flow</source>
        <translation>Einen Ablauf wählen</translation>
    </message>
    <message>
        <source>Return</source>
        <translation>Eingabe</translation>
    </message>
</context>
<context>
    <name>ProgressRibbon</name>
    <message>
        <source>The flight from gate to gate; each bead is filled as far as its flow is known</source>
        <translation>Der Flug von Tor zu Tor; jede Perle ist so weit gefüllt, wie der Ablauf gekonnt ist</translation>
    </message>
</context>
<context>
    <name>QObject</name>
    <message>
        <source>%1 is connected.</source>
        <translation>%1 ist angeschlossen.</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>No lever, pedal or switch unit is connected now.</source>
        <translation>Jetzt ist kein Gerät mit Hebeln, Pedalen oder Schaltern angeschlossen.</translation>
    </message>
    <message>
        <source>calm</source>
        <translation>windstill</translation>
    </message>
    <message>
        <source>from %1° at %2 kt</source>
        <translation>aus %1° mit %2 kt</translation>
    </message>
    <message>
        <source>%1 kg</source>
        <translation>%1 kg</translation>
    </message>
    <message>
        <source>%1 t</source>
        <translation>%1 t</translation>
    </message>
    <message>
        <source>Aircraft</source>
        <translation>Flugzeug</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>Begins at</source>
        <translation>Beginnt bei</translation>
    </message>
    <message>
        <source>Wind</source>
        <translation>Wind</translation>
    </message>
    <message>
        <source>Runway</source>
        <translation>Piste</translation>
    </message>
    <message>
        <source>Flows</source>
        <translation>Abläufe</translation>
    </message>
    <message>
        <source>, then </source>
        <translation>, dann </translation>
    </message>
    <message>
        <source>On the way</source>
        <translation>Unterwegs</translation>
    </message>
    <message>
        <source>Nothing unexpected is planned.</source>
        <translation>Nichts Unerwartetes ist vorgesehen.</translation>
    </message>
    <message>
        <source>Something unexpected may happen.</source>
        <translation>Etwas Unerwartetes kann geschehen.</translation>
    </message>
    <message>
        <source>Rate</source>
        <translation>Takt</translation>
    </message>
    <message>
        <source>messages/s</source>
        <translation>Meldungen/s</translation>
    </message>
    <message>
        <source>Its clock</source>
        <translation>Seine Uhr</translation>
    </message>
    <message>
        <source>says none</source>
        <translation>sagt keine</translation>
    </message>
    <message>
        <source>Delay</source>
        <translation>Verzug</translation>
    </message>
    <message>
        <source>Messages</source>
        <translation>Meldungen</translation>
    </message>
    <message>
        <source>When: %1
Aim: %2</source>
        <translation>Wann: %1
Ziel: %2</translation>
    </message>
    <message>
        <source>%1: scenarios</source>
        <translation>%1: Szenarien</translation>
    </message>
    <message>
        <source>Scenario</source>
        <translation>Szenario</translation>
    </message>
    <message>
        <source>Fly: on-screen controls</source>
        <translation>Fliegen: Bedienteile auf dem Bildschirm</translation>
    </message>
    <message>
        <source>Fly</source>
        <translation>Fliegen</translation>
    </message>
    <message>
        <source>Bench</source>
        <translation>Werkbank</translation>
    </message>
    <message>
        <source>Review</source>
        <translation>Nachlese</translation>
    </message>
    <message>
        <source>Everywhere</source>
        <translation>Überall</translation>
    </message>
    <message>
        <source>Input lost</source>
        <translation>Eingabe verloren</translation>
    </message>
    <message>
        <source>Held</source>
        <translation>Angehalten</translation>
    </message>
    <message>
        <source>Run %1</source>
        <translation>Durchgang %1</translation>
    </message>
    <message>
        <source>%1 points</source>
        <translation>%1 Punkte</translation>
    </message>
    <message>
        <source>the reference</source>
        <translation>der Vergleichsdurchgang</translation>
    </message>
    <message>
        <source>damaged</source>
        <translation>beschädigt</translation>
    </message>
    <message>
        <source>recovered</source>
        <translation>gerettet</translation>
    </message>
    <message>
        <source>not scored</source>
        <translation>nicht gewertet</translation>
    </message>
    <message>
        <source>passed</source>
        <translation>bestanden</translation>
    </message>
    <message>
        <source>not passed</source>
        <translation>nicht bestanden</translation>
    </message>
    <message>
        <source>Run %1 cannot be read as a whole</source>
        <translation>Durchgang %1 kann nicht ganz gelesen werden</translation>
    </message>
    <message>
        <source>simulated input</source>
        <translation>simulierte Eingabe</translation>
    </message>
    <message>
        <source>1 note</source>
        <translation>1 Notiz</translation>
    </message>
    <message>
        <source>%1 notes</source>
        <translation>%1 Notizen</translation>
    </message>
    <message>
        <source>Ruling: %1</source>
        <translation>Entscheid: %1</translation>
    </message>
    <message>
        <source>Cause: %1</source>
        <translation>Ursache: %1</translation>
    </message>
    <message>
        <source>%1 s</source>
        <translation>%1 s</translation>
    </message>
    <message>
        <source>partner</source>
        <translation>Partner</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 bis %2</translation>
    </message>
    <message>
        <source>next</source>
        <translation>weiter</translation>
    </message>
    <message>
        <source>pull</source>
        <translation>ziehen</translation>
    </message>
    <message>
        <source>more</source>
        <translation>mehr</translation>
    </message>
    <message>
        <source>right</source>
        <translation>rechts</translation>
    </message>
    <message>
        <source>back</source>
        <translation>zurück</translation>
    </message>
    <message>
        <source>push</source>
        <translation>drücken</translation>
    </message>
    <message>
        <source>less</source>
        <translation>weniger</translation>
    </message>
    <message>
        <source>left</source>
        <translation>links</translation>
    </message>
    <message>
        <source>to and fro</source>
        <translation>hin und her</translation>
    </message>
    <message>
        <source>press</source>
        <translation>drücken</translation>
    </message>
    <message>
        <source>%1 s before due</source>
        <translation>%1 s vor Fälligkeit</translation>
    </message>
    <message>
        <source>%1 s after due</source>
        <translation>%1 s nach Fälligkeit</translation>
    </message>
    <message>
        <source>Cue sounded</source>
        <translation>Signal ertönte</translation>
    </message>
    <message>
        <source>Cue ended</source>
        <translation>Signal endete</translation>
    </message>
    <message>
        <source>Due</source>
        <translation>Fällig</translation>
    </message>
    <message>
        <source>Wrong reach</source>
        <translation>Falscher Griff</translation>
    </message>
    <message>
        <source>%1 first</source>
        <translation>%1 zuerst</translation>
    </message>
    <message>
        <source>First movement</source>
        <translation>Erste Bewegung</translation>
    </message>
    <message>
        <source>Hesitation</source>
        <translation>Zögern</translation>
    </message>
    <message>
        <source>stood still for %1 s</source>
        <translation>stand %1 s still</translation>
    </message>
    <message>
        <source>Overshoot</source>
        <translation>Überschwung</translation>
    </message>
    <message>
        <source>Done</source>
        <translation>Fertig</translation>
    </message>
    <message>
        <source>Given up</source>
        <translation>Aufgegeben</translation>
    </message>
    <message>
        <source>%1 gates too far</source>
        <translation>%1 Rasten zu weit</translation>
    </message>
    <message>
        <source>a gate too far</source>
        <translation>eine Raste zu weit</translation>
    </message>
    <message>
        <source>%1 too far</source>
        <translation>%1 zu weit</translation>
    </message>
    <message>
        <source>best in the middle of %1</source>
        <translation>am besten in der Mitte von %1</translation>
    </message>
    <message>
        <source>wanted: %1</source>
        <translation>gewollt: %1</translation>
    </message>
    <message>
        <source> or </source>
        <translation> oder </translation>
    </message>
    <message>
        <source>help: %1</source>
        <translation>Hilfe: %1</translation>
    </message>
    <message>
        <source>at %1 of the pace</source>
        <translation>mit %1 des Tempos</translation>
    </message>
    <message>
        <source>Meanwhile</source>
        <translation>Inzwischen</translation>
    </message>
    <message>
        <source>Broken</source>
        <translation>Verletzt</translation>
    </message>
    <message>
        <source>for %1 s</source>
        <translation>%1 s lang</translation>
    </message>
    <message>
        <source>to the end</source>
        <translation>bis zum Ende</translation>
    </message>
    <message>
        <source>when it was broken first</source>
        <translation>als sie zuerst verletzt wurde</translation>
    </message>
    <message>
        <source>%1 or more</source>
        <translation>%1 oder mehr</translation>
    </message>
    <message>
        <source>%1 or less</source>
        <translation>%1 oder weniger</translation>
    </message>
    <message>
        <source>you</source>
        <translation>Sie</translation>
    </message>
    <message>
        <source>Engine power</source>
        <translation>Triebwerksleistung</translation>
    </message>
    <message>
        <source>to come</source>
        <translation>kommt noch</translation>
    </message>
    <message>
        <source>now</source>
        <translation>jetzt</translation>
    </message>
    <message>
        <source>seen, hold it there</source>
        <translation>gesehen, dort halten</translation>
    </message>
    <message>
        <source>out of order</source>
        <translation>außer der Reihe</translation>
    </message>
    <message>
        <source>late</source>
        <translation>spät</translation>
    </message>
    <message>
        <source>done</source>
        <translation>getan</translation>
    </message>
    <message>
        <source>not done</source>
        <translation>nicht getan</translation>
    </message>
    <message>
        <source>too early</source>
        <translation>zu früh</translation>
    </message>
    <message>
        <source>not certain</source>
        <translation>nicht sicher</translation>
    </message>
    <message>
        <source>already set</source>
        <translation>stand schon so</translation>
    </message>
    <message>
        <source>no longer needed</source>
        <translation>nicht mehr nötig</translation>
    </message>
    <message>
        <source>left out</source>
        <translation>ausgelassen</translation>
    </message>
    <message>
        <source>The cockpit</source>
        <translation>Das Cockpit</translation>
    </message>
    <message>
        <source>error</source>
        <translation>Fehler</translation>
    </message>
    <message>
        <source>warning</source>
        <translation>Warnung</translation>
    </message>
    <message>
        <source>advice</source>
        <translation>Rat</translation>
    </message>
    <message>
        <source>%1 (yours)</source>
        <translation>%1 (Ihre)</translation>
    </message>
    <message>
        <source>Progress</source>
        <translation>Fortschritt</translation>
    </message>
    <message>
        <source>Library</source>
        <translation>Bibliothek</translation>
    </message>
    <message>
        <source>Manual</source>
        <translation>Handbuch</translation>
    </message>
    <message>
        <source>%1 controls, %2 flows and checklists, %3 scenarios</source>
        <translation>%1 Bedienteile, %2 Abläufe und Checklisten, %3 Szenarien</translation>
    </message>
    <message>
        <source>%1, %2, abnormal</source>
        <translation>%1, %2, außergewöhnlich</translation>
    </message>
    <message>
        <source>1 run, on %1: %2 points</source>
        <translation>1 Durchgang, am %1: %2 Punkte</translation>
    </message>
    <message>
        <source>%1 runs, the last on %2: %3 points</source>
        <translation>%1 Durchgänge, der letzte am %2: %3 Punkte</translation>
    </message>
    <message>
        <source>hardly 1 of 10 right</source>
        <translation>kaum 1 von 10 richtig</translation>
    </message>
    <message>
        <source>about %1 of 10 right</source>
        <translation>etwa %1 von 10 richtig</translation>
    </message>
    <message>
        <source>%1 (%2)</source>
        <translation>%1 (%2)</translation>
    </message>
    <message>
        <source>Today</source>
        <translation>Heute</translation>
    </message>
    <message>
        <source>Mon</source>
        <translation>Mo</translation>
    </message>
    <message>
        <source>Tue</source>
        <translation>Di</translation>
    </message>
    <message>
        <source>Wed</source>
        <translation>Mi</translation>
    </message>
    <message>
        <source>Thu</source>
        <translation>Do</translation>
    </message>
    <message>
        <source>Fri</source>
        <translation>Fr</translation>
    </message>
    <message>
        <source>Sat</source>
        <translation>Sa</translation>
    </message>
    <message>
        <source>Sun</source>
        <translation>So</translation>
    </message>
    <message>
        <source>Cockpit</source>
        <translation>Cockpit</translation>
    </message>
    <message>
        <source>Ground</source>
        <translation>Boden</translation>
    </message>
</context>
<context>
    <name>Reading</name>
    <message>
        <source>%1 %2 %3</source>
        <translation>%1 %2 %3</translation>
    </message>
</context>
<context>
    <name>ReviewHead</name>
    <message>
        <source>Runs</source>
        <translation>Durchgänge</translation>
    </message>
    <message>
        <source>Esc</source>
        <translation>Esc</translation>
    </message>
    <message>
        <source>Back to the stored runs</source>
        <translation>Zurück zu den gespeicherten Durchgängen</translation>
    </message>
    <message>
        <source>%1 of 100 points, %2</source>
        <translation>%1 von 100 Punkten, %2</translation>
    </message>
</context>
<context>
    <name>ReviewNoteLine</name>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>Remove: %1</source>
        <translation>Entfernen: %1</translation>
    </message>
</context>
<context>
    <name>ReviewStepLine</name>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>%1, by the %2</source>
        <translation>%1, von %2</translation>
    </message>
</context>
<context>
    <name>RunListActions</name>
    <message>
        <source>Go through it</source>
        <translation>Durchgehen</translation>
    </message>
    <message>
        <source>Return</source>
        <translation>Eingabe</translation>
    </message>
    <message>
        <source>Reference</source>
        <translation>Vergleich</translation>
    </message>
    <message>
        <source>The run that others of its flow are compared with</source>
        <translation>Der Durchgang, mit dem andere seines Ablaufs verglichen werden</translation>
    </message>
    <message>
        <source>Tag</source>
        <translation>Stichwort</translation>
    </message>
    <message>
        <source>Adds a word to find it by, or takes it away</source>
        <translation>Fügt ein Wort hinzu, unter dem er gefunden wird, oder nimmt es weg</translation>
    </message>
    <message>
        <source>Tag to add, or to take away</source>
        <translation>Stichwort, das hinzukommt oder wegfällt</translation>
    </message>
    <message>
        <source>The tag to add, or to take away</source>
        <translation>Das Stichwort, das hinzukommt oder wegfällt</translation>
    </message>
    <message>
        <source>Tag it</source>
        <translation>Setzen</translation>
    </message>
    <message>
        <source>Restore</source>
        <translation>Wiederherstellen</translation>
    </message>
    <message>
        <source>Delete</source>
        <translation>Löschen</translation>
    </message>
    <message>
        <source>Del</source>
        <translation>Entf</translation>
    </message>
    <message>
        <source>Stored runs</source>
        <translation>Gespeicherte Durchgänge</translation>
    </message>
    <message>
        <source>Deleted runs</source>
        <translation>Gelöschte Durchgänge</translation>
    </message>
</context>
<context>
    <name>RunListView</name>
    <message>
        <source>Deleted runs</source>
        <translation>Gelöschte Durchgänge</translation>
    </message>
    <message>
        <source>Stored runs</source>
        <translation>Gespeicherte Durchgänge</translation>
    </message>
    <message>
        <source>Search</source>
        <translation>Suche</translation>
    </message>
    <message>
        <source>Search in flow, aircraft, rig, pilot, tags and notes</source>
        <translation>Suche in Ablauf, Flugzeug, Anlage, Pilot, Stichworten und Notizen</translation>
    </message>
    <message>
        <source>No run has “%1” in its flow, aircraft, rig, pilot, tags or notes.</source>
        <translation>Kein Durchgang hat „%1“ in Ablauf, Flugzeug, Anlage, Pilot, Stichworten oder Notizen.</translation>
    </message>
    <message>
        <source>No run was deleted.</source>
        <translation>Kein Durchgang wurde gelöscht.</translation>
    </message>
    <message>
        <source>No run is stored yet. Fly a flow: its run is kept here by itself.</source>
        <translation>Noch ist kein Durchgang gespeichert. Fliegen Sie einen Ablauf: der Durchgang wird hier von selbst aufgehoben.</translation>
    </message>
    <message>
        <source>Choose a flow</source>
        <translation>Einen Ablauf wählen</translation>
    </message>
    <message>
        <source>Return</source>
        <translation>Eingabe</translation>
    </message>
    <message>
        <source>Opening the run …</source>
        <translation>Der Durchgang wird geöffnet …</translation>
    </message>
    <message>
        <source>Looking for runs …</source>
        <translation>Durchgänge werden gesucht …</translation>
    </message>
    <message>
        <source>Take it back</source>
        <translation>Zurücknehmen</translation>
    </message>
</context>
<context>
    <name>RunRemarks</name>
    <message>
        <source>Write it down</source>
        <translation>Aufschreiben</translation>
    </message>
    <message>
        <source>Debrief to print</source>
        <translation>Nachbesprechung zum Drucken</translation>
    </message>
    <message>
        <source>Events as CSV</source>
        <translation>Ereignisse als CSV</translation>
    </message>
    <message>
        <source>Signals as CSV</source>
        <translation>Signale als CSV</translation>
    </message>
    <message>
        <source>The whole run</source>
        <translation>Der ganze Durchgang</translation>
    </message>
    <message>
        <source>One file that another Flowhand can take in</source>
        <translation>Eine Datei, die ein anderes Flowhand aufnehmen kann</translation>
    </message>
    <message>
        <source>Errors, and whether they were put right</source>
        <translation>Fehler, und ob sie berichtigt wurden</translation>
    </message>
    <message>
        <source>No control was moved wrongly, and no guard was broken.</source>
        <translation>Kein Bedienteil wurde falsch bewegt und keine Schutzregel verletzt.</translation>
    </message>
    <message>
        <source>To know of this run</source>
        <translation>Zu diesem Durchgang</translation>
    </message>
</context>
<context>
    <name>RunView</name>
    <message>
        <source>Next</source>
        <translation>Danach</translation>
    </message>
    <message>
        <source>So far: %1 of %2 steps</source>
        <translation>Bisher: %1 von %2 Schritten</translation>
    </message>
    <message>
        <source>So far: %1 of %2 steps; score %3</source>
        <translation>Bisher: %1 von %2 Schritten; Wertung %3</translation>
    </message>
    <message>
        <source>No step is over yet</source>
        <translation>Noch kein Schritt ist vorbei</translation>
    </message>
</context>
<context>
    <name>SampleButton</name>
    <message>
        <source>Sample runs</source>
        <translation>Beispiel-Durchgänge</translation>
    </message>
    <message>
        <source>Adds runs flown well and badly by scripted hands, to look at</source>
        <translation>Fügt Durchgänge zum Ansehen hinzu, die Hände nach Drehbuch gut und schlecht geflogen haben</translation>
    </message>
</context>
<context>
    <name>ScoreCard</name>
    <message>
        <source>%1 of 100 points</source>
        <translation>%1 von 100 Punkten</translation>
    </message>
    <message>
        <source>of 100 points</source>
        <translation>von 100 Punkten</translation>
    </message>
    <message>
        <source>Passed</source>
        <translation>Bestanden</translation>
    </message>
    <message>
        <source>Not passed</source>
        <translation>Nicht bestanden</translation>
    </message>
    <message>
        <source>Not scored</source>
        <translation>Nicht gewertet</translation>
    </message>
    <message>
        <source>A demonstration: scripted hands flew this.</source>
        <translation>Eine Vorführung: die Hände eines Drehbuchs flogen das.</translation>
    </message>
    <message>
        <source>Flown on %1.</source>
        <translation>Geflogen auf %1.</translation>
    </message>
    <message>
        <source>Flown on the screen: simulated hands.</source>
        <translation>Auf dem Bildschirm geflogen: simulierte Hände.</translation>
    </message>
    <message>
        <source>%1 points pass. From the first step to the last: %2. %3.</source>
        <translation>Mit %1 Punkten bestanden. Vom ersten bis zum letzten Schritt: %2. %3.</translation>
    </message>
    <message>
        <source>Now fly it yourself</source>
        <translation>Jetzt selbst fliegen</translation>
    </message>
    <message>
        <source>Fly it again</source>
        <translation>Noch einmal fliegen</translation>
    </message>
    <message>
        <source>Return</source>
        <translation>Eingabe</translation>
    </message>
    <message>
        <source>Choose another scenario</source>
        <translation>Anderes Szenario</translation>
    </message>
    <message>
        <source>Choose another flow</source>
        <translation>Anderer Ablauf</translation>
    </message>
    <message>
        <source>Esc</source>
        <translation>Esc</translation>
    </message>
</context>
<context>
    <name>ScreenControl</name>
    <message>
        <source>%1. Arrow keys move it.</source>
        <translation>%1. Pfeiltasten bewegen es.</translation>
    </message>
</context>
<context>
    <name>SetUpItem</name>
    <message>
        <source>%1: %2, to %3</source>
        <translation>%1: %2, nach %3</translation>
    </message>
    <message>
        <source>%1 → %2</source>
        <translation>%1 → %2</translation>
    </message>
</context>
<context>
    <name>SetUpView</name>
    <message>
        <source>Scenario: %1</source>
        <translation>Szenario: %1</translation>
    </message>
    <message>
        <source>The controls on the screen are where the flow starts from. Move them by mouse, by the keys written above them, or with Tab and the arrow keys.</source>
        <translation>Die Bedienteile auf dem Bildschirm stehen, wie der Ablauf beginnt. Bewegen Sie sie mit der Maus, mit den Tasten, die darüber stehen, oder mit Tab und den Pfeiltasten.</translation>
    </message>
    <message>
        <source>Every control is where the flow starts from.</source>
        <translation>Jedes Bedienteil steht, wie der Ablauf beginnt.</translation>
    </message>
    <message>
        <source>The flow begins as soon as these controls are where it starts from: move each, or all at once.</source>
        <translation>Der Ablauf beginnt, sobald diese Bedienteile stehen, wie er beginnt: bewegen Sie jedes, oder alle auf einmal.</translation>
    </message>
    <message>
        <source>The flow begins as soon as these controls are where it starts from.</source>
        <translation>Der Ablauf beginnt, sobald diese Bedienteile stehen, wie er beginnt.</translation>
    </message>
    <message>
        <source>Begins at: %1.</source>
        <translation>Beginnt bei: %1.</translation>
    </message>
    <message>
        <source>The first step will be</source>
        <translation>Der erste Schritt ist dann</translation>
    </message>
    <message>
        <source>Start</source>
        <translation>Beginnen</translation>
    </message>
    <message>
        <source>Return</source>
        <translation>Eingabe</translation>
    </message>
    <message>
        <source>Put them all there</source>
        <translation>Alle dorthin stellen</translation>
    </message>
    <message>
        <source>Start as it is</source>
        <translation>So beginnen</translation>
    </message>
    <message>
        <source>The debrief will say that the set-up was not right.</source>
        <translation>In der Nachbesprechung steht, dass die Ausgangsstellung nicht stimmte.</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Zurück</translation>
    </message>
    <message>
        <source>Esc</source>
        <translation>Esc</translation>
    </message>
</context>
<context>
    <name>SettingPercent</name>
    <message>
        <source>%1: %2 %</source>
        <translation>%1: %2 %</translation>
    </message>
</context>
<context>
    <name>SettingsView</name>
    <message>
        <source>Look</source>
        <translation>Aussehen</translation>
    </message>
    <message>
        <source>Sound</source>
        <translation>Ton</translation>
    </message>
    <message>
        <source>Flying</source>
        <translation>Hilfe</translation>
    </message>
    <message>
        <source>Pilots</source>
        <translation>Piloten</translation>
    </message>
    <message>
        <source>Keys</source>
        <translation>Tasten</translation>
    </message>
    <message>
        <source>Data</source>
        <translation>Daten</translation>
    </message>
    <message>
        <source>Settings</source>
        <translation>Einstellungen</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Zurück</translation>
    </message>
    <message>
        <source>Esc</source>
        <translation>Esc</translation>
    </message>
    <message>
        <source>Sections</source>
        <translation>Abschnitte</translation>
    </message>
</context>
<context>
    <name>Shell</name>
    <message>
        <source>Scripted hands</source>
        <translation>Hände der Vorführung</translation>
    </message>
    <message>
        <source>Simulated hands</source>
        <translation>Simulierte Hände</translation>
    </message>
</context>
<context>
    <name>SignalChooser</name>
    <message>
        <source>%1, shown</source>
        <translation>%1, gezeigt</translation>
    </message>
</context>
<context>
    <name>SoundSettings</name>
    <message>
        <source>Words and tones</source>
        <translation>Worte und Töne</translation>
    </message>
    <message>
        <source>Off holds no sound device. What would be said is on the screen anyway.</source>
        <translation>Aus hält kein Tongerät belegt. Was gesagt würde, steht ohnehin auf dem Bildschirm.</translation>
    </message>
    <message>
        <source>on</source>
        <translation>an</translation>
    </message>
    <message>
        <source>quiet</source>
        <translation>leise</translation>
    </message>
    <message>
        <source>off</source>
        <translation>aus</translation>
    </message>
    <message>
        <source>Volume</source>
        <translation>Lautstärke</translation>
    </message>
    <message>
        <source>Quiet is a quarter of it.</source>
        <translation>Leise ist ein Viertel davon.</translation>
    </message>
    <message>
        <source>Voice of people</source>
        <translation>Stimme der Menschen</translation>
    </message>
    <message>
        <source>The cockpit and the ground have voices of their own, where the speech engine has them.</source>
        <translation>Cockpit und Boden haben eigene Stimmen, wo die Sprachausgabe sie hat.</translation>
    </message>
    <message>
        <source>The speech engine has not told its voices: it is off, or still opens.</source>
        <translation>Die Sprachausgabe hat ihre Stimmen nicht genannt: sie ist aus oder öffnet noch.</translation>
    </message>
    <message>
        <source>the first</source>
        <translation>die erste</translation>
    </message>
    <message>
        <source>Listen</source>
        <translation>Anhören</translation>
    </message>
    <message>
        <source>A tone and a few words, as they are set</source>
        <translation>Ein Ton und ein paar Worte, wie eingestellt</translation>
    </message>
    <message>
        <source>Sound device of the tones</source>
        <translation>Tongerät der Töne</translation>
    </message>
    <message>
        <source>Words come from the speech engine, a program of its own: the desktop&apos;s sound settings say where they are heard.</source>
        <translation>Worte kommen von der Sprachausgabe, einem eigenen Programm: wo sie zu hören sind, sagen die Toneinstellungen des Systems.</translation>
    </message>
    <message>
        <source>The sound server has not told its devices: the sound is off, or no server runs.</source>
        <translation>Der Tonserver hat seine Geräte nicht genannt: der Ton ist aus, oder es läuft kein Server.</translation>
    </message>
    <message>
        <source>as the desktop</source>
        <translation>wie das System</translation>
    </message>
</context>
<context>
    <name>SourceEditor</name>
    <message>
        <source>The text of %1</source>
        <translation>Der Text von %1</translation>
    </message>
</context>
<context>
    <name>StartCard</name>
    <message>
        <source>Begin “%1” elsewhere, or slower</source>
        <translation>„%1“ anderswo beginnen, oder langsamer</translation>
    </message>
    <message>
        <source>A feed moves the aircraft: where it is and how fast, the feed says.</source>
        <translation>Ein Datenstrom bewegt das Flugzeug: wo es ist und wie schnell, sagt er.</translation>
    </message>
    <message>
        <source>A run that begins with a later step is for practice: its controls stand as the steps before leave them, and it does not pass.</source>
        <translation>Ein Durchgang, der mit einem späteren Schritt beginnt, ist zum Üben: die Bedienteile stehen, wie die Schritte davor sie lassen, und er gilt nicht als bestanden.</translation>
    </message>
    <message>
        <source>The aircraft begins at</source>
        <translation>Das Flugzeug beginnt bei</translation>
    </message>
    <message>
        <source>With</source>
        <translation>Mit</translation>
    </message>
    <message>
        <source>The run goes</source>
        <translation>Der Durchgang geht</translation>
    </message>
    <message>
        <source>Done</source>
        <translation>Fertig</translation>
    </message>
    <message>
        <source>Return</source>
        <translation>Eingabe</translation>
    </message>
</context>
<context>
    <name>StepLine</name>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>%1 (%2)</source>
        <translation>%1 (%2)</translation>
    </message>
</context>
<context>
    <name>StepPreview</name>
    <message>
        <source>Its steps</source>
        <translation>Seine Schritte</translation>
    </message>
    <message>
        <source>%1 (%2)</source>
        <translation>%1 (%2)</translation>
    </message>
</context>
<context>
    <name>StepRateLine</name>
    <message>
        <source>%1 went wrong in %2 runs: %3</source>
        <translation>%1 ging in %2 Durchgängen schief: %3</translation>
    </message>
</context>
<context>
    <name>StepTable</name>
    <message>
        <source>Step by step</source>
        <translation>Schritt für Schritt</translation>
    </message>
    <message>
        <source>Step</source>
        <translation>Schritt</translation>
    </message>
    <message>
        <source>By</source>
        <translation>Wer</translation>
    </message>
    <message>
        <source>Due</source>
        <translation>Fällig</translation>
    </message>
    <message>
        <source>Done</source>
        <translation>Fertig</translation>
    </message>
    <message>
        <source>Outcome</source>
        <translation>Ergebnis</translation>
    </message>
</context>
<context>
    <name>StepTableRow</name>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
</context>
<context>
    <name>StoredRunLine</name>
    <message>
        <source>%1, %2: %3 %4</source>
        <translation>%1, %2: %3 %4</translation>
    </message>
    <message>
        <source>Reference · %1</source>
        <translation>Vergleich · %1</translation>
    </message>
    <message>
        <source>Reference</source>
        <translation>Vergleich</translation>
    </message>
</context>
<context>
    <name>SwitchFace</name>
    <message>
        <source>off</source>
        <translation>aus</translation>
    </message>
    <message>
        <source>on</source>
        <translation>an</translation>
    </message>
</context>
<context>
    <name>TimeLine</name>
    <message>
        <source>Late</source>
        <translation>Spät</translation>
    </message>
    <message>
        <source>On time</source>
        <translation>Rechtzeitig</translation>
    </message>
</context>
<context>
    <name>TolerancesPanel</name>
    <message>
        <source>So near to its ends and its centre the check walk asks every control to come. The goals are 2 deg, 5 deg and 3 %: figures of training devices, which this is not. The check sheet says what was asked.</source>
        <translation>So nah an Enden und Mitte verlangt der Prüfgang jedes Bedienteil. Die Ziele sind 2 deg, 5 deg und 3 %: Werte von Übungsgeräten, was dies hier nicht ist. Das Prüfblatt sagt, was verlangt war.</translation>
    </message>
    <message>
        <source>Controls that turn</source>
        <translation>Drehende Bedienteile</translation>
    </message>
    <message>
        <source>Levers in degrees</source>
        <translation>Hebel in Grad</translation>
    </message>
    <message>
        <source>Others, of travel</source>
        <translation>Andere, vom Weg</translation>
    </message>
    <message>
        <source>Tolerance of controls that turn, in degrees</source>
        <translation>Toleranz drehender Bedienteile, in Grad</translation>
    </message>
    <message>
        <source>Tolerance of levers in degrees</source>
        <translation>Toleranz von Hebeln in Grad</translation>
    </message>
    <message>
        <source>Tolerance of all others, in percent of their travel</source>
        <translation>Toleranz aller anderen, in Prozent ihres Weges</translation>
    </message>
    <message>
        <source>Write into the rig file</source>
        <translation>In die Anlagendatei schreiben</translation>
    </message>
    <message>
        <source>Return</source>
        <translation>Eingabe</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Zurück</translation>
    </message>
    <message>
        <source>Esc</source>
        <translation>Esc</translation>
    </message>
</context>
<context>
    <name>TrendColumn</name>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
</context>
<context>
    <name>ValuesPanel</name>
    <message>
        <source>Mark two or more places on the lever&apos;s way, measure their true angle or share, and write them from the low end to the high end, both ends included. You will be asked to hold each. The signal then reads what you measured, straight from place to place.</source>
        <translation>Zeichnen Sie zwei oder mehr Stellen am Weg des Hebels an, messen Sie ihren wahren Winkel oder Anteil und schreiben Sie sie vom unteren zum oberen Ende, beide Enden eingeschlossen. Sie werden gebeten, jede zu halten. Das Signal liest dann, was Sie gemessen haben, geradlinig von Stelle zu Stelle.</translation>
    </message>
    <message>
        <source>True values, with commas between them</source>
        <translation>Wahre Werte, mit Kommas dazwischen</translation>
    </message>
    <message>
        <source>Calibrate to these</source>
        <translation>Danach kalibrieren</translation>
    </message>
    <message>
        <source>Return</source>
        <translation>Eingabe</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Zurück</translation>
    </message>
    <message>
        <source>Esc</source>
        <translation>Esc</translation>
    </message>
</context>
<context>
    <name>VerdictLine</name>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>No verdict now</source>
        <translation>Jetzt kein Urteil</translation>
    </message>
</context>
<context>
    <name>WiringPanel</name>
    <message>
        <source>Return by itself finds whatever moves. Which of these is it instead?</source>
        <translation>Die Eingabetaste findet von selbst, was sich bewegt. Welches davon ist es stattdessen?</translation>
    </message>
    <message>
        <source>The other control:</source>
        <translation>Das andere Bedienteil:</translation>
    </message>
    <message>
        <source>The next control that can be the second one</source>
        <translation>Das nächste Bedienteil, das das zweite sein kann</translation>
    </message>
    <message>
        <source>Its values:</source>
        <translation>Seine Werte:</translation>
    </message>
    <message>
        <source>One click is:</source>
        <translation>Ein Klick ist:</translation>
    </message>
    <message>
        <source>How much one click is, or the values in turn</source>
        <translation>Wie viel ein Klick ist, oder die Werte der Reihe nach</translation>
    </message>
    <message>
        <source>Begin</source>
        <translation>Beginnen</translation>
    </message>
    <message>
        <source>Return</source>
        <translation>Eingabe</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Zurück</translation>
    </message>
    <message>
        <source>Esc</source>
        <translation>Esc</translation>
    </message>
</context>
<context>
    <name>flowhand</name>
    <message>
        <source>out of date</source>
        <translation>veraltet</translation>
    </message>
    <message>
        <source>not wired</source>
        <translation>nicht verdrahtet</translation>
    </message>
    <message>
        <source>wired</source>
        <translation>verdrahtet</translation>
    </message>
    <message>
        <source>calibrated</source>
        <translation>kalibriert</translation>
    </message>
    <message>
        <source>seen working</source>
        <translation>in Bewegung gesehen</translation>
    </message>
    <message>
        <source>shares its input with “%1”</source>
        <translation>teilt seinen Eingang mit „%1“</translation>
    </message>
    <message>
        <source>the check walk of %1 did not confirm it</source>
        <translation>der Prüfgang vom %1 bestätigte es nicht</translation>
    </message>
    <message>
        <source>changed since %1</source>
        <translation>geändert seit %1</translation>
    </message>
    <message>
        <source>not measured</source>
        <translation>nicht gemessen</translation>
    </message>
    <message>
        <source>caution</source>
        <translation>Vorsicht</translation>
    </message>
    <message>
        <source>bad</source>
        <translation>schlecht</translation>
    </message>
    <message>
        <source>good</source>
        <translation>gut</translation>
    </message>
    <message>
        <source>cannot be confirmed</source>
        <translation>nicht zu bestätigen</translation>
    </message>
    <message>
        <source>late by %1</source>
        <translation>Verzug %1</translation>
    </message>
    <message>
        <source>nothing makes it late</source>
        <translation>kein Verzug</translation>
    </message>
    <message>
        <source>%1 are allowed</source>
        <translation>erlaubt sind %1</translation>
    </message>
    <message>
        <source>%1 are allowed, by the step “%2”</source>
        <translation>erlaubt sind %1, wegen des Schritts „%2“</translation>
    </message>
    <message>
        <source>No filter: %1; %2.</source>
        <translation>Kein Filter: %1; %2.</translation>
    </message>
    <message>
        <source>Filters: %1. Then %2; %3.</source>
        <translation>Filter: %1. Damit: %2; %3.</translation>
    </message>
    <message>
        <source>Its measurement asks for %1. Late by %2 then.</source>
        <translation>Die Messung verlangt %1. Der Verzug ist dann %2.</translation>
    </message>
    <message>
        <source>%1 is connected</source>
        <translation>%1 ist angeschlossen</translation>
    </message>
    <message>
        <source>%1 is not connected</source>
        <translation>%1 ist nicht angeschlossen</translation>
    </message>
    <message>
        <source>No lever, pedal or switch unit is connected. Plug one in: it is found within a second.</source>
        <translation>Kein Gerät mit Hebeln, Pedalen oder Schaltern ist angeschlossen. Stecken Sie eines ein: es wird binnen einer Sekunde gefunden.</translation>
    </message>
    <message>
        <source>%1 of %2 steps can be confirmed by this rig; the controls of %3 were seen working.</source>
        <translation>%1 von %2 Schritten kann diese Anlage bestätigen; die Bedienteile von %3 wurden in Bewegung gesehen.</translation>
    </message>
    <message>
        <source>Wired, but no step needs: %1</source>
        <translation>Verdrahtet, aber kein Schritt braucht: %1</translation>
    </message>
</context>
<context>
    <name>flowhand::ActedStep</name>
    <message>
        <source>%1 is not read: %2</source>
        <translation>%1 wird nicht gelesen: %2</translation>
    </message>
</context>
<context>
    <name>flowhand::BenchPresenter</name>
    <message>
        <source>Written: %1</source>
        <translation>Geschrieben: %1</translation>
    </message>
    <message>
        <source>%1 deg</source>
        <translation>%1 deg</translation>
    </message>
    <message>
        <source>%1 %</source>
        <translation>%1 %</translation>
    </message>
    <message>
        <source>Measured on %1.</source>
        <translation>Gemessen am %1.</translation>
    </message>
    <message>
        <source>Measured on %1; wired or calibrated anew since.</source>
        <translation>Gemessen am %1; seither neu verdrahtet oder kalibriert.</translation>
    </message>
    <message>
        <source>It has not been measured yet.</source>
        <translation>Es wurde noch nicht gemessen.</translation>
    </message>
    <message>
        <source>Once it is wired, its signal can be measured.</source>
        <translation>Ist es verdrahtet, kann sein Signal gemessen werden.</translation>
    </message>
    <message>
        <source>Its calibration was checked again on %1.</source>
        <translation>Die Kalibrierung wurde am %1 nachgeprüft.</translation>
    </message>
    <message>
        <source>Checked again on %1; wired or calibrated anew since.</source>
        <translation>Nachgeprüft am %1; seither neu verdrahtet oder kalibriert.</translation>
    </message>
    <message>
        <source>Wiring: %1</source>
        <translation>Verdrahten: %1</translation>
    </message>
    <message>
        <source>Calibration: %1</source>
        <translation>Kalibrieren: %1</translation>
    </message>
    <message>
        <source>Repeat check: %1</source>
        <translation>Nachprüfen: %1</translation>
    </message>
    <message>
        <source>Measurement: %1</source>
        <translation>Messen: %1</translation>
    </message>
    <message>
        <source>Check walk: %1</source>
        <translation>Prüfgang: %1</translation>
    </message>
    <message>
        <source>%1 of %2</source>
        <translation>%1 von %2</translation>
    </message>
</context>
<context>
    <name>flowhand::DebriefPresenter</name>
    <message>
        <source>%1, in “%2”</source>
        <translation>%1, in „%2“</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 bis %2</translation>
    </message>
    <message>
        <source>Kept as run %1</source>
        <translation>Aufgehoben als Durchgang %1</translation>
    </message>
    <message>
        <source>This run was not kept</source>
        <translation>Dieser Durchgang wurde nicht aufgehoben</translation>
    </message>
    <message>
        <source>script</source>
        <translation>Skript</translation>
    </message>
</context>
<context>
    <name>flowhand::DelayMeter</name>
    <message>
        <source>The taps lay too far apart to tell the delay. Tap to the clicks as to music, and try again.</source>
        <translation>Die Schläge liegen zu weit auseinander, um den Verzug zu nennen. Tippen Sie zu den Klicks wie zu Musik, und versuchen Sie es noch einmal.</translation>
    </message>
    <message>
        <source>%1 ms</source>
        <translation>%1 ms</translation>
    </message>
</context>
<context>
    <name>flowhand::FileEditor</name>
    <message>
        <source>Changes that were not saved the last time are shown; save them, or take the file as it is.</source>
        <translation>Änderungen, die zuletzt nicht gespeichert wurden, sind gezeigt; speichern Sie sie, oder nehmen Sie die Datei, wie sie ist.</translation>
    </message>
    <message>
        <source>The file is not there any more; saving writes it again.</source>
        <translation>Die Datei ist nicht mehr da; Speichern schreibt sie wieder.</translation>
    </message>
    <message>
        <source>1 piece of advice</source>
        <translation>1 Rat</translation>
    </message>
    <message>
        <source>%1 pieces of advice</source>
        <translation>%1 Ratschläge</translation>
    </message>
    <message>
        <source>1 error</source>
        <translation>1 Fehler</translation>
    </message>
    <message>
        <source>%1 errors</source>
        <translation>%1 Fehler</translation>
    </message>
    <message>
        <source>No errors, and every rule is kept</source>
        <translation>Keine Fehler, und jede Regel ist eingehalten</translation>
    </message>
    <message>
        <source>No errors; %1</source>
        <translation>Keine Fehler; %1</translation>
    </message>
</context>
<context>
    <name>flowhand::FlyPresenter</name>
    <message>
        <source>its first flow is missing or has an error</source>
        <translation>sein erster Ablauf fehlt oder hat einen Fehler</translation>
    </message>
</context>
<context>
    <name>flowhand::KeyChoice</name>
    <message>
        <source>%1 is needed as it is.</source>
        <translation>%1 wird gebraucht, wie es ist.</translation>
    </message>
    <message>
        <source>%1 is the key for “%2” already; give that one another key first.</source>
        <translation>%1 ist schon die Taste für „%2“; geben Sie dem zuerst eine andere.</translation>
    </message>
</context>
<context>
    <name>flowhand::LibraryPresenter</name>
    <message>
        <source>Saved: %1</source>
        <translation>Gespeichert: %1</translation>
    </message>
    <message>
        <source>Your copy: %1</source>
        <translation>Ihre Kopie: %1</translation>
    </message>
    <message>
        <source>Written: %1</source>
        <translation>Geschrieben: %1</translation>
    </message>
    <message>
        <source>There are unsaved changes: save them, or take the file as it is.</source>
        <translation>Es gibt ungespeicherte Änderungen: speichern Sie sie, oder nehmen Sie die Datei, wie sie ist.</translation>
    </message>
</context>
<context>
    <name>flowhand::ProgressPresenter</name>
    <message>
        <source>%1: 1 run</source>
        <translation>%1: 1 Durchgang</translation>
    </message>
    <message>
        <source>%1: %2 runs</source>
        <translation>%1: %2 Durchgänge</translation>
    </message>
    <message>
        <source>%1, %2 of them with simulated input</source>
        <translation>%1, %2 davon mit simulierter Eingabe</translation>
    </message>
</context>
<context>
    <name>flowhand::ReviewNotes</name>
    <message>
        <source>Note at %1</source>
        <translation>Notiz bei %1</translation>
    </message>
    <message>
        <source>Ruling on “%1”</source>
        <translation>Entscheid über „%1“</translation>
    </message>
    <message>
        <source>Cause of “%1”</source>
        <translation>Ursache von „%1“</translation>
    </message>
    <message>
        <source>The pilot&apos;s own account</source>
        <translation>Der eigene Bericht des Piloten</translation>
    </message>
    <message>
        <source>What this run was flown for</source>
        <translation>Wofür dieser Durchgang geflogen wurde</translation>
    </message>
    <message>
        <source>What is practised next, as agreed</source>
        <translation>Was als Nächstes geübt wird, wie vereinbart</translation>
    </message>
    <message>
        <source>The reason; the score stays as it is</source>
        <translation>Der Grund; die Wertung bleibt, wie sie ist</translation>
    </message>
    <message>
        <source>Words to it, if any are needed</source>
        <translation>Worte dazu, wenn nötig</translation>
    </message>
    <message>
        <source>Look here</source>
        <translation>Hier nachsehen</translation>
    </message>
</context>
<context>
    <name>flowhand::ReviewPresenter</name>
    <message>
        <source>Written: %1</source>
        <translation>Geschrieben: %1</translation>
    </message>
    <message>
        <source>Run %1 was deleted.</source>
        <translation>Durchgang %1 wurde gelöscht.</translation>
    </message>
</context>
<context>
    <name>flowhand::ReviewTimeline</name>
    <message>
        <source>Δ %1</source>
        <translation>Δ %1</translation>
    </message>
    <message>
        <source>A %1</source>
        <translation>A %1</translation>
    </message>
    <message>
        <source>B %1</source>
        <translation>B %1</translation>
    </message>
    <message>
        <source>%1 ×</source>
        <translation>%1 ×</translation>
    </message>
    <message>
        <source>not known</source>
        <translation>nicht bekannt</translation>
    </message>
    <message>
        <source>Steps</source>
        <translation>Schritte</translation>
    </message>
    <message>
        <source>Guards broken</source>
        <translation>Verletzte Schutzregeln</translation>
    </message>
    <message>
        <source>Words</source>
        <translation>Worte</translation>
    </message>
    <message>
        <source>Held, or input lost</source>
        <translation>Angehalten, oder Eingabe verloren</translation>
    </message>
    <message>
        <source>Notes</source>
        <translation>Notizen</translation>
    </message>
</context>
<context>
    <name>flowhand::RunNote</name>
    <message>
        <source>This run is not stored, so no note can be kept with it.</source>
        <translation>Dieser Durchgang wird nicht gespeichert, darum kann keine Notiz dazu aufgehoben werden.</translation>
    </message>
    <message>
        <source>Note at %1</source>
        <translation>Notiz bei %1</translation>
    </message>
    <message>
        <source>Look here</source>
        <translation>Hier nachsehen</translation>
    </message>
</context>
<context>
    <name>flowhand::RunPresenter</name>
    <message>
        <source>%1 more to come, not shown with this help</source>
        <translation>Noch %1, mit dieser Hilfe nicht gezeigt</translation>
    </message>
    <message>
        <source>Nothing more to come</source>
        <translation>Nichts mehr zu tun</translation>
    </message>
    <message>
        <source>Which step is it?</source>
        <translation>Welcher Schritt ist es?</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 bis %2</translation>
    </message>
    <message>
        <source>on the line</source>
        <translation>auf der Linie</translation>
    </message>
    <message>
        <source>%1 right of the line</source>
        <translation>%1 rechts der Linie</translation>
    </message>
    <message>
        <source>%1 left of the line</source>
        <translation>%1 links der Linie</translation>
    </message>
    <message>
        <source>turn ahead</source>
        <translation>Kurve voraus</translation>
    </message>
    <message>
        <source>stop here</source>
        <translation>hier halten</translation>
    </message>
    <message>
        <source>stop in %1</source>
        <translation>Halt in %1</translation>
    </message>
    <message>
        <source>%1 ft</source>
        <translation>%1 ft</translation>
    </message>
    <message>
        <source>%1 m</source>
        <translation>%1 m</translation>
    </message>
</context>
<context>
    <name>flowhand::RunReview</name>
    <message>
        <source>Run %1</source>
        <translation>Durchgang %1</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 bis %2</translation>
    </message>
    <message>
        <source>Not scored</source>
        <translation>Nicht gewertet</translation>
    </message>
    <message>
        <source>Passed</source>
        <translation>Bestanden</translation>
    </message>
    <message>
        <source>Not passed</source>
        <translation>Nicht bestanden</translation>
    </message>
    <message>
        <source>The program ended in mid-run; this is what was recovered of it.</source>
        <translation>Das Programm endete mitten im Durchgang; dies ist, was davon gerettet wurde.</translation>
    </message>
    <message>
        <source>Damaged in the store: %1.</source>
        <translation>Im Speicher beschädigt: %1.</translation>
    </message>
    <message>
        <source>%1 parts of it are damaged in the store: F8 tells which.</source>
        <translation>%1 Teile davon sind im Speicher beschädigt: F8 sagt welche.</translation>
    </message>
    <message>
        <source>broken once</source>
        <translation>einmal verletzt</translation>
    </message>
    <message>
        <source>broken %1 times</source>
        <translation>%1-mal verletzt</translation>
    </message>
    <message>
        <source>simulated input</source>
        <translation>simulierte Eingabe</translation>
    </message>
</context>
<context>
    <name>flowhand::ScreenPanel</name>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
</context>
<context>
    <name>flowhand::Settings</name>
    <message>
        <source>The settings file has an error, and what you choose now is not kept. %1</source>
        <translation>Die Einstellungsdatei hat einen Fehler, und was Sie jetzt wählen, wird nicht behalten. %1</translation>
    </message>
    <message>
        <source>The settings file had an error and was put aside as %1; what could be read of it holds. %2</source>
        <translation>Die Einstellungsdatei hatte einen Fehler und liegt nun daneben als %1; was davon lesbar war, gilt. %2</translation>
    </message>
    <message>
        <source>What you choose is not kept: %1</source>
        <translation>Was Sie wählen, wird nicht behalten: %1</translation>
    </message>
    <message>
        <source>Write a name first.</source>
        <translation>Schreiben Sie zuerst einen Namen.</translation>
    </message>
    <message>
        <source>There is somebody of that name already.</source>
        <translation>Jemanden dieses Namens gibt es schon.</translation>
    </message>
    <message>
        <source>Write the whole path, from / on.</source>
        <translation>Schreiben Sie den ganzen Pfad, von / an.</translation>
    </message>
    <message>
        <source>This folder cannot be written to.</source>
        <translation>In diesen Ordner kann nicht geschrieben werden.</translation>
    </message>
</context>
<context>
    <name>flowhand::Sound</name>
    <message>
        <source>Sound: on</source>
        <translation>Ton: an</translation>
    </message>
    <message>
        <source>Sound: quiet</source>
        <translation>Ton: leise</translation>
    </message>
    <message>
        <source>Sound: off</source>
        <translation>Ton: aus</translation>
    </message>
    <message>
        <source>%1 (not there now)</source>
        <translation>%1 (gerade nicht da)</translation>
    </message>
</context>
<context>
    <name>flowhand::StartPresenter</name>
    <message>
        <source>As written for the flow</source>
        <translation>Wie für den Ablauf geschrieben</translation>
    </message>
    <message>
        <source>%1, as written for it</source>
        <translation>%1, wie dafür geschrieben</translation>
    </message>
    <message>
        <source>The first step</source>
        <translation>Der erste Schritt</translation>
    </message>
    <message>
        <source>As fast as it is</source>
        <translation>So schnell, wie es ist</translation>
    </message>
    <message>
        <source>%1 times slower</source>
        <translation>%1-mal langsamer</translation>
    </message>
    <message>
        <source>where the feed is</source>
        <translation>wo der Datenstrom ist</translation>
    </message>
    <message>
        <source>with “%1”</source>
        <translation>mit „%1“</translation>
    </message>
</context>
<context>
    <name>flowhand::VoiceWorker</name>
    <message>
        <source>Nothing is spoken: no sound server answers. What would be said is on the screen. Once one runs, turn the sound off and on again.</source>
        <translation>Es wird nichts gesprochen: kein Tondienst antwortet. Was gesagt würde, steht auf dem Bildschirm. Sobald einer läuft, schalten Sie den Ton aus und wieder an.</translation>
    </message>
    <message>
        <source>Nothing is spoken: Qt has no speech engine for speech-dispatcher, so a tone stands for the words. Install the package qt6-speech-speechd-plugin.</source>
        <translation>Es wird nichts gesprochen: Qt hat keine Sprachausgabe für speech-dispatcher, darum steht ein Ton für die Worte. Installieren Sie das Paket qt6-speech-speechd-plugin.</translation>
    </message>
    <message>
        <source>there is no English voice</source>
        <translation>es gibt keine englische Stimme</translation>
    </message>
    <message>
        <source>Nothing is heard any more: the sound server is gone. Once it runs again, turn the sound off and on again.</source>
        <translation>Es ist nichts mehr zu hören: der Tondienst ist fort. Sobald er wieder läuft, schalten Sie den Ton aus und wieder an.</translation>
    </message>
    <message>
        <source>Nothing is spoken, so a tone stands for the words: the speech engine says “%1”. Install the packages speech-dispatcher and speech-dispatcher-espeak-ng, then turn the sound off and on again.</source>
        <translation>Es wird nichts gesprochen, darum steht ein Ton für die Worte: die Sprachausgabe sagt „%1“. Installieren Sie die Pakete speech-dispatcher und speech-dispatcher-espeak-ng, dann schalten Sie den Ton aus und wieder an.</translation>
    </message>
    <message>
        <source>The chosen sound device, %1, is not there. Tones come out of the one that the desktop has chosen, until it is plugged in again.</source>
        <translation>Das gewählte Tongerät, %1, ist nicht da. Töne kommen aus dem, das im System gewählt ist, bis es wieder eingesteckt ist.</translation>
    </message>
</context>
<context>
    <name>Motion</name>
    <message>
        <source>Airspeed</source>
        <translation>Fahrt</translation>
    </message>
    <message>
        <source>Ground speed</source>
        <translation>Über Grund</translation>
    </message>
    <message>
        <source>Vertical speed</source>
        <translation>Steigrate</translation>
    </message>
    <message>
        <source>Altitude</source>
        <translation>Druckhöhe</translation>
    </message>
    <message>
        <source>Height</source>
        <translation>Höhe</translation>
    </message>
    <message>
        <source>Heading</source>
        <translation>Steuerkurs</translation>
    </message>
    <message>
        <source>Pitch</source>
        <translation>Längsneigung</translation>
    </message>
    <message>
        <source>Bank</source>
        <translation>Querneigung</translation>
    </message>
    <message>
        <source>Turn rate</source>
        <translation>Drehrate</translation>
    </message>
    <message>
        <source>On ground</source>
        <translation>Am Boden</translation>
    </message>
    <message>
        <source>Nosewheel angle</source>
        <translation>Bugradwinkel</translation>
    </message>
    <message>
        <source>Flap angle</source>
        <translation>Klappenwinkel</translation>
    </message>
    <message>
        <source>Gear position</source>
        <translation>Stellung des Fahrwerks</translation>
    </message>
    <message>
        <source>Spoiler position</source>
        <translation>Stellung der Störklappen</translation>
    </message>
    <message>
        <source>Automatic braking</source>
        <translation>Automatisches Bremsen</translation>
    </message>
    <message>
        <source>Offset from the line</source>
        <translation>Abstand von der Linie</translation>
    </message>
    <message>
        <source>Angle to the line</source>
        <translation>Winkel zur Linie</translation>
    </message>
    <message>
        <source>Curvature of the line</source>
        <translation>Krümmung der Linie</translation>
    </message>
    <message>
        <source>Turn ahead</source>
        <translation>Kurve voraus</translation>
    </message>
    <message>
        <source>Distance to stop</source>
        <translation>Weg bis zum Halt</translation>
    </message>
    <message>
        <source>Runway clear</source>
        <translation>Piste frei</translation>
    </message>
    <message>
        <source>Offset from the line, mean</source>
        <translation>Abstand von der Linie, im Mittel</translation>
    </message>
    <message>
        <source>Offset from the line, largest</source>
        <translation>Abstand von der Linie, größter</translation>
    </message>
    <message>
        <source>Speed in turns, largest</source>
        <translation>Größtes Tempo in Kurven</translation>
    </message>
    <message>
        <source>True airspeed</source>
        <translation>Wahre Fahrt</translation>
    </message>
    <message>
        <source>Altitude shown</source>
        <translation>Angezeigte Höhe</translation>
    </message>
    <message>
        <source>Density altitude</source>
        <translation>Dichtehöhe</translation>
    </message>
    <message>
        <source>Mass</source>
        <translation>Masse</translation>
    </message>
    <message>
        <source>Fuel</source>
        <translation>Kraftstoff</translation>
    </message>
    <message>
        <source>Centre of gravity</source>
        <translation>Schwerpunkt</translation>
    </message>
    <message>
        <source>V1</source>
        <translation>V1</translation>
    </message>
    <message>
        <source>VR</source>
        <translation>VR</translation>
    </message>
    <message>
        <source>V2</source>
        <translation>V2</translation>
    </message>
    <message>
        <source>VREF</source>
        <translation>VREF</translation>
    </message>
    <message>
        <source>Approach speed</source>
        <translation>Anfluggeschwindigkeit</translation>
    </message>
    <message>
        <source>Engine power</source>
        <translation>Triebwerksleistung</translation>
    </message>
    <message>
        <source>Reverser</source>
        <translation>Schubumkehr</translation>
    </message>
    <message>
        <source>Propeller speed</source>
        <translation>Propellerdrehzahl</translation>
    </message>
    <message>
        <source>Track</source>
        <translation>Kurs über Grund</translation>
    </message>
    <message>
        <source>Position, east</source>
        <translation>Ort, nach Osten</translation>
    </message>
    <message>
        <source>Position, north</source>
        <translation>Ort, nach Norden</translation>
    </message>
</context>
</TS>
