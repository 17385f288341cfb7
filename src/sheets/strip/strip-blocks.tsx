import { type StripDrawing, stripDrawing } from '../../exchange/picture-strip';
import {
  carFromAbove,
  type MotionDelays,
  type SlowMotion,
  type Stage,
  slowMotion,
  stripMoments,
  windowOf,
} from '../../geometry';
import type { PaperFacts } from '../facts';
import { type Block, heading, piece } from '../page';
import type { PrintedWords } from '../words/use-words';
import { arrivalWords } from './arrival-words';
import { svgTree } from './svg-tree';

const BOTH: readonly MotionDelays[] = ['none', 'aligned'];

/**
 * The arrival of the sound at the seat looked at, in pictures: as built, and with the delays the
 * plan's alignment gives. Nothing without a seat, or with fewer than two speakers to tell apart.
 * @param width of the page's content, mm
 */
export function stripBlocks(facts: PaperFacts, words: PrintedWords, width: number): Block[] {
  const { plan, cabin, option, result, seat } = facts;
  const listener = cabin.seats.find(({ id }) => id === seat?.id);
  if (!listener || option.speakers.length < 2) return [];
  const { t, n } = words;
  const stage: Stage = { plan, cabin, option, result };
  const motions = BOTH.map((delays) => slowMotion(stage, listener.id, delays)).filter(
    ({ problem }) => !problem,
  );
  const car = carFromAbove(cabin, listener.head[2]);
  const window = windowOf(car, listener, motions);
  const columns = Math.max(...motions.map((motion) => stripMoments(motion).length));
  const said = arrivalWords(words, option.speakers);
  const rows = motions.map((motion) => {
    const row = { car, seat: listener, motion, window, title: '', note: '' };
    const id = `arrival-${motion.delays}`;
    return { id, motion, strip: stripDrawing([row], said, { width, id, columns }) };
  });
  // Rows end a little apart.
  const longest = Math.max(...motions.map(({ end }) => end));
  return [
    heading('strip', t('strip.title')),
    ...(motions.length === BOTH.length
      ? [
          piece('strip-lead', <p>{t('strip.lead', { time: n.time(longest) })}</p>, {
            keepWithNext: true,
          }),
        ]
      : []),
    ...rows.map(({ id, motion, strip }) =>
      piece(id, <Row words={words} strip={strip} what={whatOf(motion, words)} />),
    ),
    piece('strip-key', <p className="paper-small">{t('strip.key')}</p>, { tight: true }),
  ];
}

function whatOf({ delays, alignedFor, seat }: SlowMotion, { t, names }: PrintedWords): string {
  if (delays === 'none') return t('strip.none');
  if (alignedFor === seat) return t('strip.aligned');
  return alignedFor === null
    ? t('strip.aligned.several')
    : t('strip.aligned.other', { seat: names.seat(alignedFor) });
}

interface RowProps {
  words: PrintedWords;
  strip: StripDrawing;
  what: string;
}

function Row({ words: { t }, strip: { width, height, drawing }, what }: RowProps) {
  return (
    <figure className="paper-figure">
      <p>
        <strong>{what}</strong>
      </p>
      {/* Its height is known before it is drawn, so it may be measured at once. */}
      <div
        role="img"
        aria-label={t('strip.picture', { what })}
        style={{ width: `${width}mm`, height: `${height}mm` }}
      >
        {svgTree(drawing)}
      </div>
    </figure>
  );
}
