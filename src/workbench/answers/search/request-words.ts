/** A request in one or two sentences. */
import type { CabinModel, PairRequest, SeatWeight } from '../../../geometry';
import { seatName } from '../../../plan/names';
import type { AnyRequest } from './build-request';
import { isStageRequest } from './build-request';
import { panelCouples } from './panel-couples';

/** "a, b and c". */
export function listWords(words: readonly string[]): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} and ${words[words.length - 1]}`;
}

const MOST_NAMED = 4;

export interface RequestWording {
  cabin: CabinModel;
  length: (mm: number) => string;
}

/** "Mirrored spots on the A-pillar and dash top, aimed as they are, heard at … They must fit …" */
export function requestSentence(request: AnyRequest, { cabin, length }: RequestWording): string {
  const pairs = isStageRequest(request) ? request.pairs : [request];
  const [first] = pairs;
  if (!first) return '';
  const kind = first.mirrored === false ? 'Left and right each on its own' : 'Mirrored spots';
  const panels = [...new Set(pairs.flatMap((pair) => pair.panels ?? []))];
  const listeners = seatWords(request.seats ?? []);
  const grid = `a ${length(first.step ?? 20)} grid`;
  return `${kind} on ${panelWords(panels, cabin)}, ${aimWords(first)}, heard at ${listeners}, on ${grid}. ${mustWords(first)}`;
}

function panelWords(panels: readonly string[], cabin: CabinModel): string {
  const names = panelCouples(cabin.panels)
    .filter(({ id }) => panels.includes(id))
    .map(({ name }) => name);
  if (names.length <= MOST_NAMED) return names.length > 0 ? `the ${listWords(names)}` : 'no panel';
  const shown = names.slice(0, MOST_NAMED - 1);
  return `the ${shown.join(', ')} and ${names.length - shown.length} more`;
}

function aimWords({ aim }: PairRequest): string {
  if (!aim) return 'aimed as they are';
  const limit =
    aim.withinDeg === undefined
      ? ''
      : `, turned from the panel’s normal by ${aim.withinDeg}° at most`;
  switch (aim.kind) {
    case 'normal':
      return 'along the panel’s normal';
    case 'between':
      return `aimed between the listeners${limit}`;
    case 'seat':
      return `aimed at the ${seatName(aim.seat)}${limit}`;
    case 'point':
      return `aimed at a point${limit}`;
    case 'direction':
      return `aimed one way${limit}`;
  }
}

function seatWords(seats: readonly SeatWeight[]): string {
  const alike = seats.every(({ weight }) => weight === seats[0]?.weight);
  return listWords(
    seats.map(({ id, weight }) => `the ${seatName(id)}${alike ? '' : ` (weight ${weight})`}`),
  );
}

function mustWords({ require = {} }: PairRequest): string {
  const musts = [
    ...(require.fits === false ? [] : ['fit']),
    'stay out of keep-clear zones',
    ...(require.free ? ['have a free line to every listener'] : []),
    ...(require.maxOffAxisDeg === undefined
      ? []
      : [`have the listeners within ${require.maxOffAxisDeg}° of their axis`]),
    ...(require.maxAddedPillarViewDeg === undefined
      ? []
      : [`add ${require.maxAddedPillarViewDeg}° at most to what a pillar hides of the road`]),
  ];
  return `They must ${listWords(musts)}.`;
}
