import { fireEvent, render, screen } from '@testing-library/react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { listenForFiles } from '../../src/app/dropFile.ts';
import { ErrorBoundary } from '../../src/app/ErrorBoundary.tsx';
import { listenForKeys } from '../../src/app/shortcuts.ts';
import { createDesk } from '../../src/desk/desk.ts';
import { commit, undoDepth } from '../../src/desk/edit.ts';
import { renamePlan } from '../../src/plan/edits/renamePlan.ts';
import { words } from '../../src/words/index.ts';
import { emptyVan } from '../desk/plans.ts';

afterEach(() => vi.restoreAllMocks());

describe('the keyboard', () => {
  it('undoes and redoes, and takes the key from the browser only when an act ran', () => {
    const desk = createDesk(emptyVan(), { isExample: false, bigFingers: false });
    commit(desk, 'rename', (plan) => renamePlan(plan, 'One'));
    const stop = listenForKeys(desk, window);
    // false: its default was prevented
    expect(fireEvent.keyDown(document.body, { key: 'z', ctrlKey: true })).toBe(false);
    expect(desk.getState().plan.name).toBe('Van');
    expect(fireEvent.keyDown(document.body, { key: 'Z', ctrlKey: true, shiftKey: true })).toBe(false);
    expect(desk.getState().plan.name).toBe('One');
    expect(fireEvent.keyDown(document.body, { key: 'ArrowLeft' })).toBe(true);
    stop();
    fireEvent.keyDown(document.body, { key: 'z', ctrlKey: true });
    expect(undoDepth(desk)).toBe(1);
  });

  it('lets a sketch that handles a key first keep it', () => {
    const desk = createDesk(emptyVan(), { isExample: false, bigFingers: false });
    desk.setState({ hand: { way: 'run' } });
    const stop = listenForKeys(desk, window);
    const keep = (event: Event) => event.preventDefault();
    window.addEventListener('keydown', keep, { capture: true });
    fireEvent.keyDown(document.body, { key: 'Escape' });
    expect(desk.getState().hand).toEqual({ way: 'run' });
    window.removeEventListener('keydown', keep, { capture: true });
    fireEvent.keyDown(document.body, { key: 'Escape' });
    expect(desk.getState().hand).toEqual({ way: 'move' });
    stop();
  });
});

describe('a file dragged onto the page', () => {
  it('is opened, and the browser does not leave the page for it', () => {
    const files: File[] = [];
    const stop = listenForFiles({ openFile: async (file) => void files.push(file) }, window);
    const file = new File(['{}'], 'van.plan.json');
    const dataTransfer = { types: ['Files'], files: [file], dropEffect: 'none' };
    expect(fireEvent.dragOver(document.body, { dataTransfer })).toBe(false);
    expect(fireEvent.drop(document.body, { dataTransfer })).toBe(false);
    expect(files).toEqual([file]);
    expect(fireEvent.drop(document.body, { dataTransfer: { types: ['text/plain'], files: [] } })).toBe(true);
    stop();
    fireEvent.drop(document.body, { dataTransfer });
    expect(files).toHaveLength(1);
  });
});

function Fragile({ plan }: { plan: { isBroken: boolean } }) {
  if (plan.isBroken) throw new Error('no such fitting');
  return <p>whole again</p>;
}

describe('a page that fails', () => {
  it('says so in plain words, saves the plan as a file, and goes on with an empty plan', () => {
    vi.spyOn(console, 'error').mockImplementation(() => undefined);
    const onSave = vi.fn();
    const plan = { isBroken: true };
    const onEmpty = vi.fn(() => {
      plan.isBroken = false;
    });
    render(
      <ErrorBoundary onSave={onSave} onEmpty={onEmpty}>
        <Fragile plan={plan} />
      </ErrorBoundary>,
    );
    expect(screen.getByRole('alert').textContent).toContain(words.crash.kept);
    expect(screen.getByText('no such fitting')).toBeTruthy();
    fireEvent.click(screen.getByRole('button', { name: words.crash.save }));
    expect(onSave).toHaveBeenCalledOnce();
    expect(screen.getByRole('button', { name: words.crash.reload })).toBeTruthy();
    fireEvent.click(screen.getByRole('button', { name: words.crash.empty }));
    expect(onEmpty).toHaveBeenCalledOnce();
    expect(screen.getByText('whole again')).toBeTruthy();
  });
});
