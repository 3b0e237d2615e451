import { useEffect, useRef, useState } from 'react';

export type Read<T> = { ok: true; value: T } | { ok: false; error: string };

export interface Draft {
  text: string;
  error: string | null;
  change(text: string): void;
  /** Takes what was typed over, or says what is wrong with it and keeps the text. */
  settle(): boolean;
  /** Forgets what was typed. */
  drop(): void;
}

/**
 * A field under edit: what is typed stays the field's own until it is settled, so that half a number never reaches the
 * plan and each edit is one step of history. A field that goes away while holding something readable settles it.
 */
export function useDraft<T>(shown: string, read: (text: string) => Read<T>, take: (value: T) => void): Draft {
  const [typed, setTyped] = useState<string | null>(null);
  const [error, setError] = useState<string | null>(null);
  const latest = useRef({ typed, read, take });
  latest.current = { typed, read, take };

  useEffect(
    () => () => {
      const { typed: pending, read: reader, take: taker } = latest.current;
      if (pending === null) return;
      const result = reader(pending);
      if (result.ok) taker(result.value);
    },
    [],
  );

  const drop = () => {
    setTyped(null);
    setError(null);
  };
  return {
    text: typed ?? shown,
    error,
    change: (text) => {
      setTyped(text);
      setError(null);
    },
    drop,
    settle: () => {
      if (typed === null || typed === shown) {
        drop();
        return true;
      }
      const result = read(typed);
      if (!result.ok) {
        setError(result.error);
        return false;
      }
      drop();
      take(result.value);
      return true;
    },
  };
}
