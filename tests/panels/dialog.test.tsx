import { act, fireEvent, render, screen } from '@testing-library/react';
import { useState } from 'react';
import { expect, it, vi } from 'vitest';
import { Dialog } from '../../src/panels/dialog/Dialog.tsx';

const noop = () => undefined;

/** A page with a button that opens a sheet, and something else to press. */
function Page({ onSketch = noop }: { onSketch?: (() => void) | undefined }) {
  const [isOpen, setOpen] = useState(false);
  return (
    <>
      <button type="button" aria-haspopup="dialog" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
        Legend
      </button>
      <button type="button" onClick={onSketch}>
        Sketch
      </button>
      <div data-testid="paper" />
      {isOpen ? (
        <Dialog title="What it means" onClose={() => setOpen(false)} over="answer">
          <p>Words</p>
        </Dialog>
      ) : null}
    </>
  );
}

const button = (name: string) => screen.getByRole('button', { name });
const dialog = () => document.querySelector('dialog');

/** A press as the browser tells it: with where it was. */
function press(target: Element, to: { x: number; y: number } = { x: 5, y: 5 }): void {
  fireEvent.pointerDown(target, { clientX: 5, clientY: 5 });
  fireEvent.click(target, { clientX: to.x, clientY: to.y });
}

function open(onSketch?: () => void): void {
  render(<Page onSketch={onSketch} />);
  act(() => button('Legend').focus());
  fireEvent.click(button('Legend'));
  expect(dialog()?.open).toBe(true);
}

it('a sheet is not modal: the page beside it stays in use', () => {
  const showModal = vi.spyOn(HTMLDialogElement.prototype, 'showModal');
  const onSketch = vi.fn();
  open(onSketch);
  expect(showModal).not.toHaveBeenCalled();
  fireEvent.click(button('Sketch'));
  expect(onSketch).toHaveBeenCalledOnce();
  showModal.mockRestore();
});

it.each<[string, () => void]>([
  ['Escape in it', () => fireEvent.keyDown(button('Close'), { key: 'Escape' })],
  ['Escape elsewhere', () => fireEvent.keyDown(document.body, { key: 'Escape' })],
  ['a tap beside it', () => press(screen.getByTestId('paper'))],
  ['its button again', () => press(button('Legend'))],
  ['Close', () => fireEvent.click(button('Close'))],
])('goes by %s, and the focus goes back to its button', (_what, leave) => {
  open();
  act(() => button('Close').focus());
  act(leave);
  expect(dialog()).toBeNull();
  expect(document.activeElement).toBe(button('Legend'));
});

it('stays while something is dragged beside it, and for a key that was for something else', () => {
  open();
  press(screen.getByTestId('paper'), { x: 60, y: 5 });
  const taken = new KeyboardEvent('keydown', { key: 'Escape', cancelable: true, bubbles: true });
  taken.preventDefault();
  act(() => void document.body.dispatchEvent(taken));
  expect(dialog()).not.toBeNull();
});

it('goes when the focus goes elsewhere, and leaves it there', () => {
  open();
  act(() => button('Sketch').focus());
  expect(dialog()).toBeNull();
  expect(document.activeElement).toBe(button('Sketch'));
});
