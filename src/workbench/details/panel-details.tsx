import type { Panel } from '../../geometry';
import { roleName } from '../../plan/names';
import { formatLength } from '../../plan/units';
import { useSession } from '../../store';
import { DetailsHead } from './details-head';

/** What is known of a panel. */
export function PanelDetails({ panel }: { panel: Panel }) {
  const unit = useSession((session) => session.lengthUnit);
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
        <div>
          <dt>Usually free behind it</dt>
          <dd>{panel.depthBehind === null ? 'nothing' : formatLength(panel.depthBehind, unit)}</dd>
        </div>
        {panel.airspaceBehind !== null && (
          <div>
            <dt>Usual airspace behind it</dt>
            <dd>{panel.airspaceBehind} litres</dd>
          </div>
        )}
        {panel.roles.length > 0 && (
          <div>
            <dt>Usual for</dt>
            <dd>{panel.roles.map(roleName).join(', ')}</dd>
          </div>
        )}
      </dl>
      <p className="footnote">Typical values: measure the car before you count on them.</p>
    </>
  );
}
