/** What the fittings themselves put between their terminals. */
import type { Plan, TerminalRef } from '../plan/schema.ts';
import type {
  Bond,
  Circuit,
  CircuitAlternator,
  CircuitCapacitor,
  CircuitCharger,
  CircuitLink,
  CircuitLoad,
  CircuitSource,
  Contact,
  Start,
} from './circuit.ts';
import { fittingZone } from './surroundings.ts';

/** By kind, in the order of the plan; `innerNode` makes a node that no terminal has. */
export function elementsOf(
  plan: Plan,
  nodeOf: Circuit['nodeOf'],
  body: number,
  innerNode: (ref: TerminalRef) => number,
) {
  const links: CircuitLink[] = [];
  const bonds: Bond[] = [];
  const contacts: Contact[] = [];
  const sources: CircuitSource[] = [];
  const others: Start[] = [];
  const loads: CircuitLoad[] = [];
  const chargers: CircuitCharger[] = [];
  const alternators: CircuitAlternator[] = [];
  const capacitors: CircuitCapacitor[] = [];
  const fedByFactory = new Set(
    plan.runs.flatMap(({ kind, from, to }) => (kind === 'factory' ? [from.fittingId, to.fittingId] : [])),
  );
  for (const fitting of plan.fittings) {
    const node = (terminal: string): number => nodeOf({ fittingId: fitting.id, terminal }) ?? body;
    const zone = fittingZone(plan, fitting);
    switch (fitting.kind) {
      case 'fuse':
      case 'breaker':
        links.push({ fitting, terminal: null, link: fitting.link, a: node('in'), b: node('out'), zone });
        break;
      case 'block':
        for (const { terminal, link } of fitting.outputs) {
          if (link !== null) links.push({ fitting, terminal, link, a: node('bus'), b: node(terminal), zone });
        }
        break;
      case 'battery': {
        const terminal = node('positive');
        const post = fitting.postLink === null ? terminal : innerNode({ fittingId: fitting.id, terminal: 'positive' });
        if (fitting.postLink !== null)
          links.push({ fitting, terminal: null, link: fitting.postLink, a: post, b: terminal, zone });
        sources.push({ fitting, plus: post, minus: node('negative') });
        if (fitting.strap !== null) bonds.push({ kind: 'strap', fitting, a: node('negative'), b: body });
        break;
      }
      case 'jumpPost':
        // one that the plan joins to a battery by the factory's cable is a place on the way, not a source of its own
        if (fedByFactory.has(fitting.id)) others.push({ fitting, plus: node('stud') });
        else sources.push({ fitting, plus: node('stud'), minus: body });
        break;
      case 'takeOff': {
        const stud = node('stud');
        if (fedByFactory.has(fitting.id)) {
          others.push({ fitting, plus: stud });
          break;
        }
        const { fuseA } = fitting;
        const inner = fuseA === null ? stud : innerNode({ fittingId: fitting.id, terminal: 'stud' });
        if (fuseA !== null)
          links.push({ fitting, terminal: null, link: { ratingA: fuseA, family: 'auto' }, a: inner, b: stud, zone });
        sources.push({ fitting, plus: inner, minus: body });
        break;
      }
      case 'amplifier':
        loads.push({ fitting, plus: node('supply'), minus: node('ground'), remote: node('remote') });
        break;
      case 'load':
        loads.push({ fitting, plus: node('supply'), minus: node('ground'), remote: null });
        break;
      case 'ground':
        bonds.push({ kind: 'body', fitting, a: node('body'), b: body });
        break;
      case 'relay':
        contacts.push({ kind: 'relay', fitting, a: node('in'), b: node('out') });
        break;
      case 'switch':
        contacts.push({ kind: 'switch', fitting, a: node('in'), b: node('out') });
        break;
      case 'reducer':
        contacts.push({ kind: 'reducer', fitting, a: node('wide'), b: node('narrow') });
        break;
      case 'charger':
        chargers.push({ fitting, input: node('input'), output: node('output'), ground: node('ground') });
        break;
      case 'alternator':
        alternators.push({ fitting, plus: node('positive'), minus: body });
        others.push({ fitting, plus: node('positive') });
        break;
      case 'capacitor':
        capacitors.push({ fitting, plus: node('positive'), minus: node('negative') });
        others.push({ fitting, plus: node('positive') });
        break;
      case 'passThrough':
      case 'continuation':
      case 'bus':
        break;
    }
  }
  const starts: Start[] = [...sources.map(({ fitting, plus }) => ({ fitting, plus })), ...others];
  return { links, bonds, contacts, sources, starts, loads, chargers, alternators, capacitors };
}
