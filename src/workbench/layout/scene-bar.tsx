import { sessionStore, useSession, type ViewName } from '../../store';
import { Segments } from '../parts/segments';

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
  const reflections = useSession((session) => session.showReflections);
  const image = useSession((session) => session.showImage);
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
      <button
        type="button"
        aria-pressed={reflections}
        title="What the panels throw back from the selected speaker, or from all"
        onClick={() => sessionStore.setState({ showReflections: !reflections })}
      >
        Reflections
      </button>
      <button
        type="button"
        aria-pressed={image}
        title="Where a sound panned to the middle seems to come from, octave by octave"
        onClick={() => sessionStore.setState({ showImage: !image })}
      >
        Image
      </button>
    </div>
  );
}
