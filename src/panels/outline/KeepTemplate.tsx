import { useState } from 'react';
import { MAX_NAME, type Outline } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { TextField } from '../controls/TextField.tsx';
import type { TemplateFiles } from './templates.ts';

interface KeepTemplateProps {
  outline: Outline;
  mirrored: boolean;
  name: string;
  isFaulty: boolean;
  templates: TemplateFiles;
}

/** Keeps the outline by name, to begin other plans with. */
export function KeepTemplate({ outline, mirrored, isFaulty, templates, ...props }: KeepTemplateProps) {
  const [name, setName] = useState(props.name);
  const [said, setSaid] = useState('');
  const { outlineEditor: say } = words;
  return (
    <div className="outline-keep">
      <TextField label={say.templateName} value={name} maxLength={MAX_NAME} onTake={setName} />
      <button
        type="button"
        disabled={isFaulty || name === ''}
        onClick={async () => setSaid((await templates.keep(name, outline, mirrored)) ? say.kept(name) : say.notKept)}
      >
        {say.keep}
      </button>
      <p role="status">{said}</p>
    </div>
  );
}
