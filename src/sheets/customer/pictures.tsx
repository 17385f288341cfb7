import type { ViewId } from '../drawing/camera';
import { CarPicture, type Mark } from '../drawing/car-picture';
import { cropOf } from '../drawing/crop';
import { letterOf } from '../drawing/letters';
import type { Prepared } from '../drawing/prepare';
import type { PaperFacts } from '../facts';
import { type Block, piece } from '../page';
import type { PrintedWords } from '../words/use-words';
import { listenerName } from './listener';

/** Between two pictures side by side, mm. */
const BETWEEN = 4;

const marksOf = ({ option, result, seat }: PaperFacts): Mark[] =>
  option.speakers.flatMap(({ id, side }, place) => {
    const placed = result.placed.find(({ speaker }) => speaker === id);
    const arrival = seat?.arrivals.find(({ speaker }) => speaker === id);
    if (!placed) return [];
    const way = arrival && arrival.way.length > 1 ? arrival.way : null;
    return [{ id, letter: letterOf(place), position: placed.position, way, ...(side && { side }) }];
  });

interface PictureProps {
  facts: PaperFacts;
  prepared: Prepared;
  words: PrintedWords;
  view: ViewId;
  width: number;
  height: number;
}

/** The car in one view, with everything on it. */
export function Picture({ facts, prepared, words, view, width, height }: PictureProps) {
  const drawing = prepared.drawings[view];
  const { seat, cabin, result } = facts;
  return (
    <CarPicture
      drawing={drawing}
      crop={cropOf(cabin, drawing, result.placed)}
      width={width}
      height={height}
      marks={marksOf(facts)}
      listener={seat && { head: seat.head, name: listenerName(facts, words) }}
      bar={view !== 'behind'}
      label={words.t('customer.car', { view })}
    />
  );
}

/** From behind, large; under it from above and from the side. `width`: of the page's content, mm. */
export function pictureBlocks(
  facts: PaperFacts,
  prepared: Prepared,
  words: PrintedWords,
  width: number,
  tall: boolean,
): Block[] {
  const { t } = words;
  const half = (width - BETWEEN) / 2;
  const shared = { facts, prepared, words };
  return [
    piece(
      'behind',
      <figure className="paper-figure">
        <Picture {...shared} view="behind" width={width} height={tall ? 92 : 82} />
        <figcaption>
          {facts.seat
            ? t('customer.behind', { person: listenerName(facts, words) })
            : t('customer.behind.nobody')}
        </figcaption>
      </figure>,
    ),
    piece(
      'flat',
      <div className="paper-pair">
        {(['above', 'side'] as const).map((view) => (
          <figure key={view} className="paper-figure">
            <Picture {...shared} view={view} width={half} height={46} />
            <figcaption>{t(`customer.${view}`)}</figcaption>
          </figure>
        ))}
      </div>,
    ),
  ];
}
