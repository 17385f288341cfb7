/**
 * The drawing board: keeps the parts of the scene in step with the plan, the session and the
 * engine's answer, and lays the words over them. Everything here runs inside a frame; stores only
 * mark what is stale and ask for one.
 */
import {
  type PerspectiveCamera,
  type Scene as ThreeScene,
  Vector3,
  type WebGLRenderer,
} from 'three';
import type { CabinModel, OptionResult, Panel, SeatResult, SpeakerInput, Vec3 } from '../geometry';
import {
  currentAnswer,
  currentOption,
  currentSeat,
  planStore,
  type Selection,
  sessionStore,
} from '../store';
import { carRoot, toThree } from './axes';
import { wordsFor } from './label-wants';
import { createLabels } from './labels';
import { createBodyPart } from './parts/body-part';
import { createHeadsPart } from './parts/heads-part';
import { createKit } from './parts/kit';
import { createLinesPart } from './parts/lines-part';
import { createObstaclesPart } from './parts/obstacles-part';
import { createPanelsPart } from './parts/panels-part';
import { createSpeakersPart } from './parts/speakers-part';
import { createZonesPart } from './parts/zones-part';
import type { Ray } from './pick/ray';
import type { SurfaceHit } from './pick/surface-caster';
import { createLook, paintLook } from './shading/look';
import { inSlices, paintOpenness } from './shading/openness';
import { watchTheme } from './theme';
import { type Extent, extentOf } from './views/extent';
import { ballAround } from './views/fit';
import { poseFor } from './views/poses';
import { createRig } from './views/rig';

/** A cabin that has not changed for this long is worth shading, ms. */
const STILL_MS = 350;

export interface DrawingNeeds {
  camera: PerspectiveCamera;
  canvas: HTMLCanvasElement;
  overlay: HTMLElement;
  gl: WebGLRenderer;
  scene: ThreeScene;
  /** Asks for one frame. */
  ask(): void;
}

export type Hovered = { kind: 'speaker' | 'obstacle' | 'seat'; id: string } | null;

export function createDrawing({ camera, canvas, overlay, gl, scene, ask }: DrawingNeeds) {
  const look = createLook();
  const kit = createKit(look);
  const root = carRoot();
  const panels = createPanelsPart(kit);
  const obstacles = createObstaclesPart(kit);
  const zones = createZonesPart(kit);
  const body = createBodyPart(kit);
  const speakers = createSpeakersPart(kit);
  const lines = createLinesPart(kit);
  const heads = createHeadsPart(kit);
  for (const part of [panels, obstacles, zones, body, speakers, lines, heads]) root.add(part.group);
  scene.add(root);

  const labels = createLabels(overlay);
  const rig = createRig(camera, canvas, ask);
  const size = { width: 1, height: 1 };
  let cabin: CabinModel | null = null;
  let option: OptionResult | null = null;
  let seat: SeatResult | null = null;
  let hovered: Hovered = null;
  let stale = true;
  let repaint = true;
  let extent: Extent = { car: [], stage: [], back: 0 };
  let posed = '';
  let view = sessionStore.getState().view;
  let eye: Vec3 | null = null;
  let shadedOnce = false;
  let stopShading: () => void = () => {};

  const touch = () => {
    stale = true;
    ask();
  };
  const theme = watchTheme(overlay, () => {
    repaint = true;
    ask();
  });
  const stopPlan = planStore.subscribe(touch);
  const stopSession = sessionStore.subscribe((now, before) => {
    if (now.theme !== before.theme) repaint = true;
    touch();
  });

  const seatModel = () => cabin?.seats.find(({ id }) => id === seat?.id) ?? null;

  function pose(animate: boolean): void {
    const wheelSide = cabin?.wheelSide ?? 'left';
    const aspect = size.width / Math.max(1, size.height);
    const needs = { ...extent, aspect, seat: seatModel(), wheelSide };
    const calm = window.matchMedia('(prefers-reduced-motion: reduce)').matches;
    rig.go(view, poseFor(view, needs), animate && !calm);
    eye = needs.seat?.eye ?? null;
    canvas.dataset.sceneView = view;
    // In the free view the wash runs out behind the last listener; elevations are whole.
    const [from, to] = view === 'free' ? [extent.back - 150, extent.back + 900] : [1e6, 2e6];
    look.uVignette.value.set(from, to);
  }

  /** Fits anew for another car or view; follows the eye of a seat that moved. */
  function keepPose(): void {
    const { openedAs } = planStore.getState();
    const key = `${openedAs}|${cabin?.template}|${cabin?.wheelSide}`;
    const next = sessionStore.getState().view;
    const seatView = next === 'seat' ? (seat?.id ?? '') : '';
    const full = `${key}|${next}|${seatView}`;
    if (full !== posed) {
      const first = posed === '';
      const sameCar = posed.startsWith(`${key}|`);
      posed = full;
      view = next;
      pose(!first && sameCar);
      return;
    }
    const model = seatModel();
    if (view === 'seat' && model && eye && model.eye !== eye) {
      const by = toThree(model.eye, new Vector3()).sub(toThree(eye, new Vector3()));
      if (by.lengthSq() > 0) rig.shift(by);
      eye = model.eye;
    }
  }

  function sync(): void {
    const answer = currentAnswer();
    // A cabin that cannot be built leaves the last one standing; the workbench says why.
    if (!answer.ok) return;
    const session = sessionStore.getState();
    option = currentOption(answer);
    seat = currentSeat(option);
    if (answer.cabin !== cabin) {
      cabin = answer.cabin;
      const newPanels = panels.show(cabin.panels);
      const newBodies = obstacles.show(cabin);
      if (newPanels || newBodies) shadeSoon();
      body.show(cabin.bodyLines);
      extent = extentOf(cabin);
      const { middle, radius } = ballAround(extent.car);
      rig.hold(toThree(middle, new Vector3()), radius);
    }
    zones.show(cabin.keepClear, session.showZones);
    const { selection } = session;
    const chosen = (kind: NonNullable<Selection>['kind']) =>
      selection?.kind === kind ? selection.id : null;
    const over = (kind: NonNullable<Hovered>['kind']) =>
      hovered?.kind === kind ? hovered.id : null;
    const inputs = speakersOf(option);
    const placed = new Map(option?.placed.map((one) => [one.speaker, one]) ?? []);
    speakers.show(
      inputs.flatMap((speaker) => {
        const at = placed.get(speaker.id);
        return at ? [{ speaker, placed: at }] : [];
      }),
      chosen('speaker'),
      over('speaker'),
    );
    const arrivals = seat?.arrivals ?? [];
    const blocking = new Set(
      arrivals.find((arrival) => arrival.speaker === chosen('speaker'))?.blockedBy ?? [],
    );
    const through = session.view === 'seat' ? (seat?.id ?? null) : null;
    panels.mark(blocking, chosen('panel'));
    obstacles.dress({
      occupants: session.showOccupants,
      hiddenHead: through,
      listener: seat?.id ?? null,
      blocking,
      selected: chosen('obstacle'),
      hovered: over('obstacle'),
    });
    heads.show(cabin.seats, chosen('seat') ?? seat?.id ?? '', through);
    // From the listener's own eyes every line would run into the lens.
    lines.group.visible = through === null;
    body.group.visible = through === null;
    lines.show(
      seat?.head ?? [0, 0, 0],
      arrivals,
      placed,
      { selected: chosen('speaker'), hovered: over('speaker') },
      meet,
    );
  }

  /** Paints the soft shade once the cabin has stood still for a moment. */
  function shadeSoon(): void {
    stopShading();
    const first = !shadedOnce;
    const timer = setTimeout(
      () => {
        const targets = [panels.solid(), ...obstacles.solids()];
        stopShading = inSlices(paintOpenness(targets, targets), () => {
          stopShading = () => {};
          shadedOnce = true;
          ask();
        });
      },
      first ? 0 : STILL_MS,
    );
    stopShading = () => clearTimeout(timer);
  }

  /** Where a line first meets a panel or body, by id. */
  function meet(id: string, ray: Ray, far: number): Vec3 | null {
    return (obstacles.meet(id, ray, far) ?? panels.meet(id, ray, far))?.point ?? null;
  }

  function named(hit: SurfaceHit | null): { panel: Panel; point: Vec3 } | null {
    const panel = hit && panels.ownerOf(hit.triangle);
    return hit && panel ? { panel, point: hit.point } : null;
  }

  return {
    rig,
    size,
    panels,
    obstacles,
    speakers,
    /** Steps to the present; true when another frame is needed. */
    frame(now: number): boolean {
      if (repaint) {
        repaint = false;
        const palette = theme.palette();
        paintLook(look, palette);
        kit.paint(palette);
        // Not the renderer's clear colour: that is forgotten when the context is lost.
        scene.background = palette.paper;
      }
      if (stale) {
        stale = false;
        sync();
        keepPose();
      }
      const moving = rig.step(now);
      look.uViewport.value.set(size.width, size.height).multiplyScalar(gl.getPixelRatio());
      look.uPixelRatio.value = gl.getPixelRatio();
      look.uPen.value = Math.min(1, Math.max(0.72, Math.sqrt(size.width * size.height) / 900));
      // The key light follows the eye: from over the left shoulder, as drawings are lit.
      look.uKey.value.set(-0.5, 0.72, 0.6).normalize().applyQuaternion(camera.quaternion);
      camera.updateMatrixWorld();
      labels.lay(
        cabin
          ? wordsFor({
              camera,
              size,
              cabin,
              seat,
              hovered,
              speakers: speakers.shown(),
              lines: lines.shown(),
              zones: zones.middles(),
              among: speakersOf(option),
            })
          : [],
        size,
      );
      return moving;
    },
    resize(width: number, height: number) {
      size.width = width;
      size.height = height;
      camera.aspect = width / Math.max(1, height);
      camera.updateProjectionMatrix();
      if (cabin && rig.untouched()) pose(false);
      ask();
    },
    hover(next: Hovered) {
      if (hovered?.kind === next?.kind && hovered?.id === next?.id) return;
      hovered = next;
      touch();
    },
    refresh: touch,
    /** The picture is whole: drawn, and shaded once. */
    whole: () => shadedOnce,
    cabin: () => cabin,
    option: () => option,
    seat: () => seat,
    /** The panel's cabin side under a line of sight. */
    panelCast: (ray: Ray) => named(panels.under.first(ray)),
    /** That, and the near side's back: wherever a speaker dragged there might be meant to go. */
    panelCasts: (ray: Ray) =>
      [panels.under.first(ray), panels.under.firstBack(ray)].flatMap((hit) => named(hit) ?? []),
    end() {
      stopShading();
      stopPlan();
      stopSession();
      theme.end();
      labels.end();
      rig.end();
      scene.remove(root);
      for (const part of [panels, obstacles, zones, body, speakers, lines, heads]) part.dispose();
      kit.dispose();
    },
  };
}

export type Drawing = ReturnType<typeof createDrawing>;

/** The speakers of the option on the board, as the plan shown has them. */
export function speakersOf(option: OptionResult | null): readonly SpeakerInput[] {
  return planStore.shown().options.find(({ id }) => id === option?.id)?.speakers ?? [];
}
