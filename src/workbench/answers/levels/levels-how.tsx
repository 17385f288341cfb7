import { WorkedOut } from '../../parts/worked-out';

/** The laws behind the levels, and what they leave out. */
export function LevelsHow() {
  return (
    <WorkedOut>
      <p>
        Direct sound in a free field, against 1 m on each speaker’s own axis: 20 lg(r / 1 m) for
        spreading, the loss off the axis, and the loss in the way. What the cabin adds (reflections,
        the bass of a small closed room, trim) is not in it, and a cabin’s total level does not
        follow it.
      </p>
      <p>
        Off the axis: measured responses where the plan has them, else a rigid piston of the
        diaphragm’s diameter in an infinite baffle, 2 J₁(x) / x with x = ka sin θ (Beranek and
        Mellow; Kinsler and others). Behind 90° its value at 90° is kept. Real cones break up, domes
        are not flat and a pillar is no infinite baffle. Without diaphragm and responses a speaker
        counts as alike all round.
      </p>
      <p>
        It begins to beam where half its power is lost at 90°, ka = 1.616; a convention of ours, as
        there are others. The listening window is the mean of nine directions within 30° of the axis
        (ANSI/CTA-2034-A).
      </p>
      <p>
        In the way: Kurze and Anderson’s formula for a hard edge with N = 2δf / c, δ being how much
        longer the way round is; at most 24 dB. Soft or small bodies take less.
      </p>
    </WorkedOut>
  );
}
