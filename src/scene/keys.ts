/** Keys while the drawing has the focus: views, small moves, turning the car. */
import type { PerspectiveCamera } from 'three';
import type { Vec3 } from '../geometry';
import { changeSeat, mountSpeaker, moveObstacle, placeSpeakerAt } from '../plan/edits';
import { seatName, speakerName } from '../plan/names';
import { planStore, type Recipe, sessionStore, type ViewName } from '../store';
import { type Arrow, arrowWays, nudged, STEP } from './drag/nudge';
import type { Drawing } from './drawing';
import { speakersOf } from './option-drawing';
import { spotOf } from './pick/ray';

const VIEWS: Readonly<Record<string, ViewName>> = {
  '1': 'free',
  '2': 'plan',
  '3': 'side',
  '4': 'front',
  '5': 'seat',
};

const ARROWS: Readonly<Record<string, Arrow>> = {
  ArrowLeft: 'left',
  ArrowRight: 'right',
  ArrowUp: 'up',
  ArrowDown: 'down',
};

/** A held key is one gesture: `step` gives the change for all presses so far. */
interface Held {
  key: string;
  step(arrow: Arrow, mm: number): Recipe | null;
}

export function attachKeys(
  canvas: HTMLCanvasElement,
  camera: PerspectiveCamera,
  drawing: Drawing,
): () => void {
  let held: Held | null = null;

  function begin(key: string): Held | null {
    const { selection } = sessionStore.getState();
    const option = drawing.option();
    const cabin = drawing.cabin();
    if (!selection || !option || !cabin) return null;
    if (selection.kind === 'speaker') {
      const among = speakersOf(option);
      const speaker = among.find(({ id }) => id === selection.id);
      if (!speaker) return null;
      planStore.beginGesture(`move ${speakerName(speaker, among)}`);
      const panel = cabin.panels.find(({ id }) => id === speaker.mount?.panel);
      if (speaker.mount && panel) {
        let mount = speaker.mount;
        const ways = arrowWays(panel, mount, (p: Vec3) => spotOf(camera, drawing.size, p));
        return {
          key,
          step(arrow, mm) {
            const { axis, sign } = ways[arrow];
            mount = nudged(panel, mount, axis, sign * mm);
            return mountSpeaker(option.id, speaker.id, mount);
          },
        };
      }
      let at = speaker.position ?? [0, 0, 0];
      return {
        key,
        step(arrow, mm) {
          const [x, y, z] = FREE_WAYS[arrow];
          at = [at[0] + x * mm, at[1] + y * mm, at[2] + z * mm];
          return placeSpeakerAt(option.id, speaker.id, at);
        },
      };
    }
    if (selection.kind === 'obstacle') {
      const obstacle = cabin.obstacles.find(({ id }) => id === selection.id);
      if (!obstacle?.given) return null;
      planStore.beginGesture(`move ${obstacle.name}`);
      let delta: Vec3 = [0, 0, 0];
      return {
        key,
        step(arrow, mm) {
          const [x, y, z] = LEVEL_WAYS[arrow];
          delta = [delta[0] + x * mm, delta[1] + y * mm, delta[2] + z * mm];
          return moveObstacle(obstacle.id, delta);
        },
      };
    }
    if (selection.kind === 'seat') {
      const seat = cabin.seats.find(({ id }) => id === selection.id);
      const range = seat?.slideRange;
      if (!seat || !range) return null;
      const start = planStore.getState().plan.seats?.find(({ id }) => id === seat.id)?.slide ?? 0;
      let moved = 0;
      const all = cabin.seats.map(({ id }) => id);
      planStore.beginGesture(`slide ${seatName(seat.id)}`);
      return {
        key,
        step(arrow, mm) {
          // Forward is up, as on a map of the car.
          const sign = arrow === 'down' || arrow === 'right' ? 1 : -1;
          moved = Math.min(range[1], Math.max(range[0], moved + sign * mm));
          return changeSeat(seat.id, { slide: Math.round(start + moved) }, all);
        },
      };
    }
    return null;
  }

  function finish(commit: boolean): void {
    if (!held) return;
    held = null;
    if (commit) planStore.commitGesture();
    else planStore.cancelGesture();
  }

  function onDown(event: KeyboardEvent): void {
    if (event.ctrlKey || event.metaKey) return;
    if (event.key === 'Escape' && held) {
      event.stopPropagation();
      finish(false);
      return;
    }
    const view = event.shiftKey || event.altKey ? undefined : VIEWS[event.key];
    if (view) {
      event.preventDefault();
      sessionStore.setState({ view });
      return;
    }
    const arrow = ARROWS[event.key];
    if (!arrow) {
      if (event.key === '+' || event.key === '=') drawing.rig.zoom(1 / 1.15);
      else if (event.key === '-') drawing.rig.zoom(1.15);
      return;
    }
    event.preventDefault();
    if (held && held.key !== event.key) finish(true);
    held ??= begin(event.key);
    if (!held) {
      const turn = 6;
      drawing.rig.turn(
        arrow === 'left' ? -turn : arrow === 'right' ? turn : 0,
        arrow === 'up' ? -turn : arrow === 'down' ? turn : 0,
      );
      return;
    }
    const mm = event.altKey ? STEP.alt : event.shiftKey ? STEP.shift : STEP.plain;
    const recipe = held.step(arrow, mm);
    if (recipe) planStore.moveGesture(recipe);
  }

  const onUp = (event: KeyboardEvent) => {
    if (held?.key === event.key) finish(true);
  };
  const onBlur = () => finish(false);

  canvas.addEventListener('keydown', onDown);
  canvas.addEventListener('keyup', onUp);
  canvas.addEventListener('blur', onBlur);
  window.addEventListener('blur', onBlur);
  return () => {
    finish(false);
    canvas.removeEventListener('keydown', onDown);
    canvas.removeEventListener('keyup', onUp);
    canvas.removeEventListener('blur', onBlur);
    window.removeEventListener('blur', onBlur);
  };
}

/** A free speaker or obstacle goes as on a map with the car's front at the top. */
const LEVEL_WAYS: Readonly<Record<Arrow, Vec3>> = {
  left: [0, -1, 0],
  right: [0, 1, 0],
  up: [-1, 0, 0],
  down: [1, 0, 0],
};
const FREE_WAYS = LEVEL_WAYS;
