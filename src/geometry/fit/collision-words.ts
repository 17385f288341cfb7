/** What a body runs into, in a sentence with its millimetres. */
import type { Panel } from '../cabin/model';
import type { StandingSpeaker } from './body';
import { type FitProblem, millimetres, nameOf } from './problem';
import type { Thing } from './things';

export function intoPanel(panel: Panel, by: number | null): FitProblem {
  const sentence = `${by === null ? 'runs' : `reaches ${millimetres(by)} along its axis`} into ${nameOf(panel)}`;
  return { kind: 'obstacle', sentence, by, with: panel.id, hard: false };
}

export function thingProblem(thing: Thing, by: number | null): FitProblem {
  const { id, kind } = thing;
  const name = nameOf(thing);
  const into = by === null ? 'stands inside' : `reaches ${millimetres(by)} along its axis into`;
  if (kind === 'zone') {
    const place = `the place kept clear for ${name}`;
    return { kind, sentence: `${into} ${place}: not here`, by, with: id, hard: true };
  }
  const travel = thing.travels ? ', somewhere on its travel' : '';
  return { kind, sentence: `${into} ${name}${travel}`, by, with: id, hard: false };
}

export function intoSpeaker({ speaker }: StandingSpeaker, by: number | null): FitProblem {
  const { id, role, side } = speaker;
  const name = `${side ? `${side} ` : ''}${role.replaceAll('-', ' ')}`;
  const into = by === null ? 'stands inside' : `reaches ${millimetres(by)} along its axis into`;
  return { kind: 'speaker', sentence: `${into} the ${name}`, by, with: id, hard: false };
}
