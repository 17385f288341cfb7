import { WorkedOut } from '../../parts/worked-out';

/** The formulas behind the pockets, and what they leave out. */
export function PocketsHow() {
  return (
    <WorkedOut>
      <p>
        Volume: the drawn outline on the panel’s own surface, straight back (or out) by the depth,
        as a closed mesh; walls of the given thickness taken off on all sides, front and back
        included, and of each speaker the whole cylinder of its cut-out inside the front wall. A
        basket is open and takes up less, so there is a little more air than told.
      </p>
      <p>
        Response: R. H. Small, “Closed-Box Loudspeaker Systems, Part I: Analysis”, J. Audio Eng.
        Soc. 20(10), 1972. Resonance and Q both rise by √(1 + Vas / Vb); the response is that of a
        second-order high-pass, flattest at Qtc 0.707. Several speakers alike in one pocket count as
        one of all their Vas.
      </p>
      <p>
        Limits: small signals; no filling, no leaks, no losses in the box; the pocket as a spring of
        air, which it is well below the frequencies where half a wavelength fits into it. Both
        speakers exactly alike and at the same voltage; makers’ own tolerances can be larger than
        what is told here. What the cabin adds below some 70 Hz is not in it. Where the outline runs
        into obstacles or keep-clear zones is looked for at many places in it, not everywhere; trim,
        looms and metal that the model does not have are not in it at all.
      </p>
    </WorkedOut>
  );
}
