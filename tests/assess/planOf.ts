/** Plans for the tests: fittings by name, runs taped to a length, every value told unless the test says otherwise. */

import { newPlan, newRun } from '../../src/plan/create.ts';
import { newFitting } from '../../src/plan/newFitting.ts';
import { openPlan } from '../../src/plan/open.ts';
import { DEFAULT_OUTLINES } from '../../src/plan/outline.ts';
import type { Fitting, FittingKind, FittingOf, Plan, Run, Settings } from '../../src/plan/schema.ts';
import { terminalRef } from '../support/terminal.ts';

type Draft = { plan: Plan };

type AmplifierPatch = Partial<Omit<FittingOf<'amplifier'>, 'ratedW' | 'efficiency' | 'regulated'>> & {
  ratedW?: number | null;
  efficiency?: number;
  regulated?: boolean;
};

type RunPatch = Partial<Omit<Run, 'conductor'>> & { size?: string; insulationC?: 60 | 75 | 90 | 105 | 125 };

export const told = <T>(value: T) => ({ value, origin: 'told' as const });

/** Writes a plan step by step. Terminals are said as 'battery.positive'; ids are the names given. */
export class PlanOf implements Draft {
  plan: Plan;

  constructor(settings: Partial<Settings> = {}) {
    const plan = newPlan({
      id: 'plan',
      name: 'Plan',
      sheetId: 'sheet',
      outline: { ...DEFAULT_OUTLINES.panelVan, lengthM: 4.4, widthM: 1.8, bayM: 1, cabM: 1.5 },
      mirrored: false,
    });
    this.plan = { ...plan, settings: { ...plan.settings, ...settings } };
  }

  fitting<K extends FittingKind>(kind: K, id: string, patch: Partial<FittingOf<K>> = {}): this {
    const at = { xM: 2, yM: 0.9 };
    const fitting = { ...newFitting(kind, { id, name: id, sheetId: 'sheet', at }), zone: 'cabin', ...patch } as Fitting;
    this.plan = { ...this.plan, fittings: [...this.plan.fittings, fitting] };
    return this;
  }

  /** A battery in the bay with the usual strap; `strap: null` for one without. */
  battery(id: string, patch: Partial<FittingOf<'battery'>> = {}): this {
    return this.fitting('battery', id, { zone: 'bay', ccaA: told(600), ...patch });
  }

  /** An amplifier of which all is told: class D at 0.8, regulated, 2 ohm, no fuse of its own but the maker's limit. */
  amplifier(id: string, { ratedW = 1000, efficiency = 0.8, regulated = true, ...patch }: AmplifierPatch = {}): this {
    return this.fitting('amplifier', id, {
      ratedW: ratedW === null ? null : told(ratedW),
      efficiency: told(efficiency),
      regulated: told(regulated),
      loadOhm: 2,
      externalFuseMaxA: 300,
      ...patch,
    });
  }

  fuse(id: string, ratingA: number | 'auto' = 'auto', patch: Partial<FittingOf<'fuse'>> = {}): this {
    return this.fitting('fuse', id, { link: { ratingA, family: 'auto' }, ...patch });
  }

  /** A block; one rating for each output, null for one straight onto the bus. */
  block(id: string, outputs: readonly (number | 'auto' | null)[]): this {
    return this.fitting('block', id, {
      outputs: outputs.map((ratingA, index) => ({
        terminal: `out${index + 1}`,
        link: ratingA === null ? null : { ratingA, family: 'auto' as const },
      })),
    });
  }

  /** A run of a taped length, in the cabin, of a size: the id is 'from > to' unless the patch names one. */
  run(
    from: string,
    to: string,
    tapedM: number | null,
    { size = 'auto', insulationC = 105, ...patch }: RunPatch = {},
  ): this {
    const id = patch.id ?? `${from.split('.')[0]}-${to.split('.')[0]}`;
    const ends = { from: terminalRef(from), to: terminalRef(to) };
    const base = newRun({ id, name: id, kind: 'power', sheetId: 'sheet', ...ends, bends: [] });
    const conductor = {
      ...base.conductor,
      size,
      material: told('copper' as const),
      insulationC: told(insulationC),
    };
    const run = { ...base, tapedM, zone: 'cabin' as const, conductor, ...patch };
    this.plan = { ...this.plan, runs: [...this.plan.runs, run] };
    return this;
  }

  /** The plan, once it has passed the one way in. */
  done(): Plan {
    const opened = openPlan(JSON.stringify(this.plan));
    if (!opened.ok) throw new Error(`the test's plan is refused: ${JSON.stringify(opened.reason)}`);
    return opened.plan;
  }
}
