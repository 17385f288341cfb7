/** What a schema cannot say: that names are used once, and that what is named exists. */
import { buildCabin, placeSpeaker, type Refusal, type SpeakerInput } from '../../geometry';
import { quoted } from '../quoted';
import type { Plan } from '../types';

/** Names used twice, spots given twice or not at all, pairs that are none. */
export function checkNames(plan: Plan): Refusal[] {
  const refusals: Refusal[] = [
    ...usedTwice(plan.cabin.panels, 'cabin.panels'),
    ...usedTwice(plan.seats, 'seats'),
    ...usedTwice(plan.obstacles, 'obstacles'),
    ...usedTwice(plan.keepClear, 'keepClear'),
    ...usedTwice(plan.options, 'options'),
    ...checkMeshes(plan),
  ];
  for (const [o, option] of plan.options.entries()) {
    const path = `options[${o}].speakers`;
    refusals.push(...usedTwice(option.speakers, path), ...checkPairs(option.speakers, path));
    for (const [s, speaker] of option.speakers.entries()) {
      if (speaker.position && speaker.mount) {
        const message = `give a position or a mount, not both (speaker ${quoted(speaker.id)})`;
        refusals.push({ path: `${path}[${s}].mount`, message });
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
  const aligned = plan.alignment.seat;
  if (aligned !== undefined && seats.size > 0 && !seats.has(aligned)) {
    const message = `there is no seat ${quoted(aligned)} in this plan`;
    refusals.push({ path: 'alignment.seat', message });
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
