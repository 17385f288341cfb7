import { lazy, StrictMode, Suspense } from 'react';
import { createRoot } from 'react-dom/client';
import { planStore } from './store';
import { startKeeping } from './store/keeping';
import { Boundary, Workbench } from './workbench';

const Scene = lazy(() => import('./scene'));
const ReadingRoom = lazy(() => import('./sheets'));

const root = document.getElementById('root');
if (!root) throw new Error('index.html has no element with the id "root"');

/** Longer than this the page does not wait for the plan open last, ms: it comes when it comes. */
const PATIENCE = 600;

const keeper = startKeeping(planStore);

/** Not awaited at the top level: the bundler would then cut every shared module into a file of its own. */
const patience = new Promise((resolve) => setTimeout(resolve, PATIENCE));
Promise.race([keeper.ready, patience]).then(() => createRoot(root).render(page()));

function page() {
  return (
    <StrictMode>
      <Boundary what="the workbench">
        <Workbench
          papers={
            <Boundary what="the papers">
              <Suspense fallback={<p className="scene-message">Fetching the papers…</p>}>
                <ReadingRoom />
              </Suspense>
            </Boundary>
          }
          scene={
            <Boundary what="the drawing">
              <Suspense fallback={<p className="scene-message">Drawing the car…</p>}>
                <Scene />
              </Suspense>
            </Boundary>
          }
        />
      </Boundary>
    </StrictMode>
  );
}
