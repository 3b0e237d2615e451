import { act } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { answeredPlan, createDesk } from '../../src/desk/desk.ts';
import { beginGesture, commit, commitGesture, draftGesture } from '../../src/desk/edit.ts';
import { Answered } from '../../src/panels/Answered.tsx';
import { PACES, pacedOf } from '../../src/panels/paced.ts';
import { usePlan } from '../../src/panels/useDesk.ts';
import { moveFitting } from '../../src/plan/edits/moveFitting.ts';
import { renamePlan } from '../../src/plan/edits/renamePlan.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { examplePlan } from './fixture.ts';
import { renderPanel } from './render.tsx';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

/** The first battery so far from where it was, m. */
const moved =
  (byM: number) =>
  (plan: Plan): Plan => {
    const battery = plan.fittings.find(({ kind }) => kind === 'battery');
    if (battery === undefined) throw new Error('no battery');
    return moveFitting(plan, battery.id, { xM: battery.at.xM + byM, yM: battery.at.yM });
  };

/** Writes down each plan that is shown. */
function Seen({ on }: { on: Plan[] }) {
  on.push(usePlan());
  return null;
}

describe('what panels show', () => {
  it('keeps a pace while a finger drags, and ends on the newest', () => {
    const desk = createDesk(examplePlan(), { isExample: false, bigFingers: false });
    const paced = pacedOf(desk, { restMs: 150, mostMs: 150, newest: answeredPlan });
    const shown: Plan[] = [];
    paced.subscribe(({ plan }, before) => {
      if (plan !== before.plan) shown.push(plan);
    });
    beginGesture(desk, 'moveFitting');
    for (let step = 1; step <= 30; step += 1) {
      draftGesture(desk, moved(0.01 * step));
      vi.advanceTimersByTime(16);
    }
    // 480 ms: three times the pace
    expect(shown).toHaveLength(3);
    vi.advanceTimersByTime(150);
    expect(paced.getState().plan).toBe(answeredPlan(desk.getState()));
  });

  it('is the newest at once when the finger lifts, and after any act', () => {
    const desk = createDesk(examplePlan(), { isExample: false, bigFingers: false });
    const paced = pacedOf(desk, PACES.findings);
    beginGesture(desk, 'moveFitting');
    draftGesture(desk, moved(0.1));
    commitGesture(desk);
    expect(paced.getState().plan).toBe(desk.getState().plan);
    commit(desk, 'renamePlan', (plan) => renamePlan(plan, 'Other'));
    expect(paced.getState().plan.name).toBe('Other');
    vi.advanceTimersByTime(1000);
    expect(paced.getState().plan).toBe(desk.getState().plan);
  });

  it('that is read waits for the finger to rest, findings for two seconds at most', () => {
    const desk = createDesk(examplePlan(), { isExample: false, bigFingers: false });
    const [findings, fields] = [pacedOf(desk, PACES.findings), pacedOf(desk, PACES.fields)];
    const shown = { findings: 0, fields: 0 };
    findings.subscribe(({ plan }, before) => {
      if (plan !== before.plan) shown.findings += 1;
    });
    fields.subscribe(({ plan }, before) => {
      if (plan !== before.plan) shown.fields += 1;
    });
    const areOld = () => [findings, fields].map(({ getState }) => getState().isOld);
    beginGesture(desk, 'moveFitting');
    const drag = (forMs: number) => {
      for (let ms = 0; ms < forMs; ms += 16) {
        draftGesture(desk, moved(0.001 * (ms + 16)));
        vi.advanceTimersByTime(16);
      }
    };
    drag(1_952);
    expect(shown).toEqual({ findings: 0, fields: 0 });
    expect(areOld()).toEqual([true, true]);
    drag(2_112);
    expect(shown).toEqual({ findings: 2, fields: 0 });
    vi.advanceTimersByTime(400);
    expect(shown).toEqual({ findings: 3, fields: 1 });
    expect(areOld()).toEqual([false, false]);
    for (const { getState } of [findings, fields]) expect(getState().plan).toBe(answeredPlan(desk.getState()));
    drag(160);
    commitGesture(desk);
    expect(shown).toEqual({ findings: 4, fields: 2 });
    expect(areOld()).toEqual([false, false]);
    for (const { getState } of [findings, fields]) expect(getState().plan).toBe(desk.getState().plan);
  });

  it('in full waits until the answer is known in full, and is marked as old meanwhile', () => {
    const desk = createDesk(examplePlan(), { isExample: false, bigFingers: false });
    const [findings, fields] = [pacedOf(desk, PACES.findings), pacedOf(desk, PACES.fields)];
    const { plan } = desk.getState();
    const shown = () => [findings, fields].map(({ getState }) => getState());
    beginGesture(desk, 'moveFitting');
    draftGesture(desk, moved(0.1));
    const { draft } = desk.getState();
    // as one who answers beside the page tells it: in brief first
    desk.setState({ answered: plan, inFull: plan });
    desk.setState({ answered: draft });
    vi.advanceTimersByTime(1_000);
    expect(shown()).toEqual([
      { plan: draft, isOld: false },
      { plan, isOld: true },
    ]);
    desk.setState({ inFull: draft });
    expect(shown()[1]).toEqual({ plan: draft, isOld: false });
  });

  it('is one plan for all that keep the pace', () => {
    const desk = createDesk(examplePlan(), { isExample: false, bigFingers: false });
    expect(pacedOf(desk, PACES.findings)).toBe(pacedOf(desk, PACES.findings));
    expect(pacedOf(desk, PACES.findings)).not.toBe(pacedOf(desk, PACES.fields));
  });

  it('reaches what stands within at its pace, and what stands elsewhere at once', () => {
    const seen: Record<'within' | 'elsewhere', Plan[]> = { within: [], elsewhere: [] };
    const { desk } = renderPanel(
      <>
        <Answered pace="findings">
          <Seen on={seen.within} />
        </Answered>
        <Seen on={seen.elsewhere} />
      </>,
      examplePlan(),
    );
    act(() => {
      beginGesture(desk, 'moveFitting');
      draftGesture(desk, moved(0.1));
    });
    const draft = answeredPlan(desk.getState());
    expect(seen.elsewhere.at(-1)).toBe(draft);
    expect(seen.within.at(-1)).not.toBe(draft);
    act(() => vi.advanceTimersByTime(400));
    expect(seen.within.at(-1)).toBe(draft);
  });
});
