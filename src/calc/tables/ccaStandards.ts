import type { SourceId } from '../sources.ts';

export const CCA_STANDARDS = ['sae', 'en', 'din', 'iec', 'ca'] as const;
export type CcaStandard = (typeof CCA_STANDARDS)[number];

interface CcaTest {
  /** Voltage the battery must still hold at the end of the stated time, V. */
  readonly endV: number;
  /** How long the current on the label flows until then, s. */
  readonly afterS: number;
  readonly testC: number;
  readonly source: SourceId;
}

/**
 * What the cranking amperes on a label mean: a 12 V battery gives that current for that time and then still holds endV.
 * Sources and trust: ids in each row; each standard was read as publicly quoted, not in its paid text.
 * SAE J537, 600 A: 7.2 V after 30 s at -18 degC. 'iec' is the old IEC 60095-1 figure; today's is the EN one.
 */
export const CCA_TESTS: Readonly<Record<CcaStandard, CcaTest>> = {
  sae: { endV: 7.2, afterS: 30, testC: -18, source: 'saeJ537' },
  en: { endV: 7.5, afterS: 10, testC: -18, source: 'en50342' },
  din: { endV: 9.0, afterS: 30, testC: -18, source: 'din43539' },
  iec: { endV: 8.4, afterS: 60, testC: -18, source: 'iec60095Old' },
  ca: { endV: 7.2, afterS: 30, testC: 0, source: 'crankingAmps' },
};
