import { usePlan } from '../../store';
import { Dialog } from '../dialog';
import { shownRefusal } from './judge-file';
import { acceptOffer, declineOffer, useOpening } from './opening';
import { saveRawText } from './plan-files';

/** Says why a plan was not opened, or asks whether what is sound in it shall be. */
export function AnswerDialog() {
  const asked = useOpening((state) => state.asked);
  const title = usePlan((state) => state.plan.title);
  const answer = asked?.answer;
  const offer = answer?.kind === 'offer' ? answer : null;
  const raw = asked?.raw;
  return (
    <Dialog
      open={asked !== null}
      onClose={declineOffer}
      title={offer ? 'Something in that plan is wrong' : 'That plan was not opened'}
      actions={
        <>
          {typeof raw === 'string' && (
            <button type="button" onClick={() => saveRawText(asked?.name ?? '', raw)}>
              Save its text as it is
            </button>
          )}
          <button type="button" className={offer ? undefined : 'primary'} onClick={declineOffer}>
            {offer ? 'Leave it' : 'Back to the open plan'}
          </button>
          {offer && (
            <button type="button" className="primary" onClick={() => void acceptOffer()}>
              {offer.accept}
            </button>
          )}
        </>
      }
    >
      <div className="answer">
        <div className="notice">
          <strong dir="auto">{asked?.name}</strong>
          <p>{answer && shownRefusal(answer.sentence)}</p>
        </div>
        {offer && offer.details.length > 0 && (
          <details open>
            <summary>
              {offer.details.length === 1 ? 'And one more' : `And ${offer.details.length} more`}
            </summary>
            <ul>
              {offer.details.map((detail) => (
                <li key={detail}>{shownRefusal(detail)}</li>
              ))}
            </ul>
          </details>
        )}
        {offer && <p>{offer.rest}</p>}
        <p>
          {'Still open, as it was: '}
          <bdi>{title}</bdi>.
        </p>
      </div>
    </Dialog>
  );
}
