import type { CabinInput, PlanInput } from '../input';
import { bodyLines } from './body-lines';
import { dimensionLines } from './dimension-lines';
import { type Dimensions, resolveDimensions } from './dimensions';
import { buildFixedFurniture, buildSeatFurniture } from './furniture';
import { remembering } from './furniture/remember';
import { facingListeners, givenObstacle, givenPanel, givenZone } from './given';
import { buildKeepClear } from './keep-clear';
import type {
  BodyLine,
  CabinAnswer,
  DimensionLine,
  Drawn,
  Obstacle,
  Panel,
  ReferencePoint,
  Refusal,
  Seat,
} from './model';
import { buildReferences } from './references';
import { placeSeats } from './seats';
import { buildShell } from './shell/build-shell';
import { getTemplate, TEMPLATES, type TemplateData } from './templates';
import { buildTrim } from './trim';

type BuildInput = Pick<PlanInput, 'cabin' | 'seats' | 'obstacles' | 'keepClear'>;

/** All that a template and its dimensions decide, whoever sits where. */
interface Body {
  template: TemplateData;
  dimensions: Dimensions;
  panels: readonly Panel[];
  furniture: readonly Obstacle[];
  references: readonly ReferencePoint[];
  trim: readonly Drawn[];
  bodyLines: readonly BodyLine[];
  dimensionLines: readonly DimensionLine[];
}

type BodyAnswer = { ok: true; body: Body | null } | { ok: false; error: Refusal };

// Kept by content, so that a plan read twice, or a seat dragged, finds the same objects again and
// whoever holds meshes or trees of them can keep those too.
const bodies = remembering<BodyAnswer>(6);
const panelSets = remembering<readonly Panel[]>(6);

function buildBody(input: CabinInput): BodyAnswer {
  if (input.template === 'none') return { ok: true, body: null };
  const template = getTemplate(input.template);
  if (!template) {
    const known = TEMPLATES.map(({ id }) => id).join(', ');
    const message = `there is no template "${input.template}" (known: ${known}, none)`;
    return { ok: false, error: { path: 'cabin.template', message } };
  }
  const resolved = resolveDimensions(template, input.dimensions);
  if (!resolved.ok) return resolved;
  const { dimensions } = resolved;
  const { wheelSide } = input;
  const shell = buildShell(dimensions, {
    rows: template.rows,
    wheelSide,
    thirdSideGlass: template.body.thirdSideGlass,
    templateDimensions: template.dimensions,
  });
  if (!shell.ok) return shell;
  const { panels } = shell;
  return {
    ok: true,
    body: {
      template,
      dimensions,
      panels,
      furniture: buildFixedFurniture(dimensions, panels, wheelSide),
      references: buildReferences(dimensions, panels, wheelSide),
      trim: buildTrim(dimensions, panels, template, wheelSide),
      bodyLines: bodyLines(dimensions, template),
      dimensionLines: dimensionLines(dimensions, panels, wheelSide),
    },
  };
}

/** The derived panels, with those the plan gives put in by id or added at the end. */
function withGiven(input: CabinInput, key: string, body: Body | null, seats: readonly Seat[]) {
  const derived = body?.panels ?? [];
  if (!input.panels?.length) return derived;
  const heads = seats.map((seat) => seat.head);
  const facings = input.panels.map((panel) => facingListeners(panel.corners, heads));
  return panelSets(JSON.stringify([key, input.panels, facings]), () => {
    const panels = new Map(derived.map((panel) => [panel.id, panel]));
    for (const [i, panel] of (input.panels ?? []).entries())
      panels.set(panel.id, givenPanel(panel, facings[i] as 1 | -1, panels.get(panel.id)));
    return [...panels.values()];
  });
}

/**
 * The whole interior of a plan: panels, seats, obstacles, keep-clear zones, all in car axes, mm.
 * An obstacle or zone the plan gives under a derived one's id takes its place.
 * @returns the cabin, or one sentence with the plan path it is about
 */
export function buildCabin(plan: BuildInput): CabinAnswer {
  const { cabin: input } = plan;
  const key = JSON.stringify([input.template, input.wheelSide, input.dimensions ?? {}]);
  const answer = bodies(key, () => buildBody(input));
  if (!answer.ok) return answer;
  const { body } = answer;
  const { wheelSide } = input;
  const seated = placeSeats(
    body?.dimensions ?? null,
    body?.template ?? null,
    wheelSide,
    plan.seats,
  );
  if (!seated.ok) return seated;
  const { seats } = seated;
  const panels = withGiven(input, key, body, seats);
  return {
    ok: true,
    cabin: {
      template: input.template,
      wheelSide,
      dimensions: body?.dimensions ?? {},
      panels,
      obstacles: byId([
        ...(body?.furniture ?? []),
        ...(body ? buildSeatFurniture(body.dimensions, seats, body.template, wheelSide) : []),
        ...(plan.obstacles ?? []).map(givenObstacle),
      ]),
      keepClear: byId([
        ...(body
          ? buildKeepClear(body.dimensions, body.panels, seats, body.template, wheelSide)
          : []),
        ...(plan.keepClear ?? []).map(givenZone),
      ]),
      seats,
      references: body?.references ?? [],
      trim: body?.trim ?? [],
      bodyLines: body?.bodyLines ?? [],
      dimensionLines: body?.dimensionLines ?? [],
    },
  };
}

/** The later of two with one id stands in the earlier one's place. */
function byId<T extends { id: string }>(items: readonly T[]): T[] {
  return [...new Map(items.map((item) => [item.id, item])).values()];
}
