import type { StripWords } from '../../../exchange/picture-strip';
import type { Moment, SlowMotion, SpeakerInput } from '../../../geometry';
import { speakerName } from '../../../plan/names';
import { formatTime } from '../../../plan/units';
import { capital } from '../capital';

/** So many are named; the rest is counted. */
const NAMED = 2;

/** "left tweeter", "left tweeter and left mid", "left tweeter and 3 more". */
export function namesOf(ids: readonly string[], among: readonly SpeakerInput[]): string {
  const names = ids.map((id) => {
    const speaker = among.find((one) => one.id === id);
    return speaker ? speakerName(speaker, among) : id;
  });
  if (names.length <= NAMED) return names.join(' and ');
  return `${names[0]} and ${names.length - 1} more`;
}

const verb = (ids: readonly string[], one: string, many: string) => (ids.length === 1 ? one : many);

/** What happens at a moment: "Left tweeter arrives", "All 6 speakers start". */
export function momentWords(
  { leaving, arriving }: Pick<Moment, 'leaving' | 'arriving'>,
  { waves }: SlowMotion,
  among: readonly SpeakerInput[],
): string {
  const said: string[] = [];
  if (arriving.length > 0)
    said.push(
      arriving.length === waves.length && waves.length > 1
        ? `All ${waves.length} arrive together`
        : capital(`${namesOf(arriving, among)} ${verb(arriving, 'arrives', 'arrive')}`),
    );
  if (leaving.length > 0)
    said.push(
      leaving.length === waves.length && waves.length > 1
        ? `All ${waves.length} speakers start`
        : capital(`${namesOf(leaving, among)} ${verb(leaving, 'starts', 'start')}`),
    );
  return said.length > 0 ? said.join('; ') : 'On the way';
}

export const arrivedWords = (count: number, of: number): string =>
  count === 0 ? 'none there yet' : count === of ? 'all there' : `${count} of ${of} there`;

export const HOW_TO_READ =
  'From above, cut through at the height of the ears. A line is where a speaker’s sound cuts that ' +
  'height: left drawn through, right dashed, heavier for lower sounds; a wash is the whole sphere ' +
  'under or over it. A dot is what comes round something that stands in the way. Spheres are drawn ' +
  'as if nothing did; the times are those of the way the sound takes. Direct sound only, as ' +
  'predicted, not measured.';

export const stripWords = (among: readonly SpeakerInput[]): StripWords => ({
  time: (ms) => formatTime(ms),
  caption: (moment, motion) => momentWords(moment, motion, among),
  arrived: arrivedWords,
  key: HOW_TO_READ,
  title: 'The arrival of sound at one seat, in pictures',
});
