import './message.css';
import { lazy, Suspense, useEffect, useState } from 'react';
import type { Message, MessageId } from '../../desk/desk.ts';
import { undo } from '../../desk/edit.ts';
import { nameOfId, words } from '../../words/index.ts';
import { Icon } from '../shelf/Icon.tsx';
import { useDesk, useDeskStore } from '../useDesk.ts';

type MessageWords = Readonly<
  Record<Exclude<MessageId, 'fileRefused'>, (params: Readonly<Record<string, string | number>>) => string>
>;

/** Every message the desk can send has words: the compiler holds the two lists together. */
const messageWords = (): MessageWords => words.messages;

// its words are many, and most visits need none of them
const RefusedText = lazy(() => import('./RefusedText.tsx'));

/** Long enough to read. What cannot be read again, or offers something to be done, waits for the reader. */
const SHOWN_MS = 6000;
const STAYING: ReadonlySet<MessageId> = new Set([
  'fileRefused',
  'notKept',
  'storageFull',
  'otherTab',
  'savedDamaged',
  'handMissing',
]);

const hasOffer = ({ undo, takeBack }: Message): boolean => undo || takeBack !== undefined;

function MessageText({ message: { id, params, of } }: { message: Message }) {
  if (id !== 'fileRefused')
    return <p>{messageWords()[id](of ? { ...params, name: nameOfId(of.plan, of.id) ?? '' } : params)}</p>;
  return (
    <Suspense fallback={null}>
      <RefusedText params={params} />
    </Suspense>
  );
}

/** A short message at the foot of the sketch; a deletion is taken back from here. */
export function MessageBar() {
  const desk = useDeskStore();
  const message = useDesk((state) => state.message);
  const [isUnderPointer, setUnderPointer] = useState(false);
  const [hasFocus, setFocus] = useState(false);
  const isHeld = isUnderPointer || hasFocus;
  const putAway = () => {
    // what has gone is left by nobody
    setUnderPointer(false);
    setFocus(false);
    desk.setState({ message: null });
  };

  useEffect(() => {
    if (message === null || STAYING.has(message.id) || hasOffer(message) || isHeld) return;
    const timer = setTimeout(() => {
      if (desk.getState().message === message) desk.setState({ message: null });
    }, SHOWN_MS);
    return () => clearTimeout(timer);
  }, [desk, message, isHeld]);

  return (
    <div
      className="message-place"
      role="status"
      aria-live="polite"
      onPointerEnter={() => setUnderPointer(true)}
      onPointerLeave={() => setUnderPointer(false)}
      onFocus={() => setFocus(true)}
      onBlur={() => setFocus(false)}
    >
      {message === null ? null : (
        <div className="message" data-message={message.id}>
          <MessageText message={message} />
          {hasOffer(message) ? (
            <button
              type="button"
              className="strong"
              onClick={() => {
                if (message.takeBack === undefined) undo(desk);
                else message.takeBack();
                putAway();
              }}
            >
              {words.messageActs.undo}
            </button>
          ) : null}
          <button type="button" className="message-dismiss" onClick={putAway}>
            <Icon name="close" />
            <span className="sr-only">{words.messageActs.dismiss}</span>
          </button>
        </div>
      )}
    </div>
  );
}
