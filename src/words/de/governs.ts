/** What decides a size or a figure; ids come from the assessment. */
const GOVERNS: Readonly<Record<string, string>> = {
  drop: 'wegen Spannungsfall',
  fuse: 'wegen der Sicherung',
  ampacity: 'wegen Strombelastbarkeit',
  heating: 'wegen Erwärmung',
  ground: 'so dick wie die Zuleitung',
  smallest: 'kleinster im Bestand',
  fixed: 'von Hand festgelegt',
  full: 'wegen des vollen Stroms',
  fullCurrent: 'wegen des vollen Stroms',
  heatingCurrent: 'wegen des Erwärmungsstroms',
  onboard: 'wegen der Sicherungen am Gerät',
  sumOnboard: 'wegen der Sicherungen am Gerät',
  conductor: 'durch die Leitung begrenzt',
  maker: 'durch den Hersteller der Endstufe begrenzt',
  cables: 'Leitungen, hin und zurück',
  drawn: 'gezeichnet, nicht nachgemessen',
  taped: 'wie nachgemessen',
  onlyBranches: 'keine Sicherung vor dem Verteiler',
  bareFeed: 'keine Sicherung vor der Zuleitung',
  none: 'nichts auf dem Weg',
};

/** 'wegen Spannungsfall'; an id without words is said as it is rather than swallowed. */
export const governs = (id: string): string => GOVERNS[id] ?? id;

/** The same, for the table of runs. */
export const governsRun: Readonly<
  Record<'drop' | 'fuse' | 'ampacity' | 'heating' | 'ground' | 'smallest' | 'fixed', string>
> = {
  // a soft hyphen: the column is narrow
  drop: 'Spannungs\u00adfall',
  fuse: 'ihre Sicherung',
  ampacity: 'Strombelastbarkeit',
  heating: 'Erwärmung',
  ground: 'ihre Zuleitung',
  smallest: 'kleinster im Bestand',
  fixed: 'von Hand festgelegt',
};
