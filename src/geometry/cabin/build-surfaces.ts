import type { PlanInput } from '../input';
import { facingListeners, withGivenPanels } from './given';
import type { Panel, Refusal, Seat } from './model';
import { placeSeats } from './seats';
import { buildTemplateShell } from './template-shell';

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
  const shell = buildTemplateShell(cabin);
  if (!shell.ok) return shell;
  const { template, dimensions } = shell;
  const seated = placeSeats(dimensions, template, cabin.wheelSide, plan.seats);
  if (!seated.ok) return seated;
  const heads = seated.seats.map(({ head }) => head);
  const given = cabin.panels ?? [];
  const facings = given.map(({ corners }) => facingListeners(corners, heads));
  const panels = withGivenPanels(shell.panels, given, facings);
  return {
    ok: true,
    panels: new Map(panels.map((panel) => [panel.id, panel])),
    seats: seated.seats,
  };
}
