/** What the mark-out sheet says of one speaker, in the catalogue's words. */
import {
  type CabinModel,
  depthBehind,
  type FaceReading,
  type MarkTemplate,
  MOST_WEDGE_DEG,
  TAPE_SD,
  type Vec3,
  wayOf,
} from '../../geometry';
import { clockWords } from '../parts/clock';
import { fine } from '../parts/fine';
import { thingName } from '../parts/thing-name';
import type { WordKey } from '../words/catalogue';
import type { PrintedWords } from '../words/use-words';
import type { SpeakerMarks } from './mark-data';

/** Nearer to level, or to upright, than this is told as that, degrees. */
const EVEN_DEG = 0.05;

/** How good the mark will be; where no tapes make one, where it lies. */
export function errorSentence(words: PrintedWords, one: SpeakerMarks): string {
  const { t } = words;
  const { mark, template } = one;
  if (mark.within95 !== null)
    return t('mark.error', { sd: words.n.length(TAPE_SD), error: fine(words, mark.within95) });
  const high = heightSentences(words, one).length > 0;
  const [x, y, z] = mark.spot;
  return t('mark.no-fix', {
    by: high ? (template ? 'both' : 'heights') : 'neither',
    x: fine(words, x),
    y: fine(words, y),
    z: fine(words, z),
  });
}

/** Over the sill and the rail, or below them. */
export function heightSentences({ t, n }: PrintedWords, { mark }: SpeakerMarks): string[] {
  const told = (mm: number | null, above: WordKey, below: WordKey) =>
    mm === null ? [] : [t(mm < 0 ? below : above, { mm: n.length(Math.abs(mm)) })];
  return [
    ...told(mark.aboveSill, 'mark.above-sill', 'mark.below-sill'),
    ...told(mark.aboveRail, 'mark.above-rail', 'mark.below-rail'),
  ];
}

function faceSentence({ t, n }: PrintedWords, { held, along, deg }: FaceReading): string {
  let end: string = 'level';
  if (held === 'upright') {
    if (Math.abs(deg) < 90 - EVEN_DEG) end = `lean_${wayOf([along[0], along[1], 0])}`;
  } else if (Math.abs(deg) >= EVEN_DEG) {
    const up = deg > 0;
    if (held === 'lengthwise') end = up ? 'rear' : 'front';
    else end = up ? 'right' : 'left';
  }
  return t('mark.face', { held, deg: n.angle(Math.abs(deg), 1), end });
}

/** Two readings of an inclinometer, and where a laser goes. */
export function aimSentences(
  words: PrintedWords,
  { mark }: SpeakerMarks,
  cabin: CabinModel,
): string[] {
  const { t, n, names } = words;
  const { face, laser } = mark;
  if (!face || !laser) return [t('mark.no-aim')];
  const distance = n.length(laser.distance);
  const near = laser.near.map((one) =>
    t('mark.laser-point', {
      distance: n.length(one.distance),
      point: names.reference(one.reference),
    }),
  );
  const { id } = laser;
  return [
    ...face.map((reading) => faceSentence(words, reading)),
    id === null
      ? t('mark.laser-far', { distance })
      : t('mark.laser', {
          thing: thingName(cabin, id, words),
          distance,
          near: n.list(near) || '–',
        }),
  ];
}

/** What is cut, and what stands on it. */
export function cutSentences(words: PrintedWords, one: SpeakerMarks): string[] {
  const { t, n } = words;
  const { speaker, template, ring, mark } = one;
  const mm = (value: number) => fine(words, value);
  const { body } = speaker;
  if (!body) return [t('mark.no-body'), t('mark.no-template')];
  const told: string[] = [];
  if (template && (template.plane === 'face' || !template.cutout)) told.push(t('mark.cut-none'));
  else if (template?.cutout) {
    const [long, short] = template.cutout.half;
    told.push(
      template.lean
        ? t('mark.cut-oval', { long: mm(2 * long), short: mm(2 * short), mm: mm(2 * short) })
        : t('mark.cut-round', { mm: mm(2 * short) }),
    );
    const [x, y] = template.middle;
    const off = Math.sqrt(x * x + y * y);
    if (off >= 0.05)
      told.push(
        t('mark.cut-off', {
          mm: mm(off),
          ...clockWords(words, template.frame, wayTo(template, template.middle)),
        }),
      );
  } else told.push(t('mark.cut-round', { mm: mm(body.cutout) }));
  const behind = depthBehind(speaker, one.placed, one.panel) ?? 0;
  told.push(
    t(behind > 0 ? 'mark.body' : 'mark.body-before', {
      flange: mm(body.flange),
      depth: mm(body.depth),
      behind: mm(behind),
    }),
  );
  if (mark.standoff > 0) told.push(t('mark.standoff', { mm: mm(mark.standoff) }));
  if (ring?.ok) {
    const { sections, wedgeDeg, thickSide, overLimit } = ring.ring;
    told.push(
      thickSide
        ? t('mark.ring', {
            outer: mm(sections.backOuter[1]),
            thin: mm(sections.thinOuter),
            thick: mm(sections.thickOuter),
            deg: n.angle(wedgeDeg, 1),
          })
        : t('mark.ring-even', { outer: mm(sections.backOuter[1]), thick: mm(sections.middle) }),
    );
    if (overLimit) told.push(t('mark.ring-steep', { deg: n.angle(MOST_WEDGE_DEG) }));
  } else if (ring) told.push(t('mark.ring-none'));
  if (!template) told.push(t('mark.no-template'));
  return told;
}

/** A point of the template's plane as a way in the car. */
function wayTo({ frame: { right, up } }: MarkTemplate, [x, y]: readonly [number, number]): Vec3 {
  const along = (k: 0 | 1 | 2) => x * right[k] + y * up[k];
  return [along(0), along(1), along(2)];
}
