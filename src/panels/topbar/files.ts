import type { Plan } from '../../plan/schema.ts';

/** What the page around the panels does with files and with the browser's own keeping. */
export interface KeptPlanEntry {
  planId: string;
  /** null where its newest state does not open. */
  plan: Plan | null;
  /** Saved last, milliseconds since 1970. */
  time: number;
}

interface KeptPlans {
  list(): Promise<KeptPlanEntry[]>;
  duplicate(planId: string, name: string): Promise<void>;
  rename(planId: string, name: string): Promise<boolean>;
  /** Answers how to put it back. */
  remove(planId: string): Promise<() => Promise<void>>;
}

export interface PlanFiles {
  saveState: {
    getState(): { kind: 'idle' | 'saving' | 'saved' | 'failed' };
    subscribe: (listener: () => void) => () => void;
  };
  saveFile(): void;
  openFile(file: File): Promise<void>;
  plans: KeptPlans;
  /** Which of them is on the desk. */
  openId(): string;
  openKept(planId: string): Promise<void>;
}
