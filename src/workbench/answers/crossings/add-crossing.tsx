import { useState } from 'react';
import { crossingsOf, pairsOf } from '../../../geometry';
import { setCrossover } from '../../../plan/edits';
import { pairName } from '../../../plan/names';
import type { PlanOption } from '../../../plan/types';
import { planStore } from '../../../store';
import { SelectField } from '../../parts/select-field';
import { useLocked } from '../../parts/use-board';

/** Where neither band says anything, Hz: a middle to start from. */
const MIDDLE_HZ = 1000;

/** Lets one pair hand over to another where their bands do not propose it. */
export function AddCrossing({
  option,
  onAdd,
}: {
  option: PlanOption;
  onAdd: (key: string) => void;
}) {
  const locked = useLocked();
  const free = freeHandOvers(option);
  const [chosen, setChosen] = useState('');
  const handOver = free.find(({ key }) => key === chosen) ?? free[0];
  if (!handOver) return null;
  const name = ({ below, above }: HandOver) =>
    `${pairName(below, option.speakers)} to ${pairName(above, option.speakers)}`;
  return (
    <details className="crossing-add">
      <summary>Another hand-over</summary>
      <div className="row">
        <SelectField
          label="From the lower pair to the upper"
          value={handOver.key}
          disabled={locked}
          choices={free.map((one) => ({ value: one.key, label: name(one) }))}
          onChange={setChosen}
        />
        <button
          type="button"
          disabled={locked}
          onClick={() => {
            const { below, above, frequencyHz, key } = handOver;
            planStore.edit(
              `add a crossover from ${name(handOver)}`,
              setCrossover(option.id, below, above, {
                family: 'linkwitz-riley',
                order: 4,
                frequencyHz,
              }),
            );
            onAdd(key);
          }}
        >
          Add
        </button>
      </div>
    </details>
  );
}

interface HandOver {
  key: string;
  below: string;
  above: string;
  frequencyHz: number;
}

/** Every two pairs that do not hand over to each other yet, the lower first by its band. */
export function freeHandOvers(option: PlanOption): HandOver[] {
  const taken = new Set(
    crossingsOf(option).flatMap(({ crossover: { below, above } }) => [
      `${below} ${above}`,
      `${above} ${below}`,
    ]),
  );
  const pairs = pairsOf(option.speakers)
    .map(({ pair, left, right }) => {
      const band = option.speakers.find(({ id }) => id === left || id === right)?.bandHz;
      return { pair, band: band ?? ([MIDDLE_HZ, MIDDLE_HZ] as const) };
    })
    .sort((a, b) => a.band[0] * a.band[1] - b.band[0] * b.band[1]);
  return pairs.flatMap((below, i) =>
    pairs.slice(i + 1).flatMap((above) => {
      const key = `${below.pair} ${above.pair}`;
      if (taken.has(key)) return [];
      const frequencyHz = Math.round(Math.sqrt(below.band[1] * above.band[0]));
      return [{ key, below: below.pair, above: above.pair, frequencyHz }];
    }),
  );
}
