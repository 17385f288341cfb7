import { WorkedOut } from '../../parts/worked-out';

/** What a score is, and what a search does and does not do. */
export const HowItSearches = () => (
  <WorkedOut>
    <p>
      Every spot of a grid over the ticked panels is tried with the speaker’s own body, band and
      stand-off; none is passed over. Those that break a demand fall out. Of the rest, the front
      holds those that no other beats in every aim wanted, and the answers are the best by score
      that stand clearly apart, each moved on from its grid point to the millimetre.
    </p>
    <p>
      The score is the sum of weight times penalty, 0 being perfect: difference in 100 mm, angle in
      45°, loss at the middle of the band in 6 dB, and 1 ms / (1 ms + the time to the first
      reflection). Paths of a side are spread in 100 mm. These scales are choices of ours, no
      source. With several listeners the largest of weight times penalty counts, the heaviest
      listener weighing 1.
    </p>
    <p>
      Limits: flange and body as a disc and a cylinder, typical depths and keep-clear zones of the
      body style until measured, direct sound and mirror-like reflections only. A spot found here is
      a place to go and look, not a place to cut.
    </p>
  </WorkedOut>
);
