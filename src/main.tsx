import { lazy, StrictMode, Suspense } from 'react';
import { createRoot } from 'react-dom/client';
import { Boundary, Workbench } from './workbench';

const Scene = lazy(() => import('./scene'));

const root = document.getElementById('root');
if (!root) throw new Error('index.html has no element with the id "root"');
createRoot(root).render(
  <StrictMode>
    <Boundary what="the workbench">
      <Workbench
        scene={
          <Boundary what="the drawing">
            <Suspense fallback={<p className="scene-message">Drawing the car…</p>}>
              <Scene />
            </Suspense>
          </Boundary>
        }
      />
    </Boundary>
  </StrictMode>,
);
