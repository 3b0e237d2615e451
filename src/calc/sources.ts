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
  iec60949: { document: 'IEC 60949', section: 'aluminum 228', trust: 'memory' },
  iec60949Heat: {
    document: 'IEC 60949',
    section: 'heat per volume of copper and aluminum; reproduces every published k',
    trust: 'memory',
  },
  cladHeat: {
    document: 'IEC 60949',
    section: 'copper-clad aluminum counted as aluminum right through, which is the safe side',
    trust: 'derived',
  },
  adiabaticFormula: { document: 'IEC 60949', section: 'adiabatic heating', trust: 'memory' },
  bs7671Table43: {
    document: 'BS 7671 Table 43.1 / IEC 60364-4-43',
    section: '160 °C PVC, 250 °C thermoset, up to 5 s',
    trust: 'published',
  },
  iso6722Dimensions: {
    document: 'ISO 6722',
    section: 'thin-wall outside diameters, as declared on a cable data page',
    trust: 'published',
  },
  iso6722ThickWall: {
    document: 'ISO 6722',
    section: 'thick-wall outside diameters, with little confidence',
    trust: 'memory',
  },
  saeJ1127Wall: { document: 'SAE J1127 / J1128', section: 'nominal walls, with little confidence', trust: 'memory' },
  outsideDerived: {
    document: 'Area, fill of a fine-stranded bunch and wall',
    section: 'no outside diameter published',
    trust: 'derived',
  },
  nec551: { document: 'NFPA 70 (NEC) 551.47(H)', section: 'as summarized publicly', trust: 'published' },
  faaBend: {
    document: 'FAA AC 43.13-1B',
    section: 'bend radius of bundles, and of a cable held at a terminal',
    trust: 'memory',
  },
  nbsHandbook100Density: { document: 'NBS Handbook 100, Copper Wire Tables', section: 'density', trust: 'published' },
  astmB566Density: {
    document: 'Clad wire data sheet in accordance with ASTM B566',
    section: 'density',
    trust: 'published',
  },
  densityMemory: { document: 'Density of aluminum and of cable PVC', trust: 'memory' },
  iso6722Overload: { document: 'ISO 6722-1', section: 'thermal overload, 6 h at class + 50 K', trust: 'memory' },
  shortHeating: {
    document: 'IEC 60949 heat per volume with the heat balance of 33 CFR 183.425 Table 5',
    section: 'one lumped conductor, the heat of its insulation left out',
    trust: 'derived',
  },
  metalByResistance: {
    document: 'IEC 60228',
    section: 'least metal that the largest resistance of class 5 proves',
    trust: 'derived',
  },
  iec60364part433: { document: 'IEC 60364-4-43', section: '433.1, I2 <= 1.45 Iz', trust: 'memory' },
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
    section: 'equal loss per meter in the same cable',
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
  nec552: { document: 'NFPA 70 (NEC) 552.10(E)', section: 'as summarized publicly', trust: 'published' },
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
  typeETimes: {
    document: 'Type E 32 V fuse-link data sheet (ISO 8820-3, SAE J1888)',
    section: 'operating times, second hand',
    trust: 'published',
  },
  typeCTimes: {
    document: 'Type C 32 V fuse-link data sheet (ISO 8820-3)',
    section: 'operating times at 160 and 200 %, second hand',
    trust: 'published',
  },
  iso8820part3TimesMemory: { document: 'ISO 8820-3', section: 'operating time limits', trust: 'memory' },
  iso8820part5TimesMemory: {
    document: 'ISO 8820-5',
    section: 'operating time limits, with little confidence',
    trust: 'memory',
  },
  fuseI2t: {
    document: 'A fuse-link lets through no more I²t as the current rises',
    section: 'from one test point to the next, and beyond the last',
    trust: 'derived',
  },
  abycTableVA: { document: 'ABYC E-11', section: 'Table V-A, as reprinted', trust: 'published' },
  linkDrop: {
    document: 'Type E 40 A fuse-link, 75 mV at its rating',
    section: 'taken as typical of every link',
    trust: 'derived',
  },
  postLinks: { document: 'Links that sit on a battery post, as sold', trust: 'memory' },
  thermalBreakers: { document: 'Thermal breakers for vehicles, as sold', trust: 'memory' },
  userTold: { document: 'Told by the user', trust: 'choice' },
  ul248part15: { document: 'UL 248-15', section: 'class T', trust: 'memory' },
  slottedLinks: { document: 'Slotted bolt-in links as sold', trust: 'memory' },
  continuousLoad: {
    document: 'Continuous load at most 80 % of the rating',
    section: 'as publicly taught',
    trust: 'published',
  },
  iso6722: { document: 'ISO 6722-1', section: 'temperature classes and overload', trust: 'memory' },
  saeJ537: { document: 'SAE J537', section: '-18 °C, 30 s, 7.2 V, as publicly quoted', trust: 'published' },
  en50342: { document: 'EN 50342-1', section: '-18 °C, 10 s, 7.5 V, as publicly quoted', trust: 'published' },
  din43539: { document: 'DIN 43539-2', section: '-18 °C, 30 s, 9.0 V, as publicly quoted', trust: 'published' },
  iec60095Old: {
    document: 'IEC 60095-1, old edition',
    section: '-18 °C, 60 s, 8.4 V, as publicly quoted',
    trust: 'published',
  },
  crankingAmps: { document: 'Cranking amperes CA', section: '0 °C, 30 s, 1.2 V a cell', trust: 'published' },
  leadAcidRest: { document: 'Full lead-acid cell at rest, 2.1 V', section: 'as publicly taught', trust: 'published' },
  batteryFromCca: {
    document: 'Cranking amperes as a straight line from the rest voltage',
    section: 'good to a factor of 2',
    trust: 'derived',
  },
  batteryWarm: {
    document: 'Battery at 25 °C against -18 °C',
    section: '0.4 to 0.5 of the resistance',
    trust: 'memory',
  },
  batteryChemistry: { document: 'Lithium and supercapacitor batteries as sold', trust: 'memory' },
  peukert: { document: "Peukert's law", section: 'from the 20 hour rate', trust: 'published' },
  classBCurrent: {
    document: 'Ideal class B stage',
    section: 'supply current in proportion to output voltage',
    trust: 'published',
  },
  classDCurrent: {
    document: 'Class D stage',
    section: 'power in proportion to output power, and its idle current',
    trust: 'derived',
  },
  iso8854: { document: 'ISO 8854', section: 'form of the rating IL / IR A', trust: 'published' },
  alternatorIdle: { document: 'Alternators at idle', section: '0.3 to 0.6 of IR', trust: 'memory' },
  alternatorHot: { document: 'Alternators hot', section: '10 to 25 % below the plate', trust: 'memory' },
  chargeBalance: { document: 'Balance of mean currents', section: 'loads against output hot', trust: 'derived' },
  capacitorEnergy: {
    document: 'Energy of a capacitor and the adiabatic equation',
    section: 'each ohm of the loop takes its share',
    trust: 'derived',
  },
  rcCircuit: { document: 'Exponential charge through a resistor', section: 'R C circuit', trust: 'derived' },
  feedrunRules: { document: 'Feedrun rules', trust: 'choice' },
  commonPractice: { document: 'Common practice', trust: 'memory' },
} as const satisfies Record<string, Source>;

export type SourceId = keyof typeof SOURCES;
