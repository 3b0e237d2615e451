import type { ReactNode } from 'react';
import { words } from '../../words/answer.ts';
import { useOpenWhy } from './useWhy.ts';

interface FigureProps {
  /** null: there is nothing to explain, so it cannot be pressed. */
  why: string | null;
  /** What the figure is, for the title of its reason. */
  title: string;
  children: ReactNode;
}

/** A figure that can be asked why. */
export function Figure({ why, title, children }: FigureProps) {
  const openWhy = useOpenWhy();
  if (why === null) return <span className="figure-plain">{children}</span>;
  return (
    <button type="button" className="figure" title={words.summary.whyOf(title)} onClick={() => openWhy(why, title)}>
      {children}
    </button>
  );
}
