/**
 * Every document a figure of the calc room rests on, and how far it may be trusted.
 * `published` was read in a public copy; `memory` is recalled and unverified; `derived` is computed
 * here from published figures; `choice` is a decision of this project.
 */
type Trust = 'published' | 'memory' | 'derived' | 'choice';

export interface Source {
  readonly document: string;
  readonly section?: string;
  readonly trust: Trust;
}

export const SOURCES = {
  astmB258: { document: 'ASTM B258', section: 'diameter formula, as reprinted', trust: 'published' },
  saeJ1127: { document: 'SAE J1127 / J1128', section: 'minimum conductor areas, as reprinted', trust: 'published' },
  saeJ1127Memory: { document: 'SAE J1127 / J1128', section: 'minimum conductor areas', trust: 'memory' },
  saeDerived: {
    document: 'SAE J1127 / J1128',
    section: 'sizes 3 and 20: 0.893 of the AWG area, the least share of the listed sizes',
    trust: 'derived',
  },
  iec60228: { document: 'IEC 60228', section: 'class 5, plain copper, maximum at 20 °C', trust: 'published' },
  necCh9Table8: { document: 'NFPA 70 (NEC)', section: 'Chapter 9 Table 8, stranded', trust: 'published' },
  nbsHandbook100: { document: 'NBS Handbook 100, Copper Wire Tables', section: '100 % IACS', trust: 'published' },
  strandingLay: {
    document: 'NFPA 70 (NEC)',
    section: 'Chapter 9 Table 8 against solid copper: 2 % longer strands',
    trust: 'derived',
  },
  copperTemperature: { document: 'FAA AC 43.13-1B', section: '11-67, copper 234.5', trust: 'published' },
  iec60949: { document: 'IEC 60949', section: 'aluminium 228', trust: 'memory' },
  aluminium1350: {
    document: 'Industrial Power Engineering and Applications Handbook',
    section: 'p. 970, 61 % IACS',
    trust: 'published',
  },
  cta2006: {
    document: 'CTA-2006',
    section: 'rated output at a 14.4 V supply, as explained publicly',
    trust: 'published',
  },
  astmB566: { document: 'ASTM B566', section: 'classes 10A and 15A, least conductivity', trust: 'published' },
  equalLoss: {
    document: 'Square root of the conductivity ratio',
    section: 'equal loss per metre in the same cable',
    trust: 'derived',
  },
  cfr183425Table5: { document: '33 CFR 183.425', section: 'Table 5', trust: 'published' },
  cfr183425Note1: { document: '33 CFR 183.425', section: 'Table 5 note 1, 105 °C', trust: 'published' },
  cfr183425Note1Memory: { document: '33 CFR 183.425', section: 'Table 5 note 1', trust: 'memory' },
  cfr183425Note2: {
    document: 'US Coast Guard Electrical System Compliance Guideline',
    section: '33 CFR 183.425 Table 5 note 2, as reprinted',
    trust: 'published',
  },
  cfr183425Ambient: { document: '33 CFR 183.425', section: 'Table 5 holds at 30 °C', trust: 'published' },
  ambientCorrection: {
    document: 'NEC / IEC ambient correction',
    section: 'square root of the temperature headroom',
    trust: 'published',
  },
  lumpedHeating: {
    document: '33 CFR 183.425 Table 5 with copper resistance against temperature',
    section: 'steady heat balance',
    trust: 'derived',
  },
  bs7671Table4E1A: { document: 'BS 7671', section: 'Table 4E1A, columns A, B, F at 25 mm²', trust: 'derived' },
  cfr183445: {
    document: '33 CFR 183.445',
    section: '(a), protection where a conductor passes through',
    trust: 'published',
  },
  cfr183455: { document: '33 CFR 183.455', trust: 'published' },
  cfr183460: { document: '33 CFR 183.460', trust: 'memory' },
  abycE11: { document: 'ABYC E-11', section: 'as publicly quoted', trust: 'published' },
  nec552: { document: 'NFPA 70 (NEC) 552.10(E)', section: 'as summarised publicly', trust: 'published' },
  fcs1362: { document: 'FCS 1362:2010', section: '4.6.2 to 4.6.4', trust: 'published' },
  iso8820part3: { document: 'ISO 8820-3:2015', section: 'scope', trust: 'published' },
  iso8820part5: { document: 'ISO 8820-5:2015', section: 'scope', trust: 'published' },
  iso8820part5Memory: { document: 'ISO 8820-5', section: 'list of ratings', trust: 'memory' },
  bladeRanges: { document: 'Blade fuse ranges, encyclopedic copy', trust: 'published' },
  linkDataSheet: {
    document: 'Type E 32 V fuse-link data sheet (ISO 8820-3, SAE J1888)',
    section: 'one 40 A link, second hand',
    trust: 'published',
  },
  linkDrop: {
    document: 'Type E 40 A fuse-link, 75 mV at its rating',
    section: 'taken as typical of every link',
    trust: 'derived',
  },
  ul248part15: { document: 'UL 248-15', section: 'class T', trust: 'memory' },
  slottedLinks: { document: 'Slotted bolt-in links as sold', trust: 'memory' },
  continuousLoad: {
    document: 'Continuous load at most 80 % of the rating',
    section: 'as publicly taught',
    trust: 'published',
  },
  iso6722: { document: 'ISO 6722-1', section: 'temperature classes and overload', trust: 'memory' },
  feedrunRules: { document: 'Feedrun rules', trust: 'choice' },
  commonPractice: { document: 'Common practice', trust: 'memory' },
} as const satisfies Record<string, Source>;

export type SourceId = keyof typeof SOURCES;
