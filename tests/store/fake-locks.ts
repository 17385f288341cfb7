/** Web Locks as the standard describes them, as far as they are used: ifAvailable and steal. */
import type { Locks } from '../../src/store/keeping/plan-lock';

export function createFakeLocks(): Locks {
  const held = new Map<string, { lose(): void }>();
  return {
    async request(name, { ifAvailable, steal }, callback) {
      const holder = held.get(name);
      if (holder && steal) holder.lose();
      else if (holder && ifAvailable) return callback(null);
      else if (holder) throw new Error('waiting for a lock is not part of this fake');
      let lose: () => void = () => {};
      const stolen = new Promise<never>((_, reject) => {
        lose = () => {
          held.delete(name);
          reject(new DOMException('stolen', 'AbortError'));
        };
      });
      const mine = { lose };
      held.set(name, mine);
      await Promise.race([callback({ name }), stolen]);
      if (held.get(name) === mine) held.delete(name);
    },
  };
}
