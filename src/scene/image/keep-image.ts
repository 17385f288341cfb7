/**
 * The last image worked out. It takes tens of milliseconds, so never within a frame and never while
 * a drag runs: until the new one is there, the last is shown as such.
 */
import type { SeatImage, Stage } from '../../geometry';

export interface KeptImage {
  image: SeatImage;
  /** False while it is that of an earlier place. */
  fresh: boolean;
}

export interface ImageKeeper {
  /** @param still false while a gesture runs: nothing is worked out then */
  of(stage: Stage, seatId: string, still: boolean): KeptImage | null;
  end(): void;
}

interface Question {
  stage: Stage;
  seatId: string;
}

const same = (a: Question | null, b: Question): boolean =>
  a !== null &&
  a.seatId === b.seatId &&
  a.stage.result === b.stage.result &&
  a.stage.plan.alignment === b.stage.plan.alignment;

type Study = (stage: Stage, seatId: string) => SeatImage;

/** Few look at the image: what works it out is fetched when it is first asked for. */
const fetchStudy = async (): Promise<Study> => (await import('./image-study')).createImageStudy();

/**
 * @param ready called when an image asked for has been worked out
 * @param given what works it out; left out: fetched
 */
export function createImageKeeper(ready: () => void, given?: Study): ImageKeeper {
  let study = given ?? null;
  let ended = false;
  let last: (Question & { image: SeatImage }) | null = null;
  let asked: Question | null = null;
  let timer: ReturnType<typeof setTimeout> | null = null;

  function answer(): void {
    timer = null;
    if (!asked) return;
    if (!study) {
      // Cut off before it was ever fetched: asked for again with the next look.
      fetchStudy().then((fetched) => {
        study = fetched;
        if (!ended) answer();
      }, noImage);
      return;
    }
    last = { ...asked, image: study(asked.stage, asked.seatId) };
    asked = null;
    ready();
  }

  return {
    of(stage, seatId, still) {
      const question = { stage, seatId };
      const fresh = same(last, question);
      asked = fresh || !still ? null : question;
      if (asked) timer ??= setTimeout(answer, 0);
      return last?.seatId === seatId ? { image: last.image, fresh } : null;
    },
    end() {
      ended = true;
      if (timer) clearTimeout(timer);
      asked = null;
    },
  };
}

const noImage = () => {};
