import type { Side, SpeakerInput } from '../../../geometry';
import { speakerName } from '../../../plan/names';
import { formatFrequency, formatLevel, withSign } from '../../../plan/units';
import { capital } from '../capital';
import type { GroupLevels, SideLevels } from './group-levels';

/** Two or three sentences: where they beam, what each loses off its axis, how far they are apart. */
export function levelWords(levels: GroupLevels, speakers: readonly SpeakerInput[]): string[] {
  const { sides } = levels;
  return [beaming(sides, speakers), ...lost(sides), ...apart(levels)].flatMap((text) => text ?? []);
}

/** Two digits are what such a convention can carry. */
const rounded = (hz: number): string => formatFrequency(Number(hz.toPrecision(2)));

function beaming(sides: readonly SideLevels[], speakers: readonly SpeakerInput[]): string | null {
  const known = sides.flatMap(({ speaker, beamingHz }) =>
    beamingHz === null ? [] : [{ name: speakerName(speaker, speakers), hz: rounded(beamingHz) }],
  );
  const [a, b] = known;
  if (!a) return null;
  if (b && a.hz === b.hz) return `Both begin to beam at about ${a.hz}.`;
  const all = known.map(({ name, hz }) => `the ${name} at about ${hz}`);
  return `${capital(all.join(', '))} begin${b ? '' : 's'} to beam.`;
}

/** "left −4.1 dB, right −1.0 dB"; the bare value of a lone speaker. */
const bySide = (sides: readonly { side: Side | undefined; db: number }[], sign: boolean): string =>
  sides
    .map(({ side, db }) => {
      const level = sign ? withSign(formatLevel(db)) : formatLevel(db);
      return side && sides.length > 1 ? `${side} ${level}` : level;
    })
    .join(', ');

/** What each loses at its highest band, and on average against what it is rated by. */
function lost(sides: readonly SideLevels[]): string[] {
  const top = sides[0]?.bands.findLast(({ directivityDb }) => directivityDb !== null)?.frequencyHz;
  const off = sides.flatMap(({ speaker: { side }, bands }) => {
    const band = bands.find(({ frequencyHz }) => frequencyHz === top);
    return band && band.directivityDb !== null ? [{ side, db: band.directivityDb }] : [];
  });
  const mean = sides.flatMap(({ speaker: { side }, windowDb }) =>
    windowDb === null ? [] : [{ side, db: windowDb }],
  );
  return [
    ...(off.length > 0
      ? [`Off the axis here at ${formatFrequency(top)}: ${bySide(off, false)}.`]
      : []),
    ...(mean.length > 0 ? [`On average re the listening window: ${bySide(mean, true)}.`] : []),
  ];
}

function apart({ differences }: GroupLevels): string[] {
  const known = differences.flatMap(({ frequencyHz, levelDb }) =>
    levelDb === null ? [] : [{ frequencyHz, levelDb }],
  );
  const [first] = known;
  if (!first) return [];
  const low = known.reduce((a, b) => (b.levelDb < a.levelDb ? b : a), first);
  const high = known.reduce((a, b) => (b.levelDb > a.levelDb ? b : a), first);
  const said = (db: number) => withSign(formatLevel(db));
  if (said(low.levelDb) === said(high.levelDb))
    return [`Left less right: ${said(low.levelDb)} in every band.`];
  return [
    `Left less right: from ${said(low.levelDb)} at ${formatFrequency(low.frequencyHz)} ` +
      `to ${said(high.levelDb)} at ${formatFrequency(high.frequencyHz)}.`,
  ];
}
