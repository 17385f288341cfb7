import type { Moment, SlowMotion } from '../../geometry';
import { stripMoments } from '../../geometry';
import { linesOfText } from './lines-of-text';
import { INK, QUIET_INK } from './pens';
import { carDefinition, heightFor, type PictureOf, pictureAt } from './picture';
import { node, type SvgNode } from './svg-node';

/** What a strip says, in the reader's language. */
export interface StripWords {
  /** "1.88 ms" */
  time(ms: number): string;
  /** What happens in a picture: "left tweeter arrives". */
  caption(moment: Moment, motion: SlowMotion): string;
  /** "2 of 6 have arrived" */
  arrived(count: number, of: number): string;
  /** How to read the drawing, under it; nothing where that stands elsewhere. */
  key: string;
  /** What it is, for those who cannot see it; nothing where that stands elsewhere. */
  title: string;
}

/** One row of pictures. */
export interface StripRow extends PictureOf {
  /** Nothing where it stands elsewhere. */
  title: string;
  /** Under the title: which seat, which delays. */
  note: string;
}

export interface StripSize {
  /** mm */
  width: number;
  /** Begins the names of what is drawn once for several pictures: of its own within a page. */
  id: string;
  most?: number;
  /** Room for so many pictures in a row at least, so that strips drawn one by one are to one scale. */
  columns?: number;
}

export interface StripDrawing {
  width: number;
  height: number;
  /** Its unit is the millimetre on paper. */
  drawing: SvgNode;
}

/** Type sizes and room, mm on paper. */
const TITLE = 3.9;
const TEXT = 2.7;
const LEAD = 1.32;
const GAP = 2.4;
const BETWEEN = 5;
/** Its frame lies inside a picture, or a sheet's edge would cut it. */
const FRAME = 0.15;
const FACE = 'system-ui, "Segoe UI", Roboto, "Noto Sans", "Liberation Sans", Arial, sans-serif';

/**
 * A strip of four to six moments a row, from the first sound leaving to the last arriving, with the
 * clock and what happens under each; rows under each other. Vectors, mm on paper, on white.
 */
export function stripDrawing(
  rows: readonly StripRow[],
  words: StripWords,
  size: StripSize,
): StripDrawing {
  const { width } = size;
  const parts: SvgNode[] = [];
  let y = 0;
  const moments = rows.map(({ motion }) => stripMoments(motion, size.most));
  /** All rows to one scale. */
  const columns = Math.max(size.columns ?? 4, ...moments.map(({ length }) => length));
  const wide = (width - (columns - 1) * GAP) / columns;
  for (const [i, row] of rows.entries()) {
    if (i > 0) y += BETWEEN;
    const place = { top: y, wide, width, id: `${size.id}-${i}` };
    const drawn = rowOf(row, moments[i] ?? [], words, place);
    parts.push(...drawn.parts);
    y = drawn.bottom;
  }
  if (words.key) y += BETWEEN * 0.6;
  for (const line of linesOfText(words.key, width, TEXT)) {
    y += TEXT * LEAD;
    parts.push(text(line, 0, y, { fontSize: TEXT, fill: QUIET_INK }));
  }
  const height = y + TEXT * 0.5;
  const drawing = node(
    'svg',
    {
      width: `${width}mm`,
      height: `${Math.ceil(height * 100) / 100}mm`,
      viewBox: `0 0 ${width} ${Math.ceil(height * 100) / 100}`,
      fontFamily: FACE,
      // A page that rounds its width down would cut the last frame.
      overflow: 'visible',
    },
    ...(words.title ? [node('title', {}, words.title)] : []),
    node('rect', { x: 0, y: 0, width, height, fill: '#ffffff' }),
    ...parts,
  );
  return { width, height: Math.ceil(height * 100) / 100, drawing };
}

interface RowPlace {
  top: number;
  /** Of the strip, and of one picture. */
  width: number;
  wide: number;
  id: string;
}

function rowOf(row: StripRow, moments: readonly Moment[], words: StripWords, place: RowPlace) {
  const { motion, window } = row;
  const { top, wide, width, id } = place;
  const parts: SvgNode[] = [];
  let y = top;
  if (row.title) {
    y += TITLE;
    parts.push(text(row.title, 0, y, { fontSize: TITLE, fontWeight: 700, fill: INK }));
  }
  for (const line of linesOfText(row.note, width, TEXT)) {
    y += TEXT * LEAD * 1.1;
    parts.push(text(line, 0, y, { fontSize: TEXT, fill: QUIET_INK }));
  }
  if (y > top) y += TEXT;
  const high = heightFor(window, wide);
  parts.push(carDefinition(row, wide, id));
  let bottom = y + high;
  for (const [i, moment] of moments.entries()) {
    const x = i * (wide + GAP);
    parts.push(
      pictureAt(row, moment, { x, y, width: wide, car: id }),
      node('rect', {
        x: x + FRAME / 2,
        y: y + FRAME / 2,
        width: wide - FRAME,
        height: high - FRAME,
        fill: 'none',
        stroke: '#a89d86',
        strokeWidth: FRAME,
      }),
    );
    let under = y + high + TITLE * 1.15;
    parts.push(
      text(words.time(moment.time), x, under, { fontSize: TITLE, fontWeight: 700, fill: INK }),
    );
    const said = [
      words.caption(moment, motion),
      words.arrived(moment.arrived, motion.waves.length),
    ];
    for (const [k, sentence] of said.entries())
      for (const line of linesOfText(sentence, wide, TEXT)) {
        under += TEXT * LEAD;
        parts.push(text(line, x, under, { fontSize: TEXT, fill: k === 0 ? INK : QUIET_INK }));
      }
    bottom = Math.max(bottom, under);
  }
  return { parts, bottom };
}

const text = (words: string, x: number, y: number, more: SvgNode['attributes']): SvgNode =>
  node('text', { x, y, ...more }, words);
