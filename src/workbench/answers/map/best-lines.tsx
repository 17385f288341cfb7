import { useMemo } from 'react';
import type { CabinModel, SpeakerInput, SpotReader } from '../../../geometry';
import { rolePlural, speakerName } from '../../../plan/names';
import { paintedValue } from '../../../plan/painted';
import type { PlanOption } from '../../../plan/types';
import { useSession } from '../../../store';
import { useLocked } from '../../parts/use-board';
import { bestOnPanels } from './best-on-panels';
import type { BestSpot } from './best-spot';
import { valueText } from './map-quantities';
import { asksFit, bestWords } from './map-words';
import { placeHere, whoStands } from './place-here';
import { pointAt } from './point-at-map';
import type { Reading } from './use-reader';

interface BestLinesProps {
  cabin: CabinModel;
  option: PlanOption;
  speaker: SpeakerInput;
  reading: Reading;
  /** Whether the speaker and its twin can stand there. */
  fits: SpotReader['fits'];
  isKeptClear: SpotReader['isKeptClear'];
}

/** The best spots of a finished map in words, and the way there. */
export function BestLines(props: BestLinesProps) {
  const { cabin, option, speaker, reading, fits: canStand, isKeptClear } = props;
  const unit = useSession(({ lengthUnit }) => lengthUnit);
  const map = useSession(({ painted }) => painted?.map ?? null);
  const quantity = useSession(({ painted }) => painted?.quantity ?? null);
  const locked = useLocked();
  const { mount } = speaker;
  const found = useMemo(() => {
    if (!map || !quantity) return null;
    const found = bestOnPanels(map, quantity, { cabin, speaker, fits: canStand, isKeptClear });
    const value = mount ? reading(mount)?.values[quantity] : null;
    return {
      ...found,
      fits: asksFit(map),
      quantity,
      here: typeof value === 'number' ? paintedValue(quantity, value) : null,
    };
  }, [map, quantity, cabin, mount, speaker, reading, canStand, isKeptClear]);
  if (!map || !found) return null;
  const { fits, here, usual, any } = found;
  const lines: { best: BestSpot; usualFor: string | null }[] = [];
  if (usual) lines.push({ best: usual, usualFor: rolePlural(speaker.role) });
  const says = (best: BestSpot) => valueText(found.quantity, best.value, unit);
  if (any && (!usual || says(any) !== says(usual))) lines.push({ best: any, usualFor: null });
  if (lines.length === 0)
    return (
      <p className="map-best">
        {fits ? 'It fits at none of these spots.' : 'The best of these spots are all kept clear.'}
      </p>
    );
  return (
    <ul className="map-best">
      {lines.map(({ best, usualFor }) => {
        const panel = cabin.panels.find(({ id }) => id === best.spot.panel);
        const side = reading(best.spot)?.side ?? null;
        const who = whoStands(option, speaker, side);
        const name = panel?.name ?? best.spot.panel;
        return (
          <li key={usualFor ?? 'any'}>
            {bestWords(
              found.quantity,
              { panel: name, value: best.value },
              usualFor || lines.length === 1 ? here : null,
              { fits, usualFor },
              unit,
            )}{' '}
            <span className="word-buttons">
              <button type="button" onClick={() => pointAt(best.number)}>
                Show it
              </button>
              <button
                type="button"
                disabled={locked}
                onClick={() => {
                  pointAt(best.number);
                  placeHere(option, who, best.spot, name);
                }}
              >
                Put the {speakerName(who, option.speakers)} there
              </button>
            </span>
          </li>
        );
      })}
    </ul>
  );
}
