import { useEffect, useRef, useState } from 'react';
import { flushKeeping, keepingStore, planStore } from '../../store';
import { Banner } from './banner';
import { savePlanFile } from './plan-files';
import { type VersionWatch, watchVersions } from './watch-versions';

/** Says when a newer version of the page is ready, and asks before it takes over. */
export default function NewerVersion() {
  const [waiting, setWaiting] = useState(false);
  const [failure, setFailure] = useState<string | null>(null);
  const watch = useRef<VersionWatch | null>(null);

  useEffect(() => {
    const started = watchVersions(setWaiting, {
      container: navigator.serviceWorker,
      reload: () => location.reload(),
    });
    watch.current = started;
    return started.stop;
  }, []);

  if (!waiting) return null;
  const takeOver = async () => {
    await flushKeeping();
    const { status, elsewhere } = keepingStore.getState();
    // What this browser cannot keep would be gone after loading again.
    if (status !== 'kept' && !elsewhere) {
      const saved = await savePlanFile(planStore.getState().plan);
      if (saved.kind !== 'done') {
        setFailure(
          saved.kind === 'failed' ? saved.why : 'The plan is not saved, so nothing was changed.',
        );
        return;
      }
    }
    watch.current?.takeOver();
  };
  return (
    <Banner
      title="A newer version of Earpath is ready"
      text={failure ?? 'It is used from the next start on, or now: the open plan is kept first.'}
      actions={
        <>
          <button type="button" onClick={takeOver}>
            Use it now
          </button>
          <button type="button" onClick={() => setWaiting(false)}>
            Later
          </button>
        </>
      }
    />
  );
}
