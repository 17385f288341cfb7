/**
 * Mouse, pen and finger on the drawing: taking hold, dragging, choosing, pointing out. Whatever
 * cannot be moved is left to the camera's controls.
 */
import type { PerspectiveCamera } from 'three';
import { planStore, type Selection, sessionStore } from '../store';
import type { Hovered } from './attention';
import { type DragRun, runDrag } from './drag/drag';
import type { Drawing } from './drawing';
import { canBeDragged, dragFor, nearer } from './grab-to-drag';
import { mapPointer } from './map/point-at';
import { type Grab, grabAt, headAt } from './pick/grab';
import { rayThrough, spotOf } from './pick/ray';

/** A hand shakes this much without meaning to drag, CSS pixels. */
const SLACK = { mouse: 3, touch: 8 } as const;

interface Press {
  pointer: number;
  grab: Grab | null;
  slack: number;
  x: number;
  y: number;
}

interface Hold extends Press {
  grab: Grab;
  /** From the pointer to the grabbed point on the sheet, so nothing jumps when taken hold of. */
  offX: number;
  offY: number;
  run: DragRun | null;
  /** Nothing more comes of this hold: the drag could not start. */
  dead: boolean;
}

export function attachPointer(
  host: HTMLElement,
  canvas: HTMLCanvasElement,
  camera: PerspectiveCamera,
  drawing: Drawing,
): () => void {
  /** Something is held and will be dragged. */
  let hold: Hold | null = null;
  /** The button is down on something that is only to be chosen, or on nothing. */
  let press: Press | null = null;

  const onMap = mapPointer(drawing);

  const onCanvas = (event: MouseEvent) => {
    const box = canvas.getBoundingClientRect();
    return [event.clientX - box.left, event.clientY - box.top] as const;
  };
  /** Within the option on the board, also where the pointer has left it in a drag. */
  const place = (event: PointerEvent) => drawing.onBoard(...onCanvas(event));
  /** An option beside it is there to be looked at. */
  const isOnBoard = (event: PointerEvent) => drawing.halfAt(...onCanvas(event)) === 'board';
  const ray = (x: number, y: number) => rayThrough(camera, drawing.size, x, y);

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
    if (event.button !== 0 || event.target !== canvas || !isOnBoard(event)) return;
    const { x, y } = place(event);
    const touch = event.pointerType !== 'mouse';
    const grab = grabAt(drawing, camera, x, y, touch);
    const pressed = {
      pointer: event.pointerId,
      grab,
      slack: SLACK[touch ? 'touch' : 'mouse'],
      x,
      y,
    };
    if (!grab || !canBeDragged(drawing, grab)) {
      press = pressed;
      return;
    }
    event.stopPropagation();
    canvas.setPointerCapture(event.pointerId);
    choose(grab);
    const spot = spotOf(camera, drawing.size, grab.point);
    hold = { ...pressed, grab, offX: spot.x - x, offY: spot.y - y, run: null, dead: false };
  }

  function onMove(event: PointerEvent): void {
    const { x, y } = place(event);
    if (!hold) {
      if (event.pointerType !== 'mouse' || event.buttons !== 0) return;
      if (isOnBoard(event)) pointOut(x, y);
      else {
        canvas.style.cursor = '';
        drawing.hover(null);
      }
      return;
    }
    if (event.pointerId !== hold.pointer || hold.dead) return;
    if (!hold.run) {
      if (Math.hypot(x - hold.x, y - hold.y) < hold.slack) return;
      const start = ray(hold.x + hold.offX, hold.y + hold.offY);
      const drag = dragFor(drawing, camera, hold.grab, start);
      hold.run = drag && runDrag(drag, planStore);
      hold.dead = hold.run === null;
      if (hold.run) canvas.style.cursor = 'grabbing';
    }
    if (hold.run?.running() === false) {
      end(false);
      return;
    }
    hold.run?.move({
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
    const pressed = press;
    press = null;
    if (pressed?.pointer !== event.pointerId) return;
    const { x, y } = place(event);
    // A press that became a turn of the car chooses nothing.
    if (Math.hypot(x - pressed.x, y - pressed.y) > pressed.slack) return;
    if (pressed.grab) choose(pressed.grab);
    else chooseUnder(x, y);
  }

  /** The seat, body or panel there; nothing on bare paper. */
  function chooseUnder(x: number, y: number): void {
    const sight = ray(x, y);
    // While a map is painted, a click on it asks what is there.
    if (onMap.hold(sight)) return;
    const panel = drawing.panelCast(sight);
    const body = drawing.obstacles.under(sight, () => true);
    const first = nearer(sight.origin, panel?.point ?? null, body?.point ?? null);
    let selection: Selection = null;
    if (body && first === body.point) {
      const { obstacle, point } = body;
      const seat = obstacle.seat ?? obstacle.occupant?.seat;
      if (seat && drawing.cabin()?.seats.some(({ id }) => id === seat)) {
        choose({ kind: 'seat', id: seat, point });
        return;
      }
      selection = { kind: 'obstacle', id: obstacle.id };
    } else if (panel) selection = { kind: 'panel', id: panel.panel.id };
    sessionStore.setState({ selection });
  }

  function pointOut(x: number, y: number): void {
    const grab = grabAt(drawing, camera, x, y, false);
    canvas.style.cursor = !grab ? '' : canBeDragged(drawing, grab) ? 'grab' : 'pointer';
    let over: Hovered = null;
    if (grab?.kind === 'speaker' || grab?.kind === 'obstacle')
      over = { kind: grab.kind, id: grab.id };
    else if (grab?.kind === 'head' || grab?.kind === 'seat') over = { kind: 'seat', id: grab.id };
    drawing.hover(over);
    if (!grab) onMap.over(() => ray(x, y));
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

  const onReach = (event: MouseEvent) => {
    const half = drawing.halfAt(...onCanvas(event));
    if (half && !hold) drawing.reach(half);
  };

  // The host hears a press and the wheel before the camera's controls on the canvas do.
  host.addEventListener('pointerdown', onReach, { capture: true });
  host.addEventListener('wheel', onReach, { capture: true, passive: true });
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
    onMap.end();
    host.removeEventListener('pointerdown', onReach, { capture: true });
    host.removeEventListener('wheel', onReach, { capture: true });
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
  const { selection, seat } = sessionStore.getState();
  const same = selection?.kind === kind && selection.id === grab.id;
  if (same && (kind !== 'seat' || seat === grab.id)) return;
  const next: Selection = { kind, id: grab.id };
  sessionStore.setState(kind === 'seat' ? { selection: next, seat: grab.id } : { selection: next });
}
