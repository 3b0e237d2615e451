import { useSyncExternalStore } from 'react';
import { type ChoiceName, type ChoiceOf, choice, onChoice } from '../look/choices.ts';

/** A choice of this device, as it holds now. */
export const useChoice = <N extends ChoiceName>(name: N): ChoiceOf<N> =>
  useSyncExternalStore(onChoice, () => choice(name));
