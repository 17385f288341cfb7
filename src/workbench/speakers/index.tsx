import { OptionsList } from './options-list';
import { SpeakersList } from './speakers-list';

/** The left column: the plan's options and the speakers of the one on the board. */
export function SpeakersColumn() {
  return (
    <section className="column lists" aria-label="Options and speakers">
      <OptionsList />
      <SpeakersList />
    </section>
  );
}
