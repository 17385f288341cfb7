import type { SpeakerPartProps } from '../speaker-details';
import { SpeakerPairing } from './speaker-pairing';
import { SpeakerPolarity } from './speaker-polarity';
import { SpeakerResponses } from './speaker-responses';
import './sound.css';

/** How a speaker is connected and how it radiates: comes after the first numbers on screen. */
export default function SpeakerSound(props: SpeakerPartProps) {
  return (
    <>
      <section aria-labelledby="radiates-head">
        <h3 id="radiates-head">Off its axis</h3>
        <SpeakerResponses {...props} />
      </section>
      <section aria-labelledby="connected-head">
        <h3 id="connected-head">How it is connected</h3>
        <SpeakerPolarity {...props} />
        <SpeakerPairing {...props} />
      </section>
    </>
  );
}
