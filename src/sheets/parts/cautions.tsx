import { CAUTIONS, cautionsFor } from '../../exchange/cautions';
import type { PlanOption } from '../../plan/types';
import { type Block, heading, piece } from '../page';
import type { WordKey } from '../words/catalogue';
import type { PrintedWords } from '../words/use-words';

/** The cautions for every spot of an option, each once, in the usual order. */
export function cautionsOfOption(option: PlanOption): typeof CAUTIONS {
  const told = new Set([
    ...CAUTIONS.filter(({ panels }) => panels.length === 0),
    ...option.speakers.flatMap(({ mount }) => cautionsFor(mount?.panel ?? null)),
  ]);
  return CAUTIONS.filter((caution) => told.has(caution));
}

/**
 * What stands on every paper that shows a spot: the cautions of the option, two beside each other,
 * under a heading.
 */
export function cautionBlocks({ t }: PrintedWords, option: PlanOption, title: string): Block[] {
  const cautions = cautionsOfOption(option);
  const rows = cautions.filter((_, i) => i % 2 === 0).map((one, i) => [one, cautions[2 * i + 1]]);
  return [
    heading('cautions', title),
    ...rows.map((row, i) =>
      piece(
        `cautions-${i}`,
        <div className="paper-cautions">
          {row.map(
            (one) =>
              one && (
                <p key={one.id}>
                  <strong>{t(`caution.${one.id}.title` as WordKey)}.</strong>{' '}
                  {t(`caution.${one.id}.text` as WordKey)}
                </p>
              ),
          )}
        </div>,
        { tight: true },
      ),
    ),
  ];
}
