import type { SpeakerPartProps } from '../speaker-details';
import { SpeakerPairing } from './speaker-pairing';
import { SpeakerPolarity } from './speaker-polarity';
import { SpeakerResponses } from './speaker-responses';
import { SpeakerSmallSignal } from './speaker-small-signal';
import './sound.css';

/** How a speaker is connected and how it radiates: comes after the first numbers on screen. */
export default function SpeakerSound(props: SpeakerPartProps) {
  return (
    <>
      <section aria-labelledby="radiates-head">
        <h3 id="radiates-head">Off its axis</h3>
        <SpeakerResponses {...props} />
      </section>
      <section aria-labelledby="small-signal-head">
        <h3 id="small-signal-head">In a sealed box</h3>
        <SpeakerSmallSignal {...props} />
      </section>
      <section aria-labelledby="connected-head">
        <h3 id="connected-head">How it is connected</h3>
        <SpeakerPolarity {...props} />
        <SpeakerPairing {...props} />
      </section>
    </>
  );
}
