import { canPropose } from '../../plan/propose/lacking.ts';
import { openSheet } from '../openSheet.ts';
import { acceptAll, proposeFeed, refuseAll } from '../proposing.ts';
import type { Act } from './act.ts';

export const proposeAct: Act = {
  id: 'propose',
  keys: ['o'],
  allowed: (state) => state.proposal.length === 0 && canPropose(state.plan, openSheet(state).id),
  run: (desk) => void proposeFeed(desk),
};

export const acceptAllAct: Act = {
  id: 'acceptAll',
  keys: ['Shift+o'],
  allowed: (state) => state.proposal.length > 0,
  run: acceptAll,
};

export const refuseAllAct: Act = {
  id: 'refuseAll',
  keys: ['Shift+Delete', 'Shift+Backspace'],
  allowed: (state) => state.proposal.length > 0,
  run: refuseAll,
};
