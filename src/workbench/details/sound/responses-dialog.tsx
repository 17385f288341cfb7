import { useMemo } from 'react';
import { gatherResponses } from '../../../exchange/response-files';
import type { OffAxisResponse } from '../../../geometry';
import { setResponses } from '../../../plan/edits';
import { formatFrequency, formatNumber } from '../../../plan/units';
import { planStore } from '../../../store';
import { Dialog } from '../../dialog';
import type { SpeakerPartProps } from '../speaker-details';
import { coverageWords, seatsBeyond, sentence } from './coverage';
import { DropPlace } from './drop-place';
import { ResponseFileRow } from './response-file-row';
import { ResponsesPicture } from './responses-picture';
import { useResponseFiles } from './use-response-files';

export interface ResponsesDialogProps extends SpeakerPartProps {
  open: boolean;
  onClose: () => void;
  /** True where the twin gets the same responses. */
  tied: boolean;
}

/** Measured off-axis responses from text files, shown before they are taken into the plan. */
export function ResponsesDialog(props: ResponsesDialogProps) {
  const { open, onClose, tied, optionId, speaker, name } = props;
  const { files, refused, add, choose, remove, say, clear } = useResponseFiles();
  const { bandHz } = speaker;
  const gathered = useMemo(
    () =>
      gatherResponses(
        files,
        files.map(({ choice }) => choice),
        bandHz,
      ),
    [files, bandHz],
  );
  const { problem, responses, thinned } = gathered;
  // Said beside the file itself already.
  const marked = gathered.files.some((reading) => reading.problem !== null);
  const ready = files.length > 0 && problem === null;
  const close = () => {
    clear();
    onClose();
  };
  const take = () => {
    if (!ready) return;
    planStore.edit(
      `take measured responses of ${name}`,
      setResponses(optionId, speaker.id, responses),
    );
    close();
  };

  return (
    <DropPlace active={open} onFiles={add}>
      <Dialog
        open={open}
        onClose={close}
        title={`Measured responses of the ${name}`}
        lead="Text files with a frequency and a level in each line: one file for each angle off the axis, or one table whose heading names the angles."
        actions={
          <>
            <p className="board-dialog-aside" role="status">
              {marked
                ? 'Answer, or leave out, what is marked above.'
                : tied && 'Left and right are tied: both get them.'}
            </p>
            <button type="button" className="primary" disabled={!ready} onClick={take}>
              Take these responses
            </button>
          </>
        }
      >
        <div className="responses-choose">
          <button type="button" onClick={choose}>
            {files.length > 0 ? 'Choose more files…' : 'Choose files…'}
          </button>
          <span className="quiet-text">or drop them here. Nothing leaves this computer.</span>
        </div>
        {refused.length > 0 && (
          <p className="notice" role="alert">
            <strong>Not read</strong>
            {refused.join('; ')}.
          </p>
        )}
        {files.length > 0 && (
          <ul className="responses-files">
            {files.map((file, i) => {
              const reading = gathered.files[i];
              return (
                reading && (
                  <ResponseFileRow
                    key={file.key}
                    reading={reading}
                    onSay={(choice) => say(file.key, choice)}
                    onRemove={() => remove(file.key)}
                  />
                )
              );
            })}
          </ul>
        )}
        {problem && !marked && (
          <p className="notice" role="alert">
            <strong>They cannot be taken like this</strong>
            {sentence(problem)}
          </p>
        )}
        {responses.length > 0 && (
          <Found responses={responses} {...props}>
            {thinned &&
              `Of ${formatNumber(thinned.of)} points ${formatNumber(thinned.kept)} are kept, those ` +
                `between which a straight line is nowhere more than ${thinned.withinDb} dB off.`}
          </Found>
        )}
        {files.length === 0 && speaker.responses && speaker.responses.length > 0 && (
          <Found responses={speaker.responses} {...props} inPlan />
        )}
        <details className="footnote">
          <summary>How they are used</summary>
          <p>
            Each angle is taken against the response on the axis (0°), so that one is needed, and
            all must have the same reference. Between angles and between frequencies levels run
            straight, over the logarithm of frequency; beyond them nothing is made up. The speaker
            is taken to sound alike all round its axis. Phase is read and checked, but not used.
            Without measured responses a speaker is reckoned as a flat piston in a baffle (Beranek
            and Mellow, Acoustics).
          </p>
        </details>
      </Dialog>
    </DropPlace>
  );
}

interface FoundProps extends ResponsesDialogProps {
  responses: readonly OffAxisResponse[];
  inPlan?: boolean;
  children?: React.ReactNode;
}

/** What a set of responses covers, as words and as a picture. */
function Found({ responses, inPlan, children, board, speaker }: FoundProps) {
  const { bandHz } = speaker;
  const beyond = board.result ? seatsBeyond(responses, board.result, speaker.id) : [];
  return (
    <section className="responses-found" aria-label={inPlan ? 'Now in the plan' : 'Found'}>
      <h3>{inPlan ? 'Now in the plan' : 'Found'}</h3>
      <p>
        {`${coverageWords(responses)}. `}
        {bandHz
          ? `The speaker plays from ${formatFrequency(bandHz[0])} to ${formatFrequency(bandHz[1])}.`
          : 'The plan gives no band for the speaker, so nothing can be said about covering it.'}{' '}
        {children}
      </p>
      {beyond.map((sentence) => (
        <p key={sentence} className="responses-beyond">
          {sentence}
        </p>
      ))}
      <ResponsesPicture responses={responses} bandHz={bandHz} />
    </section>
  );
}
