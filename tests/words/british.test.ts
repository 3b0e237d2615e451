import { afterEach, describe, expect, it } from 'vitest';
import { words as full } from '../../src/words/full.ts';
import { words } from '../../src/words/index.ts';
import { languageFor, measuresFor, speakIn } from '../../src/words/language.ts';
import { textsOf } from './leaves.ts';
import { writtenTexts } from './written.ts';

afterEach(() => speakIn('en'));

/** Spellings and words of the one kind of English and not of the other, whether the page says them yet or not. */
const BRITISH =
  /\b(aluminium|(centi|milli)?metres?|lit(re)s?|centres?|fibres?|spanners?|jewellery|grey|tyres?|wings?|saloons?|estates?|bonnets?|bulkheads?|boots?|windscreens?|earth(ed)?|petrol|torch(es)?|towards|whilst|kerbs?|mudguards?|catalogues?|programmes?|cheques?|moulds?|tick(s|ed)?|sulph\w+|cancelled|labelled|modelled|travelled|levelled|dialled|judgement|draughts?|licence|practise\w*|battery is flat|\w*(colour|behaviour|favour|neighbour|honour|vapour)\w*|\w+(isation|ised|ising|yse[ds]?))\b/gi;
const AMERICAN =
  /\b(aluminum|(centi|milli)?meters?|liters?|centers?|fibers?|wrench(es)?|jewelry|gray|tires?|fenders?|sedans?|station wagons?|hoods?|firewalls?|trunks?|windshields?|positive ground|gasoline|flashlights?|toward|curbs?|catalogs?|molds?|sulf\w+|canceled|labeled|modeled|traveled|leveled|dialed|judgment|drafts?|battery is dead|\w*(color|behavior|favor|neighbor|honor|vapor)\w*|\w+(ization|ized|izing|yze[ds]?))\b/gi;
/** Not what their endings look like. */
const BOTH = /^(raised|advised|promised|revised|surprised|exercised|supervised|rising|raising|sized|resized|seized)$/i;

/** What of one kind of English stands in the texts. */
const saidIn = (texts: readonly string[], words: RegExp): string[] =>
  texts.flatMap((text) => [...text.matchAll(words)].map(([word]) => word).filter((word) => !BOTH.test(word)));

const allTexts = () => textsOf(full).map(([, text]) => text);

/** What stands in the code as a sentence, not as the name of a thing: keys and ids are no one's reading. */
const sentences = writtenTexts('src/words/en', 'src/calc/sources.ts')
  .filter((text) => /[ A-Z]/.test(text))
  .map((text) => text.replace(/\w+\(/g, ''));

describe('American English', () => {
  it('holds no British word in anything it says', () => {
    expect(allTexts().length).toBeGreaterThan(1100);
    expect(saidIn(allTexts(), BRITISH)).toEqual([]);
    expect(full.fittings.materials.aluminium).toBe('Aluminum');
    expect(full.settings.metres).toBe('meters');
  });

  it('nor in any sentence as it is written down, said of the samples or not', () => {
    expect(sentences.length).toBeGreaterThan(900);
    expect(saidIn(sentences, BRITISH)).toEqual([]);
  });
});

describe('British English', () => {
  it('says bulkhead and bonnet where American English says firewall and hood, and nothing is lost', async () => {
    const american = allTexts();
    expect(american.filter((text) => /firewall/i.test(text)).length).toBeGreaterThan(1);
    expect(full.fittingCautions.passThrough).toMatch(/the hood's hinges and catch\.$/);
    await speakIn('en-GB');
    const british = allTexts();
    expect(british.length).toBe(american.length);
    expect(british.filter((text) => /firewall|hood/i.test(text))).toEqual([]);
    expect(full.newPlanDialog.bayM).toBe('Nose to bulkhead');
    expect(full.fittingCautions.passThrough).toMatch(/the bonnet's hinges and catch\.$/);
    expect(words.locale).toBe('en-GB');
  });

  it('holds no American word in anything it says, nor would it in any sentence written down', async () => {
    await speakIn('en-GB');
    expect(saidIn(allTexts(), AMERICAN)).toEqual([]);
    const { british } = await import('../../src/words/british.ts');
    const { refused } = british.later({ ...full, refused: () => sentences.join('\n') });
    const all = refused({ code: 'empty' });
    expect(all).toContain('aluminium');
    expect(saidIn([all], AMERICAN)).toEqual([]);
  });

  it('says each of the words that differ, large or small, one or many', async () => {
    await speakIn('en-GB');
    expect(full.fittings.materials).toMatchObject({ aluminium: 'Aluminium', cca10: 'Copper-clad aluminium, 10 %' });
    expect(full.settings.metres).toBe('metres');
    expect([full.fittings.outlines.saloon, full.fittings.outlines.estate]).toEqual(['Saloon', 'Estate']);
    expect(full.cautions.beforeWork).toMatch(/no jewellery\.$/);
    expect(full.fittingCautions.bus).toMatch(/spanner bridges/);
    expect(full.sourceLine('equalLoss')).toMatch(/equal loss per metre/);
  });

  it('leaves a name as its owner gave it', async () => {
    await speakIn('en-GB');
    expect(full.list.removed('Firewall grommet, hood lamp')).toBe('Firewall grommet, hood lamp deleted.');
    expect(full.list.removed('Gray wrench by the Station Wagon')).toBe('Gray wrench by the Station Wagon deleted.');
  });

  it('goes back to American English', async () => {
    await speakIn('en-GB');
    await speakIn('en');
    expect([words.locale, full.newPlanDialog.bayM]).toEqual(['en', 'Nose to firewall']);
  });
});

describe('which language, and which measures', () => {
  it.each([
    [['en-US', 'en'], 'en', 'ft-in', 'sae'],
    [['en'], 'en', 'm', 'sae'],
    [['fr', 'en-GB', 'en-US'], 'en-GB', 'm', 'mm2'],
    [['en-CA'], 'en', 'm', 'sae'],
    [[], 'en', 'm', 'sae'],
  ] as const)('asked for %j: %s, %s, %s', (asked, language, showLength, sizeSystem) => {
    expect(languageFor('auto', asked)).toBe(language);
    expect(measuresFor('auto', asked)).toEqual({ showLength, sizeSystem });
  });

  it('what was chosen goes before what the browser asks for', () => {
    expect(languageFor('en-GB', ['en-US'])).toBe('en-GB');
    expect(measuresFor('en', ['en-GB'])).toEqual({ showLength: 'ft-in', sizeSystem: 'sae' });
  });
});
