/** Whom the delays are for, as it is chosen in the dialog. */
import { seatName } from '../plan/names';
import type { ExportedFor, ExportedStage } from './delay-types';
import { allAlike, exportedFor } from './delays-wanted';

export interface WhomChoices {
  choices: { value: string; label: string }[];
  /** The one chosen, else what the plan is aligned for. */
  value: string;
  settings: ExportedFor;
  /** What is exported, and whether the plan is aligned so. */
  sentence: string;
}

const SEVERAL = 'seats';

/** @param chosen the value picked in the dialog; left out, or gone: as the plan is aligned */
export function whomChoices(
  stage: Pick<ExportedStage, 'plan' | 'result'>,
  chosen: string | undefined,
): WhomChoices | null {
  const { plan, result } = stage;
  const aligned = exportedFor(stage);
  const listed = plan.alignment.seats?.length ? plan.alignment.seats : allAlike(result);
  const known: [string, ExportedFor][] = result.seats.map(({ id }) => [
    `seat:${id}`,
    { by: 'seat', seat: id },
  ]);
  if (result.seats.length > 1 || aligned.by === 'seats')
    known.push([SEVERAL, { by: 'seats', seats: listed }]);
  const own = aligned.by === 'seats' ? SEVERAL : `seat:${aligned.seat}`;
  const [value, settings] =
    known.find(([one]) => one === chosen) ?? known.find(([one]) => one === own) ?? known[0] ?? [];
  if (value === undefined || settings === undefined) return null;
  return {
    choices: known.map(([one, whom]) => ({
      value: one,
      label: whom.by === 'seat' ? seatName(whom.seat) : 'several seats',
    })),
    value,
    settings,
    sentence: `${wordsFor(settings)}${
      value === own
        ? ', as the plan is aligned'
        : `; the plan itself is aligned for ${short(aligned)}`
    }.`,
  };
}

const short = (whom: ExportedFor): string =>
  whom.by === 'seat' ? `the ${seatName(whom.seat)}` : 'several';

function wordsFor(whom: ExportedFor): string {
  if (whom.by === 'seat') return `For the ${seatName(whom.seat)}`;
  const alike = whom.seats.every(({ weight }) => weight === whom.seats[0]?.weight);
  const seats = whom.seats.map(
    ({ id, weight }) => `${seatName(id)}${alike ? '' : ` (counts ${weight})`}`,
  );
  return `The best compromise over ${seats.join(', ')}${alike && seats.length > 1 ? ', all counting alike' : ''}`;
}
