/** Which speaker a file's name speaks of: a guess to start from, shown before it counts. */
import type { Role, Side, SpeakerInput } from '../geometry';

/** Words for roles in file names: trade words and their usual short forms, English and German. */
const ROLE_WORDS: Readonly<Record<Role, readonly string[]>> = {
  tweeter: [
    'tweeter',
    'tweeters',
    'tw',
    'twt',
    'hf',
    'ht',
    'high',
    'hochtoner',
    'hochtöner',
    'hochton',
  ],
  midrange: ['midrange', 'mid', 'mids', 'mr', 'mt', 'mitteltoner', 'mitteltöner', 'mittelton'],
  midbass: ['midbass', 'mb', 'mw', 'woofer', 'woof', 'tmt', 'tiefmitteltöner', 'kickbass', 'bass'],
  subwoofer: ['subwoofer', 'sub', 'sw'],
  wideband: ['wideband', 'wide', 'wb', 'fullrange', 'fr', 'breitband', 'breitbänder'],
  'rear-fill': ['rearfill', 'rear', 'fill', 'rf', 'hinten'],
  centre: ['centre', 'center', 'cen', 'ctr', 'mitte'],
};

const SIDE_WORDS: Readonly<Record<Side, readonly string[]>> = {
  left: ['left', 'l', 'lh', 'li', 'links', 'lt'],
  right: ['right', 'r', 'rh', 're', 'rechts', 'rt'],
};

/** Letters stuck to their side: "TWL", "mbR". */
const STUCK = /^(.{2,})(l|r)$/;

/**
 * The id of the one speaker that fits a file's name: its id or name in it, or its role and side in
 * words or short forms. `null` where none or several fit alike.
 */
export function speakerInName(fileName: string, speakers: readonly SpeakerInput[]): string | null {
  const tokens = tokensOf(fileName);
  const scored = speakers.map((speaker) => ({ id: speaker.id, score: scoreOf(speaker, tokens) }));
  const most = Math.max(0, ...scored.map(({ score }) => score));
  const best = scored.filter(({ score }) => score === most);
  return most > 0 && best.length === 1 ? (best[0]?.id ?? null) : null;
}

function tokensOf(fileName: string): string[] {
  const bare = fileName.replace(/\.[a-z]\w{0,4}$/i, '').replace(/([a-z])([A-Z])/g, '$1 $2');
  return bare
    .normalize('NFC')
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter(Boolean)
    .flatMap((token) => {
      const stuck = STUCK.exec(token);
      const isWord = stuck && isRole(stuck[1] as string) && !isRole(token);
      return isWord ? [stuck[1] as string, stuck[2] as string] : [token];
    });
}

const isRole = (token: string): boolean =>
  Object.values(ROLE_WORDS).some((words) => words.includes(token));

/** 0: it is not this one. Every token of the id is the surest sign. */
function scoreOf({ id, role, side }: SpeakerInput, tokens: readonly string[]): number {
  const own = tokensOf(id);
  if (own.length > 0 && own.every((token) => tokens.includes(token))) return 10 + own.length;
  // "mid bass" is a midbass, not a midrange.
  const joined = tokens.map((token, i) => token + (tokens[i + 1] ?? ''));
  const roleAt = (one: Role) =>
    ROLE_WORDS[one].some((word) => joined.includes(word))
      ? 2
      : ROLE_WORDS[one].some((word) => tokens.includes(word))
        ? 1
        : 0;
  const here = roleAt(role);
  if (here === 0) return 0;
  const other = side === 'left' ? 'right' : 'left';
  const says = (one: Side) => SIDE_WORDS[one].some((word) => tokens.includes(word));
  if (side && (!says(side) || says(other))) return 0;
  return here + (side ? 2 : 0);
}
