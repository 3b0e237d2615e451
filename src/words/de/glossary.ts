/** Trade words, each with what it means in plain words. */
const entry = (word: string, means: string) => ({ word, means });

export const glossary = {
  ampacity: entry(
    'Strombelastbarkeit',
    'Der größte Strom, den eine Leitung auf Dauer führt, ohne dass die Isolierung zu heiß wird. Warme Umgebung und Leitungen daneben senken ihn.',
  ),
  branchFuse: entry(
    'Abgangssicherung',
    'Eine Sicherung für eine einzelne dünnere Leitung hinter einem Verteilerblock. Die Hauptsicherung ist zu groß, um diese Leitung zu schützen.',
  ),
  breakingCapacity: entry(
    'Ausschaltvermögen',
    'Der größte Strom, den eine Sicherung abschalten kann, ohne zu bersten. Eine Batterie gibt in einen satten Kurzschluss vielleicht mehr.',
  ),
  bundle: entry(
    'Bündel',
    'Zusammengebundene Leitungen. Unter Last wärmen sie einander, darum darf jede weniger führen als allein.',
  ),
  clearingTime: entry(
    'Ausschaltzeit',
    'Wie lange eine Sicherung braucht, um einen Strom abzuschalten. Je größer der Strom, desto kürzer.',
  ),
  conductor: entry('Leiter', 'Das Metall einer Leitung, durch das der Strom fließt. Die Isolierung zählt nicht mit.'),
  cutLength: entry(
    'Zuschnitt',
    'Was von der Rolle abzuschneiden ist: der Weg durch das Auto mit jedem Knick und jedem Auf und Ab. Mit dem Maßband messen; eine Zeichnung schätzt nur.',
  ),
  derating: entry(
    'Minderung',
    'Einer Leitung oder Sicherung weniger zumuten, als ihre Tabelle sagt, weil es wärmer ist, als die Tabelle annimmt.',
  ),
  distributionBlock: entry(
    'Verteilerblock',
    'Eine dicke Leitung geht hinein, mehrere dünnere gehen heraus. Jeder Abgang kann eine eigene Sicherung haben.',
  ),
  drop: entry(
    'Spannungsfall',
    'Die Spannung, die auf den Leitungen hin und zurück verloren geht. Sie fehlt an der Endstufe und wärmt die Leitung.',
  ),
  fuseHolder: entry(
    'Sicherungshalter',
    'Worin eine Sicherung sitzt: er verbindet sie mit den Leitungen und deckt sie ab. Er nimmt nur eine Bauart auf.',
  ),
  gauge: entry(
    'Querschnitt',
    'Die Größe eines Leiters. Bei Größen mit Nummern heißt eine kleinere Nummer dicker: 1/0 ist dicker als 4, und 4 dicker als 8.',
  ),
  groundPoint: entry(
    'Massepunkt',
    'Die Schraube, an der eine Masseleitung auf blankes Metall der Karosserie trifft. Der Strom fließt hier zur Batterie zurück, darum gilt Lack darunter als Fehler.',
  ),
  grommet: entry(
    'Tülle',
    'Ein Gummiring in einem Loch im Blech. Ohne ihn schneidet die Kante mit der Zeit durch die Isolierung.',
  ),
  loom: entry(
    'Kabelbaum',
    'Gemeinsam geführte Leitungen, in einem Schlauch oder unter Band. Sie teilen sich den Weg und ihre Wärme.',
  ),
  mainFuse: entry(
    'Hauptsicherung',
    'Die erste Sicherung nach der Batterie. Sie schützt die dicke Leitung dahinter; die Leitung davor schützt nichts: darum sitzt sie nahe an der Batterie.',
  ),
  passThrough: entry(
    'Durchführung',
    'Wo eine Leitung durch eine Blechwand geht, etwa die Spritzwand. Sie braucht eine Tülle.',
  ),
  prospectiveCurrent: entry(
    'Kurzschlussstrom',
    'Der Strom, der flösse, wenn die Leitung dort blankes Metall berührt, soweit Batterie und Leitungen ihn zulassen. Sicherungen werden daran geprüft.',
  ),
  run: entry('Leitung', 'Ein Stück von Anschluss zu Anschluss, mit dem Weg, den es durch das Auto nimmt.'),
  selectivity: entry(
    'Selektivität',
    'Von zwei Sicherungen hintereinander löst nur die aus, die dem Fehler am nächsten ist. Der Rest läuft weiter.',
  ),
  slack: entry(
    'Zugabe',
    'Leitung, die zur gezeichneten Länge hinzukommt, damit nichts auf Zug liegt; in Prozent davon.',
  ),
  terminal: entry('Anschluss', 'Schraube, Bolzen oder Klemme eines Bauteils, woran eine Leitung angeschlossen wird.'),
  unprotectedLength: entry(
    'Ungesicherte Länge',
    'Die Leitung unter Spannung zwischen einer Quelle und ihrer ersten Sicherung. Wird dieses Stück bei einem Unfall gequetscht, schaltet nichts den Strom ab: kurz halten.',
  ),
} as const;
