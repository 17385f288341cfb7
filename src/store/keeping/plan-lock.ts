/** One tab writes a plan at a time, by the browser's Web Locks. */

/** The part of the browser's lock manager that is used. */
export interface Locks {
  request(
    name: string,
    options: { ifAvailable?: boolean; steal?: boolean },
    callback: (lock: unknown) => Promise<void> | undefined,
  ): Promise<unknown>;
}

export interface PlanLock {
  release(): void;
}

/**
 * Takes the lock of a plan, or answers null where another tab holds it. `steal` takes it from that
 * tab, whose `onLost` is called. Without a lock manager every tab gets its lock; the shelf's
 * generations then tell who came second.
 */
export function takeLock(
  locks: Locks | null,
  planId: string,
  { steal = false, onLost }: { steal?: boolean; onLost(): void },
): Promise<PlanLock | null> {
  if (!locks) return Promise.resolve({ release() {} });
  return new Promise((resolve, reject) => {
    let release = () => {};
    let held = false;
    let released = false;
    const options = steal ? { steal } : { ifAvailable: true };
    locks
      .request(`earpath-plan ${planId}`, options, (lock) => {
        if (!lock) {
          resolve(null);
          return undefined;
        }
        held = true;
        return new Promise<void>((end) => {
          release = () => {
            released = true;
            end();
          };
          resolve({ release: () => release() });
        });
      })
      .catch((error: unknown) => {
        if (!held) reject(error);
        else if (!released) onLost();
      });
  });
}
