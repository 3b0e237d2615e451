import type { TerminalRef } from '../../src/plan/schema.ts';

/** A terminal written 'fitting.terminal'. */
export function terminalRef(text: string): TerminalRef {
  const [fittingId = '', terminal = ''] = text.split('.');
  return { fittingId, terminal };
}
