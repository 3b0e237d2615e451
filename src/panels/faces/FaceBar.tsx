import './faces.css';
import { choose } from '../../look/choices.ts';
import { words } from '../../words/full.ts';
import { useChoice } from '../useChoice.ts';
import { useDesk } from '../useDesk.ts';

/** In place of the row at the top while the screen is turned to others: which face it is, and one tap back. */
export default function FaceBar({ isViewOpen, onView }: { isViewOpen: boolean; onView: () => void }) {
  const name = useDesk((state) => state.plan.name);
  const face = useChoice('face');
  const isHidden = useChoice('figures') === 'hidden';
  const { app, faceBar, topbar } = words;
  return (
    <header className="topbar face-bar">
      <h1 className="sr-only">{app.title}</h1>
      <p className="face-plan">{name}</p>
      {face === 'work' ? null : <p className="face-now">{faceBar.now[face]}</p>}
      {face === 'class' ? (
        <button type="button" onClick={() => choose('figures', isHidden ? 'shown' : 'hidden')}>
          {isHidden ? faceBar.show : faceBar.hide}
        </button>
      ) : null}
      <button type="button" className="face-view" aria-haspopup="dialog" aria-expanded={isViewOpen} onClick={onView}>
        {topbar.view}
      </button>
      <button type="button" className="strong" onClick={() => choose('face', 'work')}>
        {faceBar.leave}
      </button>
    </header>
  );
}
