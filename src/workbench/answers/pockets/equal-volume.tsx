import { type CabinModel, depthForLitres, pocketInput } from '../../../geometry';
import { changePocket } from '../../../plan/edits';
import type { PlanOption } from '../../../plan/types';
import { formatLength, type LengthUnit } from '../../../plan/units';
import { planStore } from '../../../store';
import type { DrawnPocket } from './pocket-groups';
import { SAME_LITRES } from './pocket-words';

export interface EqualVolumeProps {
  option: PlanOption;
  cabin: CabinModel;
  pockets: readonly DrawnPocket[];
  unit: LengthUnit;
  locked: boolean;
}

/** How deep the smaller of two pockets would have to be to hold as much, and how shallow the larger. */
export function EqualVolume({ option, cabin, pockets, unit, locked }: EqualVolumeProps) {
  const [a, b] = pockets;
  const [la, lb] = [a?.study.netLitres ?? null, b?.study.netLitres ?? null];
  if (!a || !b || la === null || lb === null || Math.abs(la - lb) < SAME_LITRES) return null;
  const [small, large] = la < lb ? [a, b] : [b, a];
  const ways = [
    { of: small, like: large },
    { of: large, like: small },
  ].flatMap(({ of, like }) => {
    const panel = cabin.panels.find(({ id }) => id === of.pocket.panel);
    const litres = like.study.netLitres;
    if (!panel || litres === null) return [];
    const answer = depthForLitres(panel, pocketInput(option, of.pocket), litres);
    if (!answer.ok) return [];
    const { depthBehind } = panel;
    const over =
      of.pocket.lies === 'before' || depthBehind === null ? 0 : answer.depth - depthBehind;
    return [{ of, like, depth: answer.depth, over }];
  });
  return (
    <ul className="pocket-equal">
      {ways.map(({ of, like, depth, over }) => (
        <li key={of.pocket.id}>
          <span>
            {`To hold as much as the ${like.name}, the ${of.name} would be ` +
              `${formatLength(depth, unit, unit === 'mm' ? 1 : 2)} deep outside, not ` +
              `${formatLength(of.pocket.depth, unit, unit === 'mm' ? 1 : 2)}.` +
              (over > 0.05
                ? ` That is ${formatLength(over, unit, unit === 'mm' ? 1 : 2)} more than is free ` +
                  'behind the panel.'
                : '')}
          </span>
          <button
            type="button"
            disabled={locked}
            onClick={() =>
              planStore.edit(
                `make the ${of.name} hold as much as the ${like.name}`,
                changePocket(option.id, of.pocket.id, { depth: Math.round(depth * 100) / 100 }),
              )
            }
          >
            {`Make the ${of.study.side ?? of.name} so deep`}
          </button>
        </li>
      ))}
    </ul>
  );
}
