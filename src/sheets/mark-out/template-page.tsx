import { useId } from 'react';
import type { KeepClearZone, MarkTemplate } from '../../geometry';
import type { PageSize } from '../../store/paper-settings';
import { PAGE_SIZES, type Told } from '../page';
import { fine } from '../parts/fine';
import type { PrintedWords } from '../words/use-words';
import { MOST_STRETCH, RULER } from './printer-scale';
import { Ruler } from './ruler';
import { TemplateDrawing } from './template-drawing';
import { EDGE, type Window, windowOf } from './template-layout';
import { type LegendLine, legendHeight, TemplateLegend } from './template-legend';
import { TemplateWarning } from './template-warning';
import { OVERLAP, type Tile, type Tiling } from './tiles';

export interface TemplatePageProps {
  template: MarkTemplate;
  tiling: Tiling;
  tile: Tile;
  size: PageSize;
  /** "left mid". */
  name: string;
  /** Below the plan's title. */
  plan: string;
  /** Keep-clear zones the speaker or its ring reaches into. */
  zones: readonly KeepClearZone[];
  words: PrintedWords;
  told: Told;
  /** Printed out of true: crossed out. */
  refused: boolean;
}

/** One page of a template, edge to edge: the drawing at true size, both rulers, how it is laid on. */
export function TemplatePage(props: TemplatePageProps) {
  const { template, tiling, tile, size, name, plan, zones, words, told, refused } = props;
  const { t } = words;
  const page = PAGE_SIZES[size];
  const window = windowOf(size, zones.length > 0);
  const many = tiling.tiles.length > 1;
  const bottom = window.y + window.height;
  // In a corner of the whole, where nothing round reaches.
  const legend = legendOf(words, template);
  return (
    <div className="template-page" data-refused={refused}>
      <div className="template-head">
        <div className="template-title">
          <h2>
            {t('template.title', { speaker: name })}
            {many && ` · ${t('template.tile', { name: tile.name, count: tiling.tiles.length })}`}
          </h2>
          <span>{plan}</span>
        </div>
        <p>
          {t(template.plane === 'face' ? 'template.lay-face' : 'template.lay', {
            way: template.frame.upIs,
          })}
        </p>
        <p>{planeSentence(words, template)}</p>
      </div>
      <svg
        className="template-sheet"
        width={`${page.width}mm`}
        height={`${page.height}mm`}
        viewBox={`0 0 ${page.width} ${page.height}`}
        role="img"
        aria-label={`${t('template.title', { speaker: name })} ${many ? tile.name : ''}`}
      >
        <Clipped window={window} tile={tile}>
          <TemplateDrawing template={template} words={drawingWords(words, template)} />
        </Clipped>
        <rect
          className="template-window"
          x={window.x}
          y={window.y}
          width={window.width}
          height={window.height}
        />
        {many && <GlueMarks window={window} tile={tile} tiling={tiling} words={words} />}
        {tile.column === 0 && tile.row === 0 && (
          <TemplateLegend
            x={window.x + 3}
            y={many ? window.y + 2 : bottom - legendHeight(legend)}
            lines={legend}
          />
        )}
        <Ruler x={window.x - 2} y={window.y + window.height / 2 + RULER / 2} way="up" />
        <Ruler x={window.x} y={bottom + 3} way="across" />
        {refused && (
          <path
            className="template-crossed"
            d={`M${EDGE} ${EDGE}L${page.width - EDGE} ${page.height - EDGE}M${page.width - EDGE} ${EDGE}L${EDGE} ${page.height - EDGE}`}
          />
        )}
      </svg>
      {zones.length > 0 && <TemplateWarning zones={zones} words={words} />}
      {refused && <p className="template-stamp">{t('printer.stamp')}</p>}
      <div className="template-foot">
        <div>
          <p>
            <strong>{t('template.print')}</strong>
          </p>
          <p>
            {t('caution.short')}{' '}
            {told.pages > 0 && t('page.number', { page: told.page, pages: told.pages })}
          </p>
        </div>
        <div className="template-box">
          <p>{t('template.measured')}</p>
          <p>{`${t('template.across')} ________ mm   ${t('template.up')} ________ mm`}</p>
          {/* The rulers are in mm whatever the lengths are told in. */}
          <p>
            {t('template.refuse', { most: `${words.n.number(RULER * MOST_STRETCH, 1)}\u00a0mm` })}
          </p>
        </div>
      </div>
    </div>
  );
}

function planeSentence(words: PrintedWords, template: MarkTemplate): string {
  const { t } = words;
  const { lift, lean, screws, plane } = template;
  if (plane === 'face') return t('template.curve-own');
  return [
    lift < 0.1 ? t('template.flat') : t('template.curved', { mm: fine(words, lift) }),
    ...(lean ? [t('template.on-ring')] : []),
    ...(screws.length === 0 ? [t('template.curve-own')] : []),
  ].join(' ');
}

function drawingWords({ t }: PrintedWords, { frame }: MarkTemplate) {
  return { up: t('template.way', { way: frame.upIs }), spot: t('template.spot') };
}

function legendOf(words: PrintedWords, template: MarkTemplate): LegendLine[] {
  const { t, n } = words;
  const { lean, cutout, flange, ring, screwCircle } = template;
  // Of the round thing itself, not of its oval shadow.
  const line = (key: 'cutout' | 'flange' | 'ring' | 'screws', of: typeof ring): LegendLine[] =>
    of
      ? [
          {
            line: `template-${key === 'screws' ? 'screw-circle' : key}`,
            words: t(`template.${key}`, { mm: fine(words, 2 * of.half[1]) }),
          },
        ]
      : [];
  return [
    ...line('cutout', cutout),
    ...line('flange', flange),
    ...line('screws', screwCircle),
    ...line('ring', ring),
    ...(lean
      ? [{ line: 'template-aim', words: t('template.aim', { deg: n.angle(lean.deg, 1) }) }]
      : []),
  ];
}

/** The drawing's part that a tile shows, at true size where the window stands. */
function Clipped(props: { window: Window; tile: Tile; children: React.ReactNode }) {
  const { window, tile, children } = props;
  const id = useId();
  return (
    <>
      <clipPath id={id}>
        <rect x={window.x} y={window.y} width={window.width} height={window.height} />
      </clipPath>
      <g clipPath={`url(#${id})`}>
        <g transform={`translate(${window.x - tile.low[0]} ${window.y + tile.high[1]})`}>
          {children}
        </g>
      </g>
    </>
  );
}

/** Crosses in the middle of each overlap, the same on both pages; and which page goes there. */
function GlueMarks(props: { window: Window; tile: Tile; tiling: Tiling; words: PrintedWords }) {
  const { window, tile, tiling, words } = props;
  const { x, y, width, height } = window;
  const half = OVERLAP / 2;
  const has = (column: number, row: number) =>
    tiling.tiles.find((one) => one.column === column && one.row === row)?.name ?? null;
  const sides = [
    { name: has(tile.column - 1, tile.row), upright: true, at: x + half },
    { name: has(tile.column + 1, tile.row), upright: true, at: x + width - half },
    { name: has(tile.column, tile.row - 1), upright: false, at: y + half },
    { name: has(tile.column, tile.row + 1), upright: false, at: y + height - half },
  ];
  const cross = (px: number, py: number) => `M${px - 3} ${py}h6M${px} ${py - 3}v6`;
  return (
    <g>
      {sides.map(({ name, upright, at }) => {
        if (name === null) return null;
        // On both pages at the same places of the drawing: thirds of the window.
        const marks = [1 / 4, 3 / 4].map((part) =>
          upright ? cross(at, y + height * part) : cross(x + width * part, at),
        );
        const [tx, ty] = upright ? [at, y + height / 2] : [x + width / 2, at];
        return (
          <g key={name}>
            <path
              className="glue-line"
              d={upright ? `M${at} ${y}v${height}` : `M${x} ${at}h${width}`}
            />
            <path className="glue-mark" d={marks.join('')} />
            <text
              className="template-text"
              x={tx}
              y={ty - 1}
              fontSize={2.8}
              textAnchor="middle"
              transform={upright ? `rotate(-90 ${tx} ${ty})` : undefined}
            >
              {words.t('template.glue', { name })}
            </text>
          </g>
        );
      })}
    </g>
  );
}
