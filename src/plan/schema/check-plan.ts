/** What a schema cannot say: that names are used once, and that what is named exists. */
import {
  buildCabin,
  crossoverProblem,
  measuredDirectivity,
  placeSpeaker,
  type Refusal,
  type SpeakerInput,
} from '../../geometry';
import { quoted } from '../quoted';
import type { Plan, PlanOption } from '../types';
import { checkMeasured } from './check-measured';

/** Names used twice, spots given twice or not at all, pairs that are none. */
export function checkNames(plan: Plan): Refusal[] {
  const refusals: Refusal[] = [
    ...usedTwice(plan.cabin.panels, 'cabin.panels'),
    ...usedTwice(plan.seats, 'seats'),
    ...usedTwice(plan.obstacles, 'obstacles'),
    ...usedTwice(plan.keepClear, 'keepClear'),
    ...usedTwice(plan.options, 'options'),
    ...usedTwice(plan.alignment.seats, 'alignment.seats'),
    ...checkMeshes(plan),
  ];
  for (const [o, option] of plan.options.entries()) {
    const path = `options[${o}].speakers`;
    refusals.push(...usedTwice(option.speakers, path), ...checkPairs(option.speakers, path));
    refusals.push(...checkCrossovers(option, `options[${o}].crossovers`));
    refusals.push(...checkPockets(option, `options[${o}].pockets`));
    refusals.push(...checkMeasured(option, `options[${o}]`));
    for (const [s, speaker] of option.speakers.entries()) {
      if (speaker.position && speaker.mount) {
        const message = `give a position or a mount, not both (speaker ${quoted(speaker.id)})`;
        refusals.push({ path: `${path}[${s}].mount`, message });
      }
      if (speaker.responses?.length) {
        // Whether they cover the band is said with the numbers: a band widened later must not make
        // the plan unreadable.
        const measured = measuredDirectivity(speaker.responses);
        if (!measured.ok) {
          const message = `${measured.message} (speaker ${quoted(speaker.id)})`;
          refusals.push({ path: `${path}[${s}].responses`, message });
        }
      }
    }
  }
  return refusals;
}

/** Names that must lead somewhere: template, dimensions, seats, panels. Asks the engine. */
export function checkReferences(plan: Plan): Refusal[] {
  const answer = buildCabin(plan);
  if (!answer.ok) return [answer.error];
  const { cabin } = answer;
  const panels = new Map(cabin.panels.map((panel) => [panel.id, panel]));
  const seats = new Map(cabin.seats.map((seat) => [seat.id, seat]));
  const refusals: Refusal[] = [];
  for (const [o, option] of plan.options.entries()) {
    for (const [s, speaker] of option.speakers.entries()) {
      const placed = placeSpeaker(speaker, panels, seats);
      if (placed.ok) continue;
      const { field, message } = placed.error;
      refusals.push({
        path: `options[${o}].speakers[${s}].${field}`,
        message: `${message} (speaker ${quoted(speaker.id)})`,
      });
    }
  }
  for (const [i, { id }] of (plan.alignment.seats ?? []).entries()) {
    if (seats.size === 0 || seats.has(id)) continue;
    const message = `there is no seat ${quoted(id)} in this plan`;
    refusals.push({ path: `alignment.seats[${i}].id`, message });
  }
  const aligned = plan.alignment.seat;
  if (aligned !== undefined && seats.size > 0 && !seats.has(aligned)) {
    const message = `there is no seat ${quoted(aligned)} in this plan`;
    refusals.push({ path: 'alignment.seat', message });
  }
  return refusals;
}

function checkCrossovers({ speakers, crossovers = [] }: PlanOption, path: string): Refusal[] {
  const pairs = new Set(speakers.map(({ pair }) => pair));
  const taken = new Map<string, number>();
  return crossovers.flatMap((crossover, c): Refusal[] => {
    const { below, above } = crossover;
    const refusals: Refusal[] = [];
    const here = `${path}[${c}]`;
    for (const [field, pair] of [['below', below] as const, ['above', above] as const])
      if (!pairs.has(pair)) {
        const message = `there is no pair ${quoted(pair)} in this option`;
        refusals.push({ path: `${here}.${field}`, message });
      }
    const key = JSON.stringify([below, above].sort());
    const earlier = taken.get(key);
    taken.set(key, earlier ?? c);
    const problem =
      below === above
        ? `a crossover lies between two pairs, got ${quoted(below)} twice`
        : earlier === undefined
          ? crossoverProblem(crossover)
          : `these two pairs already have a crossover, ${path}[${earlier}]`;
    if (problem) refusals.push({ path: here, message: problem });
    return refusals;
  });
}

/** A panel the cabin does not have is no mistake: body styles change, and the drawing stays. */
function checkPockets({ speakers, pockets = [] }: PlanOption, path: string): Refusal[] {
  const known = new Set(speakers.map(({ id }) => id));
  const taken = new Map<string, string>();
  const refusals = usedTwice(pockets, path);
  for (const [p, pocket] of pockets.entries())
    for (const [s, id] of pocket.speakers.entries()) {
      const here = `${path}[${p}].speakers[${s}]`;
      const earlier = taken.get(id);
      taken.set(id, earlier ?? here);
      if (!known.has(id))
        refusals.push({ path: here, message: `there is no speaker ${quoted(id)} in this option` });
      else if (earlier !== undefined)
        refusals.push({
          path: here,
          message: `the speaker ${quoted(id)} already has a pocket, ${earlier}`,
        });
    }
  return refusals;
}

function usedTwice(items: readonly { readonly id: string }[] | undefined, path: string): Refusal[] {
  const first = new Map<string, number>();
  return (items ?? []).flatMap(({ id }, i): Refusal[] => {
    const earlier = first.get(id);
    if (earlier === undefined) {
      first.set(id, i);
      return [];
    }
    const message = `the name ${quoted(id)} is already used by ${path}[${earlier}]`;
    return [{ path: `${path}[${i}].id`, message }];
  });
}

function checkPairs(speakers: readonly SpeakerInput[], path: string): Refusal[] {
  const taken = new Map<string, SpeakerInput>();
  return speakers.flatMap(({ pair, side, ...speaker }, s): Refusal[] => {
    if (pair === undefined) return [];
    const here = `${path}[${s}].side`;
    if (side === undefined) {
      const message = `must be given, "left" or "right", for a speaker of the pair ${quoted(pair)}`;
      return [{ path: here, message }];
    }
    const key = JSON.stringify([pair, side]);
    const other = taken.get(key);
    if (!other) {
      taken.set(key, speaker);
      return [];
    }
    const message = `the pair ${quoted(pair)} already has a ${side} speaker, ${quoted(other.id)}`;
    return [{ path: here, message }];
  });
}

function checkMeshes(plan: Plan): Refusal[] {
  const refusals: Refusal[] = [];
  for (const list of ['obstacles', 'keepClear'] as const) {
    for (const [i, body] of (plan[list] ?? []).entries()) {
      if (body.shape !== 'mesh') continue;
      const count = body.vertices.length;
      const t = body.triangles.findIndex((triangle) => triangle.some((n) => n >= count));
      const bad = body.triangles[t]?.findIndex((n) => n >= count);
      if (bad === undefined) continue;
      const message = `there is no vertex ${body.triangles[t]?.[bad]}; the mesh has ${count}`;
      refusals.push({ path: `${list}[${i}].triangles[${t}][${bad}]`, message });
    }
  }
  return refusals;
}
