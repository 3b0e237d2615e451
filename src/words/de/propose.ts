/** What is said of a proposed feed. */
import type { WhyProposed } from '../../plan/propose/proposal.ts';

/** Beside the verdict, which is that of the plan with all of it accepted. */
export const asProposed = 'Wie vorgeschlagen: noch nicht im Plan';

const WHY: Readonly<Record<WhyProposed, string>> = {
  firstFuse: 'eine Sicherung so nah an der Quelle, wie der Platz es erlaubt',
  throughWall: 'der Weg führt durch die Spritzwand',
  divides: 'eine Leitung speist mehr als einen Eingang',
  branchFuse: 'eine dünnere Leitung hinter einer größeren Sicherung',
  groundBeside: 'ein kurzer Rückweg daneben',
  groundSource: 'der Minuspol ist mit nichts verbunden',
  feeds: 'ein Teil des Weges dorthin',
  moved: 'von Hand verlegt',
};

export const proposing = {
  label: 'Vorgeschlagene Zuleitung',
  propose: 'Zuleitung vorschlagen',
  parts: (count: number): string => `${count} ${count === 1 ? 'Teil' : 'Teile'} vorgeschlagen. Zum Ändern antippen.`,
  /** What is still to be settled with all of it: how much, and the gravest of it. */
  leaves: (count: number, gravest: string): string =>
    `Offen ${count > 1 ? `bleiben ${count}, zuerst` : 'bleibt'}: ${gravest}`,
  nothing: 'Hier ließ sich nichts vorschlagen.',
  noRemote: 'Schaltleitungen bleiben von Hand zu zeichnen.',
  accept: 'Annehmen',
  refuse: 'Ablehnen',
  acceptAll: 'Alle annehmen',
  refuseAll: 'Alle ablehnen',
  mark: 'vorgeschlagen',
  acceptOne: (name: string): string => `${name} annehmen`,
  refuseOne: (name: string): string => `${name} ablehnen`,
  accepted: (name: string): string => `${name} gehört jetzt zum Plan.`,
  refused: (name: string): string => `${name} ist verworfen.`,
  why: (name: string, why: WhyProposed): string => `${name}: ${WHY[why]}`,
} as const;
