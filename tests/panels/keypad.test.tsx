import { fireEvent, screen } from '@testing-library/react';
import { describe, expect, it, vi } from 'vitest';
import { LengthField } from '../../src/panels/keypad/LengthField.tsx';
import { examplePlan } from './fixture.ts';
import { renderPanel } from './render.tsx';

vi.mock('../../src/desk/answer.ts', () => ({ answerOf: () => undefined }));

function field(onTake: (m: number | null) => void) {
  renderPanel(<LengthField label="Rise" valueM={0.5} minM={0} maxM={20} onTake={onTake} />, examplePlan());
  fireEvent.click(screen.getByRole('button', { name: 'Keypad: Rise' }));
}

const press = (...keys: string[]) => {
  for (const key of keys) fireEvent.click(screen.getByRole('button', { name: key }));
};

describe('the keypad', () => {
  it('types feet, inches and a fraction', () => {
    const onTake = vi.fn();
    field(onTake);
    press('Clear', '5', 'ft', '3', 'Space', '1', '/', '2', 'in');
    expect(screen.getByLabelText<HTMLInputElement>('Rise').value.trim()).toBe('5 ft 3 1/2 in');
    press('Done');
    expect(onTake).toHaveBeenCalledWith(expect.closeTo(1.6129, 9));
    expect(screen.queryByRole('button', { name: 'Done' })).toBeNull();
  });

  it('takes back the last sign, a unit as one', () => {
    field(() => undefined);
    press('Clear', '1', '2', 'cm', 'Delete the last sign', 'Delete the last sign', '5');
    expect(screen.getByLabelText<HTMLInputElement>('Rise').value).toBe('15');
  });

  it('stays open on what it cannot read, and says why', () => {
    const onTake = vi.fn();
    field(onTake);
    press('Clear', '/', 'Done');
    expect(screen.getByRole('alert').textContent).toContain('Rise: this is not a length.');
    expect(screen.getByRole('button', { name: 'Done' })).toBeTruthy();
    expect(onTake).not.toHaveBeenCalled();
  });

  it('has keys for the parts of an inch where lengths are shown in feet, and takes one back as one', () => {
    const onTake = vi.fn();
    const plan = examplePlan();
    renderPanel(<LengthField label="Rise" valueM={0.5} minM={0} maxM={20} onTake={onTake} />, {
      ...plan,
      settings: { ...plan.settings, showLength: 'ft-in' },
    });
    fireEvent.click(screen.getByRole('button', { name: 'Keypad: Rise' }));
    press('Clear', '6', '1/4', 'Delete the last sign', '1/16', 'in', 'Done');
    // 6 1/16 in
    expect(onTake).toHaveBeenCalledWith(expect.closeTo((6 + 1 / 16) * 0.0254, 9));
  });

  it('has none where lengths are shown in metres, and no key for a negative length', () => {
    field(() => undefined);
    for (const name of ['1/2', '1/16', '-', '−']) expect(screen.queryByRole('button', { name })).toBeNull();
  });

  it('refuses a negative length that was typed', () => {
    const onTake = vi.fn();
    field(onTake);
    fireEvent.change(screen.getByLabelText('Rise'), { target: { value: '-5 cm' } });
    press('Done');
    expect(screen.getByRole('alert').textContent).toContain('Rise');
    expect(onTake).not.toHaveBeenCalled();
  });
});
