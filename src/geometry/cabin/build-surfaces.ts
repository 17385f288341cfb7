import type { PlanInput } from '../input';
import { resolveDimensions } from './dimensions';
import { facingListeners, givenPanel } from './given';
import type { Panel, Refusal, Seat } from './model';
import { placeSeats } from './seats';
import { buildShell } from './shell/build-shell';
import { getTemplate } from './templates';

export type SurfacesAnswer =
  | { ok: true; panels: ReadonlyMap<string, Panel>; seats: readonly Seat[] }
  | { ok: false; error: Refusal };

/**
 * Only what a straight length needs of a template cabin: its panels and its seats, the same as the
 * whole cabin has. For trying many dimensions one after another: furniture and zones are most of
 * the work, and keeping every trial would push out the cabins that are looked at.
 */
export function buildSurfaces(plan: Pick<PlanInput, 'cabin' | 'seats'>): SurfacesAnswer {
  const { cabin } = plan;
  const template = getTemplate(cabin.template);
  if (!template) {
    const message = `there is no template "${cabin.template}"`;
    return { ok: false, error: { path: 'cabin.template', message } };
  }
  const resolved = resolveDimensions(template, cabin.dimensions);
  if (!resolved.ok) return resolved;
  const shell = buildShell(resolved.dimensions, {
    rows: template.rows,
    wheelSide: cabin.wheelSide,
    thirdSideGlass: template.body.thirdSideGlass,
    templateDimensions: template.dimensions,
  });
  if (!shell.ok) return shell;
  const seated = placeSeats(resolved.dimensions, template, cabin.wheelSide, plan.seats);
  if (!seated.ok) return seated;
  const heads = seated.seats.map(({ head }) => head);
  const panels = new Map(shell.panels.map((panel) => [panel.id, panel]));
  for (const given of cabin.panels ?? []) {
    const facing = facingListeners(given.corners, heads);
    panels.set(given.id, givenPanel(given, facing, panels.get(given.id)));
  }
  return { ok: true, panels, seats: seated.seats };
}
