/** A panel on a desk of its own, answered for by hand. */
import { render } from '@testing-library/react';
import type { ReactNode } from 'react';
import { vi } from 'vitest';
import { createDesk, type Desk } from '../../src/desk/desk.ts';
import { DeskProvider } from '../../src/panels/DeskProvider.tsx';
import { type OpenWhy, WhyContext } from '../../src/panels/why/useWhy.ts';
import type { Plan } from '../../src/plan/schema.ts';

export function renderPanel(panel: ReactNode, plan: Plan) {
  const desk: Desk = createDesk(plan, { isExample: false, bigFingers: false });
  const openWhy = vi.fn<OpenWhy>();
  const view = render(
    <DeskProvider desk={desk}>
      <WhyContext value={openWhy}>{panel}</WhyContext>
    </DeskProvider>,
  );
  return { desk, openWhy, ...view };
}
