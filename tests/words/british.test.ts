import { afterEach, describe, expect, it } from 'vitest';
import { words as full } from '../../src/words/full.ts';
import { words } from '../../src/words/index.ts';
import { languageFor, measuresFor, speakIn } from '../../src/words/language.ts';

afterEach(() => speakIn('en'));

/** Every text of a tree that stands without being asked for. */
function textsOf(tree: unknown): string[] {
  if (typeof tree === 'string') return [tree];
  return typeof tree === 'object' && tree !== null ? Object.values(tree).flatMap(textsOf) : [];
}

describe('British English', () => {
  it('says bulkhead where American English says firewall, and nothing is lost', async () => {
    const american = textsOf(full);
    expect(american.filter((text) => /firewall/i.test(text)).length).toBeGreaterThan(1);
    await speakIn('en-GB');
    const british = textsOf(full);
    expect(british.length).toBe(american.length);
    expect(british.filter((text) => /firewall|hood/i.test(text))).toEqual([]);
    expect(full.newPlanDialog.bayM).toBe('Nose to bulkhead');
    expect(words.locale).toBe('en-GB');
  });

  it('leaves a name as its owner gave it', async () => {
    await speakIn('en-GB');
    expect(full.list.removed('Firewall grommet, hood lamp')).toBe('Firewall grommet, hood lamp deleted.');
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
