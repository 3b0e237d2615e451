import './message.css';
import { lazy, Suspense, useEffect } from 'react';
import type { Message, MessageId } from '../../desk/desk.ts';
import { undo } from '../../desk/edit.ts';
import { words } from '../../words/index.ts';
import { useDesk, useDeskStore } from '../useDesk.ts';

type MessageWords = Readonly<
  Record<Exclude<MessageId, 'fileRefused'>, (params: Readonly<Record<string, string | number>>) => string>
>;

/** Every message the desk can send has words: the compiler holds the two lists together. */
const messageWords = (): MessageWords => words.messages;

// its words are many, and most visits need none of them
const RefusedText = lazy(() => import('./RefusedText.tsx'));

/** Long enough to read and to reach; a refusal stays until it is put away. */
const SHOWN_MS = 8000;
const STAYING: ReadonlySet<MessageId> = new Set(['fileRefused', 'notKept', 'storageFull', 'otherTab', 'savedDamaged']);

function MessageText({ message }: { message: Message }) {
  if (message.id !== 'fileRefused') return <p>{messageWords()[message.id](message.params)}</p>;
  return (
    <Suspense fallback={null}>
      <RefusedText params={message.params} />
    </Suspense>
  );
}

/** A short message at the foot of the page; a deletion is taken back from here. */
export function MessageBar() {
  const desk = useDeskStore();
  const message = useDesk((state) => state.message);

  useEffect(() => {
    if (message === null || STAYING.has(message.id)) return;
    const timer = setTimeout(() => {
      if (desk.getState().message === message) desk.setState({ message: null });
    }, SHOWN_MS);
    return () => clearTimeout(timer);
  }, [desk, message]);

  return (
    <div className="message-place" role="status" aria-live="polite">
      {message === null ? null : (
        <div className="message" data-message={message.id}>
          <MessageText message={message} />
          {message.undo || message.takeBack !== undefined ? (
            <button
              type="button"
              className="strong"
              onClick={() => {
                if (message.takeBack === undefined) undo(desk);
                else message.takeBack();
                desk.setState({ message: null });
              }}
            >
              {words.messageActs.undo}
            </button>
          ) : null}
          <button type="button" onClick={() => desk.setState({ message: null })}>
            {words.messageActs.dismiss}
          </button>
        </div>
      )}
    </div>
  );
}
