import { useState } from 'react';
import type { CabinModel } from '../../../geometry';
import type { LengthUnit } from '../../../plan/units';
import { costOf, type Found, type Measure, type Proposal } from './found';
import { MEASURE_NAMES } from './measure-words';
import { ProposalsTable } from './proposals-table';

type SortBy = Measure | 'score';

/** Rows shown until all are asked for. */
const FEW = 12;

/** The front, sorted by any aim, best first; a second press turns it round. */
export function FrontTable({
  found,
  chosen,
  cabin,
  unit,
}: {
  found: Found;
  chosen: string | null;
  cabin: CabinModel;
  unit: LengthUnit;
}) {
  const [sort, setSort] = useState<{ by: SortBy; down: boolean }>({ by: 'score', down: false });
  const [whole, setWhole] = useState(false);
  const sorted = sortedFront(found.front, sort.by, sort.down);
  const at = sorted.findIndex(({ key }) => key === chosen);
  const few = sorted.slice(0, FEW);
  // What is chosen on the chart is not hidden from the table.
  const shown = whole || at < FEW ? (whole ? sorted : few) : [...few, sorted[at] as Proposal];
  return (
    <div>
      <ProposalsTable
        found={found}
        list={shown}
        chosen={chosen}
        cabin={cabin}
        unit={unit}
        caption="The trade-off front"
        sort={(measure) =>
          measure === sort.by ? (sort.down ? 'descending' : 'ascending') : undefined
        }
        head={(measure) => (
          <button
            type="button"
            className="search-sort"
            onClick={() => setSort({ by: measure, down: measure === sort.by ? !sort.down : false })}
          >
            {measure === 'score' ? 'Score' : MEASURE_NAMES[measure]}
            <span aria-hidden="true">{measure === sort.by ? (sort.down ? ' ↓' : ' ↑') : ''}</span>
          </button>
        )}
      />
      {sorted.length > FEW && (
        <button type="button" className="words" onClick={() => setWhole(!whole)}>
          {whole ? `Only the first ${FEW}` : `All ${sorted.length} of the front`}
        </button>
      )}
    </div>
  );
}

/** Best first by one measure, ties by score; `down`: the other way round. */
export function sortedFront(list: readonly Proposal[], by: SortBy, down: boolean): Proposal[] {
  const cost = (one: Proposal) => (by === 'score' ? one.score : costOf(by, one.measures[by]));
  const sign = down ? -1 : 1;
  return [...list].sort((a, b) => {
    const [x, y] = [cost(a), cost(b)];
    return x === y ? a.score - b.score : x < y ? -sign : sign;
  });
}
