/** The states a source is worked in, and what a full current heats like. */
import type { Model } from './model.ts';

export interface Source {
  readonly state: 'rest' | 'charging';
  /** Held at the posts. */
  readonly volts: number;
  /** Only this battery feeds; every one of them where it is left out. */
  readonly alone?: number;
}

/** Heating current over full current: sqrt(duty), the greatest rms of a current of that mean and peak. 1/3: 0.577. */
export const heatingShare = ({ settings }: Pick<Model, 'settings'>): number => Math.sqrt(settings.duty.value);

/** The states of the sources that are worked. */
export function statesOf({ settings }: Pick<Model, 'settings'>): Source[] {
  const charging: Source = { state: 'charging', volts: settings.chargingV.value };
  return settings.engineAlwaysRunning ? [charging] : [{ state: 'rest', volts: settings.restV.value }, charging];
}

/**
 * The states that are worked while sizes are tried. Where no load draws less at a lower voltage, the lowest is the worst
 * for every figure of a radial net, and as good as always of a meshed one; what is chosen is then tried in every state.
 */
export function decidingStates(model: Model): Source[] {
  const all = statesOf(model);
  const rises = model.demands.every((demand) => demand?.law !== 'proportional');
  const lowest = Math.min(...all.map(({ volts }) => volts));
  return rises ? all.filter(({ volts }) => volts === lowest).slice(0, 1) : all;
}

/**
 * Each battery feeding by itself, in the lowest of the states: for currents only. How batteries share a current hangs on
 * how full and how old each is; a weak or flat one leaves all of it to the other. None where no current has a choice.
 */
export function aloneStates({ circuit, ways }: Model, sources: readonly Source[]): Source[] {
  const lowest = sources.reduce((low, source) => (source.volts < low.volts ? source : low));
  if (ways.radial || circuit.sources.length < 2) return [];
  return circuit.sources.map((_, alone) => ({ ...lowest, alone }));
}
