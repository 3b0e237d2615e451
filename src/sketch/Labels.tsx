import { memo } from 'react';
import type { PaneSize } from '../desk/camera.ts';
import type { Camera, Selection } from '../desk/desk.ts';
import type { Drawing } from '../drawing/shapes.ts';
import { layOutLabels } from './labelLayout.ts';

/** Names and figures as page text over the stage: figures of one width, sharp at every zoom. */
export const Labels = memo(function Labels(props: {
  drawing: Drawing;
  camera: Camera;
  size: PaneSize;
  selection: Selection | null;
  scale: number;
}) {
  const { drawing, camera, size, selection, scale } = props;
  const placed = layOutLabels(drawing, camera, size, { keep: selection?.id ?? null, scale });
  return (
    <div className="sketch-labels" aria-hidden="true">
      {placed.map(({ label, xPx, yPx, widthPx }) => (
        <div
          key={label.key}
          className="sketch-label"
          data-kind={label.kind}
          data-proposed={label.isProposed === true ? '' : undefined}
          data-selected={selection?.id === label.id && label.kind !== 'hazard'}
          style={{ transform: `translate(${xPx}px, ${yPx}px) translate(-50%, -50%)`, maxWidth: widthPx + 12 * scale }}
        >
          {label.kind !== 'run' && label.title !== '' && <span className="sketch-label-title">{label.title}</span>}
          {label.figures !== '' && <span className="sketch-label-figures">{label.figures}</span>}
        </div>
      ))}
    </div>
  );
});
