/** What stands in a PDF: pages, their text, and the lines drawn on them, in mm from the upper left. */
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

export interface PdfLine {
  from: readonly [number, number];
  to: readonly [number, number];
  length: number;
}

/** A stroked path's outermost places, mm: of a circle those of the circle. */
export interface PdfOutline {
  low: readonly [number, number];
  high: readonly [number, number];
  /** True where it bends. */
  curved: boolean;
}

export interface PdfPage {
  width: number;
  height: number;
  text: string;
  /** Every stroked straight line, dashed ones left out. */
  lines: PdfLine[];
  outlines: PdfOutline[];
}

type Matrix = readonly [number, number, number, number, number, number];

const MM_PER_POINT = 25.4 / 72;

const times = (m: Matrix, n: Matrix): Matrix => [
  m[0] * n[0] + m[2] * n[1],
  m[1] * n[0] + m[3] * n[1],
  m[0] * n[2] + m[2] * n[3],
  m[1] * n[2] + m[3] * n[3],
  m[0] * n[4] + m[2] * n[5] + m[4],
  m[1] * n[4] + m[3] * n[5] + m[5],
];

/** Reads a PDF as a browser prints it. */
export async function readPdf(bytes: Uint8Array): Promise<PdfPage[]> {
  const document = await getDocument({ data: Uint8Array.from(bytes), verbosity: 0 }).promise;
  const pages: PdfPage[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const [left = 0, bottom = 0, right = 0, top = 0] = page.view;
    const { items } = await page.getTextContent();
    const text = items.map((item) => ('str' in item ? item.str : '')).join(' ');
    const { fnArray, argsArray } = await page.getOperatorList();
    const toMm: Matrix = [
      MM_PER_POINT,
      0,
      0,
      -MM_PER_POINT,
      -left * MM_PER_POINT,
      top * MM_PER_POINT,
    ];
    pages.push({
      width: (right - left) * MM_PER_POINT,
      height: (top - bottom) * MM_PER_POINT,
      text: text.replace(/\s+/g, ' '),
      ...strokesOf(fnArray, argsArray, toMm),
    });
  }
  await document.destroy();
  return pages;
}

function strokesOf(
  operators: readonly number[],
  values: readonly unknown[],
  start: Matrix,
): Pick<PdfPage, 'lines' | 'outlines'> {
  let matrix = start;
  const saved: Matrix[] = [];
  let path: { lines: PdfLine[]; outline: PdfOutline } | null = null;
  const lines: PdfLine[] = [];
  const outlines: PdfOutline[] = [];
  operators.forEach((operator, i) => {
    if (operator === OPS.save) saved.push(matrix);
    else if (operator === OPS.restore) matrix = saved.pop() ?? start;
    else if (operator === OPS.transform) matrix = times(matrix, values[i] as Matrix);
    else if (operator === OPS.constructPath) {
      const [steps, numbers] = values[i] as [number[], number[]];
      path = pathOf(steps, numbers, matrix);
    } else if (operator === OPS.stroke && path) {
      lines.push(...path.lines);
      outlines.push(path.outline);
    }
  });
  return { lines, outlines };
}

function pathOf(steps: readonly number[], numbers: readonly number[], [a, b, c, d, e, f]: Matrix) {
  const lines: PdfLine[] = [];
  const all: (readonly [number, number])[] = [];
  let [at, next] = [[0, 0] as readonly [number, number], 0];
  let curved = false;
  const take = (): readonly [number, number] => {
    const [x, y] = [numbers[next++] ?? 0, numbers[next++] ?? 0];
    const point = [a * x + c * y + e, b * x + d * y + f] as const;
    all.push(point);
    return point;
  };
  const lineTo = (to: readonly [number, number]) => {
    lines.push({ from: at, to, length: Math.hypot(to[0] - at[0], to[1] - at[1]) });
    at = to;
  };
  for (const step of steps) {
    if (step === OPS.moveTo) at = take();
    else if (step === OPS.lineTo) lineTo(take());
    else if (step === OPS.curveTo || step === OPS.curveTo2 || step === OPS.curveTo3) {
      curved = true;
      if (step === OPS.curveTo) take();
      take();
      at = take();
    } else if (step === OPS.rectangle) {
      const [x, y, w, h] = [0, 1, 2, 3].map(() => numbers[next++] ?? 0) as [
        number,
        number,
        number,
        number,
      ];
      for (const [px, py] of [
        [x, y],
        [x + w, y + h],
      ] as const)
        all.push([a * px + c * py + e, b * px + d * py + f]);
    }
  }
  const ends = (k: 0 | 1, of: (...values: number[]) => number) => of(...all.map((p) => p[k]));
  const outline: PdfOutline = {
    low: [ends(0, Math.min), ends(1, Math.min)],
    high: [ends(0, Math.max), ends(1, Math.max)],
    curved,
  };
  return { lines, outline };
}
