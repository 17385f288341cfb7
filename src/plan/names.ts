/** How things are called on screen and on paper: words of the trade, in lower case. */
import type { Role, SpeakerInput } from '../geometry';

const ROLE_NAMES: Record<Role, { one: string; many: string }> = {
  tweeter: { one: 'tweeter', many: 'tweeters' },
  midrange: { one: 'mid', many: 'mids' },
  midbass: { one: 'midbass', many: 'midbasses' },
  subwoofer: { one: 'subwoofer', many: 'subwoofers' },
  wideband: { one: 'wideband', many: 'widebands' },
  'rear-fill': { one: 'rear fill', many: 'rear fills' },
  centre: { one: 'centre', many: 'centres' },
};

export const ROLES = Object.keys(ROLE_NAMES) as readonly Role[];

/** "tweeter", "mid", "rear fill". */
export const roleName = (role: Role): string => ROLE_NAMES[role]?.one ?? words(role);

/** "tweeters", "mids", "rear fills". */
export const rolePlural = (role: Role): string => ROLE_NAMES[role]?.many ?? words(role);

/**
 * "left tweeter", "subwoofer". Given the speakers it stands among, a second one of the same role
 * and side is numbered: "left tweeter 2".
 */
export function speakerName(
  speaker: Pick<SpeakerInput, 'id' | 'role' | 'side'>,
  among: readonly Pick<SpeakerInput, 'id' | 'role' | 'side'>[] = [],
): string {
  const name = speaker.side ? `${speaker.side} ${roleName(speaker.role)}` : roleName(speaker.role);
  const alike = among.filter((s) => s.role === speaker.role && s.side === speaker.side);
  const place = alike.findIndex((s) => s.id === speaker.id);
  return place > 0 ? `${name} ${place + 1}` : name;
}

/** "tweeters", "tweeters 2": a pair, among the speakers of its option. */
export function pairName(pair: string, among: readonly SpeakerInput[]): string {
  const first = among.find((speaker) => speaker.pair === pair);
  if (!first) return words(pair);
  const pairs = new Set<string>();
  for (const speaker of among) {
    if (speaker.role === first.role && speaker.pair) pairs.add(speaker.pair);
  }
  const place = [...pairs].indexOf(pair);
  return place > 0 ? `${rolePlural(first.role)} ${place + 1}` : rolePlural(first.role);
}

/** "-left" and the like come first in words; the rest are these, or the id without hyphens. */
const PANEL_NAMES: Readonly<Record<string, string>> = {
  screen: 'windscreen',
  roof: 'roof',
  'rear-glass': 'rear glass',
  'parcel-shelf': 'parcel shelf',
  pillar: 'A-pillar',
  'mirror-corner': 'mirror corner',
  'door-upper': 'upper door card',
  'door-lower': 'lower door card',
  'side-glass': 'side glass',
  'b-pillar': 'B-pillar',
  'c-pillar': 'C-pillar',
  'rear-door': 'rear door card',
  'dash-top': 'dash top',
  'dash-face': 'dash face',
  'dash-lower': 'lower dash face',
  kick: 'kick panel',
  'toe-board': 'toe board',
  footrest: 'footrest',
  floor: 'floor',
  tunnel: 'tunnel side',
  'console-top': 'console top',
  'seat-base': 'seat base front',
  sill: 'sill',
};

/** "left A-pillar", "dash top, centre", "windscreen". A cabin's panels carry their own name too. */
export function panelName(id: string): string {
  const known = PANEL_NAMES[id];
  if (known) return known;
  const cut = id.lastIndexOf('-');
  const base = PANEL_NAMES[id.slice(0, cut)];
  const end = id.slice(cut + 1);
  if (base && (end === 'left' || end === 'right')) return `${end} ${base}`;
  if (base && end === 'center') return `${base}, centre`;
  return words(id);
}

/** "front left seat". */
export const seatName = (id: string): string =>
  /^(front|rear)-(left|right)$/.test(id) ? `${words(id)} seat` : words(id);

/** An id as words: "steering-wheel" → "steering wheel". */
export const words = (id: string): string => id.replace(/[-_]+/g, ' ').trim() || id;
