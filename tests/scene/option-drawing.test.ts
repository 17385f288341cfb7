import { afterEach, describe, expect, it } from 'vitest';
import { type CabinModel, fitOf, placeSpeaker } from '../../src/geometry';
import { demoPlan } from '../../src/plan/demo';
import type { PlanOption } from '../../src/plan/types';
import { createOptionDrawing } from '../../src/scene/option-drawing';
import { geometriesAlive } from '../../src/scene/parts/bin';
import { createKit } from '../../src/scene/parts/kit';
import { createPanelsPart } from '../../src/scene/parts/panels-part';
import { createLook } from '../../src/scene/shading/look';
import { currentAnswer, planStore, sessionStore } from '../../src/store';

function placedSpeakers({ speakers }: PlanOption, { panels, seats }: CabinModel) {
  const panelById = new Map(panels.map((panel) => [panel.id, panel]));
  const seatById = new Map(seats.map((seat) => [seat.id, seat]));
  return speakers.flatMap((speaker) => {
    const place = placeSpeaker(speaker, panelById, seatById);
    return place.ok ? [place.placed] : [];
  });
}

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
    const { options } = planStore.getState().plan;
    const marked = [pillars, kicks].map(({ drawing, seat, shown: { cabin } }, n) => {
      const arrival = seat?.arrivals.find(({ speaker }) => speaker === 'midrange-left');
      const option = options[n] as (typeof options)[number];
      const placed = placedSpeakers(option, cabin);
      // What stands in its sound's way, and what its own body runs into.
      const met = fitOf({ cabin, option, placed }, 'midrange-left')
        .filter(({ kind }) => kind === 'obstacle')
        .flatMap((problem) => problem.with ?? []);
      const blocking = [...drawing.inTheWay().blocking].sort();
      expect(blocking).toEqual([...new Set([...(arrival?.blockedBy ?? []), ...met])].sort());
      return blocking;
    });
    expect(marked[1]?.length).toBeGreaterThan(0);
    expect(marked[0]).not.toEqual(marked[1]);
    for (const { drawing } of [pillars, kicks]) drawing.dispose();
    end();
  });
});
