import { fireEvent, screen, within } from '@testing-library/react';
import { describe, expect, it, vi } from 'vitest';
import PlansDialog from '../../src/panels/plans/PlansDialog.tsx';
import type { KeptPlanEntry, PlanFiles } from '../../src/panels/topbar/files.ts';
import { examplePlan } from './fixture.ts';
import { renderPanel } from './render.tsx';

vi.mock('../../src/desk/answer.ts', () => ({ answerOf: () => undefined }));

/** A browser that keeps plans in a list. */
function keeping(kept: KeptPlanEntry[]) {
  const plans = {
    list: async () => [...kept],
    duplicate: vi.fn(async () => undefined),
    rename: vi.fn(async () => true),
    remove: vi.fn(async (planId: string) => {
      const index = kept.findIndex((entry) => entry.planId === planId);
      const [gone] = kept.splice(index, 1);
      return async () => {
        if (gone !== undefined) kept.splice(index, 0, gone);
      };
    }),
  };
  const files: PlanFiles = {
    saveState: { getState: () => ({ kind: 'saved' }), subscribe: () => () => undefined },
    saveFile: () => undefined,
    openFile: async () => undefined,
    openKept: vi.fn(async () => undefined),
    plans,
  };
  return { files, plans };
}

const entry = (planId: string, name: string): KeptPlanEntry => ({
  planId,
  plan: { ...examplePlan(), id: planId, name },
  time: 1_700_000_000_000,
});

async function open() {
  const open = examplePlan();
  const { files, plans } = keeping([
    { ...entry(open.id, 'On the desk') },
    entry('blue', 'Blue van'),
    { planId: 'odd', plan: null, time: 1 },
  ]);
  const { desk } = renderPanel(<PlansDialog files={files} onClose={() => undefined} />, open);
  await screen.findByText('Blue van', { selector: 'b' });
  return { desk, files, plans };
}

const blue = () => within(screen.getByText('Blue van', { selector: 'b' }).closest('li') as HTMLElement);

describe('the list of plans', () => {
  it('shows each with its picture; the one on the desk and a damaged one cannot be opened', async () => {
    const { files } = await open();
    expect(document.querySelectorAll('.kept-plan-picture svg')).toHaveLength(2);
    expect(screen.getByRole('button', { name: /On the desk open now/ })).toHaveProperty('disabled', true);
    expect(screen.getByRole('button', { name: /damaged plan saved/ })).toHaveProperty('disabled', true);
    fireEvent.click(blue().getByRole('button', { name: /Blue van saved/ }));
    expect(files.openKept).toHaveBeenCalledWith('blue');
  });

  it('duplicates and renames by name', async () => {
    const { plans } = await open();
    fireEvent.click(blue().getByRole('button', { name: 'Duplicate Blue van' }));
    expect(plans.duplicate).toHaveBeenCalledWith('blue', 'Blue van, copy');
    fireEvent.click(blue().getByRole('button', { name: 'Rename Blue van' }));
    const field = blue().getByLabelText('New name');
    fireEvent.change(field, { target: { value: 'Green van' } });
    fireEvent.blur(field);
    expect(plans.rename).toHaveBeenCalledWith('blue', 'Green van');
  });

  it('deletes at once, with a way back in the list and, once it is closed, in the message', async () => {
    const { desk } = await open();
    fireEvent.click(blue().getByRole('button', { name: 'Delete Blue van' }));
    await screen.findByText('Blue van deleted.');
    expect(screen.queryByText('Blue van', { selector: 'b' })).toBeNull();
    expect(desk.getState().message).toMatchObject({ id: 'planDeleted', params: { name: 'Blue van' } });
    fireEvent.click(screen.getByRole('button', { name: 'Undo' }));
    await screen.findByText('Blue van', { selector: 'b' });
    expect(desk.getState().message).toBeNull();
  });

  it('offers no deleting of the plan that lies on the desk', async () => {
    await open();
    const here = screen.getByText('On the desk', { selector: 'b' }).closest('li') as HTMLElement;
    expect(within(here).queryByRole('button', { name: /Delete/ })).toBeNull();
  });
});
