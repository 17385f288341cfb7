import { hourOf, type PanelFrame, turnOf, type Vec3 } from '../../geometry';
import type { PrintedWords } from '../words/use-words';

/**
 * Which way on a clock face laid on the panel, seen from the cabin: the nearest hour for the eye, the
 * whole degrees to work by, since an hour is up to 15° wrong; and where 12 leads.
 */
export function clockWords({ n }: PrintedWords, frame: PanelFrame, way: Vec3) {
  return {
    hour: hourOf(frame, way),
    deg: n.angle(Math.round(turnOf(frame, way)) % 360),
    way: frame.upIs,
  };
}
