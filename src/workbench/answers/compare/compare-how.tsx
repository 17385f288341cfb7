import { PILLAR_VIEW_CAUTION, USUAL_UNCERTAINTIES } from '../../../geometry';
import { formatLength, type LengthUnit } from '../../../plan/units';
import { WorkedOut } from '../../parts/worked-out';

/** Where the comparison's numbers come from, and what they leave out. */
export function CompareHow({ unit, fahrenheit }: { unit: LengthUnit; fahrenheit: boolean }) {
  const { spot, seat, temperatureC } = USUAL_UNCERTAINTIES;
  const warmth = fahrenheit ? `${temperatureC * 1.8} °F` : `${temperatureC} °C`;
  return (
    <WorkedOut>
      <p>
        Per pair the worse of the two speakers counts: the larger angle, the larger loss at the
        middle of its band, the earlier first reflection, strong or weak. Path spread is the longest
        less the shortest path among the speakers of one side. Dips are the deepest under the ideal
        sum within half an octave of a hand-over, on the worse side, with delays and gains; the
        image is that of its own sheet from 250 Hz to 4 kHz. Where an image should stand is a matter
        of taste, so only how far it spreads is better or worse.
      </p>
      <p>
        How sure a difference is: every spot is taken as known to ±{formatLength(spot, unit)} along
        its panel and across it, each seat to ±{formatLength(seat, unit)} on its rails, the air to ±
        {warmth} (standard uncertainties, choices of ours, no source). Each is tried off by itself,
        both ways, and everything is worked out anew; the way that does more counts. What touches
        two options alike, a seat, the temperature or a spot they share, is off in both at once. The
        changes of a difference are added as squares (JCGM 100:2008, GUM, section 5), and it counts
        as larger than the uncertainty beyond twice the root of that. What differs by less is called
        as good, and is never marked as best alone.
      </p>
      <p>
        Your weights go by the search’s own scales: a penalty of about 1 is where an installer would
        begin to mind, the sum over the pairs that every option has is the score, and smaller is
        better. Where one has others besides, those and the spread of its paths are not weighed.
        Only an option whose speakers all fit can be best by it. Whether a speaker fits is counted
        on the model. {PILLAR_VIEW_CAUTION}
      </p>
      <p>
        Limits: direct sound and first reflections; what the model gets wrong in shape alike for all
        options is not in the uncertainty, nor is the aim of a speaker. Sums and images are tried at
        the seat in view alone.
      </p>
    </WorkedOut>
  );
}
