import type { SlowMotion } from './types';

/** One picture of a strip. */
export interface Moment {
  time: number;
  /** Speakers whose sound leaves now, and those whose sound reaches the middle of the head. */
  leaving: readonly string[];
  arriving: readonly string[];
  /** How many speakers' sound has reached the middle of the head by now. */
  arrived: number;
}

/** Nearer than this two moments are one picture, ms: 10 mm of growth, a pen's width on paper. By eye. */
const ONE_PICTURE = 0.03;

/** A strip of fewer pictures tells little, and one that leaps over this part of the whole. By eye. */
const FEWEST = 4;
const LEAP = 1 / 3;

interface Draft {
  time: number;
  leaving: string[];
  arriving: string[];
  /** What is left out last has the highest. */
  weight: number;
}

/**
 * The moments worth a picture, by time: the first sound leaving, the first arriving, each pair's
 * arrivals, the last; at the middle of the head. Where there are more than `most`, single arrivals
 * within a pair go first, then pairs; where there is room, and at least up to four, the longest gaps
 * are halved.
 * @param most at least 3
 */
export function stripMoments(motion: SlowMotion, most = 6): Moment[] {
  if (most < 3) throw new Error(`stripMoments: expected at least 3 pictures, got ${most}`);
  const { waves } = motion;
  if (waves.length === 0) return [];
  const heads = motion.reaches.filter(({ at }) => at === 'head');
  const drafts = fewer(merged(draftsOf(motion)), most);
  const filled = more(drafts, most);
  return filled.map(({ time, leaving, arriving }) => ({
    time,
    leaving,
    arriving,
    arrived: heads.filter((reach) => reach.time <= time).length,
  }));
}

function draftsOf({ waves, reaches }: SlowMotion): Draft[] {
  const starts = [...new Set(waves.map(({ start }) => start))].sort((a, b) => a - b);
  const heads = reaches.filter(({ at }) => at === 'head');
  const pairOf = new Map(waves.map(({ speaker, pair }) => [speaker, pair ?? speaker]));
  return [
    // Those in between the first and the last start look alike.
    ...starts.flatMap((time, i) => {
      if (i > 0 && i < starts.length - 1) return [];
      const leaving = waves.filter(({ start }) => start === time).map(({ speaker }) => speaker);
      return [{ time, leaving, arriving: [], weight: i === 0 ? 4 : 2 }];
    }),
    ...heads.map(({ time, speaker }, i) => {
      const later = heads
        .slice(i + 1)
        .some((one) => pairOf.get(one.speaker) === pairOf.get(speaker));
      const ends = i === 0 || i === heads.length - 1;
      return { time, leaving: [], arriving: [speaker], weight: ends ? 4 : later ? 1 : 2 };
    }),
  ].sort((a, b) => a.time - b.time);
}

/** What falls into one picture stands at the last of its moments: all of it has happened there. */
function merged(drafts: readonly Draft[]): Draft[] {
  const all: Draft[] = [];
  for (const draft of drafts) {
    const last = all[all.length - 1];
    // The first leaves at its own moment: a picture of nothing yet in the air.
    if (!last || all.length === 1 || draft.time - last.time > ONE_PICTURE) {
      all.push({ ...draft });
      continue;
    }
    last.time = draft.time;
    last.leaving.push(...draft.leaving);
    last.arriving.push(...draft.arriving);
    last.weight = Math.max(last.weight, draft.weight);
  }
  return all;
}

/** Leaves out the lightest, among those the one nearest to a neighbour. */
function fewer(drafts: readonly Draft[], most: number): Draft[] {
  const kept = [...drafts];
  while (kept.length > most) {
    const inner = kept.slice(1, -1);
    const room = (i: number) =>
      Math.min(timeOf(kept, i) - timeOf(kept, i - 1), timeOf(kept, i + 1) - timeOf(kept, i));
    const least = inner.reduce((best, draft, k) => {
      const i = k + 1;
      const chosen = kept[best] as Draft;
      if (draft.weight !== chosen.weight) return draft.weight < chosen.weight ? i : best;
      return room(i) < room(best) ? i : best;
    }, 1);
    kept.splice(least, 1);
  }
  return kept;
}

/** Halves the longest gaps. */
function more(drafts: readonly Draft[], most: number): Draft[] {
  const kept = [...drafts];
  const whole = timeOf(kept, kept.length - 1);
  while (kept.length > 1 && kept.length < most) {
    const gap = (i: number) => timeOf(kept, i + 1) - timeOf(kept, i);
    let longest = 0;
    for (let i = 1; i < kept.length - 1; i++) if (gap(i) > gap(longest)) longest = i;
    if (kept.length >= FEWEST && gap(longest) <= LEAP * whole) break;
    const time = timeOf(kept, longest) + gap(longest) / 2;
    kept.splice(longest + 1, 0, { time, leaving: [], arriving: [], weight: 0 });
  }
  return kept;
}

const timeOf = (drafts: readonly Draft[], i: number): number => (drafts[i] as Draft).time;
