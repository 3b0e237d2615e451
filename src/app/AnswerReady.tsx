import { type ReactNode, use } from 'react';
import { loadAssess } from '../desk/answer.ts';

/** Holds back what shows an answer until there is something to work it out with. */
export function AnswerReady({ children }: { children: ReactNode }) {
  use(loadAssess());
  return children;
}
