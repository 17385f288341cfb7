/**
 * The drawing board: keeps the parts of the scene in step with the plan, the session and the
 * engine's answer, and lays the words over them. Everything here runs inside a frame; stores only
 * mark what is stale and ask for one.
 */
import type { PerspectiveCamera, Scene as ThreeScene, WebGLRenderer } from 'three';
import type { CabinModel, OptionResult, Panel, SeatResult, SpeakerInput, Vec3 } from '../geometry';
import {
  currentAnswer,
  currentOption,
  currentSeat,
  planStore,
  type Selection,
  sessionStore,
} from '../store';
import { type Hovered, inTheWayOf, panelsOf, reflectingArrivals } from './attention';
import { carRoot } from './axes';
import { createImageKeeper } from './image/keep-image';
import { wordsFor } from './label-wants';
import { createLabels } from './labels';
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

export interface DrawingNeeds {
  camera: PerspectiveCamera;
  canvas: HTMLCanvasElement;
  overlay: HTMLElement;
  gl: WebGLRenderer;
  scene: ThreeScene;
  /** Asks for one frame. */
  ask(): void;
}

const ORIGIN: Vec3 = [0, 0, 0];

export function createDrawing({ camera, canvas, overlay, gl, scene, ask }: DrawingNeeds) {
  const look = createLook();
  const kit = createKit(look);
  const root = carRoot();
  const parts = createParts(kit, root);
  const { panels, obstacles, zones, body, speakers, lines, reflections, image, heads } = parts;
  scene.add(root);

  const size = { width: 1, height: 1 };
  const labels = createLabels(overlay);
  const rig = createRig(camera, canvas, ask);
  const poses = createPoseKeeper(rig, size);
  const shade = shadeLater(() => [panels.solid(), ...obstacles.solids()], ask);
  let cabin: CabinModel | null = null;
  let option: OptionResult | null = null;
  let seat: SeatResult | null = null;
  let hovered: Hovered = null;
  let stale = true;
  let repaint = true;

  const touch = () => {
    stale = true;
    ask();
  };
  const images = createImageKeeper(touch);
  const theme = watchTheme(overlay, () => {
    repaint = true;
    ask();
  });
  const stopPlan = planStore.subscribe(touch);
  const stopSession = sessionStore.subscribe((now, before) => {
    if (now.theme !== before.theme) repaint = true;
    touch();
  });

  /** Brings the parts up to the plan shown; only what changed is made anew. */
  function sync(): void {
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
    poses.keep(cabin, cabin.seats.find(({ id }) => id === seat?.id) ?? null);
    look.uVignette.value.set(...poses.vignette());
  }

  /** Speakers, lines and whatever hangs on the selection. */
  function dress(car: CabinModel): void {
    const { selection, view, showZones, showOccupants, showReflections } = sessionStore.getState();
    const chosen = (kind: NonNullable<Selection>['kind']) =>
      selection?.kind === kind ? selection.id : null;
    const over = (kind: NonNullable<Hovered>['kind']) =>
      hovered?.kind === kind ? hovered.id : null;
    const placed = new Map(option?.placed.map((one) => [one.speaker, one]) ?? []);
    const arrivals = seat?.arrivals ?? [];
    const among = speakersOf(option);
    const { blocking, grazed } = inTheWayOf(arrivals, hovered);
    const reflecting = showReflections ? reflectingArrivals(seat, among, hovered) : [];
    const lookedThrough = view === 'seat' ? (seat?.id ?? null) : null;
    zones.show(car.keepClear, showZones);
    panels.mark({ blocking, grazed, selected: chosen('panel'), reflecting: panelsOf(reflecting) });
    obstacles.dress({
      occupants: showOccupants,
      hiddenHead: lookedThrough,
      listener: seat?.id ?? null,
      blocking,
      grazed,
      selected: chosen('obstacle'),
      hovered: over('obstacle'),
    });
    speakers.show(
      among.flatMap((speaker) => {
        const at = placed.get(speaker.id);
        return at ? [{ speaker, placed: at }] : [];
      }),
      chosen('speaker'),
      over('speaker'),
    );
    heads.show(car.seats, chosen('seat') ?? seat?.id ?? '', lookedThrough);
    // From the listener's own eyes every line would run into the lens.
    lines.group.visible = body.group.visible = lookedThrough === null;
    showImage(car);
    const emphasis = {
      selected: chosen('speaker'),
      hovered: over('speaker'),
      underneath: image.shown() !== null,
    };
    const head = seat?.head ?? ORIGIN;
    lines.show(head, arrivals, placed, emphasis, surroundings);
    reflections.show(head, reflecting, placed, lookedThrough === null);
  }

  /** From the side and from the front the fan would be a line on edge. */
  function showImage(car: CabinModel): void {
    const { view, showImage: wanted } = sessionStore.getState();
    const level =
      view === 'seat' ? 'own eyes' : view === 'free' || view === 'plan' ? 'above' : null;
    const plan = planStore.shown();
    const input = plan.options.find(({ id }) => id === option?.id);
    if (!wanted || !level || !option || !input || !seat) {
      image.show(null, null, null);
      return;
    }
    const stage = { plan, cabin: car, option: input, result: option };
    const kept = images.of(stage, seat.id, planStore.getState().gesture === null);
    image.show(kept, car.seats.find(({ id }) => id === seat?.id) ?? null, level);
  }

  const surroundings: Surroundings = {
    meet: (id, ray, far) =>
      obstacles.meet(id, ray, far) ?? panels.meet(id, ray, far)?.point ?? null,
    pass: (id, from, to) => obstacles.pass(id, from, to) ?? panels.pass(id, from, to),
  };

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
    speakers,
    /** Steps to the present; true when another frame is needed. */
    frame(now: number): boolean {
      if (repaint) paint();
      repaint = false;
      if (stale) sync();
      stale = false;
      const moving = rig.step(now);
      light();
      camera.updateMatrixWorld();
      if (cabin) {
        const shown = {
          speakers: speakers.shown(),
          lines: lines.shown(),
          reflections: reflections.shown(),
          fan: image.shown(),
          zones: zones.middles(),
        };
        const among = speakersOf(option);
        labels.lay(wordsFor({ camera, size, cabin, seat, hovered, among, ...shown }), size);
      }
      // Said on arrival: whoever reads places off the sheet should not do so on the way.
      if (moving) delete canvas.dataset.sceneView;
      else canvas.dataset.sceneView = poses.view();
      return moving;
    },
    resize(width: number, height: number) {
      size.width = width;
      size.height = height;
      camera.aspect = width / Math.max(1, height);
      camera.updateProjectionMatrix();
      poses.refit();
      ask();
    },
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
    /** The panel's cabin side under a line of sight. */
    panelCast: (ray: Ray) => named(panels.under.first(ray)),
    /** That, and the near side's back: wherever a speaker dragged there might be meant to go. */
    panelCasts: (ray: Ray) =>
      [panels.under.first(ray), panels.under.firstBack(ray)].flatMap((hit) => named(hit) ?? []),
    end() {
      shade.end();
      images.end();
      stopPlan();
      stopSession();
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

/** The speakers of the option on the board, as the plan shown has them. */
export function speakersOf(option: OptionResult | null): readonly SpeakerInput[] {
  return planStore.shown().options.find(({ id }) => id === option?.id)?.speakers ?? [];
}
