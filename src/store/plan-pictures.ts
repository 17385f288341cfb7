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

/**
 * The open plan's pictures. A plan that is not kept yet has them in memory; they are kept with its
 * first edit, as the plan is.
 */
export function createPlanPictures(shelf: PictureShelf) {
  const store = createStore<PicturesState>(() => ({ pictures: [], problem: null }));
  let planId: string | null = null;
  let asked = 0;

  async function keep(): Promise<void> {
    if (planId === null) return;
    try {
      await shelf.write(planId, store.getState().pictures);
      store.setState({ problem: null });
    } catch {
      store.setState({ problem: NOT_KEPT });
    }
  }
  const change = (pictures: readonly PlanPicture[]): Promise<void> => {
    store.setState({ pictures });
    return keep();
  };

  return {
    ...store,
    /** Another plan is open: its pictures are fetched; an answer overtaken by the next is dropped. */
    async show(next: string | null): Promise<void> {
      planId = next;
      const number = ++asked;
      store.setState({ pictures: [], problem: null });
      if (next === null) return;
      const pictures = await shelf.read(next).catch(() => []);
      if (number === asked) store.setState({ pictures });
    },
    /** The open plan is kept from now on, under this id, and so are its pictures. */
    async adopt(id: string): Promise<void> {
      planId = id;
      if (store.getState().pictures.length > 0) await keep();
    },
    /** @returns false when the book is full */
    async add(picture: PlanPicture): Promise<boolean> {
      const { pictures } = store.getState();
      if (pictures.length >= MOST_PICTURES) return false;
      await change([...pictures, picture]);
      return true;
    },
    caption: (id: string, caption: string) =>
      change(
        store
          .getState()
          .pictures.map((one) =>
            one.id === id ? { ...one, caption: caption.slice(0, LONGEST_CAPTION) } : one,
          ),
      ),
    remove: (id: string) => change(store.getState().pictures.filter((one) => one.id !== id)),
    /** One place towards the front (−1) or the back (+1). */
    move(id: string, by: -1 | 1): Promise<void> {
      const pictures = [...store.getState().pictures];
      const from = pictures.findIndex((one) => one.id === id);
      const to = from + by;
      const [one, other] = [pictures[from], pictures[to]];
      if (!one || !other) return Promise.resolve();
      pictures[from] = other;
      pictures[to] = one;
      return change(pictures);
    },
    /** Lets go of the pictures of plans that were thrown away. */
    async tidy(kept: readonly string[]): Promise<void> {
      for (const id of await shelf.plans())
        if (!kept.includes(id) && id !== planId) await shelf.write(id, []);
    },
  };
}

export type PlanPictures = ReturnType<typeof createPlanPictures>;
