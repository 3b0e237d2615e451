import { fireEvent, screen } from '@testing-library/react';
import type { ReactNode } from 'react';
import { describe, expect, it, vi } from 'vitest';
import { FittingFields } from '../../src/panels/inspector/FittingFields.tsx';
import { RunFields } from '../../src/panels/inspector/RunFields.tsx';
import { Assumptions } from '../../src/panels/summary/Assumptions.tsx';
import { Figures } from '../../src/panels/summary/Figures.tsx';
import { FuseTable } from '../../src/panels/summary/FuseTable.tsx';
import { RunTable } from '../../src/panels/summary/RunTable.tsx';
import { OwnLinkFields } from '../../src/panels/topbar/OwnLinkFields.tsx';
import SettingsDialog from '../../src/panels/topbar/SettingsDialog.tsx';
import { fittingById, runById } from '../../src/plan/byId.ts';
import { glossary, type TermId } from '../../src/words/en/glossary.ts';
import { exampleAnswer, examplePlan } from './fixture.ts';
import { renderPanel } from './render.tsx';

vi.mock('../../src/desk/answer.ts', async () => {
  const { exampleAnswer } = await import('./fixture.ts');
  return { answerOf: exampleAnswer };
});

const plan = examplePlan();
const answer = exampleAnswer(plan);

const figures = () => <Figures />;
const runs = () => <RunTable runs={answer.runs} plan={plan} />;
const fuses = () => <FuseTable fuses={answer.fuses} plan={plan} />;
const checked = () => <Assumptions answer={answer} plan={plan} />;

function fitting(id: string): ReactNode {
  const found = fittingById(plan, id);
  if (found === undefined) throw new Error(`no fitting ${id}`);
  return <FittingFields fitting={found} plan={plan} />;
}

function run(): ReactNode {
  const found = runById(plan, 'batToFuse');
  if (found === undefined) throw new Error('no run');
  return <RunFields run={found} plan={plan} />;
}

const OWN_LINK = { name: '', seat: 'holder', ratingsA: [], breakingA: null, ratedV: null } as const;
const ownLink = () => <OwnLinkFields link={{ ...OWN_LINK, ratingsA: [] }} onTake={() => undefined} />;
const settings = () => <SettingsDialog onClose={() => undefined} />;

/** Where each word first stands, and so is explained: a new word without a place does not compile. */
const PLACES: Readonly<Record<TermId, () => ReactNode>> = {
  ampacity: runs,
  branchFuse: fuses,
  breakingCapacity: ownLink,
  bundle: run,
  clearingTime: checked,
  conductor: figures,
  cutLength: run,
  derating: settings,
  distributionBlock: () => fitting('block'),
  drop: figures,
  fuseHolder: () => fitting('mainFuse'),
  gauge: runs,
  groundPoint: () => fitting('frontGround'),
  grommet: () => fitting('pass'),
  loom: run,
  mainFuse: figures,
  passThrough: () => fitting('pass'),
  prospectiveCurrent: checked,
  run: runs,
  selectivity: checked,
  slack: run,
  terminal: () => fitting('bat'),
  unprotectedLength: figures,
};

const IDS = Object.keys(glossary) as TermId[];

describe('each trade word is explained where it first stands', () => {
  it.each(IDS)('%s', async (id) => {
    const { container } = renderPanel(PLACES[id](), plan);
    const buttons = container.ownerDocument.querySelectorAll<HTMLButtonElement>(`button[data-term="${id}"]`);
    expect(buttons.length).toBe(1);
    const [button] = buttons;
    if (button === undefined) throw new Error('no help');
    expect(button.getAttribute('aria-expanded')).toBe('false');
    // the name of a table or of a column stays its name
    const isName = button.closest('caption, th') !== null;
    if (!isName) expect(button.getAttribute('aria-label')).toMatch(/^What does '.+' mean\?$/);
    fireEvent.click(button);
    expect(button.getAttribute('aria-expanded')).toBe('true');
    const note = await screen.findByRole('note');
    expect(note.id).toBe(button.getAttribute('aria-controls'));
    expect((await screen.findByText(glossary[id].word, { selector: 'b' })).parentElement?.textContent).toBe(
      `${glossary[id].word}: ${glossary[id].means}`,
    );
    fireEvent.keyDown(button, { key: 'Escape' });
    expect(screen.queryByRole('note')).toBeNull();
    expect(button.getAttribute('aria-expanded')).toBe('false');
  });

  it('asking what a figure is called is not asking why it is so', () => {
    const { openWhy } = renderPanel(figures(), plan);
    fireEvent.click(screen.getByRole('button', { name: "What does 'Main fuse' mean?" }));
    expect(openWhy).not.toHaveBeenCalled();
    fireEvent.click(screen.getByRole('button', { name: /^Main fuse/ }));
    expect(openWhy).toHaveBeenCalledOnce();
  });

  it('one word of a table is explained at a time', async () => {
    renderPanel(runs(), plan);
    fireEvent.click(screen.getByRole('button', { name: 'Gauge' }));
    fireEvent.click(screen.getByRole('button', { name: 'Cur\u00adrent' }));
    expect((await screen.findAllByRole('note')).length).toBe(1);
    expect(await screen.findByText(glossary.ampacity.word, { selector: 'b' })).toBeTruthy();
  });
});

describe('the explanations', () => {
  it('are short, whole sentences, and each says something of its own', () => {
    for (const { word, means } of Object.values(glossary)) {
      expect(means, word).toMatch(/^[A-Z].*\.$/);
      expect(means.length, word).toBeLessThan(180);
    }
    expect(new Set(Object.values(glossary).map(({ means }) => means)).size).toBe(IDS.length);
  });
});
