import { usePlan } from '../../store';
import { Dialog } from '../dialog';
import { sentence } from '../parts/check-number';
import { acceptOffer, declineOffer, useOpening } from './opening';

/** Says why a file was not opened, or asks whether what is sound in it shall be. */
export function AnswerDialog() {
  const asked = useOpening((state) => state.asked);
  const title = usePlan((state) => state.plan.title);
  const answer = asked?.answer;
  const offer = answer?.kind === 'offer' ? answer : null;
  return (
    <Dialog
      open={asked !== null}
      onClose={declineOffer}
      title={offer ? 'Something in that file is wrong' : 'That file was not opened'}
      actions={
        offer ? (
          <>
            <button type="button" onClick={declineOffer}>
              Leave it
            </button>
            <button type="button" className="primary" onClick={acceptOffer}>
              {offer.accept}
            </button>
          </>
        ) : (
          <button type="button" className="primary" onClick={declineOffer}>
            Back to the plan
          </button>
        )
      }
    >
      <div className="answer">
        <p className="notice">
          <strong dir="auto">{asked?.fileName}</strong>
          {answer && sentence(answer.sentence)}
        </p>
        {offer && offer.details.length > 0 && (
          <details>
            <summary>{`${offer.details.length} more`}</summary>
            <ul>
              {offer.details.map((detail) => (
                <li key={detail}>{sentence(detail)}</li>
              ))}
            </ul>
          </details>
        )}
        <p>
          {'Still open, as it was: '}
          <bdi>{title}</bdi>.
        </p>
      </div>
    </Dialog>
  );
}
