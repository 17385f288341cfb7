/** What uPlot does not draw: markers, stems, upright marks with names, labels at the lines' ends. */
import type uPlot from 'uplot';
import type { ChartMark, ChartSeries, Tone } from './chart-types';
import type { ChartTokens } from './tokens';

/** Text size and its line height, CSS pixels. */
export const TEXT = 12;
export const ROW = 15;

/** Runs `draw` on the chart's canvas with units of CSS pixels. */
function onPaper(u: uPlot, draw: (ctx: CanvasRenderingContext2D) => void): void {
  const { ctx } = u;
  const ratio = devicePixelRatio;
  ctx.save();
  ctx.scale(ratio, ratio);
  ctx.textAlign = 'left';
  draw(ctx);
  ctx.restore();
}

function inside(u: uPlot): { left: number; top: number; right: number; bottom: number } {
  const { left, top, width, height } = u.bbox;
  const ratio = devicePixelRatio;
  return {
    left: left / ratio,
    top: top / ratio,
    right: (left + width) / ratio,
    bottom: (top + height) / ratio,
  };
}

const place = (u: uPlot, x: number, y: number): [number, number] => {
  const { left, top } = inside(u);
  return [left + u.valToPos(x, 'x'), top + u.valToPos(y, 'y')];
};

const HALF = 4;

function marker(ctx: CanvasRenderingContext2D, tone: Tone, x: number, y: number): void {
  ctx.beginPath();
  if (tone === 'left') ctx.rect(x - HALF, y - HALF, 2 * HALF, 2 * HALF);
  else if (tone === 'right') ctx.arc(x, y, HALF + 0.5, 0, 2 * Math.PI);
  else {
    ctx.moveTo(x - HALF - 1, y);
    ctx.lineTo(x, y - HALF - 1);
    ctx.lineTo(x + HALF + 1, y);
    ctx.lineTo(x, y + HALF + 1);
    ctx.closePath();
  }
}

/** Stems and markers of one series. */
export function drawValues(u: uPlot, one: ChartSeries, tokens: ChartTokens): void {
  if (!one.points && !one.stems) return;
  onPaper(u, (ctx) => {
    const { bottom } = inside(u);
    ctx.strokeStyle = tokens.tones[one.tone];
    ctx.lineWidth = 1.75;
    one.xs.forEach((at, i) => {
      const value = one.ys[i] ?? null;
      if (value === null) return;
      const [x, y] = place(u, at, value);
      if (one.stems) {
        ctx.setLineDash(one.dash ? [4, 3] : []);
        ctx.beginPath();
        ctx.moveTo(x, bottom);
        ctx.lineTo(x, y);
        ctx.stroke();
      }
      if (!one.points) return;
      ctx.setLineDash([]);
      ctx.fillStyle = one.hollow ? tokens.paper : tokens.tones[one.tone];
      marker(ctx, one.tone, x, y);
      ctx.fill();
      ctx.stroke();
    });
  });
}

/** Which row each name takes so that none covers another, left to right. */
export function rowsFor(spans: readonly { from: number; to: number }[]): number[] {
  const ends: number[] = [];
  return spans.map(({ from, to }) => {
    const free = ends.findIndex((end) => end < from);
    const row = free < 0 ? ends.length : free;
    ends[row] = to;
    return row;
  });
}

/** Upright lines with their names above the plot, in as many rows as there is room for. */
export function drawMarks(u: uPlot, marks: readonly ChartMark[], tokens: ChartTokens): void {
  onPaper(u, (ctx) => {
    const { left, right, top, bottom } = inside(u);
    ctx.font = `${TEXT}px ${tokens.font}`;
    ctx.strokeStyle = tokens.text;
    ctx.fillStyle = tokens.text;
    ctx.textBaseline = 'alphabetic';
    const spots = marks
      .map(({ x, label }) => {
        const at = left + u.valToPos(x, 'x');
        const width = ctx.measureText(label).width;
        const from = Math.max(left - 30, Math.min(at - width / 2, right - width));
        return { at, label, from, to: from + width + 8 };
      })
      .filter(({ at }) => at >= left - 1 && at <= right + 1)
      .sort((a, b) => a.at - b.at);
    const rows = rowsFor(spots);
    spots.forEach(({ at, label, from }, i) => {
      const row = rows[i] ?? 0;
      ctx.setLineDash([2, 3]);
      ctx.beginPath();
      ctx.moveTo(at, bottom);
      ctx.lineTo(at, top);
      ctx.stroke();
      ctx.fillText(label, from, top - 4 - row * ROW);
    });
  });
}

/** Pushes labels apart so that they stand `apart` from one another, in the order they came. */
export function spreadOut(wanted: readonly number[], apart: number, most: number): number[] {
  const order = wanted.map((_, i) => i).sort((a, b) => (wanted[a] ?? 0) - (wanted[b] ?? 0));
  const placed = [...wanted];
  let last = Number.NEGATIVE_INFINITY;
  for (const i of order) {
    last = Math.max(placed[i] ?? 0, last + apart);
    placed[i] = last;
  }
  let next = most + apart;
  for (const i of order.reverse()) {
    next = Math.min(placed[i] ?? 0, next - apart);
    placed[i] = next;
  }
  return placed;
}

/** Each line's name to the right of the plot, as high as the line ends. */
export function drawEndLabels(u: uPlot, series: readonly ChartSeries[], tokens: ChartTokens): void {
  const ends = series.flatMap((one) => {
    if (one.stems) return [];
    const last = one.ys.findLastIndex((y) => y !== null);
    return last < 0 ? [] : [{ one, at: place(u, one.xs[last] ?? 0, one.ys[last] ?? 0) }];
  });
  onPaper(u, (ctx) => {
    const { right, bottom } = inside(u);
    ctx.font = `600 ${TEXT}px ${tokens.font}`;
    ctx.textBaseline = 'middle';
    const heights = spreadOut(
      ends.map(({ at }) => at[1]),
      ROW,
      bottom,
    );
    ends.forEach(({ one, at: [x, y] }, i) => {
      const height = heights[i] ?? y;
      ctx.strokeStyle = tokens.tones[one.tone];
      ctx.fillStyle = tokens.tones[one.tone];
      ctx.lineWidth = 1;
      ctx.setLineDash([1, 2]);
      ctx.beginPath();
      ctx.moveTo(x, y);
      ctx.lineTo(right + 6, height);
      ctx.stroke();
      ctx.fillText(one.label, right + 8, height);
    });
  });
}
