import { SOURCES, type SourceId } from '../../calc/sources.ts';
import type { About } from '../../calc/why.ts';
import type { Input, Settings } from '../../plan/schema.ts';
import type { Cable } from '../circuit.ts';
import { isUnmarked } from '../model.ts';

export const isSourceId = (text: string): text is SourceId => text in SOURCES;

/** Where a value of the plan came from, and where it can be edited. */
export function aboutInput({ origin, source }: Pick<Input<unknown>, 'origin' | 'source'>, edit: string): About {
  return source !== undefined && isSourceId(source) ? { origin, source, edit } : { origin, edit };
}

type SettingInput = {
  [K in keyof Settings]: Settings[K] extends { value: number } ? K : never;
}[keyof Settings];

export const aboutSetting = (settings: Settings, name: SettingInput): About =>
  aboutInput(settings[name], `settings.${name}`);

/** The insulation class: of an unmarked cable the 60 degC that it counts as. */
export const aboutInsulation = (cable: Cable): About =>
  isUnmarked(cable)
    ? { origin: 'choice', source: 'feedrunRules', edit: `${cable.run.id}.conductor.insulationC` }
    : aboutInput(cable.conductor.insulationC, `${cable.run.id}.conductor.insulationC`);
