import { useEffect, useState } from 'react';
import { words } from '../../words/full.ts';
import { Dialog } from '../dialog/Dialog.tsx';
import { useDesk } from '../useDesk.ts';
import type { KeptPlanEntry, PlanFiles } from './files.ts';

const clock = (time: number): string =>
  new Intl.DateTimeFormat(words.locale, { dateStyle: 'medium', timeStyle: 'short' }).format(time);

/** A file, or a plan that this browser keeps. */
export default function OpenDialog({ files, onClose }: { files: PlanFiles; onClose: () => void }) {
  const openId = useDesk((state) => state.plan.id);
  const [kept, setKept] = useState<readonly KeptPlanEntry[]>([]);
  const { openDialog } = words;

  useEffect(() => {
    let isHere = true;
    void files.listPlans().then((plans) => {
      if (isHere) setKept(plans);
    });
    return () => {
      isHere = false;
    };
  }, [files]);

  const others = kept.filter(({ planId }) => planId !== openId);
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
        {others.length === 0 ? <p className="hint">{openDialog.none}</p> : null}
        <ul className="kept-plans">
          {others.map(({ planId, name, time }) => (
            <li key={planId}>
              <button
                type="button"
                disabled={name === null}
                onClick={() => {
                  void files.openKept(planId);
                  onClose();
                }}
              >
                <span>{name ?? openDialog.unreadable}</span>
                <span className="hint">{openDialog.saved(clock(time))}</span>
              </button>
            </li>
          ))}
        </ul>
      </div>
    </Dialog>
  );
}
