import { lazy, Suspense } from 'react';
import type { Panel } from '../../geometry';
import { roleName } from '../../plan/names';
import { Boundary } from '../parts/boundary';
import { DetailsHead } from './details-head';

const PanelMeasures = lazy(() =>
  import('../fit/panel-measures').then((part) => ({ default: part.PanelMeasures })),
);

/** What is known of a panel. */
export function PanelDetails({ panel }: { panel: Panel }) {
  return (
    <>
      <DetailsHead title={panel.name}>
        {panel.mountable ? 'A speaker can go here.' : 'No speaker can go here.'}
      </DetailsHead>
      <dl className="facts">
        <div>
          <dt>Made of</dt>
          <dd>{panel.material.replace('-', ' ')}</dd>
        </div>
        {panel.roles.length > 0 && (
          <div>
            <dt>Usual for</dt>
            <dd>{panel.roles.map(roleName).join(', ')}</dd>
          </div>
        )}
      </dl>
      {panel.mountable && (
        <section aria-labelledby="behind-head">
          <h3 id="behind-head">Behind it</h3>
          <Boundary what="what is behind it">
            <Suspense fallback={null}>
              <PanelMeasures panel={panel} />
            </Suspense>
          </Boundary>
        </section>
      )}
    </>
  );
}
