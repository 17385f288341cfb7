import { KEPT_AFTER, KEPT_BEFORE } from '../../../exchange/measured-file';
import {
  ABOVE_NOISE_DB,
  AGREE_MS,
  BELOW_PEAK_DB,
  LEAST_LIKENESS,
  TAPE_SD,
  USUAL_DOUBTS,
} from '../../../geometry';
import { WorkedOut } from '../../parts/worked-out';

/** How arrivals are found and compared, and what is left out. */
export function MeasuredHow() {
  const { spot, seat, temperatureC } = USUAL_DOUBTS;
  return (
    <WorkedOut>
      <p>
        By threshold: where the response first rises above {BELOW_PEAK_DB} dB below its highest
        point, and at least {ABOVE_NOISE_DB} dB above the noise before it, between samples by a
        windowed sinc. By correlation: how much later than the clearest channel of its role it is
        most like it, in the band both play (Knapp and Carter, IEEE Trans. ASSP 24, 1976). The
        threshold is used, since it needs no second channel, unless noise raised it and the channels
        are alike; the two agree within {AGREE_MS} ms, and below {LEAST_LIKENESS * 100} % likeness
        correlation says nothing. Files must hold one run each with a common beginning, such as a
        loopback or a fixed trigger; of long ones {KEPT_BEFORE} ms before and {KEPT_AFTER} ms after
        the loudest point are looked at.
      </p>
      <p>
        The loop’s delay is the mean of measured less predicted without what stands out, weighted by
        the uncertainties. A channel stands out when it is off by more than three times its own
        uncertainty and three times the spread of all. Expected is twice the combined standard
        uncertainty (JCGM 100:2008, 6.3.3) of: the speaker ±{spot} mm on each axis, the microphone ±
        {seat} mm on each axis, ±{temperatureC} °C, half a sample, the noise, and how softly the
        edge rises. Of seat and temperature only what differs between speakers counts, for the rest
        goes with the loop. The whole fits when the sum of squares over the uncertainties stays
        below what 95 in 100 do (χ²).
      </p>
      <p>
        A place is found from its readings by least squares (Levenberg–Marquardt), each weighted by
        how sure it is: a tape to ±{TAPE_SD} mm (choice of ours), sound to its own uncertainty and
        that of the microphone’s place. A blunder is the one reading without which all others agree
        (one in a thousand by chance). Distances by sound share what the prediction is wrong by on
        the whole, since the loop’s delay is taken from it: they tell how paths differ, and tapes
        how long they are. Ways round something are no straight distances and are not taken.
      </p>
    </WorkedOut>
  );
}
