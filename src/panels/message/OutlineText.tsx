import { words } from '../../words/full.ts';

/** An outline was drawn anew, and other sheets followed. */
export default function OutlineText() {
  return <p>{words.sheets.outlineOfAll}</p>;
}
