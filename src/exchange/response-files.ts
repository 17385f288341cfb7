/** Response files chosen together, as one set of responses for a speaker. */
import { measuredDirectivity, type OffAxisResponse } from '../geometry';
import { angleInName } from './angle-in-name';
import { type ReadResponse, readResponses } from './response-text';
import { MOST_POINTS, thinResponse } from './thin-response';

export interface ResponseFile {
  name: string;
  text: string;
}

/** What the user said of one file; what is left out is taken from the file or its name. */
export interface FileChoice {
  /** The angle of a file that does not name one; `null`: emptied. */
  angleDeg?: number | null;
  third?: 'phase' | 'angle';
}

/** What was found in one file. */
export interface FileReading {
  name: string;
  /** Each with its angle, `null` as long as nobody says it. */
  responses: ReadResponse[];
  /** True where the file itself does not name its angle. */
  asksAngle: boolean;
  angleDeg: number | null;
  /** What its third column was read as, where nothing in the file says it; else `null`. */
  third: 'phase' | 'angle' | null;
  /** Why it cannot be used, with the line where there is one; `null`: it can. */
  problem: string | null;
}

export interface GatheredResponses {
  files: FileReading[];
  /** By rising angle; what can be read so far, thinned. */
  responses: OffAxisResponse[];
  /**
   * What stands against taking them, in one sentence; `null`: they can be taken. Where it is about
   * one file it starts with its name.
   */
  problem: string | null;
  /** Where points were left out: how many of how many were kept, and how far off a level may be. */
  thinned: { kept: number; of: number; withinDb: number } | null;
}

/**
 * Reads files chosen together: one angle each, or tables, or both.
 * @param choices by the place of the file in the list
 * @param bandHz the band every response has to cover; left out: none is known
 */
export function gatherResponses(
  files: readonly ResponseFile[],
  choices: readonly (FileChoice | undefined)[],
  bandHz?: readonly [number, number],
): GatheredResponses {
  const readings = files.map((file, i) => readFile(file, choices[i] ?? {}));
  const found = readings.flatMap(({ name, responses }) =>
    responses.flatMap(({ offAxisDeg, frequencyHz, levelDb }) =>
      offAxisDeg === null ? [] : [{ name, response: { offAxisDeg, frequencyHz, levelDb } }],
    ),
  );
  found.sort((a, b) => a.response.offAxisDeg - b.response.offAxisDeg);
  const thinner = found.map(({ response }) => thinResponse(response));
  const responses = thinner.flatMap((one) => (one ? [one.response] : []));
  const count = (all: readonly OffAxisResponse[]) =>
    all.reduce((sum, { frequencyHz }) => sum + frequencyHz.length, 0);
  const withinDb = Math.max(0, ...thinner.map((one) => one?.withinDb ?? 0));

  const unread = readings.find((one) => one.problem !== null);
  const tooFine = found.find((_, i) => !thinner[i]);
  const problem =
    (unread && `${unread.name}, ${unread.problem}`) ??
    (tooFine &&
      `${tooFine.name}: ${tooFine.response.frequencyHz.length} points that cannot be thinned to ` +
        `${MOST_POINTS} within 0.2 dB; smooth it, to a 24th of an octave for example`) ??
    (files.length > 0 ? twice(found) : null) ??
    outsideBand(found, bandHz) ??
    refusal(responses, bandHz);
  return {
    files: readings,
    responses,
    problem: files.length > 0 ? problem : null,
    thinned:
      withinDb > 0
        ? { kept: count(responses), of: count(found.map(({ response }) => response)), withinDb }
        : null,
  };
}

function readFile({ name, text }: ResponseFile, choice: FileChoice): FileReading {
  let third = choice.third ?? 'phase';
  let answer = readResponses(text, { thirdColumn: third });
  if (!answer.ok && answer.unnamedThird && choice.third === undefined) {
    // Angles as phases make no sense, so it may be a table of angles: shown before it is taken.
    const other = readResponses(text, { thirdColumn: 'angle' });
    if (other.ok) [answer, third] = [other, 'angle'];
  }
  const asked = answer.unnamedThird ? third : null;
  if (!answer.ok) {
    const problem = answer.message;
    return { name, responses: [], asksAngle: false, angleDeg: null, third: asked, problem };
  }
  const asksAngle = answer.responses.some(({ offAxisDeg }) => offAxisDeg === null);
  const angleDeg = !asksAngle
    ? null
    : choice.angleDeg === undefined
      ? angleInName(name)
      : choice.angleDeg;
  return {
    name,
    responses: answer.responses.map((one) => ({ ...one, offAxisDeg: one.offAxisDeg ?? angleDeg })),
    asksAngle,
    angleDeg,
    third: asked,
    problem: asksAngle && angleDeg === null ? 'at which angle off the axis was it measured?' : null,
  };
}

type Found = { name: string; response: OffAxisResponse };

function twice(found: readonly Found[]): string | null {
  for (const [i, { name, response }] of found.entries()) {
    const next = found[i + 1];
    if (next?.response.offAxisDeg !== response.offAxisDeg) continue;
    const where =
      next.name === name
        ? `${name} holds two responses`
        : `${name} and ${next.name} both hold the response`;
    return `${where} at ${response.offAxisDeg}° off the axis`;
  }
  return null;
}

/** As the engine asks it, with the file to look into. */
function outsideBand(
  found: readonly Found[],
  bandHz: readonly [number, number] | undefined,
): string | null {
  if (!bandHz) return null;
  for (const { name, response } of found) {
    const { frequencyHz: f, offAxisDeg } = response;
    const [low, high] = [f[0] as number, f.at(-1) as number];
    if (low <= bandHz[0] && high >= bandHz[1]) continue;
    const missing = [
      low > bandHz[0] && `from ${inHz(bandHz[0])} to ${inHz(low)}`,
      high < bandHz[1] && `from ${inHz(high)} to ${inHz(bandHz[1])}`,
    ].filter((part) => part !== false);
    return (
      `${name}: the response at ${offAxisDeg}° runs from ${inHz(low)} to ${inHz(high)} Hz; of the ` +
      `speaker’s band it leaves out what lies ${missing.join(' and ')} Hz`
    );
  }
  return null;
}

function refusal(
  responses: readonly OffAxisResponse[],
  bandHz: readonly [number, number] | undefined,
): string | null {
  const answer = measuredDirectivity(responses, bandHz);
  return answer.ok ? null : answer.message;
}

const inHz = (hz: number): string => String(Number(hz.toFixed(1)));
