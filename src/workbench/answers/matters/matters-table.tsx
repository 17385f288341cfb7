import type { PairSensitivity, Stage } from '../../../geometry';
import { pairName } from '../../../plan/names';
import { formatLength, formatNumber, type LengthUnit, NO_VALUE } from '../../../plan/units';
import { plainReason } from '../../parts/plain-reason';
import { TableScroll } from '../../parts/table-scroll';
import { CAUSES, type CauseId, type Effect, effectsOf } from './causes';
import { ChangeBar } from './change-bar';
import { wayWords } from './way-words';

interface MattersTableProps {
  pairs: readonly PairSensitivity[];
  stage: Stage;
  unit: LengthUnit;
  /** 10 mm and 10 °C in the user's units. */
  step: string;
  warmth: string;
}

/** What each cause does to each pair: a number, a bar, and which way it was tried. */
export function MattersTable({ pairs, stage, unit, step, warmth }: MattersTableProps) {
  const { speakers } = stage.option;
  const effects = pairs.map(effectsOf);
  const most = Math.max(
    1e-9,
    ...effects.flat().map(({ change }) => Math.abs(change?.differenceTime ?? 0)),
  );
  const names: Record<CauseId, string> = {
    'both-u': `Both ${step} along the panel`,
    'both-v': `Both ${step} across it`,
    'left-u': `Left alone ${step} along`,
    'left-v': `Left alone ${step} across`,
    'right-u': `Right alone ${step} along`,
    'right-v': `Right alone ${step} across`,
    seat: `Seat ${step}`,
    temperature: `Air ${warmth}`,
  };
  return (
    <TableScroll label="What changes left minus right">
      <table className="numbers matters-table">
        <caption className="unseen">
          How much left minus right of each pair changes; a plus says that the left gets later
        </caption>
        <thead>
          <tr>
            <th scope="col" className="text">
              When off by
            </th>
            {pairs.map(({ pair }) => (
              <th key={pair} scope="col" className="text">
                {pairName(pair, speakers)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {CAUSES.map((cause, row) => (
            <tr key={cause}>
              <th scope="row">{names[cause]}</th>
              {pairs.map(({ pair }, column) => {
                const effect = effects[column]?.[row];
                return (
                  <td key={pair} className="text wrap">
                    {effect && (
                      <Cell effect={effect} most={most} unit={unit} stage={stage} pair={pair} />
                    )}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </TableScroll>
  );
}

interface CellProps {
  effect: Effect;
  most: number;
  unit: LengthUnit;
  stage: Stage;
  pair: string;
}

function Cell({ effect: { cause, change, reason }, most, unit, stage, pair }: CellProps) {
  const { speakers } = stage.option;
  if (!change)
    return (
      <>
        {NO_VALUE}
        <span className="matters-way">
          {plainReason(
            (reason ?? 'not known').replace(/(\bof the )?edge ([uv])/, 'edge $2'),
            speakers,
          )}
        </span>
      </>
    );
  const { difference, differenceTime, sign, oneSided } = change;
  const digits = unit === 'in' ? 2 : 1;
  const value =
    cause === 'temperature'
      ? `${formatNumber(differenceTime * 1000, 0)} µs`
      : formatLength(difference, unit, digits);
  return (
    <>
      <span className="matters-value">
        {difference > 0 || (cause === 'temperature' && differenceTime > 0) ? `+${value}` : value}
      </span>
      <ChangeBar share={differenceTime / most} />
      <span className="matters-way">
        {wayOf(cause, sign, stage, pair)}
        {oneSided && ', this way only'}
      </span>
    </>
  );
}

function wayOf(cause: CauseId, sign: number, stage: Stage, pair: string): string {
  if (cause === 'seat') return sign > 0 ? 'rearward' : 'forward';
  if (cause === 'temperature') return sign > 0 ? 'warmer' : 'colder';
  const side = cause.startsWith('right') ? 'right' : 'left';
  const speaker = stage.option.speakers.find((one) => one.pair === pair && one.side === side);
  return wayWords(speaker, stage.cabin.panels, cause.endsWith('u') ? 'u' : 'v', sign);
}
