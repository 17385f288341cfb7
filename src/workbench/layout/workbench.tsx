import { lazy, type ReactNode, Suspense, useCallback, useEffect, useState } from 'react';
import { sessionStore } from '../../store';
import { Answers } from '../answers';
import { Boundary } from '../parts/boundary';
import { FileDrop, useSharedLink } from '../plans';
import { SpeakersColumn } from '../speakers';
import { Dialogs } from './dialogs';
import { rememberLook } from './remember-look';
import { SceneBar } from './scene-bar';
import { type DialogName, TopBar } from './top-bar';
import { useKeys } from './use-keys';
import { usePaperInView } from './use-paper';
import { useSaveToFile } from './use-save';

// On its way from the first moment: it stands a moment after the numbers, in a place kept for it.
const details = import('../details');
const DetailsColumn = lazy(async () => ({ default: (await details).DetailsColumn }));

// Asked for at once, but the first numbers do not wait for it.
const KeepingBanner = lazy(async () => ({
  default: (await import('../plans/keeping-banner')).KeepingBanner,
}));

const NewerVersion = lazy(() => import('../plans/newer-version'));

/**
 * The whole page: the scene is given from outside and stands in the middle; so are the papers, which
 * stand in the board's place while one is looked at.
 */
export function Workbench({ scene, papers }: { scene: ReactNode; papers: ReactNode }) {
  const [dialog, setDialog] = useState<DialogName | null>(null);
  const close = useCallback(() => setDialog(null), []);
  const showKeys = useCallback(() => setDialog('keys'), []);
  const { save, failure } = useSaveToFile();
  useKeys({ save, showKeys });
  useEffect(() => rememberLook(sessionStore, () => localStorage), []);
  useSharedLink();
  const onPaper = usePaperInView();

  return (
    <FileDrop>
      {onPaper && papers}
      <nav className="skip-links" aria-label="Skip" hidden={onPaper}>
        <a href="#answers">Skip to the answer</a>
        <a href="#speakers">Skip to the speakers</a>
        <a href="#details">Skip to the details</a>
      </nav>
      <div className="board" hidden={onPaper}>
        <TopBar onOpen={setDialog} />
        <div className="board-notes">
          <Boundary what="the notes on your plan">
            <Suspense fallback={null}>
              <KeepingBanner />
            </Suspense>
          </Boundary>
          {import.meta.env.PROD && (
            <Boundary what="the news of newer versions">
              <Suspense fallback={null}>
                <NewerVersion />
              </Suspense>
            </Boundary>
          )}
          {failure && (
            <p className="notice" role="alert">
              <strong>The plan was not saved to a file.</strong> {failure}
            </p>
          )}
        </div>
        <main className="scene-area" aria-label="The car">
          <div className="scene-head">
            <SceneBar />
          </div>
          <div className="scene-host">{scene}</div>
        </main>
        <Boundary what="the answer" className="answers">
          <Answers />
        </Boundary>
        <Boundary what="the lists" className="column lists">
          <SpeakersColumn />
        </Boundary>
        <Boundary what="the details" className="column details">
          <Suspense fallback={<DetailsPlace />}>
            <DetailsColumn />
          </Suspense>
        </Boundary>
      </div>
      <Dialogs open={dialog} onClose={close} />
    </FileDrop>
  );
}

/** Where the details will stand: the link that skips to them leads there already. */
function DetailsPlace() {
  return <section className="column details" id="details" aria-label="Details" tabIndex={-1} />;
}
