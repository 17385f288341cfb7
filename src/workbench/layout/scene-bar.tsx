import { sessionStore, useSession, type ViewName } from '../../store';
import { Segments } from '../parts/segments';
import { BesideChoice } from './beside-choice';

const VIEWS: readonly { value: ViewName; label: string }[] = [
  { value: 'free', label: 'Free' },
  { value: 'plan', label: 'Plan' },
  { value: 'side', label: 'Side' },
  { value: 'front', label: 'Front' },
  { value: 'seat', label: 'From the seat' },
];

/** Where the car is looked at from, and what is drawn besides it. */
export function SceneBar() {
  const view = useSession((session) => session.view);
  const zones = useSession((session) => session.showZones);
  const people = useSession((session) => session.showOccupants);
  const flat = useSession((session) => session.flat);
  // From above there is one view, and neither people nor zones in it.
  if (flat)
    return (
      <div className="scene-bar">
        <BesideChoice />
      </div>
    );
  return (
    <div className="scene-bar">
      <Segments
        label="View"
        value={view}
        choices={VIEWS}
        onChange={(next) => sessionStore.setState({ view: next })}
      />
      <button
        type="button"
        aria-pressed={zones}
        title="Airbags, pedals, sight lines and other places to keep clear"
        onClick={() => sessionStore.setState({ showZones: !zones })}
      >
        Keep-clear
      </button>
      <button
        type="button"
        aria-pressed={people}
        onClick={() => sessionStore.setState({ showOccupants: !people })}
      >
        People
      </button>
      <BesideChoice />
    </div>
  );
}
