import type { ReactNode } from 'react';
import type { Desk } from '../desk/desk.ts';
import { DeskContext } from './useDesk.ts';

/** The desk for all that stands within. */
export const DeskProvider = ({ desk, children }: { desk: Desk; children: ReactNode }) => (
  <DeskContext value={desk}>{children}</DeskContext>
);
