/**
 * Mouse, pen and finger on the drawing: taking hold, dragging, choosing, pointing out. Whatever is
 * not taken hold of is left to the camera's controls.
 */
import type { PerspectiveCamera } from 'three';
import { direction, type Vec3 } from '../geometry';
import { seatName, speakerName } from '../plan/names';
import { planStore, type Selection, sessionStore } from '../store';
import { toCar } from './axes';
import { aimOfSpeaker } from './drag/aim-drag';
import { type Drag, type DragRun, runDrag } from './drag/drag';
import { obstacleInCar } from './drag/obstacle-drag';
import { seatAlongRails } from './drag/seat-drag';
import { speakerAlongPanels, speakerInSpace } from './drag/speaker-drag';
import { type Drawing, type Hovered, speakersOf } from './drawing';
import { type Grab, grabAt, headAt, lookOnly } from './pick/grab';
import { rayThrough, spotOf } from './pick/ray';

/** A hand shakes this much without meaning to drag, CSS pixels. */
const SLACK = { mouse: 3, touch: 8 } as const;

interface Hold {
  pointer: number;
  grab: Grab;
  touch: boolean;
  startX: number;
  startY: number;
  /** From the pointer to the grabbed point on the sheet, so nothing jumps when taken hold of. */
  offX: number;
  offY: number;
  run: DragRun | null;
  /** No drag can start from here (read-only, rails end-on). */
  dead: boolean;
}

export function attachPointer(
  host: HTMLElement,
  canvas: HTMLCanvasElement,
  camera: PerspectiveCamera,
  drawing: Drawing,
): () => void {
  let hold: Hold | null = null;
  let press: { x: number; y: number; pointer: number } | null = null;

  const place = (event: PointerEvent) => {
    const box = canvas.getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  };
  const ray = (x: number, y: number) => rayThrough(camera, drawing.size, x, y);

  function dragFor(held: Hold): Drag | null {
    const { grab } = held;
    const option = drawing.option();
    const cabin = drawing.cabin();
    if (!option || !cabin) return null;
    const among = speakersOf(option);
    if (grab.kind === 'speaker' || grab.kind === 'tip') {
      const shown = drawing.speakers.shown().find(({ speaker }) => speaker.id === grab.id);
      if (!shown) return null;
      const { speaker, placed } = shown;
      const ids = { optionId: option.id, speakerId: speaker.id, name: speakerName(speaker, among) };
      if (grab.kind === 'tip') {
        const meet = (sight: Parameters<Drawing['panelCast']>[0]): Vec3 | null => {
          const panel = drawing.panelCast(sight)?.point ?? null;
          const body = drawing.obstacles.under(sight, (obstacle) => !obstacle.occupant);
          return nearer(sight.origin, panel, body?.point ?? null);
        };
        return aimOfSpeaker({ ...ids, position: placed.position, tip: grab.point, meet });
      }
      if (speaker.mount) {
        const cast = drawing.panelCasts;
        return speakerAlongPanels({ ...ids, mount: speaker.mount, panels: cabin.panels, cast });
      }
      const facing = direction(toCar(camera.getWorldDirection(scratch()))) ?? [1, 0, 0];
      return speakerInSpace({ ...ids, position: placed.position, facing });
    }
    const start = ray(held.startX + held.offX, held.startY + held.offY);
    if (grab.kind === 'obstacle') {
      const name = cabin.obstacles.find(({ id }) => id === grab.id)?.name ?? grab.id;
      return obstacleInCar({ obstacleId: grab.id, name, grip: grab.point, ray: start });
    }
    const seat = cabin.seats.find(({ id }) => id === grab.id);
    if (!seat?.slideRange) return null;
    const slide = planStore.shown().seats?.find(({ id }) => id === seat.id)?.slide ?? 0;
    return seatAlongRails({
      seatId: seat.id,
      allSeatIds: cabin.seats.map(({ id }) => id),
      name: seatName(seat.id),
      grip: grab.point,
      ray: start,
      slide,
      slideRange: seat.slideRange,
    });
  }

  function scratch() {
    return camera.position.clone();
  }

  function end(commit: boolean): void {
    const held = hold;
    hold = null;
    if (!held) return;
    if (commit) held.run?.commit();
    else held.run?.cancel();
    canvas.style.cursor = '';
    drawing.refresh();
  }

  function onDown(event: PointerEvent): void {
    if (hold) {
      // A second finger while something is held: not ours, and not the camera's either.
      event.stopPropagation();
      return;
    }
    press = null;
    if (event.button !== 0 || event.target !== canvas) return;
    const { x, y } = place(event);
    const touch = event.pointerType !== 'mouse';
    const grab = grabAt(drawing, camera, x, y, touch);
    if (!grab) {
      press = { x, y, pointer: event.pointerId };
      return;
    }
    event.stopPropagation();
    canvas.setPointerCapture(event.pointerId);
    choose(grab);
    const spot = spotOf(camera, drawing.size, grab.point);
    hold = {
      pointer: event.pointerId,
      grab,
      touch,
      startX: x,
      startY: y,
      offX: spot.x - x,
      offY: spot.y - y,
      run: null,
      dead: lookOnly(),
    };
  }

  function onMove(event: PointerEvent): void {
    const { x, y } = place(event);
    if (!hold) {
      if (event.pointerType === 'mouse' && event.buttons === 0) pointOut(x, y);
      return;
    }
    if (event.pointerId !== hold.pointer || hold.dead) return;
    if (!hold.run) {
      const slack = hold.touch ? SLACK.touch : SLACK.mouse;
      if (Math.hypot(x - hold.startX, y - hold.startY) < slack) return;
      const drag = dragFor(hold);
      hold.run = drag && runDrag(drag, planStore);
      if (!hold.run) {
        hold.dead = true;
        return;
      }
      canvas.style.cursor = 'grabbing';
    }
    if (!hold.run.running()) {
      end(false);
      return;
    }
    hold.run.move({
      ray: ray(x + hold.offX, y + hold.offY),
      vertical: event.shiftKey,
      head: hold.grab.kind === 'tip' ? headAt(drawing, camera, x, y) : null,
    });
  }

  function onUp(event: PointerEvent): void {
    if (hold?.pointer === event.pointerId) {
      end(true);
      return;
    }
    if (press?.pointer !== event.pointerId) return;
    const { x, y } = place(event);
    // A press without a drag chooses the panel there, or nothing.
    if (Math.hypot(x - press.x, y - press.y) < SLACK.mouse + 1) {
      const sight = ray(x, y);
      const panel = drawing.panelCast(sight);
      const body = drawing.obstacles.under(sight, () => true);
      const bodyFirst =
        body && (!panel || nearer(sight.origin, panel.point, body.point) === body.point);
      const seat = bodyFirst ? (body.obstacle.seat ?? body.obstacle.occupant?.seat) : undefined;
      if (seat) choose({ kind: 'seat', id: seat, point: body?.point ?? [0, 0, 0] });
      else if (bodyFirst)
        sessionStore.setState({ selection: { kind: 'obstacle', id: body.obstacle.id } });
      else
        sessionStore.setState({ selection: panel ? { kind: 'panel', id: panel.panel.id } : null });
    }
    press = null;
  }

  function pointOut(x: number, y: number): void {
    const grab = grabAt(drawing, camera, x, y, false);
    canvas.style.cursor = grab ? (lookOnly() ? 'pointer' : 'grab') : '';
    const over: Hovered =
      grab?.kind === 'speaker' || grab?.kind === 'obstacle'
        ? { kind: grab.kind, id: grab.id }
        : grab?.kind === 'head' || grab?.kind === 'seat'
          ? { kind: 'seat', id: grab.id }
          : null;
    drawing.hover(over);
  }

  const onCancel = (event: PointerEvent) => {
    if (hold?.pointer === event.pointerId) end(false);
    press = null;
  };
  const onLeave = () => {
    if (!hold) drawing.hover(null);
  };
  const onBlur = () => end(false);
  const onKey = (event: KeyboardEvent) => {
    if (event.key !== 'Escape' || !hold) return;
    event.stopPropagation();
    end(false);
  };

  // The host hears a press before the camera's controls on the canvas do.
  host.addEventListener('pointerdown', onDown, { capture: true });
  canvas.addEventListener('pointermove', onMove);
  canvas.addEventListener('pointerup', onUp);
  canvas.addEventListener('pointercancel', onCancel);
  canvas.addEventListener('lostpointercapture', onCancel);
  canvas.addEventListener('pointerleave', onLeave);
  window.addEventListener('blur', onBlur);
  window.addEventListener('keydown', onKey, { capture: true });
  return () => {
    end(false);
    host.removeEventListener('pointerdown', onDown, { capture: true });
    canvas.removeEventListener('pointermove', onMove);
    canvas.removeEventListener('pointerup', onUp);
    canvas.removeEventListener('pointercancel', onCancel);
    canvas.removeEventListener('lostpointercapture', onCancel);
    canvas.removeEventListener('pointerleave', onLeave);
    window.removeEventListener('blur', onBlur);
    window.removeEventListener('keydown', onKey, { capture: true });
  };
}

/** Choosing a listener also brings their lines on the board. */
function choose(grab: Grab): void {
  const kind = grab.kind === 'tip' ? 'speaker' : grab.kind === 'head' ? 'seat' : grab.kind;
  const selection: Selection = { kind, id: grab.id };
  const now = sessionStore.getState();
  if (now.selection?.kind === kind && now.selection.id === grab.id && kind !== 'seat') return;
  sessionStore.setState(kind === 'seat' ? { selection, seat: grab.id } : { selection });
}

function nearer(origin: Vec3, a: Vec3 | null, b: Vec3 | null): Vec3 | null {
  if (!a || !b) return a ?? b;
  const far = (p: Vec3) =>
    (p[0] - origin[0]) ** 2 + (p[1] - origin[1]) ** 2 + (p[2] - origin[2]) ** 2;
  return far(a) <= far(b) ? a : b;
}
