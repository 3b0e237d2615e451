/** A contact wider than this is the side of a hand, css px: about 25 mm, more than a gloved fingertip. */
const PALM_PX = 95;

/** What every pointer event tells of its contact. */
interface Contact {
  readonly pointerType: string;
  readonly width: number;
  readonly height: number;
}

export const isPalm = ({ pointerType, width, height }: Contact): boolean =>
  pointerType === 'touch' && Math.max(width, height) > PALM_PX;
