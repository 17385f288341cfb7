/**
 * Keeps the open plan: after every edit, on this machine, in generations. One machine with one
 * state (what is held, what is queued, what has failed): cut apart, its parts would share all of it.
 */
import { setTitle } from '../../plan/edits';
import { type ReadPlan, writePlan } from '../../plan/schema';
import type { Plan } from '../../plan/types';
import { settleJournal } from './journal';
import type { Keeper, KeeperNeeds, OpenAnswer } from './keeper-contract';
import { type KeepingState, SENTENCES } from './keeping-store';
import { createMemoryShelf } from './memory-shelf';
import { type PlanLock, takeLock } from './plan-lock';
import { readKept } from './read-kept';
import { ConflictError, type Shelf, SNAPSHOTS_KEPT } from './shelf';
import { duplicateOn, renameOn } from './shelf-edits';

/** An edit is on its way to the shelf after this long at the latest, ms. */
export const SAVE_AFTER = 250;

/** A lock let go of in this tab is free again after this long, ms. */
const LOCK_PATIENCE = 50;

/** What the keeper holds of the plan on screen. */
interface Held {
  planId: string | null;
  /** Generation written or read last; null before the first. */
  seen: number | null;
  lock: PlanLock | null;
  /** The plan as the shelf has it. */
  written: Plan;
}

export function createKeeper(needs: KeeperNeeds): Keeper {
  const { planStore, keepingStore, locks, journal, now, newId } = needs;
  const show = (state: Partial<KeepingState>) => keepingStore.setState(state);
  const start = planStore.getState();
  let held: Held = { planId: null, seen: null, lock: null, written: start.plan };
  let shelf: Shelf | null = null;
  let inMemory = false;
  let stopped: string | null = null;
  let timer: ReturnType<typeof setTimeout> | null = null;
  let queue: Promise<void> = Promise.resolve();
  /** Set while the keeper itself opens a plan, so that it is not taken for a new one. */
  let opening: Held | null = null;

  const listChanged = () => show({ listed: keepingStore.getState().listed + 1 });
  const calm = (): Partial<KeepingState> => {
    if (stopped !== null) return { status: 'failed', message: stopped };
    if (inMemory) return { status: 'memory-only', message: SENTENCES.memoryOnly };
    return { status: 'kept', message: null };
  };

  function stopFor(sentence: string): void {
    stopped = sentence;
    show({ status: 'failed', message: sentence });
  }

  async function theShelf(): Promise<Shelf> {
    if (shelf) return shelf;
    try {
      shelf = await needs.openShelf({
        onOutdated: () => stopFor(SENTENCES.outdated),
        onLost: () => stopFor(SENTENCES.lost),
      });
    } catch {
      shelf = createMemoryShelf();
      inMemory = true;
      show(calm());
    }
    return shelf;
  }
  const opened = theShelf();

  /** One after the other: a write never overtakes another. */
  function inTurn<T>(job: () => Promise<T>): Promise<T> {
    const result = queue.then(job);
    queue = result.then(
      () => {},
      () => {},
    );
    return result;
  }

  const needsWriting = ({ plan, readOnly } = planStore.getState()) =>
    readOnly === null && plan !== held.written;

  function schedule(): void {
    timer ??= setTimeout(() => void flush(), SAVE_AFTER);
  }

  function unschedule(): void {
    if (timer) clearTimeout(timer);
    timer = null;
  }

  const flush = (): Promise<void> => {
    unschedule();
    return inTurn(async () => {
      if (needsWriting()) await write(held, planStore.getState().plan);
    });
  };

  async function write(mine: Held, plan: Plan): Promise<void> {
    if (stopped) return;
    if (held === mine) show({ status: 'saving' });
    try {
      const target = await opened;
      const first = mine.seen === null;
      const planId = mine.planId ?? newId();
      mine.planId = planId;
      if (first) mine.lock ??= await takeLock(locks, planId, { onLost: () => lost(planId) });
      mine.seen = await writeMakingRoom(target, {
        planId,
        title: plan.title,
        text: writePlan(plan),
        savedAt: now(),
        seen: mine.seen,
      });
      mine.written = plan;
      journal?.drop(planId);
      if (held === mine) {
        if (first) await target.setLastOpen(planId);
        show({ ...calm(), planId });
      }
      listChanged();
    } catch (error) {
      failed(mine, plan, error);
    }
  }

  function failed(mine: Held, plan: Plan, error: unknown): void {
    if (held !== mine) {
      show({ notice: `The last changes of “${plan.title}” could not be kept.` });
    } else if (error instanceof ConflictError) {
      planStore.setReadOnly(SENTENCES.conflict);
      show({ status: 'failed', message: SENTENCES.conflict, elsewhere: true });
    } else if (stopped === null) {
      const message = isQuota(error) ? SENTENCES.noRoom : SENTENCES.failed;
      show({ status: 'failed', message });
    }
  }

  /** Where there is no room, older snapshots of the same plan make some. */
  async function writeMakingRoom(
    target: Shelf,
    request: Omit<Parameters<Shelf['write']>[0], 'keep'>,
  ): Promise<number> {
    try {
      return await target.write({ ...request, keep: SNAPSHOTS_KEPT });
    } catch (error) {
      if (!isQuota(error)) throw error;
      return target.write({ ...request, keep: 2 });
    }
  }

  function lost(planId: string): void {
    if (held.planId !== planId) return;
    held.lock = null;
    unschedule();
    planStore.setReadOnly(SENTENCES.takenOver);
    show({ elsewhere: true, message: SENTENCES.takenOver });
  }

  /** Puts a plan read from the shelf on screen. */
  function put(next: Held, read: ReadPlan, notice: string | null): void {
    const readOnly = read.newer ? SENTENCES.newer : next.lock ? null : SENTENCES.elsewhere;
    opening = next;
    planStore.open(read.plan, readOnly);
    opening = null;
    show({
      ...calm(),
      ...(readOnly !== null && { message: readOnly }),
      planId: next.planId,
      elsewhere: next.lock === null,
      notice,
    });
  }

  async function lockFor(planId: string, steal: boolean): Promise<PlanLock | null> {
    const take = () => takeLock(locks, planId, { steal, onLost: () => lost(planId) });
    const lock = await take();
    if (lock) return lock;
    // Perhaps this tab has only just let go of it.
    await new Promise((later) => setTimeout(later, LOCK_PATIENCE));
    return take();
  }

  async function openKept(planId: string, steal: boolean): Promise<OpenAnswer> {
    if (!steal) {
      // What is on screen goes to the shelf before anything else takes its place.
      await flush();
      const here = planId === held.planId && planStore.getState().readOnly === null;
      if (here) return { ok: true };
    }
    return inTurn(async () => {
      const target = await opened;
      const next: Held = { planId, seen: null, lock: null, written: NOT_WRITTEN };
      const own = held.planId === planId ? held.lock : null;
      next.lock = own ?? (await lockFor(planId, steal));
      const kept = await readKept(target, planId);
      if (!kept.ok) {
        if (!own) next.lock?.release();
        return kept;
      }
      if (own) held.lock = null;
      next.seen = kept.generation;
      next.written = kept.read.plan;
      put(next, kept.read, kept.notice);
      await target.setLastOpen(planId);
      return { ok: true };
    });
  }

  const stopListening = planStore.subscribe((state, before) => {
    if (state.openedAs !== before.openedAs) {
      unschedule();
      const old = held;
      // Edits too fresh to be on the shelf yet go there all the same.
      if (before.readOnly === null && before.plan !== old.written) {
        const last = before.plan;
        void inTurn(() => write(old, last)).then(() => old.lock?.release());
      } else old.lock?.release();
      // Opened by somebody else (a file, a start from a body style): a new plan on the shelf.
      held = opening ?? { planId: null, seen: null, lock: null, written: NOT_WRITTEN };
      if (!opening) show({ ...calm(), planId: null, elsewhere: false });
    }
    if (needsWriting(state)) schedule();
  });

  async function restore(): Promise<void> {
    const target = await opened;
    if (journal) await settleJournal(target, journal, (planId) => lockFor(planId, false));
    const planId = await target.lastOpen();
    // Somebody may have opened a plan or edited while the shelf was being opened.
    const touched = planStore.getState().openedAs !== start.openedAs || needsWriting();
    if (planId === null || touched) return;
    const answer = await openKept(planId, false);
    if (!answer.ok) show({ notice: `The plan open last was not opened: ${answer.message}.` });
  }

  return {
    ready: restore().catch(() => {}),
    flush,
    leave() {
      if (stopped === null && !inMemory && needsWriting()) {
        const { plan } = planStore.getState();
        held.planId ??= newId();
        const { planId, seen } = held;
        journal?.put({ planId, seen, title: plan.title, text: writePlan(plan), savedAt: now() });
      }
      void flush();
    },
    list: async () => (await opened).list(),
    open: (planId) => openKept(planId, false),
    takeOver: async () =>
      held.planId === null
        ? { ok: false, message: 'there is no kept plan to take over', raw: null }
        : openKept(held.planId, true),
    async remove(planId) {
      unschedule();
      await inTurn(async () => {
        await (await opened).remove(planId);
        if (held.planId !== planId) return;
        held.lock?.release();
        // It stays on screen; with the next edit it is kept as a new plan.
        held = { planId: null, seen: null, lock: null, written: planStore.getState().plan };
        show({ planId: null });
      });
      listChanged();
    },
    async duplicate(planId) {
      await flush();
      const answer = await inTurn(async () => duplicateOn(await opened, planId, newId(), now()));
      listChanged();
      return answer;
    },
    async rename(planId, title) {
      if (planId === held.planId && planStore.getState().readOnly === null) {
        planStore.edit('rename the plan', setTitle(title));
        await flush();
        return { ok: true, planId };
      }
      const answer = await inTurn(async () => renameOn(await opened, locks, planId, title, now()));
      listChanged();
      return answer;
    },
    async retry() {
      if (stopped === null) await flush();
    },
    dismissNotice: () => show({ notice: null }),
    stop() {
      unschedule();
      stopListening();
      held.lock?.release();
      shelf?.close();
    },
  };
}

const isQuota = (error: unknown): boolean =>
  (error as { name?: unknown } | null)?.name === 'QuotaExceededError';

/** Never equal to a plan: what has just been opened is written at once. */
const NOT_WRITTEN = {} as Plan;
