import type { Plan, TerminalRef } from '../plan/schema.ts';
import { terminalKey, terminalsOf } from '../plan/terminals.ts';
import { nameOfId, words } from '../words/index.ts';

export interface TerminalOption {
  value: string;
  text: string;
  ref: TerminalRef;
}

/** Every terminal of the plan, as offered in a list: 'Rear amplifier, supply'. */
export function terminalOptions(plan: Plan): TerminalOption[] {
  return plan.fittings.flatMap((fitting) =>
    terminalsOf(fitting).map((terminal) => {
      const ref = { fittingId: fitting.id, terminal };
      return {
        value: terminalKey(ref),
        text: words.fittings.terminalOf(nameOfId(plan, fitting.id) ?? '', terminal),
        ref,
      };
    }),
  );
}
