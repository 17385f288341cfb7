import { type CabinModel, pointOnPatch, type Vec3 } from '../../geometry';
import type { Camera } from './camera';
import type { Edge } from './edges';

/** Cut along the middle of the car; and the dash before the near front seat. */
const CUT =
  /^(screen|roof(-rear)?|rear-glass|dash-(top|roll|face|lower)-left|under-dash-left|toe-board-left|floor-left|footwell-floor-left)$/;
const STEPS = 12;

/** The profile of roof, screen, dash and floor, as edges that can be hidden like any other. */
export function sectionEdges(cabin: CabinModel, camera: Camera): Edge[] {
  return cabin.panels
    .filter(({ id }) => CUT.test(id))
    .flatMap(({ patch }) => {
      const along = runsLengthwise(patch.control);
      const at = (t: number) =>
        camera.project(along ? pointOnPatch(patch, t, 0.5) : pointOnPatch(patch, 0.5, t));
      return Array.from(
        { length: STEPS },
        (_, i): Edge => ({
          kind: 'outline',
          from: at(i / STEPS),
          to: at((i + 1) / STEPS),
        }),
      );
    });
}

/** Whether u, rather than v, runs along the car and upward. */
function runsLengthwise(control: readonly Vec3[]): boolean {
  const spread = (a: Vec3 | undefined, b: Vec3 | undefined) =>
    a && b ? Math.hypot(a[0] - b[0], a[2] - b[2]) : 0;
  return spread(control[3], control[5]) > spread(control[1], control[7]);
}
