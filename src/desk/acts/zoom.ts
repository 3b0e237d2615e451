import { MAX_PX_PER_M, MIN_PX_PER_M, zoomBy } from '../camera.ts';
import type { Camera, DeskState } from '../desk.ts';
import type { Act } from './act.ts';

/** Per press: two presses nearly double. */
const ZOOM_STEP = 1.4;

const cameraOf = (state: DeskState): Camera | null => state.cameras[state.pane];

const zoom = (id: string, keys: readonly string[], factor: number, hasRoom: (camera: Camera) => boolean): Act => ({
  id,
  keys,
  repeats: true,
  allowed: (state) => {
    const camera = cameraOf(state);
    return camera !== null && hasRoom(camera);
  },
  run: (desk) =>
    desk.setState((state) => {
      const camera = cameraOf(state);
      return camera === null ? {} : { cameras: { ...state.cameras, [state.pane]: zoomBy(camera, factor) } };
    }),
});

export const zoomIn = zoom('zoomIn', ['Plus', '='], ZOOM_STEP, ({ pxPerM }) => pxPerM < MAX_PX_PER_M);
export const zoomOut = zoom('zoomOut', ['-'], 1 / ZOOM_STEP, ({ pxPerM }) => pxPerM > MIN_PX_PER_M);

/** Shows the whole of the pane again: without a camera the pane fits its sheet anew. */
export const zoomFit: Act = {
  id: 'zoomFit',
  keys: ['0', 'Home'],
  allowed: (state) => cameraOf(state) !== null,
  run: (desk) => desk.setState((state) => ({ cameras: { ...state.cameras, [state.pane]: null } })),
};
