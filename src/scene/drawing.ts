/**
 * The drawing board: keeps the parts of the scene in step with the plan, the session and the
 * engine's answer, and lays the words over them. Everything here runs inside a frame; stores only
 * mark what is stale and ask for one.
 */
import type { PerspectiveCamera, Scene as ThreeScene, WebGLRenderer } from 'three';
import {
  type CabinModel,
  distance,
  length,
  type OptionResult,
  type Panel,
  type SeatResult,
  scale,
  sub,
  type Vec3,
} from '../geometry';
import { currentAnswer, currentOption, currentSeat, planStore, sessionStore } from '../store';
import { slowMotionStore } from '../store/slow-motion';
import { chosenId, type Hovered } from './attention';
import { carRoot } from './axes';
import { type Beside, createBeside } from './halves/beside';
import { createSheets } from './halves/sheets';
import { createLabels } from './labels';
import { spotNear } from './map/spot-place';
import { createOptionDrawing, type OptionDrawing, speakersOf } from './option-drawing';
import { createParts } from './parts/all';
import { createKit } from './parts/kit';
import type { Surroundings } from './parts/lines-part';
import type { Ray } from './pick/ray';
import type { SurfaceHit } from './pick/surface-caster';
import { createLook, paintLook } from './shading/look';
import { shadeLater } from './shading/shade-later';
import { watchTheme } from './theme';
import { createPoseKeeper } from './views/keep-pose';
import { createRig } from './views/rig';
import { mapWants } from './words/map-words';
import { spotWants } from './words/spot-words';

export interface DrawingNeeds {
  camera: PerspectiveCamera;
  canvas: HTMLCanvasElement;
  /** Where words lie: over the option on the board, and over the one beside it. */
  overlay: HTMLElement;
  besideOverlay: HTMLElement;
  gl: WebGLRenderer;
  scene: ThreeScene;
  /** Asks for one frame. */
  ask(): void;
}

/** A point of a panel is in sight when nothing is met this much nearer to the eye, mm. */
const SIGHT_SLACK = 25;

export function createDrawing(needs: DrawingNeeds) {
  const { camera, canvas, overlay, besideOverlay, gl, scene, ask } = needs;
  const look = createLook();
  const kit = createKit(look);
  const root = carRoot();
  const parts = createParts(kit, root);
  const { panels, map, obstacles, zones, body, heads, spotMarks } = parts;
  scene.add(root);

  const surroundings: Surroundings = {
    meet: (id, ray, far) =>
      obstacles.meet(id, ray, far) ?? panels.meet(id, ray, far)?.point ?? null,
    pass: (id, from, to) => obstacles.pass(id, from, to) ?? panels.pass(id, from, to),
  };
  const overlays = { board: overlay, beside: besideOverlay };
  const sheets = createSheets({ camera, canvas, gl, scene, overlays });
  const { size } = sheets;
  const labels = createLabels(overlay);
  const rig = createRig(camera, sheets.hand, ask);
  const poses = createPoseKeeper(rig, size);
  const shade = shadeLater(() => [panels.solid(), ...obstacles.solids()], anew);
  let cabin: CabinModel | null = null;
  let option: OptionResult | null = null;
  let seat: SeatResult | null = null;
  let hovered: Hovered = null;
  let stale = true;
  let repaint = true;

  /** The whole picture again: something that is in both halves has changed. */
  function anew(): void {
    beside?.spoil();
    ask();
  }
  const touch = () => {
    stale = true;
    ask();
  };
  const mine = createOptionDrawing(kit, panels, surroundings, touch);
  parts.onBoard.add(mine.group);
  let beside: Beside | null = null;
  const theme = watchTheme(overlay, () => {
    repaint = true;
    anew();
  });
  const stopPlan = planStore.subscribe(touch);
  const stopSession = sessionStore.subscribe((now, before) => {
    if (now.theme !== before.theme) repaint = true;
    touch();
  });

  // While it plays, what is drawn is moved and nothing is made anew.
  const stopSlow = slowMotionStore.subscribe((now, before) => {
    if (now.open !== before.open || now.delays !== before.delays) {
      beside?.spoil();
      touch();
    } else if (now.open && now.time !== before.time) anew();
  });

  /** Brings the parts up to the plan shown; only what changed is made anew. */
  function sync(): void {
    share(sessionStore.getState().beside !== null);
    const answer = currentAnswer();
    // A cabin that cannot be built leaves the last one standing; the workbench says why.
    if (!answer.ok) return;
    option = currentOption(answer);
    seat = currentSeat(option);
    if (answer.cabin !== cabin) {
      cabin = answer.cabin;
      const newPanels = panels.show(cabin.panels);
      const newBodies = obstacles.show(cabin);
      if (newPanels || newBodies) shade.due();
      body.show(cabin.bodyLines);
      poses.measure(cabin);
    }
    dress(cabin);
    if (beside) {
      const { beside: id } = sessionStore.getState();
      const other = answer.options.find((result) => result.id === id) ?? null;
      const inView = seat?.id ?? null;
      beside.show({ cabin, option: other, inView, hovered, lookedThrough: lookedThrough() });
      canvas.parentElement?.toggleAttribute('data-late', beside.late());
    }
    poses.keep(cabin, cabin.seats.find(({ id }) => id === seat?.id) ?? null);
    look.uVignette.value.set(...poses.vignette());
  }

  const lookedThrough = () => (sessionStore.getState().view === 'seat' ? (seat?.id ?? null) : null);

  /** Everything that hangs on the session and on the option on the board. */
  function dress(car: CabinModel): void {
    const { selection, showZones, painted, spotMarks: marks } = sessionStore.getState();
    const eyes = lookedThrough();
    heads.show(car.seats, chosenId('seat', selection) ?? seat?.id ?? '', eyes);
    body.group.visible = eyes === null;
    map.show(painted, car.panels);
    const underPaint = painted !== null;
    mine.show({ cabin: car, option, seat, hovered, lookedThrough: eyes, painted: underPaint });
    spotMarks.show(marks);
    if (zones.show(car.keepClear, showZones, mine.zonesHit())) beside?.spoil();
    dressBodies(mine);
  }

  /** The bodies as one option has them: what is in the way of its lines stands out. */
  function dressBodies(drawn: OptionDrawing): void {
    const { selection, showOccupants } = sessionStore.getState();
    obstacles.dress({
      occupants: showOccupants,
      hiddenHead: lookedThrough(),
      listener: seat?.id ?? null,
      ...drawn.inTheWay(),
      selected: chosenId('obstacle', selection),
      hovered: hovered?.kind === 'obstacle' ? hovered.id : null,
    });
  }

  /** Opens or closes the second half. */
  function share(two: boolean): void {
    if (two === (beside !== null)) return;
    if (beside) {
      beside.end();
      beside = null;
    } else {
      const around = surroundings;
      beside = createBeside({ kit, panels, zones, around, overlay: besideOverlay, ask: touch });
      root.add(beside.drawing.group);
      beside.drawing.group.visible = false;
    }
    const before = camera.aspect;
    sheets.share(two ? 2 : 1);
    poses.refit();
    // Whoever has turned the view keeps it, and keeps the car on the sheet.
    if (!rig.untouched()) rig.zoom(before / camera.aspect);
  }

  /** Whether a point on a panel is seen from `eye`; people are looked through. */
  function inSight(eye: Vec3, point: Vec3): boolean {
    const way = sub(point, eye);
    const far = length(way);
    const ray: Ray = { origin: eye, direction: scale(way, 1 / Math.max(far, 1e-6)) };
    const limit = far - SIGHT_SLACK;
    if (panels.under.first(ray, limit)) return false;
    const body = obstacles.under(ray, (obstacle) => !obstacle.occupant);
    return !body || distance(eye, body.point) > limit;
  }

  /** The spot of the painted map under a line of sight; `null` where there is none, or a body before it. */
  function paintedSpot(ray: Ray): number | null {
    const painted = map.shown()?.painted;
    const hit = painted && named(panels.under.first(ray));
    if (!painted || !hit || !inSight(ray.origin, hit.point)) return null;
    return spotNear(painted.map, hit.panel, hit.point);
  }

  function named(hit: SurfaceHit | null): { panel: Panel; point: Vec3 } | null {
    const panel = hit && panels.ownerOf(hit.triangle);
    return hit && panel ? { panel, point: hit.point } : null;
  }

  function paint(): void {
    const palette = theme.palette();
    paintLook(look, palette);
    kit.paint(palette);
    // Not the renderer's clear colour: that is forgotten when the context is lost.
    scene.background = palette.paper;
  }

  function light(): void {
    const ratio = gl.getPixelRatio();
    look.uViewport.value.set(size.width, size.height).multiplyScalar(ratio);
    look.uPixelRatio.value = ratio;
    look.uPen.value = Math.min(1, Math.max(0.72, Math.sqrt(size.width * size.height) / 900));
    // The key light follows the eye: from over the left shoulder, as drawings are lit.
    look.uKey.value.set(-0.5, 0.72, 0.6).normalize().applyQuaternion(camera.quaternion);
  }

  return {
    rig,
    size,
    obstacles,
    speakers: mine.speakers,
    /** Steps to the present; true when another frame is needed. */
    frame(now: number): boolean {
      if (repaint) paint();
      repaint = false;
      if (stale) sync();
      stale = false;
      mine.flow();
      beside?.drawing.flow();
      const moving = rig.step(now);
      light();
      camera.updateMatrixWorld();
      if (cabin) {
        const frame = { camera, size, cabin, seat, hovered, among: speakersOf(option) };
        const wants = mine.words(frame, zones.middles());
        wants.push(
          ...mapWants(frame, map.shown(), inSight),
          ...spotWants(frame, spotMarks.shown()),
        );
        labels.lay(wants, size);
      }
      // Said on arrival: whoever reads places off the sheet should not do so on the way.
      if (moving) delete canvas.dataset.sceneView;
      else canvas.dataset.sceneView = poses.view();
      return moving;
    },
    /** Draws the frame; what is beside only where it, the car or the eye has changed. */
    draw() {
      if (beside?.renewed(camera, size)) {
        parts.onBoard.visible = false;
        beside.drawing.group.visible = true;
        dressBodies(beside.drawing);
        sheets.put('beside');
        beside.drawing.group.visible = false;
        parts.onBoard.visible = true;
        // What is taken hold of and pointed at is as on the board.
        dressBodies(mine);
      }
      sheets.put('board');
    },
    resize(width: number, height: number) {
      sheets.resize(width, height);
      poses.refit();
      anew();
    },
    halfAt: sheets.halfAt,
    onBoard: sheets.onBoard,
    reach: sheets.reach,
    anew,
    hover(next: Hovered) {
      if (hovered?.kind === next?.kind && hovered?.id === next?.id) return;
      hovered = next;
      touch();
    },
    refresh: touch,
    /** The picture is whole: drawn, and shaded once. */
    whole: () => shade.done(),
    cabin: () => cabin,
    option: () => option,
    seat: () => seat,
    paintedSpot,
    /** The panel's cabin side under a line of sight. */
    panelCast: (ray: Ray) => named(panels.under.first(ray)),
    /** That, and the near side's back: wherever a speaker dragged there might be meant to go. */
    panelCasts: (ray: Ray) =>
      [panels.under.first(ray), panels.under.firstBack(ray)].flatMap((hit) => named(hit) ?? []),
    end() {
      shade.end();
      beside?.end();
      mine.dispose();
      stopPlan();
      stopSession();
      stopSlow();
      theme.end();
      labels.end();
      rig.end();
      scene.remove(root);
      parts.dispose();
      kit.dispose();
    },
  };
}

export type Drawing = ReturnType<typeof createDrawing>;
