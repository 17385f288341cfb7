/**
 * Pictures the user adds to a plan's build book: kept in this browser beside the plan, never in the
 * plan file, which stays small and free of what nobody meant to pass on.
 */
import { createStore } from 'zustand/vanilla';

export interface PlanPicture {
  id: string;
  caption: string;
  /** px */
  width: number;
  height: number;
  /** A JPEG. */
  bytes: Uint8Array<ArrayBuffer>;
}

/** Where lists of pictures lie, by plan. */
export interface PictureShelf {
  read(planId: string): Promise<readonly PlanPicture[]>;
  /** All or nothing. */
  write(planId: string, pictures: readonly PlanPicture[]): Promise<void>;
  /** Plans that have pictures. */
  plans(): Promise<readonly string[]>;
}

export interface PicturesState {
  pictures: readonly PlanPicture[];
  /** One sentence where they could not be kept. */
  problem: string | null;
}

/** More make a book nobody turns the pages of. */
export const MOST_PICTURES = 40;
export const LONGEST_CAPTION = 300;

const NOT_KEPT =
  'The pictures could not be kept in this browser: they are gone when the page is closed.';
const NOT_READ =
  'The pictures kept in this browser could not be read: they stay as they are, and what is added now is gone when the page is closed.';
const LOOKED_AT = 'This plan can only be looked at here: its pictures stay as they are.';

/** The pictures of one plan, from when it is opened until another is. */
interface Book {
  /** `null`: not kept yet. */
  planId: string | null;
  pictures: readonly PlanPicture[];
  /** Until the shelf has answered. */
  reading: Promise<void> | null;
  /** What lies on the shelf is not known, so nothing is written over it. */
  isUnread: boolean;
}

const bookOf = (planId: string | null): Book => ({
  planId,
  pictures: [],
  reading: null,
  isUnread: false,
});

type Changed = (pictures: readonly PlanPicture[]) => readonly PlanPicture[];

/**
 * The open plan's pictures. A plan that is not kept yet has them in memory; they are kept with its
 * first edit, as the plan is. What is changed before the shelf has answered waits for it; and it goes
 * to the plan it was meant for, though another be open by then.
 * @param isLookedAt whether the open plan may not be changed here
 */
export function createPlanPictures(shelf: PictureShelf, isLookedAt: () => boolean = () => false) {
  const store = createStore<PicturesState>(() => ({ pictures: [], problem: null }));
  let open = bookOf(null);

  const tell = (book: Book, state: Partial<PicturesState>) => {
    if (book === open) store.setState(state);
  };
  const put = (book: Book, pictures: readonly PlanPicture[]) => {
    book.pictures = pictures;
    tell(book, { pictures });
  };

  async function keep(book: Book): Promise<void> {
    if (book.planId === null || book.isUnread) return;
    try {
      await shelf.write(book.planId, book.pictures);
      tell(book, { problem: null });
    } catch {
      tell(book, { problem: NOT_KEPT });
    }
  }

  /** What the shelf has comes before what was added in memory. */
  async function fetch(book: Book, planId: string): Promise<void> {
    let kept: readonly PlanPicture[];
    try {
      kept = await shelf.read(planId);
    } catch {
      book.isUnread = true;
      tell(book, { problem: NOT_READ });
      return;
    }
    const added = book.pictures.filter(({ id }) => kept.every((one) => one.id !== id));
    put(book, [...kept, ...added].slice(0, MOST_PICTURES));
    if (added.length > 0) await keep(book);
  }
  function read(book: Book, planId: string): Promise<void> {
    book.planId = planId;
    book.reading = fetch(book, planId).finally(() => {
      book.reading = null;
    });
    return book.reading;
  }

  /** At once where nothing is waited for: a field shows what was typed before it is drawn again. */
  function change(make: Changed): Promise<boolean> {
    const book = open;
    const now = async (): Promise<boolean> => {
      if (book === open && isLookedAt()) {
        tell(book, { problem: LOOKED_AT });
        return false;
      }
      const next = make(book.pictures);
      if (next === book.pictures) return true;
      put(book, next);
      await keep(book);
      return true;
    };
    return book.reading ? book.reading.then(now) : now();
  }

  return {
    ...store,
    /** Another plan is open: its pictures are fetched; an answer overtaken by the next is not shown. */
    show(next: string | null): Promise<void> {
      open = bookOf(next);
      store.setState({ pictures: [], problem: null });
      return next === null ? Promise.resolve() : read(open, next);
    },
    /**
     * The open plan is kept from now on, under this id, and so are its pictures. Where the shelf has
     * some of that plan, as of one opened again, these stay before them.
     */
    adopt: (id: string): Promise<void> => read(open, id),
    /** `refused`: the state's problem says why. */
    async add(picture: PlanPicture): Promise<'added' | 'full' | 'refused'> {
      let full = false;
      const changed = await change((pictures) => {
        full = pictures.length >= MOST_PICTURES;
        return full ? pictures : [...pictures, picture];
      });
      return full ? 'full' : changed ? 'added' : 'refused';
    },
    caption: (id: string, caption: string) =>
      change((pictures) =>
        pictures.map((one) =>
          one.id === id ? { ...one, caption: caption.slice(0, LONGEST_CAPTION) } : one,
        ),
      ),
    remove: (id: string) => change((pictures) => pictures.filter((one) => one.id !== id)),
    /** One place towards the front (−1) or the back (+1). */
    move: (id: string, by: -1 | 1) =>
      change((before) => {
        const from = before.findIndex((one) => one.id === id);
        const [one, other] = [before[from], before[from + by]];
        if (!one || !other) return before;
        const pictures = [...before];
        pictures[from] = other;
        pictures[from + by] = one;
        return pictures;
      }),
    /** Lets go of the pictures of plans that were thrown away. */
    async tidy(kept: readonly string[]): Promise<void> {
      for (const id of await shelf.plans())
        if (!kept.includes(id) && id !== open.planId) await shelf.write(id, []);
    },
  };
}

export type PlanPictures = ReturnType<typeof createPlanPictures>;
