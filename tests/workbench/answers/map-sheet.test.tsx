import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { buildCabin, createSpotReader, type MapRequest, mapSpots } from '../../../src/geometry';
import { demoPlan } from '../../../src/plan/demo';
import { bestOnPanels } from '../../../src/workbench/answers/map/best-on-panels';
import { MapState } from '../../../src/workbench/answers/map/map-state';

describe('the best spots of a map that does not ask whether it fits', () => {
  const plan = demoPlan();
  const [option] = plan.options;
  const speaker = option?.speakers.find(({ id }) => id === 'midrange-left');
  const built = buildCabin(plan);
  if (!built.ok || !option || !speaker) throw new Error('the demo has a left mid');

  test.each(['offAxisDeg', 'difference'] as const)(
    'are none that are kept clear: %s',
    (quantity) => {
      const request: MapRequest = {
        option: option.id,
        speaker: speaker.id,
        quantities: [quantity],
        step: 80,
        seats: ['front-left'],
        fits: false,
      };
      const map = mapSpots(plan, request);
      const read = createSpotReader(plan, request);
      if (!map.ok || !read.ok) throw new Error('the demo is painted');
      const { reader } = read;
      const asked: boolean[] = [];
      const isKeptClear: typeof reader.isKeptClear = (spot) => {
        const kept = reader.isKeptClear(spot);
        asked.push(kept);
        return kept;
      };
      const tried = { cabin: built.cabin, speaker, fits: () => false };
      const found = bestOnPanels(map.map, quantity, { ...tried, isKeptClear });
      // Some of the very best are kept clear here: they are passed over.
      expect(asked).toContain(true);
      const loose = bestOnPanels(map.map, quantity, { ...tried, isKeptClear: () => false });
      expect(loose).not.toEqual(found);
      for (const best of [found.usual, found.any]) {
        expect(best && reader.read(best.spot)?.misfits.some(({ hard }) => hard)).toBe(false);
        const than = best === found.any ? loose.any : loose.usual;
        expect(best?.value).toBeGreaterThanOrEqual(than?.value ?? Infinity);
      }
      const none = bestOnPanels(map.map, quantity, { ...tried, isKeptClear: () => true });
      expect(none).toEqual({ usual: null, any: null });
    },
  );
});

test('a map without a value says so, and why', () => {
  const said = (quantity: 'pathSpread' | 'firstReflectionTime') =>
    renderToStaticMarkup(
      <MapState
        painting={{ state: 'empty', quantity }}
        waiting={false}
        stop={() => {}}
        again={() => {}}
      />,
    );
  expect(said('pathSpread')).toContain('on neither side stands another speaker');
  expect(said('firstReflectionTime')).toContain('no spot has a value');
});
