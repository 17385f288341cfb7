import Papa from 'papaparse';
import { type ChannelFilter, FAMILY_WORDS } from './channel-filters';
import { safeText } from './csv-cells';
import type { DelayExport, DelayRow, ExportedSeat, SeatLine } from './delay-types';
import { NO_ZONE_KNOWN } from './keep-clear/zone-cautions';

/** Digits kept in a file: a hundredth of a millimetre, a tenth of a microsecond. */
const round = (value: number, digits: number): number => Number(value.toFixed(digits)) + 0;

type Cell = string | number;
/** Its heading (with the unit) and how a row fills it. */
type Column = readonly [string, (row: DelayRow, all: DelayExport) => Cell];

/** The columns of one end of a channel's band; empty where there is no filter. */
function filterColumns(end: 'high_pass' | 'low_pass'): Column[] {
  const cell = (of: (filter: ChannelFilter) => Cell) => (row: DelayRow) => {
    const filter = end === 'high_pass' ? row.highPass : row.lowPass;
    return filter ? of(filter) : '';
  };
  return [
    [end, cell(({ family }) => FAMILY_WORDS[family])],
    [`${end}_order`, cell(({ order }) => order)],
    [`${end}_hz`, cell(({ frequencyHz }) => round(frequencyHz, 1))],
    [
      `${end}_from`,
      cell(({ proposed }) => (proposed ? 'proposed from the bands' : 'set in the plan')),
    ],
  ];
}

const FIRST: readonly Column[] = [
  ['speaker', (row) => row.speaker],
  ['name', (row) => row.name],
  ['role', (row) => row.role],
  ['pair', (row) => row.pair ?? ''],
  ['side', (row) => row.side ?? ''],
  ['option', (_, all) => all.option.title],
  ['seat', (_, all) => all.seats.map(({ id }) => id).join('; ')],
];

const SETTINGS: readonly Column[] = [
  ['delay_ms', (row) => round(row.delay.ms, 4)],
  ['delay_samples', (row) => round(row.delay.samples, 3)],
  ['delay_mm', (row) => round(row.delay.mm, 2)],
  ['delay_cm', (row) => round(row.delay.cm, 3)],
  ['delay_in', (row) => round(row.delay.inches, 3)],
  ['rounded_steps', (row) => row.rounded.steps],
  ['rounded_ms', (row) => round(row.rounded.ms, 4)],
  ['rounded_samples', (row) => round(row.rounded.samples, 3)],
  ['rounded_mm', (row) => round(row.rounded.mm, 2)],
  ['rounded_cm', (row) => round(row.rounded.cm, 3)],
  ['rounded_in', (row) => round(row.rounded.inches, 3)],
  ['residual_ms', (row) => round(row.residual.ms, 4)],
  ['residual_mm', (row) => round(row.residual.mm, 2)],
  ['gain_db', (row) => round(row.gainDb, 2)],
  ['polarity', (row) => (row.inverted ? 'swapped' : 'normal')],
  [
    'polarity_from',
    (row) => (row.polarityFrom === 'plan' ? 'set in the plan' : 'usual for its crossovers'),
  ],
  ...filterColumns('high_pass'),
  ...filterColumns('low_pass'),
  ['clamped', (row) => (row.clamped ? 'yes' : 'no')],
  ['step', (_, all) => all.stepName],
  ['sample_rate_hz', (_, all) => all.sampleRateHz],
  ['speed_of_sound_m_per_s', (_, all) => round(all.speedOfSound, 3)],
];

const CAUTIONS: readonly Column[] = [
  [
    'keep_clear',
    (row) =>
      row.keepClear.length === 0
        ? NO_ZONE_KNOWN
        : row.keepClear.map(({ name, caution }) => `${name}: ${caution}`).join(' '),
  ],
  ['caution', (_, all) => all.shortCaution],
];

/**
 * The columns about one seat. Among several seats each heading starts with the seat's id; the only
 * seat of a file needs no name.
 */
function seatColumns(seat: ExportedSeat, several: boolean): Column[] {
  const name = (heading: string) => (several ? `${seat.id}_${heading}` : heading);
  const cell = (of: (line: SeatLine) => Cell) => (row: DelayRow) => {
    const line = row.lines.find((one) => one.seat === seat.id);
    return line ? of(line) : '';
  };
  return [
    [name('straight_mm'), cell(({ straight }) => round(straight, 2))],
    // The way round where the straight line is blocked.
    [name('path_mm'), cell(({ path }) => round(path, 2))],
    [name('line'), cell(({ line }) => line)],
    [name('blocked_by'), cell(({ blockedBy }) => blockedBy.join('; '))],
    [name('goes_round'), cell(({ round: ids }) => ids.join('; '))],
    [name('line_in_words'), cell(({ words }) => words)],
    ...(several
      ? ([
          [name('weight'), () => seat.weight ?? 1],
          [name('error_ms'), cell(({ errorMs }) => round(errorMs, 4))],
          [name('largest_error_ms'), () => round(seat.largestErrorSetMs, 4)],
        ] as Column[])
      : []),
  ];
}

/**
 * The export as CSV after RFC 4180: one heading line, one line per speaker, CRLF, decimal point.
 * Numbers are plain numbers; no text cell can start a formula in a spreadsheet.
 */
export function toCsv(all: DelayExport): string {
  const columns = [
    ...FIRST,
    ...all.seats.flatMap((seat) => seatColumns(seat, all.by === 'seats')),
    ...SETTINGS,
    ...CAUTIONS,
  ];
  const fields = columns.map(([heading]) => safeText(heading));
  const data = all.rows.map((row) =>
    columns.map(([, cell]) => {
      const value = cell(row, all);
      return typeof value === 'string' ? safeText(value) : value;
    }),
  );
  return `${Papa.unparse({ fields, data }, { newline: '\r\n' })}\r\n`;
}
