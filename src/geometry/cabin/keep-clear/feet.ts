/** Pedals with the room feet need: laid out for each drive side, never mirrored. */
import type { Side } from '../../input';
import type { Dimensions } from '../dimensions';
import type { KeepClearZone } from '../model';
import { pedalReferenceX } from '../posture';
import { pedalLayout } from './pedal-layout';
import { zone } from './zone';

/** A shoe is about 105 wide and 300 long; pedals travel about 150. Typical values, from memory. */
const SHOE = 112;

export function feetZones(d: Dimensions, wheelSide: Side, manual: boolean): KeepClearZone[] {
  const layout = pedalLayout(d, wheelSide);
  const ball = pedalReferenceX(d.seatHeight);
  const front = ball - 90;
  const rear = 70;
  const room = (id: string, name: string, from: number, to: number, rearX: number) =>
    zone(id, name, 'pedals', {
      shape: 'box',
      center: [(front + rearX) / 2, (from + to) / 2, 140],
      size: [rearX - front, Math.max(20, to - from), 280],
    });
  const [, right] = layout.walls;
  const zones = [
    room(
      'pedals',
      'accelerator and brake with foot room',
      layout.brake - SHOE / 2,
      Math.min(right, layout.accelerator + SHOE / 2),
      rear,
    ),
  ];
  if (manual) {
    const left = Math.max(layout.walls[0], layout.clutch - SHOE / 2);
    const to = Math.max(left + 20, layout.brake - SHOE / 2);
    // The left foot lifts off the clutch rearward and swings across to its rest.
    zones.push(room('clutch-foot', 'clutch pedal and the foot that works it', left, to, rear + 60));
  }
  return zones;
}
