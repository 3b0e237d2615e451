import { words } from '../../words/full.ts';

/** Why a file was not opened: what, where, what to do. */
export default function RefusedText({ params }: { params: Readonly<Record<string, string | number>> }) {
  return <p>{words.openRefused(params)}</p>;
}
