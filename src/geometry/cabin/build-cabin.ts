import type { CabinInput, PlanInput } from '../input';
import { bodyLines } from './body-lines';
import { dimensionLines } from './dimension-lines';
import type { Dimensions } from './dimensions';
import { buildFixedFurniture, buildSeatFurniture } from './furniture';
import { remembering } from './furniture/remember';
import { facingListeners, givenObstacle, givenZone, withGivenPanels, withMeasures } from './given';
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
import { buildTemplateShell } from './template-shell';
import type { TemplateData } from './templates';
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
  const shell = buildTemplateShell(input);
  if (!shell.ok) return shell;
  const { template, dimensions, panels } = shell;
  const { wheelSide } = input;
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

function withGiven(
  input: CabinInput,
  key: string,
  body: Body | null,
  seats: readonly Seat[],
): readonly Panel[] {
  const derived = body?.panels ?? [];
  const given = input.panels ?? [];
  const measured = input.measured ?? {};
  const isMeasured = Object.keys(measured).length > 0;
  if (given.length === 0 && !isMeasured) return derived;
  const heads = seats.map((seat) => seat.head);
  const facings = given.map((panel) => facingListeners(panel.corners, heads));
  return panelSets(JSON.stringify([key, given, facings, measured]), () => {
    const panels = withGivenPanels(derived, given, facings);
    return isMeasured ? withMeasures(panels, measured) : panels;
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
