/**
 * The sealed pockets of an option: what each holds, what its speaker does in it, and what unequal
 * pockets do to the left and right of a pair. Closed boxes after Small 1972: see
 * `sound/closed-box.ts`.
 */
import type { CabinModel } from '../cabin/model';
import { planPocket, speakersIn } from '../fit/plan-pocket';
import { pocketMeets } from '../fit/pocket-meets';
import { pocketMisfits } from '../fit/pocket-misfits';
import type { OptionInput, SealedPocket, Side, SpeakerInput } from '../input';
import {
  type ClosedBox,
  closedBox,
  comparePockets,
  type DriveUnit,
  litresForQ,
  type PocketPair,
} from '../sound/closed-box';
import { pairsOf } from '../stage/pairs';
import type { Stage } from './stage';

/** Qtc of the flattest response, B2: Small 1972. */
export const FLAT_Q = Math.SQRT1_2;

/** Where responses are compared: 20 to 500 Hz, twelve to the octave. */
const LOWEST_HZ = 20;
const HIGHEST_HZ = 500;
const PER_OCTAVE = 12;

export const POCKET_FREQUENCIES_HZ: readonly number[] = [
  ...Array.from(
    { length: Math.ceil(PER_OCTAVE * Math.log2(HIGHEST_HZ / LOWEST_HZ)) },
    (_, k) => LOWEST_HZ * 2 ** (k / PER_OCTAVE),
  ),
  HIGHEST_HZ,
];

export interface PocketStudy {
  pocket: string;
  panel: string;
  /** Of its first speaker that has one. */
  side: Side | null;
  /** All `null` where there is no volume. */
  outsideLitres: number | null;
  wallLitres: number | null;
  speakerLitres: number | null;
  netLitres: number | null;
  /** The speaker's small signals; of several alike in one pocket, as one speaker of all their Vas. */
  unit: DriveUnit | null;
  box: ClosedBox | null;
  /** Net volume for the flattest response, Qtc 0.707; `null` where Qts is higher already. */
  flatLitres: number | null;
  /** Why something above is `null`. */
  reasons: string[];
  /** What does not fit in it, and where it does not fit itself: a sentence each. */
  misfits: string[];
}

export interface PocketPairStudy {
  pair: string;
  /** Ids of the pockets; `null` where that side has none. */
  left: string | null;
  right: string | null;
  /** At {@link POCKET_FREQUENCIES_HZ}; `worst` within the band both speakers play. */
  compared: PocketPair | null;
  reasons: string[];
}

export interface PocketsStudy {
  /** In the plan's order. */
  pockets: PocketStudy[];
  /** Pairs of which at least one side is in a pocket. */
  pairs: PocketPairStudy[];
}

export function pocketsOf({ cabin, option }: Pick<Stage, 'cabin' | 'option'>): PocketsStudy {
  const drawn = option.pockets ?? [];
  const pockets = drawn.map((pocket) => knownPocket({ cabin, option }, pocket));
  const pairs = pairsOf(option.speakers).flatMap(({ pair, left, right }): PocketPairStudy[] => {
    const around = (id: string | null) =>
      id === null ? -1 : drawn.findIndex(({ speakers }) => speakers.includes(id));
    const [a, b] = [around(left), around(right)];
    if (a < 0 && b < 0) return [];
    const [one, two] = [pockets[a] ?? null, pockets[b] ?? null];
    return [
      {
        pair,
        left: one?.pocket ?? null,
        right: two?.pocket ?? null,
        ...compare(one, two, bandOf(option, [left, right])),
      },
    ];
  });
  return { pockets, pairs };
}

interface Known {
  cabin: CabinModel;
  inside: readonly SpeakerInput[];
  study: PocketStudy;
}

/** By the pocket's own identity: while one of them is drawn on, the others stand. */
const made = new WeakMap<SealedPocket, Known>();

function knownPocket(stage: Pick<Stage, 'cabin' | 'option'>, pocket: SealedPocket): PocketStudy {
  const inside = speakersIn(stage.option, pocket);
  const known = made.get(pocket);
  const stands =
    known?.cabin === stage.cabin &&
    known.inside.length === inside.length &&
    known.inside.every((speaker, i) => speaker === inside[i]);
  if (known && stands) return known.study;
  const study = studyPocket(stage, pocket);
  made.set(pocket, { cabin: stage.cabin, inside, study });
  return study;
}

function studyPocket(stage: Pick<Stage, 'cabin' | 'option'>, pocket: SealedPocket): PocketStudy {
  const answer = planPocket(stage, pocket);
  const inside = speakersIn(stage.option, pocket);
  const reasons = answer.ok ? [] : [answer.message];
  const unit = unitOf(inside);
  if (!unit.ok) reasons.push(unit.message);
  const known = unit.ok ? unit.unit : null;
  const net = answer.ok ? answer.pocket.netLitres : null;
  const box = known && net !== null ? closedBox(known, net) : null;
  if (box && !box.ok) reasons.push(box.message);
  const flatLitres = known && litresForQ(known, FLAT_Q);
  if (known && flatLitres === null)
    reasons.push(
      `its own Qts of ${rounded(known.q)} is above 0.707 already: no volume brings it down`,
    );
  return {
    pocket: pocket.id,
    panel: pocket.panel,
    side: inside.find(({ side }) => side)?.side ?? null,
    outsideLitres: answer.ok ? answer.pocket.outsideLitres : null,
    wallLitres: answer.ok ? answer.pocket.wallLitres : null,
    speakerLitres: answer.ok ? answer.pocket.speakerLitres : null,
    netLitres: net,
    unit: known,
    box: box?.ok ? box.box : null,
    flatLitres,
    reasons,
    misfits: [
      ...pocketMisfits(stage, pocket),
      ...(answer.ok ? pocketMeets(stage.cabin, answer.pocket.mesh) : []),
    ],
  };
}

const rounded = (q: number): string => String(Math.round(q * 1000) / 1000);

type UnitAnswer = { ok: true; unit: DriveUnit } | { ok: false; message: string };

/**
 * n speakers alike in one pocket have 1/n of it each, which is what one of n times the Vas has of
 * the whole.
 */
function unitOf(speakers: readonly SpeakerInput[]): UnitAnswer {
  const [first] = speakers;
  if (!first) return { ok: false, message: 'no speaker is in it' };
  const unit = first.smallSignal;
  const missing = speakers.find(({ smallSignal }) => !smallSignal);
  if (!unit || missing)
    return { ok: false, message: `fs, Qts and Vas of "${(missing ?? first).id}" are not known` };
  const alike = speakers.every(
    ({ smallSignal: other }) =>
      other?.resonanceHz === unit.resonanceHz &&
      other.q === unit.q &&
      other.vasLitres === unit.vasLitres,
  );
  if (!alike)
    return { ok: false, message: 'the speakers in it are not alike, and share no one resonance' };
  return { ok: true, unit: { ...unit, vasLitres: unit.vasLitres * speakers.length } };
}

/** Where both play, Hz; all that is compared where a band is not given or they have none in common. */
function bandOf(
  { speakers }: OptionInput,
  ids: readonly (string | null)[],
): readonly [number, number] {
  const bands = speakers.flatMap(({ id, bandHz }) => (ids.includes(id) && bandHz ? [bandHz] : []));
  const low = Math.max(LOWEST_HZ, ...bands.map(([from]) => from));
  const high = Math.min(HIGHEST_HZ, ...bands.map(([, to]) => to));
  return low < high ? [low, high] : [LOWEST_HZ, HIGHEST_HZ];
}

function compare(
  left: PocketStudy | null,
  right: PocketStudy | null,
  [low, high]: readonly [number, number],
): Pick<PocketPairStudy, 'compared' | 'reasons'> {
  const none = (reason: string) => ({ compared: null, reasons: [reason] });
  for (const [side, one] of [
    ['left', left],
    ['right', right],
  ] as const) {
    if (!one) return none(`there is no pocket for the ${side} one`);
    if (!one.box) return none(`the ${side} one cannot be told: ${one.reasons[0]}`);
  }
  const [a, b] = [left as PocketStudy, right as PocketStudy];
  if (!a.unit || !b.unit || a.netLitres === null || b.netLitres === null)
    return none('one of the two cannot be told');
  if (
    a.unit.resonanceHz !== b.unit.resonanceHz ||
    a.unit.q !== b.unit.q ||
    a.unit.vasLitres !== b.unit.vasLitres
  )
    return none('left and right are not the same speaker: only alike ones are compared');
  const answer = comparePockets(a.unit, a.netLitres, b.netLitres, POCKET_FREQUENCIES_HZ);
  if (!answer.ok) return none(answer.message);
  const { pair } = answer;
  const heard = pair.levels.filter(({ frequencyHz }) => frequencyHz >= low && frequencyHz <= high);
  const worst = heard.reduce<PocketPair['worst']>(
    (most, { frequencyHz, differenceDb }) =>
      most && Math.abs(most.differenceDb) >= Math.abs(differenceDb)
        ? most
        : { frequencyHz, differenceDb },
    null,
  );
  return { compared: { ...pair, worst }, reasons: [] };
}
