import { act, fireEvent, screen, waitFor } from '@testing-library/react';
import { describe, expect, it, vi } from 'vitest';
import { TemplateTiles } from '../../src/panels/outline/TemplateTiles.tsx';
import type { TemplateEntry, TemplateFiles } from '../../src/panels/outline/templates.ts';
import { DEFAULT_OUTLINES } from '../../src/plan/outline.ts';
import { ownFrom } from '../../src/plan/ownOutline.ts';
import { examplePlan } from './fixture.ts';
import { renderPanel } from './render.tsx';

vi.mock('../../src/desk/answer.ts', () => ({ answerOf: () => undefined }));

const HIGH: TemplateEntry = {
  id: 'high',
  name: 'High roof',
  outline: ownFrom(DEFAULT_OUTLINES.panelVan),
  mirrored: false,
};
const BOARD: TemplateEntry = {
  id: 'board',
  name: 'Long board',
  outline: ownFrom(DEFAULT_OUTLINES.bench),
  mirrored: false,
};

/** A browser that keeps templates in a list. */
function keeping(kept: TemplateEntry[]): TemplateFiles {
  return {
    list: async () => [...kept],
    keep: async () => true,
    remove: async (id) => {
      const index = kept.findIndex((entry) => entry.id === id);
      const [gone] = kept.splice(index, 1);
      return async () => {
        if (gone !== undefined) kept.splice(index, 0, gone);
      };
    },
  };
}

async function show(...kept: TemplateEntry[]) {
  const onStart = vi.fn();
  const { desk } = renderPanel(<TemplateTiles templates={keeping(kept)} onStart={onStart} />, examplePlan());
  if (kept.length > 0) await screen.findByText('High roof');
  return { desk, onStart };
}
const remove = async (name: string) => {
  fireEvent.click(screen.getByRole('button', { name: `Delete the template ${name}` }));
  await waitFor(() => expect(screen.queryByText(name)).toBeNull());
};
const names = () => [...document.querySelectorAll('.template-start')].map((tile) => tile.textContent);

describe('own templates', () => {
  it('are shown by picture and name; a press begins with that one', async () => {
    const { onStart } = await show(HIGH, BOARD);
    expect(names()).toEqual(['High roof', 'Long board']);
    expect(document.querySelectorAll('.template-start svg')).toHaveLength(2);
    fireEvent.click(screen.getByText('Long board'));
    expect(onStart.mock.calls).toEqual([[BOARD]]);
  });

  it('say so where the wheel was on the right', async () => {
    await show(HIGH, { ...BOARD, name: 'Ferry van', mirrored: true });
    expect(names()).toEqual(['High roof', 'Ferry vanRight-hand drive']);
  });

  it('are not spoken of where there are none', async () => {
    await show();
    await act(async () => undefined);
    expect(screen.queryByText('Own templates')).toBeNull();
  });

  it('are deleted at once, with a way back beside them, the last one too', async () => {
    const { desk, onStart } = await show(HIGH);
    await remove('High roof');
    expect(desk.getState().message).toMatchObject({ id: 'removed', params: { name: 'High roof' }, undo: false });
    fireEvent.click(screen.getByRole('button', { name: 'Undo' }));
    await screen.findByText('High roof');
    expect(desk.getState().message).toBeNull();
    expect(screen.queryByRole('button', { name: 'Undo' })).toBeNull();
    expect(onStart).not.toHaveBeenCalled();
  });

  it('come back from the message as well, in their place', async () => {
    const { desk } = await show(HIGH, BOARD);
    await remove('High roof');
    expect(names()).toEqual(['Long board']);
    await act(async () => desk.getState().message?.takeBack?.());
    await screen.findByText('High roof');
    expect(names()).toEqual(['High roof', 'Long board']);
  });
});
