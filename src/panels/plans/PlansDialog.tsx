import './plans.css';
import { useCallback, useEffect, useRef, useState } from 'react';
import type { Message } from '../../desk/desk.ts';
import { words } from '../../words/full.ts';
import { Dialog } from '../dialog/Dialog.tsx';
import type { KeptPlanEntry, PlanFiles } from '../topbar/files.ts';
import { useDesk, useDeskStore } from '../useDesk.ts';
import { deletePlan } from './deletePlan.ts';
import { KeptPlan } from './KeptPlan.tsx';

interface Deleted {
  planId: string;
  name: string;
  putBack: () => Promise<void>;
  /** Offers the way back once the dialog is closed. */
  message: Message;
}

/** An empty sheet that stood in for the last plan: nothing is lost with it. */
const isBlank = ({ plan }: KeptPlanEntry): boolean =>
  plan !== null && plan.fittings.length === 0 && plan.runs.length === 0 && plan.sheets.length === 1;

/** Every plan that this browser keeps, and the way in for a file. */
export default function PlansDialog({ files, onClose }: { files: PlanFiles; onClose: () => void }) {
  const desk = useDeskStore();
  // another plan on the desk is another one open
  useDesk((state) => state.plan.id);
  const openId = files.openId();
  const [kept, setKept] = useState<readonly KeptPlanEntry[]>([]);
  const [deleted, setDeleted] = useState<readonly Deleted[]>([]);
  const isHere = useRef(true);
  /** The way back outlives the dialog: it is offered anew, for as long as a message is shown, when that closes. */
  const offered = useRef<Message | null>(null);
  const { openDialog } = words;

  const list = useCallback(async () => {
    const plans = await files.plans.list();
    if (isHere.current) setKept(plans);
  }, [files]);
  useEffect(() => {
    isHere.current = true;
    void list();
    return () => {
      isHere.current = false;
    };
  }, [list]);
  useEffect(
    () => () => {
      if (offered.current !== null) desk.setState({ message: { ...offered.current } });
    },
    [desk],
  );

  const remove = async (entry: KeptPlanEntry) => {
    const name = entry.plan?.name ?? openDialog.unreadable;
    const putBack = await deletePlan(desk, files, kept, entry.planId);
    const message: Message = { id: 'planDeleted', params: { name }, undo: false, takeBack: () => void putBack() };
    // each has its own way back, as long as this is open
    setDeleted((before) => [{ planId: entry.planId, name, putBack, message }, ...before]);
    if (offered.current === null || !isBlank(entry)) offered.current = message;
    desk.setState({ message: offered.current });
    await list();
  };
  const takeBack = async (one: Deleted) => {
    await one.putBack();
    const left = deleted.filter((other) => other !== one);
    setDeleted(left);
    offered.current = left[0]?.message ?? null;
    desk.setState({ message: offered.current });
    await list();
  };

  return (
    <Dialog title={openDialog.title} onClose={onClose}>
      <div className="fields">
        <label className="file-pick">
          <span>{openDialog.file}</span>
          <input
            type="file"
            accept=".json,application/json"
            onChange={(event) => {
              const file = event.target.files?.[0];
              if (file === undefined) return;
              void files.openFile(file);
              onClose();
            }}
          />
        </label>
        <h3>{openDialog.kept}</h3>
        <div role="status" aria-live="polite">
          {deleted.map((one) => (
            <p key={one.planId} className="plans-deleted">
              <span>{openDialog.deleted(one.name)}</span>
              <button type="button" className="strong" onClick={() => void takeBack(one)}>
                {words.messageActs.undo}
                <span className="sr-only"> {one.name}</span>
              </button>
            </p>
          ))}
        </div>
        {kept.length === 0 ? <p className="hint">{openDialog.none}</p> : null}
        <ul className="plans">
          {kept.map((entry) => (
            <KeptPlan
              key={entry.planId}
              entry={entry}
              isOpen={entry.planId === openId}
              onOpen={() => {
                void files.openKept(entry.planId);
                onClose();
              }}
              onDuplicate={async (name) => {
                await files.plans.duplicate(entry.planId, name);
                await list();
              }}
              onRename={async (name) => {
                const isTaken = await files.plans.rename(entry.planId, name);
                await list();
                return isTaken;
              }}
              onRemove={() => void remove(entry)}
            />
          ))}
        </ul>
      </div>
    </Dialog>
  );
}
