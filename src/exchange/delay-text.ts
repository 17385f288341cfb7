import { FAMILY_WORDS, filterWords } from './channel-filters';
import type { DelayExport, DelayRow, ExportedSeat, SeatLine } from './delay-types';
import { NO_ZONE_KNOWN, ZONES_CAUTION } from './keep-clear/zone-cautions';
import { alignColumns, oneLine, signed, wrap } from './plain-text';

type Column = readonly [string, (row: DelayRow) => string];

/** In words, with its id. */
function channelWords({ name, speaker }: DelayRow): string {
  return `${name} (${oneLine(speaker)})`;
}

const SETTINGS: readonly Column[] = [
  ['speaker', channelWords],
  ['steps', (row) => String(row.rounded.steps)],
  ['set ms', (row) => row.rounded.ms.toFixed(3)],
  ['samples', (row) => row.rounded.samples.toFixed(2)],
  ['mm', (row) => row.rounded.mm.toFixed(1)],
  ['cm', (row) => row.rounded.cm.toFixed(2)],
  ['in', (row) => row.rounded.inches.toFixed(2)],
  ['left over ms', (row) => signed(row.residual.ms, 4)],
  ['left over mm', (row) => signed(row.residual.mm, 2)],
  ['gain dB', (row) => signed(row.gainDb, 2)],
  ['polarity', (row) => (row.inverted ? 'SWAPPED' : 'normal')],
  [
    '',
    (row) =>
      [
        row.clamped && 'CLAMPED',
        row.lines.some(({ line }) => line === 'blocked') && 'BLOCKED',
        row.keepClear.length > 0 && 'KEEP CLEAR',
      ]
        .filter(Boolean)
        .join(' '),
  ],
];

const FILTERS: readonly Column[] = [
  ['speaker', (row) => row.name],
  ['high-pass', (row) => filterWords(row.highPass)],
  ['low-pass', (row) => filterWords(row.lowPass)],
];

const tableOf = (columns: readonly Column[], rows: readonly DelayRow[]): string[] =>
  alignColumns([
    columns.map(([heading]) => heading),
    ...rows.map((row) => columns.map(([, cell]) => cell(row))),
  ]);

/** The export as plain text to print or paste: tables, what to know, and the cautions. */
export function toText(all: DelayExport): string {
  const limit = all.largestMs === null ? '' : `, at most ${Number(all.largestMs.toFixed(3))} ms`;
  return [
    `Delays: ${oneLine(all.planTitle) || 'untitled plan'}`,
    `Option: ${oneLine(all.option.title)}`,
    ...forWhom(all),
    `Sound travels ${all.speedOfSound.toFixed(2)} mm in a ms (${all.temperatureC} °C)`,
    `Set in steps of ${all.stepName}${limit}; samples at ${all.sampleRateHz} Hz`,
    `Longest delay wanted: ${all.longest.ms.toFixed(3)} ms, ${all.longest.samples.toFixed(0)} samples, ${all.longest.mm.toFixed(0)} mm`,
    '',
    ...(all.rows.length > 0
      ? [
          ...tableOf(SETTINGS, all.rows),
          '',
          ...tableOf(FILTERS, all.rows),
          ...all.seats.flatMap((seat) => seatPart(seat, all)),
          ...wrap(pathWords(all)),
        ]
      : ['No speakers in this option.']),
    '',
    ...polarityPart(all),
    ...(all.notes.length > 0 ? ['', ...all.notes.flatMap((note) => wrap(`Note: ${note}`))] : []),
    '',
    ...keepClearPart(all),
    '',
    'Before cutting, drilling or driving',
    ...all.cautions.flatMap(({ title, text }) => wrap(`- ${title}: ${text}`)),
    '',
  ].join('\n');
}

function forWhom({ by, seats }: DelayExport): string[] {
  if (by === 'seat') return [`Seat: ${oneLine(seats[0]?.name ?? '')}`];
  const counted = seats.map(({ name, weight }) => `${oneLine(name)} (counts ${weight})`);
  return wrap(`Seats: the best compromise over ${counted.join(', ')}`);
}

const pathWords = ({ by }: DelayExport): string =>
  'Path: the straight line, or the way round where that is blocked.' +
  (by === 'seats' ? ' Late: against the middle of the first and the last; - is early.' : '');

/** What the sound travels to one seat, and among several what that seat is left with. */
function seatPart(seat: ExportedSeat, all: DelayExport): string[] {
  const line = (of: (line: SeatLine) => string) => (row: DelayRow) => {
    const found = row.lines.find((one) => one.seat === seat.id);
    return found ? of(found) : '';
  };
  const several = all.by === 'seats';
  const { largestErrorMs: wanted, largestErrorSetMs: set } = seat;
  return [
    '',
    ...wrap(
      several
        ? `At the ${oneLine(seat.name)}: no speaker is more than ${set.toFixed(3)} ms ` +
            `(${(set * all.speedOfSound).toFixed(0)} mm) early or late as set; ` +
            `${wanted.toFixed(3)} ms before rounding`
        : `At the ${oneLine(seat.name)}`,
    ),
    ...tableOf(
      [
        ['speaker', (row) => row.name],
        ['straight mm', line(({ straight }) => straight.toFixed(1))],
        ['path mm', line(({ path }) => path.toFixed(1))],
        ...(several ? [['late by ms', line(({ errorMs }) => signed(errorMs, 3))] as Column] : []),
        ['line', line((one) => one.line)],
      ],
      all.rows,
    ),
  ];
}

function polarityPart({ crossovers }: DelayExport): string[] {
  if (crossovers.length === 0) return ['Polarity: as the plan says; no crossover swaps any poles.'];
  return [
    'Polarity: as the plan says, else as is usual for these crossovers',
    ...crossovers.map(
      ({ name, family, order, frequencyHz, proposed }) =>
        `- ${oneLine(name)}: ${FAMILY_WORDS[family]} order ` +
        `${order} at ${Math.round(frequencyHz)} Hz${proposed ? ', proposed from the bands' : ''}`,
    ),
  ];
}

function keepClearPart({ keepClear }: DelayExport): string[] {
  if (keepClear.length === 0) return wrap(`Keep-clear zones reached into: ${NO_ZONE_KNOWN}.`);
  return [
    'KEEP CLEAR',
    ...keepClear.flatMap((sentence) => wrap(`- ${oneLine(sentence)}`)),
    ...wrap(`So it is ${ZONES_CAUTION}`),
  ];
}
