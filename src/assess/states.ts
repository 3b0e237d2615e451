/** The states a source is worked in, and what a full current heats like. */
import { drawnA } from './demand.ts';
import type { Model } from './model.ts';
import { perModel } from './perModel.ts';

export interface Source {
  readonly state: 'rest' | 'charging';
  /** Held at the posts. */
  readonly volts: number;
  /** Only this battery feeds; every one of them where it is left out. */
  readonly alone?: number;
  /** Isolating relays are open, as they are while nothing charges; closed where it is left out. */
  readonly relaysOpen?: true;
}

/** Heating current over full current of a load: sqrt(duty), the greatest rms of a current of that mean and peak; 1 for what is no music. 1/3: 0.577. */
export function loadShare({ settings, circuit }: Pick<Model, 'settings' | 'circuit'>, load: number): number {
  const fitting = circuit.loads[load]?.fitting;
  return fitting?.kind === 'load' ? 1 : Math.sqrt(fitting?.duty ?? settings.duty.value);
}

/**
 * By edge, heating current over full current: of the loads whose whole current passes it the mean share, weighed by what
 * they draw at the posts' voltage (what cables lose on the way shifts the weights by less than a part in a hundred, where
 * duties differ); where current has a choice of way, the greatest of any load.
 */
export const heatingShares = perModel((model): readonly number[] => {
  const { circuit, demands, settings, sides, ways } = model;
  const drawing = demands.flatMap((demand, load) => (demand === null ? [] : [load]));
  const shares = circuit.loads.map((_, load) => loadShare(model, load));
  const most = Math.max(0, ...drawing.map((load) => shares[load] ?? 0)) || Math.sqrt(settings.duty.value);
  if (drawing.every((load) => shares[load] === most)) return sides.edges.map(() => most);
  const volts = settings.engineAlwaysRunning ? settings.chargingV.value : settings.restV.value;
  const weights = demands.map((demand) => (demand === null ? 0 : drawnA(demand, volts)));
  return sides.edges.map((_, edge) => {
    const behind = ways.behindOf(edge) ?? [];
    const total = behind.reduce((sum, load) => sum + (weights[load] ?? 0), 0);
    if (total === 0) return most;
    return behind.reduce((sum, load) => sum + ((weights[load] ?? 0) / total) * (shares[load] ?? 0), 0);
  });
});

export const heatingShareAt = (model: Model, edge: number): number => heatingShares(model)[edge] ?? 1;

/**
 * The states of the sources that are worked. Where a relay parts batteries that feed alike while it is closed, the rest
 * with it open is one more: one of them then carries alone what both share, or what it fed from near by comes from afar.
 * In a net where no current has a choice an open relay only takes loads away.
 */
export function statesOf({ settings, circuit, ways }: Pick<Model, 'settings' | 'circuit' | 'ways'>): Source[] {
  const charging: Source = { state: 'charging', volts: settings.chargingV.value };
  if (settings.engineAlwaysRunning) return [charging];
  const rest: Source = { state: 'rest', volts: settings.restV.value };
  const isParted = !ways.radial && circuit.contacts.some(({ kind }) => kind === 'relay');
  return isParted ? [rest, { ...rest, relaysOpen: true }, charging] : [rest, charging];
}

/**
 * The states that are worked while sizes are tried. Where no load draws less at a lower voltage, the lowest is the worst
 * for every figure of a radial net, and as good as always of a meshed one; what is chosen is then tried in every state.
 */
export function decidingStates(model: Model): Source[] {
  const all = statesOf(model);
  const rises = model.demands.every((demand) => demand?.law !== 'proportional');
  const lowest = Math.min(...all.map(({ volts }) => volts));
  if (!rises || all.some(({ relaysOpen }) => relaysOpen)) return all;
  return all.filter(({ volts }) => volts === lowest).slice(0, 1);
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
