import { describe, expect, test } from 'vitest';
import { buildCabin, pointOnPatch, TEMPLATES } from '../../src/geometry';
import { mirrorAim, mirrorId, mirrorMount, mirrorPanelId } from '../../src/plan/mirror';
import { pairName, panelName, roleName, seatName, speakerName } from '../../src/plan/names';
import { smallPlan } from '../store/fixtures';

describe('mirroring', () => {
  test('left becomes right wherever the word stands, and only the word', () => {
    expect(mirrorPanelId('pillar-left')).toBe('pillar-right');
    expect(mirrorPanelId('dash-top-center')).toBe('dash-top-center');
    expect(mirrorId('left-door')).toBe('right-door');
    expect(mirrorId('leftover')).toBe('leftover');
    expect(mirrorId('bright')).toBe('bright');
  });

  test('twice mirrored is where it began', () => {
    const mounts = [
      { panel: 'pillar-left', u: 0.2, v: 0.7, standoff: 12 },
      { panel: 'dash-top-center', u: 0.25, v: 0.5 },
    ];
    for (const mount of mounts) expect(mirrorMount(mirrorMount(mount))).toEqual(mount);
    const aim = { kind: 'direction', direction: [1, -2, 3] } as const;
    expect(mirrorAim(aim)).toEqual({ kind: 'direction', direction: [1, 2, 3] });
    expect(mirrorAim(mirrorAim(aim))).toEqual(aim);
    expect(mirrorAim({ kind: 'seat', seat: 'front-left' })).toEqual({
      kind: 'seat',
      seat: 'front-right',
    });
  });

  test.each(TEMPLATES.map(({ id }) => [id]))(
    'in a %s the mirrored spot is the mirror image in space, on every mountable panel',
    (template) => {
      const answer = buildCabin({ cabin: { template, wheelSide: 'left' } });
      if (!answer.ok) throw new Error(answer.error.message);
      const panels = new Map(answer.cabin.panels.map((panel) => [panel.id, panel]));
      let compared = 0;
      for (const panel of panels.values()) {
        // The footrest lies beside the pedals, whose order does not mirror.
        if (!panel.mountable || panel.id.startsWith('footrest')) continue;
        const image = mirrorMount({ panel: panel.id, u: 0.3, v: 0.6 });
        const other = panels.get(image.panel);
        expect(other, image.panel).toBeDefined();
        if (!other) continue;
        const [x, y, z] = pointOnPatch(panel.patch, 0.3, 0.6);
        const at = pointOnPatch(other.patch, image.u, image.v);
        for (const [i, want] of [x, -y, z].entries()) {
          expect(Math.abs((at[i] as number) - want), panel.id).toBeLessThan(1e-6);
        }
        compared++;
      }
      expect(compared).toBeGreaterThan(5);
    },
  );
});

describe('names', () => {
  test('speakers are called by side and role, the second of a kind by number', () => {
    const speakers = smallPlan().options[0]?.speakers ?? [];
    const [left, right, sub] = speakers;
    if (!left || !right || !sub) throw new Error('the small plan has three speakers');
    expect(speakerName(left, speakers)).toBe('left mid');
    expect(speakerName(right)).toBe('right mid');
    expect(speakerName(sub)).toBe('subwoofer');
    const second = { ...left, id: 'midrange-2-left', pair: 'midrange-2' };
    expect(speakerName(second, [left, right, second])).toBe('left mid 2');
    expect(pairName('midrange-2', [left, right, second])).toBe('mids 2');
    expect(pairName('midrange', [left, right, second])).toBe('mids');
    expect(roleName('rear-fill')).toBe('rear fill');
  });

  test('panels and seats are called by trade words', () => {
    expect(panelName('pillar-left')).toBe('left A-pillar');
    expect(panelName('dash-top-center')).toBe('dash top, centre');
    expect(panelName('door-lower-right')).toBe('right lower door card');
    expect(panelName('my-own-board')).toBe('my own board');
    expect(seatName('front-left')).toBe('front left seat');
  });
});
