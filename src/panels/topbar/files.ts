/** What the page around the panels does with files and with the browser's own keeping. */
export interface KeptPlanEntry {
  planId: string;
  /** null where its newest state does not open. */
  name: string | null;
  /** Saved last, milliseconds since 1970. */
  time: number;
}

export interface PlanFiles {
  saveState: {
    getState(): { kind: 'idle' | 'saving' | 'saved' | 'failed' };
    subscribe: (listener: () => void) => () => void;
  };
  saveFile(): void;
  openFile(file: File): Promise<void>;
  listPlans(): Promise<KeptPlanEntry[]>;
  openKept(planId: string): Promise<void>;
}
