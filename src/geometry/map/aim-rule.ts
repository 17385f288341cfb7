import type { Seat } from '../cabin/model';
import type { Aim, Side } from '../input';
import {
  add,
  along,
  degrees,
  direction,
  dot,
  mirrorY,
  radians,
  scale,
  sub,
  type Vec3,
} from '../vector';

/** Midway between the heads of these seats. */
export interface BetweenAim {
  kind: 'between';
  /** Left out: all seats asked about. */
  seats?: readonly string[];
}

/**
 * How speakers are aimed wherever they stand: as in the plan, or between seats. A direction is that
 * of a left speaker, and mirrored for a right one; points and seats are the same for both.
 * `withinDeg`: turned away from the panel's normal by no more than this, as far as a wedge allows.
 */
export type AimRule = (Aim | BetweenAim) & { withinDeg?: number };

/** The rule with its seats looked up: what it says no longer depends on the spot but by its wedge. */
export interface ReadyAim {
  left: Aim;
  right: Aim;
  /** What is aimed at; `null` for a direction or the normal. */
  target: Vec3 | null;
  withinDeg: number | null;
}

/** @returns where the rule names a seat that does not exist: its id, and the rule's field */
export function readyAim(
  rule: AimRule,
  seatById: ReadonlyMap<string, Seat>,
  asked: readonly Seat[],
): ReadyAim | { unknownSeat: string; field: string } {
  const withinDeg = rule.withinDeg ?? null;
  const same = (aim: Aim, target: Vec3 | null): ReadyAim => ({
    left: aim,
    right: aim,
    target,
    withinDeg,
  });
  switch (rule.kind) {
    case 'normal':
      return same({ kind: 'normal' }, null);
    case 'point':
      return same({ kind: 'point', point: rule.point }, rule.point);
    case 'direction':
      return {
        left: { kind: 'direction', direction: rule.direction },
        right: { kind: 'direction', direction: mirrorY(rule.direction) },
        target: null,
        withinDeg,
      };
    case 'seat': {
      const seat = seatById.get(rule.seat);
      if (!seat) return { unknownSeat: rule.seat, field: 'seat' };
      return same({ kind: 'seat', seat: rule.seat }, seat.head);
    }
    case 'between': {
      const seats: Seat[] = [];
      for (const [i, id] of (rule.seats ?? asked.map((seat) => seat.id)).entries()) {
        const seat = seatById.get(id);
        if (!seat) return { unknownSeat: id, field: `seats[${i}]` };
        seats.push(seat);
      }
      const sum = seats.reduce<Vec3>((total, { head }) => add(total, head), [0, 0, 0]);
      const point = scale(sum, 1 / seats.length);
      return same({ kind: 'point', point }, point);
    }
  }
}

/** The aim of a speaker of one side at a spot, as a plan would hold it. */
export function aimAt(aim: ReadyAim, side: Side, position: Vec3, normal: Vec3): Aim {
  const plain = aim[side];
  if (aim.withinDeg === null || plain.kind === 'normal') return plain;
  const wanted = direction(
    plain.kind === 'direction' ? plain.direction : sub(aim.target as Vec3, position),
  );
  if (!wanted) return plain;
  const ahead = dot(wanted, normal);
  if (degrees(Math.acos(Math.min(1, Math.max(-1, ahead)))) <= aim.withinDeg) return plain;
  // Straight back has no nearest way round: the normal itself then.
  const aside = direction(along(wanted, normal, -ahead));
  if (!aside) return { kind: 'normal' };
  const limit = radians(aim.withinDeg);
  return {
    kind: 'direction',
    direction: add(scale(normal, Math.cos(limit)), scale(aside, Math.sin(limit))),
  };
}
