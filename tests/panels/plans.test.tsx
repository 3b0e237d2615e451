import { act, fireEvent, screen, within } from '@testing-library/react';
import { describe, expect, it, vi } from 'vitest';
import PlansDialog from '../../src/panels/plans/PlansDialog.tsx';
import type { KeptPlanEntry, PlanFiles } from '../../src/panels/topbar/files.ts';
import { examplePlan } from './fixture.ts';
import { renderPanel } from './render.tsx';

vi.mock('../../src/desk/answer.ts', () => ({ answerOf: () => undefined }));

/** A browser that keeps plans in a list. */
function keeping(kept: KeptPlanEntry[], openId: () => string) {
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
    openId,
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

/** An empty plan. */
const newPlanOf = (id: string) => ({ ...examplePlan(), id, fittings: [], runs: [] });

/** `openAs`: the id under which the plan on the desk is kept; its own unless told. */
async function open(openAs = examplePlan().id) {
  const open = examplePlan();
  const { files, plans } = keeping(
    [{ ...entry(open.id, 'On the desk') }, entry('blue', 'Blue van'), { planId: 'odd', plan: null, time: 1 }],
    () => openAs,
  );
  const { desk, unmount } = renderPanel(<PlansDialog files={files} onClose={() => undefined} />, open);
  await screen.findByText('Blue van', { selector: 'b' });
  return { desk, files, plans, unmount };
}

const blue = () => within(screen.getByText('Blue van', { selector: 'b' }).closest('li') as HTMLElement);

describe('the list of plans', () => {
  it('knows which is open where that is kept under another id than its own', async () => {
    const { desk, files, plans } = await open('blue');
    expect(screen.getByRole('button', { name: /Blue van open now/ })).toHaveProperty('disabled', true);
    fireEvent.click(screen.getByRole('button', { name: /^Delete On the desk/ }));
    await screen.findByText('On the desk deleted.');
    // another tab's: what is on the desk here stays
    expect(plans.remove).toHaveBeenCalledWith(desk.getState().plan.id);
    expect(files.openKept).not.toHaveBeenCalled();
  });

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
    fireEvent.click(screen.getByRole('button', { name: /^Undo/ }));
    await screen.findByText('Blue van', { selector: 'b' });
    expect(desk.getState().message).toBeNull();
  });

  it('offers the way back anew when it closes, and not once it was taken', async () => {
    const { desk, unmount } = await open();
    fireEvent.click(blue().getByRole('button', { name: 'Delete Blue van' }));
    await screen.findByText('Blue van deleted.');
    // the message has had its time meanwhile
    act(() => desk.setState({ message: null }));
    unmount();
    expect(desk.getState().message).toMatchObject({ id: 'planDeleted', params: { name: 'Blue van' } });

    const again = await open();
    fireEvent.click(blue().getByRole('button', { name: 'Delete Blue van' }));
    await screen.findByText('Blue van deleted.');
    fireEvent.click(screen.getByRole('button', { name: /^Undo/ }));
    await screen.findByText('Blue van', { selector: 'b' });
    again.unmount();
    expect(again.desk.getState().message).toBeNull();
  });
});

describe('a new name', () => {
  const naming = async () => {
    const opened = await open();
    fireEvent.click(blue().getByRole('button', { name: 'Rename Blue van' }));
    return { ...opened, field: blue().getByLabelText<HTMLInputElement>('New name') };
  };
  const isGone = () => expect(screen.queryByLabelText('New name')).toBeNull();
  const focused = () => document.activeElement?.textContent;

  it('is typed at once: the field has the focus, and the old name is selected', async () => {
    const { field } = await naming();
    expect(document.activeElement).toBe(field);
    expect([field.selectionStart, field.selectionEnd]).toEqual([0, 'Blue van'.length]);
  });

  it('is kept by Enter and by Done, once, and the focus goes back', async () => {
    const { plans, field } = await naming();
    fireEvent.change(field, { target: { value: ' Green van ' } });
    fireEvent.submit(field);
    isGone();
    expect(plans.rename.mock.calls).toEqual([['blue', 'Green van']]);
    expect(focused()).toBe('Rename Blue van');

    fireEvent.click(blue().getByRole('button', { name: 'Rename Blue van' }));
    fireEvent.change(blue().getByLabelText('New name'), { target: { value: 'Red van' } });
    fireEvent.click(blue().getByRole('button', { name: 'Done' }));
    isGone();
    expect(plans.rename.mock.calls).toEqual([
      ['blue', 'Green van'],
      ['blue', 'Red van'],
    ]);
  });

  it('is dropped by Escape, and none is asked for twice', async () => {
    const { plans, field } = await naming();
    fireEvent.change(field, { target: { value: 'Green van' } });
    fireEvent.keyDown(field, { key: 'Escape' });
    isGone();
    expect(focused()).toBe('Rename Blue van');
    expect(plans.rename).not.toHaveBeenCalled();
    fireEvent.click(blue().getByRole('button', { name: 'Rename Blue van' }));
    fireEvent.click(blue().getByRole('button', { name: 'Done' }));
    isGone();
    expect(plans.rename).not.toHaveBeenCalled();
  });
});

describe('the plan on the desk', () => {
  const here = () => within(screen.getByText('On the desk', { selector: 'b' }).closest('li') as HTMLElement);

  it('can be deleted: the next one comes onto the desk first, and undo brings it back', async () => {
    const { files, plans, desk } = await open();
    const { id } = desk.getState().plan;
    fireEvent.click(here().getByRole('button', { name: 'Delete On the desk' }));
    await screen.findByText('On the desk deleted.');
    expect(files.openKept).toHaveBeenCalledWith('blue');
    expect(plans.remove).toHaveBeenCalledWith(id);
    expect(vi.mocked(files.openKept).mock.invocationCallOrder[0]).toBeLessThan(
      plans.remove.mock.invocationCallOrder[0] ?? 0,
    );
    fireEvent.click(screen.getByRole('button', { name: /^Undo/ }));
    await screen.findByText('On the desk', { selector: 'b' });
    expect(files.openKept).toHaveBeenLastCalledWith(id);
  });

  it('and the one after it: each has its own way back; an empty one that stood in takes none of them away', async () => {
    const { desk, plans, unmount } = await open();
    fireEvent.click(here().getByRole('button', { name: 'Delete On the desk' }));
    await screen.findByText('On the desk deleted.');
    fireEvent.click(blue().getByRole('button', { name: 'Delete Blue van' }));
    await screen.findByText('Blue van deleted.');
    fireEvent.click(screen.getByRole('button', { name: 'Undo On the desk' }));
    await screen.findByText('On the desk', { selector: 'b' });
    expect(screen.queryByText('On the desk deleted.')).toBeNull();
    expect(desk.getState().message).toMatchObject({ params: { name: 'Blue van' } });
    fireEvent.click(screen.getByRole('button', { name: 'Undo Blue van' }));
    await screen.findByText('Blue van', { selector: 'b' });
    expect(desk.getState().message).toBeNull();
    expect(plans.remove).toHaveBeenCalledTimes(2);
    unmount();

    const stoodIn = { ...newPlanOf('blank'), name: 'Untitled plan' };
    const only = examplePlan();
    const kept = [{ ...entry(only.id, 'On the desk') }, { planId: 'blank', plan: stoodIn, time: 1 }];
    const { files } = keeping(kept, () => 'none');
    const { desk: other } = renderPanel(<PlansDialog files={files} onClose={() => undefined} />, only);
    await screen.findByText('Untitled plan', { selector: 'b' });
    fireEvent.click(here().getByRole('button', { name: 'Delete On the desk' }));
    await screen.findByText('On the desk deleted.');
    fireEvent.click(screen.getByRole('button', { name: 'Delete Untitled plan' }));
    await screen.findByText('Untitled plan deleted.');
    expect(other.getState().message).toMatchObject({ params: { name: 'On the desk' } });
    expect(screen.getByRole('button', { name: 'Undo On the desk' })).toBeDefined();
  });

  it('leaves an empty one where there is no other, which goes again with undo', async () => {
    const only = examplePlan();
    const { files, plans } = keeping(
      [{ ...entry(only.id, 'On the desk') }, { planId: 'odd', plan: null, time: 1 }],
      () => only.id,
    );
    const { desk } = renderPanel(<PlansDialog files={files} onClose={() => undefined} />, only);
    await screen.findByText('On the desk', { selector: 'b' });
    fireEvent.click(here().getByRole('button', { name: 'Delete On the desk' }));
    await screen.findByText('On the desk deleted.');
    const blank = desk.getState().plan;
    expect(blank).toMatchObject({ name: 'Untitled plan', fittings: [], runs: [] });
    expect(blank.id).not.toBe(only.id);
    fireEvent.click(screen.getByRole('button', { name: /^Undo/ }));
    await screen.findByText('On the desk', { selector: 'b' });
    expect(files.openKept).toHaveBeenLastCalledWith(only.id);
    expect(plans.remove).toHaveBeenLastCalledWith(blank.id);
  });
});
