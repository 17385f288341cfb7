import { useEffect, useRef, useState } from 'react';
import type { MapQuantity, MapRequest, PlanInput, SpotMap } from '../../../geometry';
import { numberNear, spotOfNumber } from '../../../plan/painted-spots';
import { type PaintedMap, sessionStore, useSession } from '../../../store';
import { enginePool } from '../../parts/engine-pool';
import { paintScale } from './paint-scale';

export type Painting =
  | { state: 'painting'; done: number; total: number }
  | { state: 'stopped'; done: number; total: number }
  | { state: 'done'; total: number }
  | { state: 'empty'; quantity: MapQuantity }
  | { state: 'refused'; message: string }
  | { state: 'broken' };

/** A map under way is first shown after this, ms, and then each time it is twice as old. */
const FIRST_SHOWN = 300;

const BEGINNING: Painting = { state: 'painting', done: 0, total: 0 };

/**
 * Has the map worked out by all cores and painted on the panels as it comes. Another `key` drops
 * what is under way; what is painted stands until the new one has begun. Takes the paint off when
 * the sheet closes.
 * @param key equal where plan and request lead to the same map
 */
export function usePainting(
  plan: PlanInput | null,
  request: MapRequest | null,
  key: string,
): { painting: Painting; stop: () => void; again: () => void } {
  const [kept, keep] = useState<{ of: string; painting: Painting } | null>(null);
  const [round, setRound] = useState(0);
  const asked = useRef<{ cancel(): void } | null>(null);

  // biome-ignore lint/correctness/useExhaustiveDependencies: the key says when it is another map
  useEffect(() => {
    if (!plan || !request) return;
    let current = true;
    const tell = (painting: Painting) => {
      if (current) keep({ of: key, painting });
    };
    tell(BEGINNING);
    const began = performance.now();
    let next = FIRST_SHOWN;
    const question = enginePool().map(plan, request, ({ done, total, map }) => {
      if (!current) return;
      tell({ state: 'painting', done, total });
      // Drawing and working out share the machine, and a frame drawn without a graphics card costs
      // as much as a thousand spots: a few pictures on the way are enough.
      const age = performance.now() - began;
      if (age < next) return;
      paint(map, request);
      next = 2 * age;
    });
    asked.current = question;
    question.outcome.then(
      (outcome) => {
        if (!current || outcome.kind !== 'answer') return;
        const { value } = outcome;
        if (!value.ok) {
          sessionStore.setState({ painted: null });
          tell({ state: 'refused', message: value.error.message });
          return;
        }
        const [quantity] = request.quantities;
        if (paint(value.map, request) || !quantity) {
          tell({ state: 'done', total: value.map.done.length });
          return;
        }
        // What was painted before is of another question.
        sessionStore.setState({ painted: null });
        tell({ state: 'empty', quantity });
      },
      () => tell({ state: 'broken' }),
    );
    return () => {
      current = false;
      question.cancel();
    };
  }, [key, round]);

  // Lines of equal value run at round numbers of the unit that is read.
  const unit = useSession(({ lengthUnit }) => lengthUnit);
  // biome-ignore lint/correctness/useExhaustiveDependencies: read from the session by paint
  useEffect(() => {
    const { painted } = sessionStore.getState();
    if (painted) paint(painted.map, { quantities: [painted.quantity] });
  }, [unit]);

  useEffect(() => () => sessionStore.setState({ painted: null }), []);

  return {
    painting: kept?.of === key ? kept.painting : BEGINNING,
    stop: () => {
      asked.current?.cancel();
      keep((now) =>
        now?.painting.state === 'painting'
          ? { ...now, painting: { ...now.painting, state: 'stopped' } }
          : now,
      );
    },
    again: () => setRound(round + 1),
  };
}

/**
 * Puts a map, finished or not, on the panels; what was pointed at stays pointed at.
 * @returns false where no spot has a value yet: what was painted before is left
 */
function paint(map: SpotMap, { quantities: [quantity] }: Pick<MapRequest, 'quantities'>): boolean {
  const { painted, lengthUnit } = sessionStore.getState();
  if (!quantity) return false;
  const scale = paintScale(map, quantity, lengthUnit);
  if (!scale) return false;
  const next: PaintedMap = {
    map,
    quantity,
    range: scale.range,
    levels: scale.levels,
    at: painted ? samePlaceIn(painted, map) : null,
    held: painted?.held ?? false,
  };
  sessionStore.setState({ painted: next });
  return true;
}

/** The spot pointed at, by its number in another map. */
function samePlaceIn({ map: before, at }: PaintedMap, map: SpotMap): number | null {
  const spot = at === null ? null : spotOfNumber(before, at);
  return spot && numberNear(map, spot);
}
