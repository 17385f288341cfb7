import { type KeyboardEvent, useDeferredValue, useId, useMemo } from 'react';
import type { CabinModel, GridSpot, SpeakerInput } from '../../../geometry';
import { speakerName } from '../../../plan/names';
import { gridOf, numberNear, spotOfNumber } from '../../../plan/painted-spots';
import type { PlanOption } from '../../../plan/types';
import { sessionStore, useSession } from '../../../store';
import { SpotCautions } from '../../cautions';
import { SelectField } from '../../parts/select-field';
import { useLocked } from '../../parts/use-board';
import { readingSentence } from './map-words';
import { isPointArrow, movedPoint } from './move-point';
import { goesAlong, placeHere, whoStands } from './place-here';
import { placeText, SpotReadingTable } from './spot-reading';
import type { Reading } from './use-reader';

export interface PointProps {
  cabin: CabinModel;
  option: PlanOption;
  speaker: SpeakerInput;
  reading: Reading;
}

/** Points at spot number `at`, to stay there. */
export function pointAt(at: number): void {
  const { painted } = sessionStore.getState();
  if (painted) sessionStore.setState({ painted: { ...painted, at, held: true } });
}

/** Pointing without the drawing: a panel from the list, then from spot to spot by arrow keys. */
export function PointControl({ cabin, option, speaker, reading }: PointProps) {
  const hint = useId();
  const locked = useLocked();
  const panels = useSession(({ painted }) => painted?.map.panels ?? null);
  // The panel alone: a pointer that moves along it has nothing to say here.
  const on = useSession(({ painted }) =>
    painted && painted.at !== null ? (gridOf(painted.map, painted.at)?.panel ?? null) : null,
  );
  if (!panels) return null;

  const onPanel = (id: string) => {
    const number = numberNear({ panels }, { panel: id, ...startOn(id, speaker) });
    if (number !== null) pointAt(number);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const enter = event.key === 'Enter';
    if (!enter && !isPointArrow(event.key)) return;
    event.preventDefault();
    const at = sessionStore.getState().painted?.at ?? null;
    const grid = at === null ? null : gridOf({ panels }, at);
    const panel = cabin.panels.find(({ id }) => id === grid?.panel);
    const spot = at === null ? null : spotOfNumber({ panels }, at);
    if (at === null || !grid || !panel || !spot) {
      const first = panels.find((one) => one.panel === speaker.mount?.panel) ?? panels[0];
      if (first) onPanel(first.panel);
    } else if (isPointArrow(event.key))
      pointAt(grid.first + movedPoint(panel, grid, at - grid.first, event.key));
    else if (!locked)
      placeHere(option, whoStands(option, speaker, reading(spot)?.side ?? null), spot, panel.name);
  };
  return (
    <div className="map-point">
      <SelectField
        label="Point at"
        value={on ?? ''}
        choices={[
          ...(on ? [] : [{ value: '', label: 'the drawing, or…' }]),
          ...cabin.panels
            .filter(({ id }) => panels.some(({ panel }) => panel === id))
            .map(({ id, name }) => ({ value: id, label: name })),
        ]}
        onChange={onPanel}
      />
      <div
        className="map-pad"
        role="application"
        aria-label="The point on the panel"
        aria-describedby={hint}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: moved by the arrow keys
        tabIndex={0}
        onKeyDown={onKeyDown}
      >
        <span id={hint}>Arrow keys move the point, Enter puts the speaker there</span>
      </div>
    </div>
  );
}

/** What is known of the spot pointed at, and the way to put the speaker there. */
export function PointReading({
  cabin,
  option,
  speaker,
  reading: read,
  blend,
}: PointProps & { blend: boolean }) {
  const unit = useSession(({ lengthUnit }) => lengthUnit);
  const panels = useSession(({ painted }) => painted?.map.panels ?? null);
  const held = useSession(({ painted }) => painted?.held ?? false);
  // A reading may take longer than a frame: the pointer must not wait for it.
  const at = useDeferredValue(useSession(({ painted }) => painted?.at ?? null));
  const locked = useLocked();
  const spot = useMemo(
    () => (panels && at !== null ? spotOfNumber({ panels }, at) : null),
    [panels, at],
  );
  const reading = useMemo(() => (spot ? read(spot) : null), [spot, read]);
  const panel = cabin.panels.find(({ id }) => id === spot?.panel);
  const stands = spot && panel && reading ? { spot, panel, reading } : null;
  const who = whoStands(option, speaker, reading?.side ?? null);
  const name = speakerName(who, option.speakers);
  return (
    <section className="map-pointed" aria-label="Pointed at">
      {stands ? (
        <>
          <SpotReadingTable
            {...stands}
            unit={unit}
            blend={blend}
            hasBody={speaker.body !== undefined}
          />
          <p className="row">
            <button
              type="button"
              disabled={locked}
              onClick={() => placeHere(option, who, stands.spot, stands.panel.name)}
            >
              Put the {name} here
            </button>
            <span className="quiet-text">
              {goesAlong(option, who) && 'Its pair goes along. '}
              {held && 'A click on the spot lets go of it.'}
            </span>
          </p>
          <SpotCautions
            compact
            label="Cautions for the spot pointed at"
            spot={{ panel: stands.panel.id, panelName: stands.panel.name, zones: [] }}
          />
        </>
      ) : (
        <p className="quiet-text">
          Point at a painted panel to read the numbers there; a click holds the spot.
        </p>
      )}
      <p className="unseen" role="status" aria-live="polite">
        {stands && held
          ? readingSentence(
              stands.panel,
              placeText(stands.panel, stands.spot.u, stands.spot.v, unit),
              stands.reading,
              unit,
              blend,
            )
          : ''}
      </p>
    </section>
  );
}

/** Where the point begins on a panel: at the speaker, where it is on that one; else in the middle. */
function startOn(panel: string, { mount }: SpeakerInput): Pick<GridSpot, 'u' | 'v'> {
  return mount?.panel === panel ? { u: mount.u, v: mount.v } : { u: 0.5, v: 0.5 };
}
