import { type KeyboardEvent, useDeferredValue, useId, useMemo, useState } from 'react';
import type { CabinModel, GridSpot, SpeakerInput, SpotReader } from '../../../geometry';
import { speakerName } from '../../../plan/names';
import { gridOf, numberNear, spotOfNumber } from '../../../plan/painted-spots';
import type { PlanOption } from '../../../plan/types';
import { sessionStore, useSession } from '../../../store';
import { SelectField } from '../../parts/select-field';
import { useLocked } from '../../parts/use-board';
import { readingSentence } from './map-words';
import { isPointArrow, movedPoint } from './move-point';
import { goesAlong, placeHere, whoStands } from './place-here';
import { placeText, SpotReadingTable } from './spot-reading';

interface PointAtMapProps {
  cabin: CabinModel;
  option: PlanOption;
  speaker: SpeakerInput;
  /** Made when first asked: it takes a moment. */
  reader: () => SpotReader | null;
  blend: boolean;
}

/** Points at spot number `at`, to stay there. */
export function pointAt(at: number): void {
  const { painted } = sessionStore.getState();
  if (painted) sessionStore.setState({ painted: { ...painted, at, held: true } });
}

/** The spot pointed at: which, what is known there, and the way to put the speaker there. */
export function PointAtMap({ cabin, option, speaker, reader, blend }: PointAtMapProps) {
  const hint = useId();
  const unit = useSession(({ lengthUnit }) => lengthUnit);
  const panels = useSession(({ painted }) => painted?.map.panels ?? null);
  const held = useSession(({ painted }) => painted?.held ?? false);
  // A reading may take longer than a frame: the pointer must not wait for it.
  const at = useDeferredValue(useSession(({ painted }) => painted?.at ?? null));
  const [byKeys, setByKeys] = useState(false);
  const locked = useLocked();
  const spot = panels && at !== null ? spotOfNumber({ panels }, at) : null;
  const reading = useMemo(() => (spot ? (reader()?.read(spot) ?? null) : null), [spot, reader]);
  const panel = cabin.panels.find(({ id }) => id === spot?.panel);
  const who = whoStands(option, speaker, reading?.side ?? null);
  const name = speakerName(who, option.speakers);

  const put = () => {
    if (spot && panel && !locked) placeHere(option, who, spot, panel.name);
  };
  const point = (next: number | null) => {
    setByKeys(true);
    if (next !== null) pointAt(next);
  };
  const onPanel = (id: string) => {
    if (panels) point(numberNear({ panels }, { panel: id, ...startOn(id, speaker) }));
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (!panels) return;
    if (event.key === 'Enter') {
      event.preventDefault();
      put();
      return;
    }
    if (!isPointArrow(event.key)) return;
    event.preventDefault();
    const now = sessionStore.getState().painted?.at ?? null;
    const grid = now === null ? null : gridOf({ panels }, now);
    const on = cabin.panels.find(({ id }) => id === grid?.panel);
    if (now === null || !grid || !on) {
      const first = panels.find(({ panel: id }) => id === speaker.mount?.panel) ?? panels[0];
      if (first) onPanel(first.panel);
      return;
    }
    point(grid.first + movedPoint(on, grid, now - grid.first, event.key));
  };

  if (!panels) return null;
  return (
    <section className="map-point" aria-label="Pointed at">
      <div className="map-point-bar">
        <SelectField
          label="Panel"
          value={spot?.panel ?? ''}
          choices={[
            ...(spot ? [] : [{ value: '', label: 'point at the drawing, or choose' }]),
            ...cabin.panels
              .filter(({ id }) => panels.some((grid) => grid.panel === id))
              .map(({ id, name: label }) => ({ value: id, label })),
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
          <span id={hint}>Arrow keys move it, Enter puts it there</span>
        </div>
      </div>
      {spot && panel && reading && (
        <>
          <SpotReadingTable
            panel={panel}
            u={spot.u}
            v={spot.v}
            reading={reading}
            unit={unit}
            blend={blend}
          />
          <p className="row">
            <button type="button" disabled={locked} onClick={put}>
              Put the {name} here
            </button>
            {goesAlong(option, who) && (
              <span className="quiet-text small">its pair goes along</span>
            )}
            {held && !byKeys && (
              <span className="quiet-text small">held; click it again to let go</span>
            )}
          </p>
        </>
      )}
      <p className="unseen" role="status" aria-live="polite">
        {byKeys && spot && panel && reading
          ? readingSentence(panel, placeText(panel, spot.u, spot.v, unit), reading, unit, blend)
          : ''}
      </p>
    </section>
  );
}

/** Where the point begins on a panel: at the speaker, where it is on that one; else in the middle. */
function startOn(panel: string, { mount }: SpeakerInput): Pick<GridSpot, 'u' | 'v'> {
  return mount?.panel === panel ? { u: mount.u, v: mount.v } : { u: 0.5, v: 0.5 };
}
