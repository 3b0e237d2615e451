import type { AmplifierAnswer } from '../answer.ts';
import { type Facts, isLoadTold } from '../facts.ts';
import { loadShare } from '../states.ts';
import { terminalVolts } from '../terminal.ts';
import { amplifierDropWhy, currentWhy } from '../whys/amplifier.ts';
import type { WhyBook } from '../whys/lazy.ts';
import { terminalWhy } from '../whys/supply.ts';
import { worstDrop, worstWhole } from '../worstDrop.ts';

/** An answer for every amplifier, in the order of the plan; without figures where none can be told. */
export function tellAmplifiers(facts: Facts, book: WhyBook): AmplifierAnswer[] {
  const { circuit, demands, settings } = facts.model;
  const percent = (volts: number): number => (100 * volts) / settings.systemV;
  return circuit.loads.map((load, index): AmplifierAnswer => {
    const { id: fittingId } = load.fitting;
    const drop = worstDrop(facts, index);
    const whole = worstWhole(facts, index);
    const demand = demands[index];
    const points = facts.operating?.states ?? [];
    const [first, ...rest] = points;
    if (!isLoadTold(facts, index) || drop === null || whole === null || first === undefined || demand == null) {
      return {
        fittingId,
        fullA: null,
        heatingA: null,
        terminalV: null,
        dropCablesV: null,
        dropCablesPercent: null,
        dropFeedV: null,
        dropReturnV: null,
        dropWholeV: null,
        dropWholePercent: null,
        whyCurrent: null,
        whyTerminal: null,
        whyDrop: null,
      };
    }
    const most = rest.reduce(
      (worst, point) => ((point.loadAmps[index] ?? 0) > (worst.loadAmps[index] ?? 0) ? point : worst),
      first,
    );
    const fullA = most.loadAmps[index] ?? 0;
    const terminalV = terminalVolts(facts)[index] ?? null;
    const dropCablesV = drop.feedV + drop.backV;
    return {
      fittingId,
      fullA,
      heatingA: fullA * loadShare(facts.model, index),
      terminalV,
      dropCablesV,
      dropCablesPercent: percent(dropCablesV),
      dropFeedV: drop.feedV,
      dropReturnV: drop.backV,
      dropWholeV: whole.wholeV,
      dropWholePercent: percent(whole.wholeV),
      whyCurrent: book.file(`current:${fittingId}`, () => currentWhy(load, demand, most, index)),
      whyTerminal: terminalV === null ? null : book.file(`terminal:${fittingId}`, () => terminalWhy(facts, index)),
      whyDrop: book.file(`drop:${fittingId}`, () => amplifierDropWhy(facts, drop)),
    };
  });
}
