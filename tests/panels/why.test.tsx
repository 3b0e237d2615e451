import { fireEvent, screen } from '@testing-library/react';
import { evaluate } from 'mathjs';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import WhyDialog from '../../src/panels/why/WhyDialog.tsx';
import { examplePlan } from './fixture.ts';
import { renderPanel } from './render.tsx';

vi.mock('../../src/desk/answer.ts', async () => {
  const { exampleAnswer } = await import('./fixture.ts');
  return { answerOf: exampleAnswer };
});

/** What the dialog shows, read as a person would: symbol -> text of its value and of its expression. */
function shown(): Map<string, { value: string; expression: string | null }> {
  const rows = [...document.querySelectorAll<HTMLElement>('[data-symbol]')];
  return new Map(
    rows.map((row) => [
      row.dataset.symbol ?? '',
      {
        value: row.querySelector('[data-value]')?.textContent ?? '',
        expression: row.querySelector('[data-expression]')?.textContent ?? null,
      },
    ]),
  );
}

beforeAll(() => {
  // happy-dom has the element but not its modal state
  HTMLDialogElement.prototype.showModal = function showModal() {
    this.open = true;
  };
});

describe('the reason behind a figure', () => {
  it('shows what can be worked out again: the shown inputs give the shown figure', () => {
    renderPanel(<WhyDialog whyId="why.body" title="Drop" onClose={() => undefined} />, examplePlan());
    const rows = shown();
    const scope = Object.fromEntries([...rows].map(([symbol, { value }]) => [symbol, evaluate(value)]));
    const result = rows.get('Ubody');
    expect(result?.expression).toBe('I * Rbody');
    const again = Number(evaluate(result?.expression ?? '', scope));
    expect(again).toBeCloseTo(Number(result?.value), 6);
    // 102.4 A through 1 mohm
    expect(result?.value).toBe('0.1024');
  });

  it('names units, sources and trust', () => {
    renderPanel(<WhyDialog whyId="why.body" title="Drop" onClose={() => undefined} />, examplePlan());
    const row = document.querySelector('[data-symbol="Rbody"]');
    expect(row?.textContent).toContain('0.001 Ω');
    expect(row?.textContent).toContain('assumed: Common practice (from memory)');
  });

  it('an assumption is told there, as one step of history, and the figure follows', () => {
    const { desk } = renderPanel(<WhyDialog whyId="why.body" title="Drop" onClose={() => undefined} />, examplePlan());
    const field = screen.getByLabelText(/body resistance/);
    fireEvent.change(field, { target: { value: '0,002' } });
    expect(desk.getState().plan.settings.bodyOhm.value).toBe(0.001);
    fireEvent.blur(field);
    expect(desk.getState().plan.settings.bodyOhm).toEqual({ value: 0.002, origin: 'told' });
    expect(desk.temporal.getState().pastStates.length).toBe(1);
    expect(shown().get('Ubody')?.value).toBe('0.2048');
  });

  it('refuses what a plan could not hold, says why and keeps what was typed', () => {
    const { desk } = renderPanel(<WhyDialog whyId="why.body" title="Drop" onClose={() => undefined} />, examplePlan());
    const field = screen.getByLabelText<HTMLInputElement>(/body resistance/);
    fireEvent.change(field, { target: { value: '7' } });
    fireEvent.blur(field);
    expect(screen.getByRole('alert').textContent).toBe('body resistance: at most 1. The value before is kept.');
    expect(field.value).toBe('7');
    expect(desk.getState().plan.settings.bodyOhm.value).toBe(0.001);
  });

  it('closing it changes nothing', () => {
    const onClose = vi.fn();
    const { desk } = renderPanel(<WhyDialog whyId="why.body" title="Drop" onClose={onClose} />, examplePlan());
    const before = desk.getState();
    fireEvent.click(screen.getByRole('button', { name: 'Close', hidden: true }));
    expect(onClose).toHaveBeenCalledOnce();
    expect(desk.getState()).toBe(before);
  });
});
