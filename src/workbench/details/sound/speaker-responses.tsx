import { useState } from 'react';
import { beamingHzOf } from '../../../geometry';
import { isTied, setResponses } from '../../../plan/edits';
import { formatFrequency } from '../../../plan/units';
import { planStore } from '../../../store';
import { useLocked } from '../../parts/use-board';
import type { SpeakerPartProps } from '../speaker-details';
import { coverageWords } from './coverage';
import { ResponsesDialog } from './responses-dialog';

/** What is known of a speaker's level off its axis: measured, a piston's, or nothing. */
export function SpeakerResponses(props: SpeakerPartProps) {
  const { board, optionId, speaker, name } = props;
  const locked = useLocked();
  const [open, setOpen] = useState(false);
  const measured = speaker.responses?.length ? speaker.responses : null;
  const tied =
    board.option &&
    isTied(board.option, speaker.pair) &&
    board.option.speakers.some(({ id, pair }) => id !== speaker.id && pair === speaker.pair);
  return (
    <>
      <p>
        {measured
          ? `Measured: ${coverageWords(measured)}.`
          : speaker.diaphragm
            ? 'Reckoned as a piston of its diaphragm’s size.'
            : 'Neither measured nor a diaphragm given: taken to sound alike in every direction.'}
      </p>
      {(measured || speaker.diaphragm) && <Beaming {...props} />}
      <div className="row small-buttons">
        <button type="button" disabled={locked} onClick={() => setOpen(true)}>
          {measured ? 'Other responses…' : 'Measured responses…'}
        </button>
        {measured && (
          <button
            type="button"
            disabled={locked}
            onClick={() =>
              planStore.edit(
                `remove the responses of ${name}`,
                setResponses(optionId, speaker.id, null),
              )
            }
          >
            Remove them
          </button>
        )}
      </div>
      <ResponsesDialog {...props} open={open} tied={tied === true} onClose={() => setOpen(false)} />
    </>
  );
}

function Beaming({ board, speaker }: SpeakerPartProps) {
  const speed = board.result?.speedOfSound;
  if (!speed) return null;
  const answer = beamingHzOf(speaker, speed);
  if (answer.beamingHz !== null)
    return (
      <p className="footnote">
        {`Begins to beam at about ${about(answer.beamingHz)}: from there on less than half its ` +
          'power goes out at 90° to its axis.'}
      </p>
    );
  // Its own id says nothing beside its own details.
  const why = answer.reason.slice(answer.reason.indexOf(KNOWN_FROM) + KNOWN_FROM.length);
  const { responses: _, ...unmeasured } = speaker;
  const piston = beamingHzOf(unmeasured, speed).beamingHz;
  return (
    <p className="footnote">
      {`Where it begins to beam cannot be told: ${why}.`}
      {piston !== null && ` A piston of its size would from about ${about(piston)}.`}
    </p>
  );
}

const KNOWN_FROM = 'is not known: ';

/** 8734 → 8700: no diaphragm's size is known better than that. */
const about = (hz: number): string => formatFrequency(Number(hz.toPrecision(2)));
