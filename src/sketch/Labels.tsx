import { memo } from 'react';
import { useStore } from 'zustand';
import type { PaneSize } from '../desk/camera.ts';
import type { Camera, Desk, Selection } from '../desk/desk.ts';
import type { PlacedLabel } from './labelLayout.ts';
import { useLabels } from './useLabels.ts';
import type { Scene } from './useScene.ts';

const Label = memo(function Label(props: { placed: PlacedLabel; isSelected: boolean; scale: number }) {
  const { placed, isSelected, scale } = props;
  const { label, xPx, yPx, widthPx } = placed;
  return (
    <div
      className="sketch-label"
      data-kind={label.kind}
      data-proposed={label.isProposed === true ? '' : undefined}
      data-selected={isSelected}
      style={{ transform: `translate(${xPx}px, ${yPx}px) translate(-50%, -50%)`, maxWidth: widthPx + 12 * scale }}
    >
      {label.kind !== 'run' && label.title !== '' && <span className="sketch-label-title">{label.title}</span>}
      {label.figures !== '' && <span className="sketch-label-figures">{label.figures}</span>}
    </div>
  );
});

const LabelList = memo(function LabelList(props: {
  labels: readonly PlacedLabel[];
  selectedId: string | null;
  scale: number;
}) {
  const { labels, selectedId, scale } = props;
  return labels.map((placed) => (
    <Label
      key={placed.label.key}
      placed={placed}
      isSelected={placed.label.id === selectedId && placed.label.kind !== 'hazard'}
      scale={scale}
    />
  ));
});

/** Names and figures as page text over the stage: figures of one width, sharp at every zoom. */
export const Labels = memo(function Labels(props: {
  desk: Desk;
  scene: Scene;
  camera: Camera;
  size: PaneSize;
  selection: Selection | null;
  scale: number;
}) {
  const { desk, scene, camera, size, selection, scale } = props;
  const selectedId = selection?.id ?? null;
  const isBehind = useStore(desk, (state) => state.isBehind);
  const { still, live } = useLabels(desk, scene, camera, size, { keep: selectedId, scale });
  return (
    <div className="sketch-labels" data-behind={isBehind} aria-hidden="true">
      <LabelList labels={still} selectedId={selectedId} scale={scale} />
      <LabelList labels={live} selectedId={selectedId} scale={scale} />
    </div>
  );
});
