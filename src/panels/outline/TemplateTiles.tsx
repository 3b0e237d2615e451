import './templates.css';
import { useCallback, useEffect, useRef, useState } from 'react';
import { drawOutline } from '../../drawing/outline.ts';
import { newSheet } from '../../plan/create.ts';
import { words } from '../../words/full.ts';
import { Picture } from '../picture/Picture.tsx';
import { useDeskStore } from '../useDesk.ts';
import type { TemplateEntry, TemplateFiles } from './templates.ts';

function TemplatePicture({ outline, mirrored }: TemplateEntry) {
  return <Picture {...drawOutline(newSheet({ id: 'template', name: '', outline, mirrored }))} />;
}

interface TemplateTilesProps {
  templates: TemplateFiles;
  /** Begins a plan with that one. */
  onStart: (template: TemplateEntry) => void;
}

/** Outlines kept by the user: a press begins a plan with one; deleting can be taken back from the message. */
export function TemplateTiles({ templates, onStart }: TemplateTilesProps) {
  const desk = useDeskStore();
  const [kept, setKept] = useState<readonly TemplateEntry[]>([]);
  const [putBack, setPutBack] = useState<(() => Promise<void>) | null>(null);
  const isHere = useRef(true);
  const { templates: say } = words;
  const list = useCallback(async () => {
    const found = await templates.list();
    if (isHere.current) setKept(found);
  }, [templates]);
  useEffect(() => {
    isHere.current = true;
    void list();
    return () => {
      isHere.current = false;
    };
  }, [list]);

  const remove = async ({ id, name }: TemplateEntry) => {
    const back = await templates.remove(id);
    const takeBack = async () => {
      await back();
      setPutBack(null);
      await list();
    };
    setPutBack(() => takeBack);
    // the way back outlives the dialog for as long as a message is shown
    desk.setState({
      message: { id: 'removed', params: { name }, undo: false, takeBack: () => void takeBack() },
    });
    await list();
  };
  if (kept.length === 0 && putBack === null) return null;
  return (
    <fieldset className="templates">
      <legend>{say.title}</legend>
      {kept.map((template) => (
        <span key={template.id} className="template">
          <button type="button" className="template-start" onClick={() => onStart(template)}>
            <TemplatePicture {...template} />
            <span>{template.name}</span>
            {template.mirrored ? <span className="hint">{words.newPlanDialog.right}</span> : null}
          </button>
          <button type="button" aria-label={say.remove(template.name)} onClick={() => void remove(template)}>
            {say.removeShort}
          </button>
        </span>
      ))}
      {putBack === null ? null : (
        <button
          type="button"
          className="strong"
          onClick={() => {
            desk.setState({ message: null });
            void putBack();
          }}
        >
          {words.messageActs.undo}
        </button>
      )}
    </fieldset>
  );
}
