import { buildCabin } from '../cabin/build-cabin';
import type { CabinModel, Panel, Refusal, Seat } from '../cabin/model';
import type { PlanInput } from '../input';
import { buildCaster } from '../paths/cast';
import { buildWayFinder } from '../paths/way-round';
import { speedOfSound } from '../sound/air';
import type { Room } from '../stage/arrivals';

/** A plan's cabin made ready once for thousands of spots. */
export interface SpotRoom extends Room {
  cabin: CabinModel;
  panelById: ReadonlyMap<string, Panel>;
  seatById: ReadonlyMap<string, Seat>;
}

export type SpotRoomAnswer = { ok: true; room: SpotRoom } | { ok: false; error: Refusal };

/** Refuses what the cabin refuses. */
export function spotRoom(plan: PlanInput): SpotRoomAnswer {
  const answer = buildCabin(plan);
  if (!answer.ok) return answer;
  const { cabin } = answer;
  const caster = buildCaster(cabin.panels, cabin.obstacles);
  return {
    ok: true,
    room: {
      cabin,
      panels: cabin.panels,
      caster,
      ways: buildWayFinder(cabin.panels, cabin.obstacles, caster),
      speed: speedOfSound(plan.air).speed,
      panelById: new Map(cabin.panels.map((panel) => [panel.id, panel])),
      seatById: new Map(cabin.seats.map((seat) => [seat.id, seat])),
    },
  };
}
