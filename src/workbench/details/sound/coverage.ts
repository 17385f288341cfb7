/** What measured responses cover, and whom they leave out. */
import type { OffAxisResponse, OptionResult } from '../../../geometry';
import { seatName } from '../../../plan/names';
import { formatAngle, formatFrequency } from '../../../plan/units';

/** "0°, 15° and 30°, from 200 Hz to 20 kHz"; the frequencies are those all angles have. */
export function coverageWords(responses: readonly OffAxisResponse[]): string {
  const angles = [...new Set(responses.map(({ offAxisDeg }) => offAxisDeg))]
    .sort((a, b) => a - b)
    .map(shownAngle);
  const last = angles.pop();
  const list = angles.length > 0 ? `${angles.join(', ')} and ${last}` : last;
  const [low, high] = commonHz(responses);
  return low < high
    ? `${list}, from ${formatFrequency(low)} to ${formatFrequency(high)}`
    : `${list}, with no frequency in common`;
}

/** The frequencies every response covers, Hz: low < high unless they have none in common. */
export function commonHz(responses: readonly OffAxisResponse[]): [number, number] {
  return [
    Math.max(...responses.map(({ frequencyHz }) => frequencyHz[0] ?? Infinity)),
    Math.min(...responses.map(({ frequencyHz }) => frequencyHz.at(-1) ?? -Infinity)),
  ];
}

/**
 * One sentence for each seat that lies farther off the speaker's axis than was measured: nothing is
 * made up there, so that seat has no level from this speaker.
 */
export function seatsBeyond(
  responses: readonly OffAxisResponse[],
  result: OptionResult,
  speakerId: string,
): string[] {
  const reach = Math.max(...responses.map(({ offAxisDeg }) => offAxisDeg));
  return result.seats.flatMap(({ id, arrivals }) => {
    const angle = arrivals.find(({ speaker }) => speaker === speakerId)?.offAxisDeg ?? null;
    if (angle === null || angle <= reach) return [];
    return [
      `The ${seatName(id)} lies ${formatAngle(angle)} off the axis, farther than the ` +
        `${shownAngle(reach)} measured: no level can be told there.`,
    ];
  });
}

/** A refusal as a sentence; one that begins with a file's name keeps it as it is written. */
export const sentence = (text: string): string => {
  const begun = /^[a-z]+ /.test(text) ? `${text.charAt(0).toUpperCase()}${text.slice(1)}` : text;
  return /[.?]$/.test(begun) ? begun : `${begun}.`;
};

export const shownAngle = (deg: number): string => formatAngle(deg, deg % 1 === 0 ? 0 : 1);
