import { CAUTIONS, cautionsFor } from '../../exchange/cautions';
import type { PlanOption } from '../../plan/types';
import { type Block, heading, piece } from '../page';
import type { WordKey } from '../words/catalogue';
import type { PrintedWords } from '../words/use-words';

/** The cautions for every spot of an option, each once, in the usual order. */
export function cautionsOfOption(option: PlanOption): typeof CAUTIONS {
  const told = new Set(
    [null, ...option.speakers.map(({ mount }) => mount?.panel ?? null)]
      .flatMap(cautionsFor)
      .map(({ id }) => id),
  );
  return CAUTIONS.filter(({ id }) => told.has(id));
}

/** What stands on every paper that shows a spot: the cautions of the option, under a heading. */
export function cautionBlocks({ t }: PrintedWords, option: PlanOption, title: string): Block[] {
  return [
    heading('cautions', title),
    ...cautionsOfOption(option).map(({ id }) =>
      piece(
        `caution-${id}`,
        <p className="paper-small">
          <strong>{t(`caution.${id}.title` as WordKey)}.</strong>{' '}
          {t(`caution.${id}.text` as WordKey)}
        </p>,
      ),
    ),
  ];
}
