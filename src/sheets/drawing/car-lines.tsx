import { memo } from 'react';
import type { CarDrawing } from './draw-car';
import { SHADES, TONES } from './raster';
import type { Tone } from './solids';
import type { Point } from './visible-lines';

/** From lit to dark. Pale, so that paths and letters stand out, and distinct in grey. */
const COLOURS: Readonly<Record<Tone, readonly string[]>> = {
  panel: ['#fbfaf6', '#f5f2eb', '#ece8de', '#e0dacd'],
  dash: ['#f3efe6', '#e9e4d8', '#dcd5c6', '#cdc4b2'],
  seat: ['#f2e4d3', '#e8d5be', '#dac2a5', '#c8ab89'],
  dark: ['#d9d6d0', '#c2beb6', '#a9a49b', '#8f897f'],
  person: ['#e3e9ec', '#d2dbe0', '#bdc9d0', '#a6b4bd'],
};

const PEN = {
  body: { width: 0.2, colour: '#a39e93' },
  glass: { width: 0.16, colour: '#7d8f95' },
  folds: { width: 0.1, colour: '#6d685d' },
  outlines: { width: 0.19, colour: '#2b2922' },
  section: { width: 0.34, colour: '#2b2922' },
} as const;

const round = (value: number) => Math.round(value * 100) / 100;

/** Path data through points, in mm of paper. */
export const pathOf = (line: readonly Point[], closed = false): string =>
  line.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${round(x)} ${round(y)}`).join('') +
  (closed ? 'Z' : '');

/** The car itself, put on paper by `at`. */
export const CarLines = memo(function CarLines(props: {
  drawing: CarDrawing;
  /** From mm of the drawing to mm of paper. */
  at: (point: Point) => Point;
}) {
  const { drawing, at } = props;
  const path = (lines: readonly (readonly Point[])[], closed = false) =>
    lines.map((line) => pathOf(line.map(at), closed)).join('');
  const stroke = (which: keyof typeof PEN) => (
    <path
      d={path(drawing[which])}
      fill="none"
      stroke={PEN[which].colour}
      strokeWidth={PEN[which].width}
      strokeLinejoin="round"
      strokeLinecap="round"
    />
  );
  return (
    <g>
      {stroke('body')}
      {drawing.areas.map(({ label, rings }) => {
        const tone = TONES[Math.floor(label / SHADES)] as Tone;
        const colour = COLOURS[tone][label % SHADES];
        return (
          <path
            key={label}
            d={path(rings, true)}
            fill={colour}
            fillRule="evenodd"
            // Its own colour round it closes the hairline between two areas.
            stroke={colour}
            strokeWidth={0.12}
          />
        );
      })}
      {stroke('glass')}
      {stroke('folds')}
      {stroke('outlines')}
      {stroke('section')}
    </g>
  );
});
