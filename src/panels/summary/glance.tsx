/**
 * Large figures while a finger drags: they change several times a second, and to work through the page for each would
 * take longer than a frame. What is said of them is compared first, and figures are written into the page by hand.
 */
import { useLayoutEffect, useRef } from 'react';
import type { Assessment } from '../../assess/answer.ts';
import { answerOf } from '../../desk/answer.ts';
import { answeredPlan } from '../../desk/desk.ts';
import { textIn } from '../../look/textIn.ts';
import type { Plan } from '../../plan/schema.ts';
import { calmOf } from '../calm.ts';
import { useDesk, useDeskStore } from '../useDesk.ts';

type Look<T> = (answer: Assessment, plan: Plan) => T;

/** What `look` makes of the answer. Drawn anew only when that is another. */
export function useGlance<T extends string | boolean | null>(look: Look<T>): T {
  return useDesk((state) => {
    const plan = answeredPlan(state);
    return look(answerOf(plan), plan);
  });
}

interface GlanceProps {
  /** The same function each time. */
  say: Look<string>;
  className?: string | undefined;
  /** For whoever looks for the figure. */
  figure?: string | undefined;
  /** So many signs have room in the large type. */
  roomFor?: number;
}

/** A text that follows the answer: nothing is drawn anew for it. */
export function Glance({ say, className, figure, roomFor = Number.POSITIVE_INFINITY }: GlanceProps) {
  const place = useRef<HTMLSpanElement>(null);
  const desk = calmOf(useDeskStore());
  useLayoutEffect(() => {
    const element = place.current;
    if (element === null) return;
    const text = textIn(element);
    const write = (): void => {
      const plan = answeredPlan(desk.getState());
      const said = say(answerOf(plan), plan);
      if (text.data === said) return;
      text.data = said;
      const isLong = said.length > roomFor;
      // told again, it would make the page look through its styles all the same
      if (isLong !== element.hasAttribute('data-long')) element.toggleAttribute('data-long', isLong);
    };
    write();
    return desk.subscribe(write);
  }, [desk, say, roomFor]);
  return <span ref={place} className={className} data-figure={figure} />;
}
