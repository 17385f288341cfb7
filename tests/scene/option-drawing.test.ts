import { afterEach, describe, expect, it } from 'vitest';
import { demoPlan } from '../../src/plan/demo';
import { createOptionDrawing } from '../../src/scene/option-drawing';
import { geometriesAlive } from '../../src/scene/parts/bin';
import { createKit } from '../../src/scene/parts/kit';
import { createPanelsPart } from '../../src/scene/parts/panels-part';
import { createLook } from '../../src/scene/shading/look';
import { currentAnswer, planStore, sessionStore } from '../../src/store';

function board() {
  planStore.open(demoPlan());
  const answer = currentAnswer();
  if (!answer.ok) throw new Error(answer.error.message);
  const kit = createKit(createLook());
  const panels = createPanelsPart(kit);
  panels.show(answer.cabin.panels);
  const around = { meet: () => null, pass: () => null };
  const open = (index: number) => {
    const option = answer.options[index] ?? null;
    const seat = option?.seats.find(({ id }) => id === 'front-left') ?? null;
    const drawing = createOptionDrawing(kit, panels, around, () => undefined);
    const shown = { cabin: answer.cabin, option, seat, hovered: null, lookedThrough: null };
    drawing.show(shown);
    return { drawing, seat, shown };
  };
  const end = () => {
    panels.dispose();
    kit.dispose();
  };
  return { open, end };
}

afterEach(() => sessionStore.setState({ selection: null, showReflections: false }));

describe('two options drawn over one car', () => {
  it('leaves no geometry behind after fifty openings and closings', () => {
    sessionStore.setState({
      selection: { kind: 'speaker', id: 'midrange-left' },
      showReflections: true,
    });
    const { open, end } = board();
    const mine = open(0);
    const before = geometriesAlive();
    const first = open(1);
    expect(geometriesAlive()).toBeGreaterThan(before + 6);
    first.drawing.dispose();
    expect(geometriesAlive()).toBe(before);
    for (let i = 0; i < 50; i++) open(1).drawing.dispose();
    expect(geometriesAlive()).toBe(before);
    mine.drawing.dispose();
    end();
  });

  it('places each option’s own speakers, and names what is in the way of each', () => {
    sessionStore.setState({ selection: { kind: 'speaker', id: 'midrange-left' } });
    const { open, end } = board();
    const [pillars, kicks] = [open(0), open(1)];
    const at = ({ drawing }: typeof pillars) =>
      drawing.speakers.shown().find(({ speaker }) => speaker.id === 'midrange-left')?.placed
        .position;
    expect(at(pillars)).toBeDefined();
    expect(at(kicks)).toBeDefined();
    expect(at(pillars)).not.toEqual(at(kicks));
    for (const { drawing, seat } of [pillars, kicks]) {
      const arrival = seat?.arrivals.find(({ speaker }) => speaker === 'midrange-left');
      expect([...drawing.inTheWay().blocking]).toEqual(arrival?.blockedBy);
    }
    expect(kicks.drawing.inTheWay().blocking.size).toBeGreaterThan(0);
    expect(pillars.drawing.inTheWay().blocking.size).toBe(0);
    for (const { drawing } of [pillars, kicks]) drawing.dispose();
    end();
  });
});
