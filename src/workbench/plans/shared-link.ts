/** A plan that came in a link: looked at, until a copy of it is kept. The rest is in linked-plan.ts. */
import { useEffect } from 'react';

/** Why a plan from a link stays as it is. */
export const LINKED = 'it came in a link and is not kept on this machine: keep a copy to change it';

/** What stands at the start of a fragment that carries a plan. */
export const CARRIES = '#plan=';

/** Opens what the page's own address carries, now and whenever another link is followed. */
export function useSharedLink(): void {
  useEffect(() => {
    const look = async () => {
      if (!location.hash.startsWith(CARRIES)) return;
      const { openLink } = await import('./linked-plan');
      await openLink(location.hash);
    };
    void look();
    addEventListener('hashchange', look);
    return () => removeEventListener('hashchange', look);
  }, []);
}
