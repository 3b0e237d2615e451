import type { shorts as english, supplied as englishSupplied } from '../en/shorts.ts';
import type { Said } from '../language.ts';

export const shorts: Said<typeof english> = {
  title: 'Was ein Kurzschluss tut',
  lead: 'Ein satter Schluss zur Karosserie irgendwo auf der Leitung, beim schlimmsten seiner Ströme. Geschätzt: Batterien und Kontakte sind verschieden.',
  columns: { current: 'Strom', opens: 'Sicherung löst aus', heat: 'Leitung dann' },
  within: (time) => `binnen ${time}`,
  never: 'gar nicht',
  unknown: 'keine Angabe',
  ofLimit: (limit) => `von ${limit}`,
  melts: 'schmilzt',
  seconds: (n) => `${n} s`,
  minutes: (n) => `${n} min`,
  from: (lowest, highest) => `${lowest} bis ${highest}`,
  outcome: ({ verdict, harm, unprotected, withoutLimits }, fuse) => {
    const it = fuse ?? 'Die Sicherung';
    if (unprotected) return 'Davor liegt keine Sicherung: nichts löst aus, was auch geschieht.';
    if (withoutLimits)
      return `${it}: Auslösezeiten sind nicht veröffentlicht; dass rechtzeitig abgeschaltet wird, ist nicht gezeigt.`;
    if (verdict === 'opensInTime') return `${it} löst aus, bevor die Isolierung Schaden nimmt.`;
    if (verdict === 'nothingOpens')
      return `Beim kleinsten Strom muss keine Sicherung auslösen: er fließt weiter${harm === 'none' ? '' : ', und die Isolierung nimmt Schaden'}.`;
    if (verdict === 'damagedFirst') return `Die Isolierung nimmt Schaden, bevor ${fuse ?? 'die Sicherung'} auslöst.`;
    return `Die Isolierung kann Schaden nehmen, bevor ${fuse ?? 'die Sicherung'} auslöst.`;
  },
  damaged: (time) => `Isolierung beschädigt nach ${time}.`,
  partial: (current, temperature, limit) =>
    `Einen schlechten Kontakt bis ${current} muss keine Sicherung bemerken: die Leitung wird ${temperature} warm (Grenze ${limit}).`,
  partialRunsAway: (current) =>
    `Einen schlechten Kontakt bis ${current} muss keine Sicherung bemerken, und die Leitung wird immer heißer.`,
  stillFed: (current, sources) => `Nach dem Auslösen speist ${sources} noch ${current} hinein.`,
};

export const supplied: Said<typeof englishSupplied> = {
  title: 'Batterie und Generator',
  lead: 'Geschätzt: was eine Batterie gibt, hängt an Alter und Ladung.',
  rows: {
    postsOff: 'Niedrigste Batteriespannung, Motor aus, volle Leistung',
    postsIdle: 'Niedrigste Batteriespannung, Leerlauf, volle Leistung',
    postsCruise: 'Niedrigste Batteriespannung, in Fahrt, volle Leistung',
    meanOff: 'Musik nimmt im Mittel, Motor aus',
    meanRunning: 'Musik nimmt im Mittel, Motor an',
    minutes: (batteries) => `Spieldauer bei Motor aus aus ${batteries}`,
    idleHot: (alternator) => `${alternator} bringt heiß im Leerlauf höchstens`,
    cruiseHot: (alternator) => `${alternator} bringt heiß in Fahrt höchstens`,
    deficitIdle: 'Batterien müssen im Leerlauf im Mittel zugeben',
    deficitCruise: 'Batterien müssen in Fahrt im Mittel zugeben',
  },
  noAlternator: 'Kein Generator gezeichnet: zum Laden ist nichts gesagt.',
  saturated: 'an ihrer Grenze',
};
