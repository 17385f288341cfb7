/** Hears of newer versions of the page, and lets one take over when asked to. */
export interface VersionWatch {
  /** The waiting version takes over, and this tab is loaded again with it. */
  takeOver(): void;
  stop(): void;
}

/** Named in the built page; nothing is kept while the page is being worked on. */
const WORKER = './offline.js';

interface Needs {
  container: ServiceWorkerContainer | undefined;
  reload(): void;
}

/**
 * Starts keeping the page's files on this machine. Where that is not possible (no such support, not
 * a safe address, storage refused) the page works on as long as its server does.
 * @param changed called with true while a newer version waits
 */
export function watchVersions(
  changed: (waiting: boolean) => void,
  { container, reload }: Needs,
): VersionWatch {
  let registration: ServiceWorkerRegistration | null = null;
  let asked = false;
  let stopped = false;
  const look = () => {
    if (stopped || !registration) return;
    // The very first version has nothing to take over from.
    changed(registration.waiting !== null && container?.controller !== null);
  };
  const follow = () => {
    registration?.installing?.addEventListener('statechange', look);
    look();
  };
  const takenOver = () => {
    // Another tab may have asked: this one keeps what it has, and is loaded again when it likes.
    if (asked) reload();
    else look();
  };
  container?.addEventListener('controllerchange', takenOver);
  void container
    ?.register(WORKER)
    .then((made) => {
      registration = made;
      made.addEventListener('updatefound', follow);
      follow();
    })
    .catch(() => {});
  return {
    takeOver() {
      asked = true;
      registration?.waiting?.postMessage('take over');
    },
    stop() {
      stopped = true;
      container?.removeEventListener('controllerchange', takenOver);
      registration?.removeEventListener('updatefound', follow);
    },
  };
}
