import { FLANGE_LIFT, MOST_WEDGE_DEG } from '../../../geometry';
import { WorkedOut } from '../../parts/worked-out';

/** How a ring is worked out, and what is left out. */
export function RingHow() {
  return (
    <WorkedOut>
      <p>
        The ring’s back lies in the panel’s tangent plane at the spot, its front is square to the
        speaker’s axis and stands where the speaker’s stand-off puts it, and the bore runs along the
        axis. So its height grows evenly from the thin to the thick side, by the tangent of the
        wedge; its back and the hole in the panel are ellipses, whose middle lies off the spot
        toward the thick side. Volumes and angles are closed forms, the file’s mesh is within 0.05
        mm of round at 200 mm.
      </p>
      <p>
        Against panels, speakers, other rings, obstacles and keep-clear zones the ring is tried as a
        full cylinder cut off by its panel, together with the speaker on it. Wedges over{' '}
        {MOST_WEDGE_DEG}° are said to be steep (choice of ours, no source). A flange that lies on
        the ring has no thickness here: its own edge stands proud of the rim.
      </p>
      <p>
        Limits: the back is flat, so on a curved panel it is scribed or filled (told from{' '}
        {FLANGE_LIFT} mm on); no holes for screws or wires in the file; strength, fixings and what a
        head or a knee can reach are for the installer to judge.
      </p>
    </WorkedOut>
  );
}
