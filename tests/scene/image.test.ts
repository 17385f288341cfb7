import { describe, expect, it } from 'vitest';
import { distance, evaluatePlan, type Seat, type SeatImage, type Stage } from '../../src/geometry';
import { demoPlan } from '../../src/plan/demo';
import { imageFan } from '../../src/scene/image/fan';
import { createImageKeeper } from '../../src/scene/image/keep-image';
import { octaveGroups } from '../../src/scene/image/octave-groups';

const band = (frequencyHz: number, lateralDeg: number | null, atLimit = false) => ({
  frequencyHz,
  cue: 'time' as const,
  time: 0,
  levelDb: 0,
  coherence: 1,
  lateralDeg,
  atLimit,
});
const IMAGE: SeatImage = {
  seat: 'front-left',
  octavesHz: [250, 500, 1000, 2000],
  on: [band(250, 10), band(500, 12), band(1000, null), band(2000, 20)],
  off: [band(250, -30), band(500, -90, true), band(1000, 0), band(2000, 5)],
};

function stage(): Stage {
  const plan = demoPlan();
  const answer = evaluatePlan(plan);
  if (!answer.ok) throw new Error(answer.error.message);
  const [option, result] = [plan.options[0], answer.options[0]];
  if (!option || !result) throw new Error('the demo has no option');
  return { plan, cabin: answer.cabin, option, result };
}
const seatOf = ({ cabin }: Stage): Seat => cabin.seats[0] as Seat;

describe('the fan of the image', () => {
  const seat = seatOf(stage());
  /** Rays and pins by their width: thicker than the scale's pen, and not of paper. */
  const rays = (facingDeg: number) =>
    imageFan(IMAGE, { ...seat, facingDeg }, 'above', false).strokes.filter(
      ({ start, tone }) => tone !== 'paper' && Math.abs(distance(start, seat.head) - 150) < 1e-6,
    );

  it('has a ray for each octave that is heard anywhere, whole with delays and dashed without', () => {
    const whole = rays(0).filter(({ dash = 0 }) => dash === 0);
    expect(whole).toHaveLength(3);
    expect(rays(0)).toHaveLength(7);
  });

  it('points to the right for a positive angle, level with the head, wherever the seat faces', () => {
    for (const facingDeg of [0, 25, -40, 180]) {
      const turned = rays(facingDeg).map(({ end }) => {
        const [x, y] = [end[0] - seat.head[0], end[1] - seat.head[1]];
        expect(Math.abs(end[2] - seat.head[2])).toBeLessThan(1e-9);
        // From straight ahead (−X) to the right (+Y).
        const deg = (Math.atan2(y, -x) * 180) / Math.PI - facingDeg;
        return ((((deg + 180) % 360) + 360) % 360) - 180;
      });
      const wanted = [-30, -90, 0, 5, 10, 12, 20];
      turned.forEach((deg, i) => {
        expect(Math.abs(deg - (wanted[i] as number))).toBeLessThan(1e-6);
      });
    }
  });

  it('lies below the listener’s own eyes, not in them', () => {
    const { strokes } = imageFan(IMAGE, seat, 'own eyes', false);
    for (const { start, end } of strokes) {
      expect(start[2]).toBeLessThan(seat.eye[2] - 100);
      expect(end[2]).toBeLessThan(seat.eye[2] - 100);
      expect(distance(end, seat.eye)).toBeGreaterThan(500);
    }
  });

  it('is paler while it is that of an earlier place', () => {
    const ink = (faded: boolean) =>
      imageFan(IMAGE, seat, 'above', faded).strokes.map(({ strength = 1 }) => strength);
    const [now, before] = [ink(false), ink(true)];
    now.forEach((strength, i) => {
      expect(before[i]).toBeLessThan(strength * 0.6);
    });
  });
});

describe('octaves heard in one place', () => {
  it('share a label; a gap, a limit and a wide step begin another', () => {
    expect(octaveGroups(IMAGE.on)).toEqual([
      { lowHz: 250, highHz: 500, deg: 11, atLimit: false },
      { lowHz: 2000, highHz: 2000, deg: 20, atLimit: false },
    ]);
    expect(octaveGroups([band(250, 88), band(500, 90, true)])).toHaveLength(2);
    expect(octaveGroups(IMAGE.off).map(({ deg }) => deg)).toEqual([-30, -90, 0, 5]);
  });
});

describe('the image that is kept', () => {
  const later = () => new Promise((resolve) => setTimeout(resolve, 5));

  it('is worked out once, after the frame, and said when ready', async () => {
    const one = stage();
    let asked = 0;
    let ready = 0;
    const keeper = createImageKeeper(
      () => ready++,
      () => {
        asked++;
        return IMAGE;
      },
    );
    expect(keeper.of(one, 'front-left', true)).toBeNull();
    expect(asked).toBe(0);
    await later();
    expect([asked, ready]).toEqual([1, 1]);
    expect(keeper.of(one, 'front-left', true)).toEqual({ image: IMAGE, fresh: true });
    await later();
    expect(asked).toBe(1);
    keeper.end();
  });

  it('stays, as that of an earlier place, through a drag, and is renewed at its end', async () => {
    const [one, two] = [stage(), stage()];
    let asked = 0;
    const keeper = createImageKeeper(
      () => {},
      () => {
        asked++;
        return IMAGE;
      },
    );
    keeper.of(one, 'front-left', true);
    await later();
    for (let i = 0; i < 5; i++)
      expect(keeper.of(two, 'front-left', false)).toEqual({ image: IMAGE, fresh: false });
    await later();
    expect(asked).toBe(1);
    expect(keeper.of(two, 'front-left', true)?.fresh).toBe(false);
    await later();
    expect(asked).toBe(2);
    expect(keeper.of(two, 'front-left', true)?.fresh).toBe(true);
    expect(keeper.of(two, 'front-right', false)).toBeNull();
    keeper.end();
  });
});
