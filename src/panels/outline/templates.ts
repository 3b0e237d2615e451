import type { Outline } from '../../plan/schema.ts';

/** An outline kept by name. */
export interface TemplateEntry {
  id: string;
  name: string;
  outline: Outline;
  /** Right-hand drive, as the sheet was that it was drawn on. */
  mirrored: boolean;
}

/** What the page around the panels does with templates. */
export interface TemplateFiles {
  list(): Promise<TemplateEntry[]>;
  /** Answers whether it is kept. */
  keep(name: string, outline: Outline, mirrored: boolean): Promise<boolean>;
  /** Answers how to put it back. */
  remove(id: string): Promise<() => Promise<void>>;
}
