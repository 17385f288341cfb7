import { nearestOnPatch, type Panel, type Role, type Vec3 } from '../../geometry';
import type { Choice } from '../parts/select-field';

/** The panels a speaker can go on, those usual for its role first; its own is always among them. */
export function mountChoices(
  panels: readonly Panel[],
  role: Role,
  own: Panel | undefined,
): { group: string; choices: Choice[] }[] {
  const open = panels.filter((panel) => panel.mountable || panel.id === own?.id);
  const choice = ({ id, name }: Panel): Choice => ({ value: id, label: name });
  const usual = open.filter((panel) => panel.roles.includes(role));
  const other = open.filter((panel) => !panel.roles.includes(role));
  return [
    { group: 'usual for this role', choices: usual.map(choice) },
    { group: 'other panels', choices: other.map(choice) },
  ].filter(({ choices }) => choices.length > 0);
}

/** Nearer an edge than this (in u or v) a speaker would hang over it. */
const EDGE = 0.04;

/**
 * Where a speaker lands on a panel it is moved to: the place nearest to where it was, or the
 * middle of the panel in any direction in which that would be its very edge.
 */
export function spotOnPanel(panel: Panel, from: Vec3): { u: number; v: number } {
  const { u, v } = nearestOnPatch(panel.patch, from);
  const inside = (t: number) => (t < EDGE || t > 1 - EDGE ? 0.5 : t);
  return { u: inside(u), v: inside(v) };
}
