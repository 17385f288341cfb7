/** The option's speakers as bodies with an arrow for their axis. Moved in place while dragged. */
import { Group, Matrix4, Mesh } from 'three';
import {
  along,
  type PlacedSpeaker,
  type SpeakerBody,
  type SpeakerInput,
  speakerFrame,
  type Vec3,
} from '../../geometry';
import { bodyFor, GENERIC_BODIES, ROLE_HABITS } from '../../plan/bodies';
import { inkGeometry, type Stroke, setStrokes } from '../meshes/ink';
import { solidGeometry } from '../meshes/solid';
import { speakerParts } from '../meshes/speaker-mesh';
import { type Bin, createBin } from './bin';
import { type Kit, LAYER } from './kit';

export interface ShownSpeaker {
  speaker: SpeakerInput;
  placed: PlacedSpeaker;
  body: SpeakerBody;
  /** End of the arrow; null when the speaker has no axis. */
  tip: Vec3 | null;
}

export interface SpeakersPart {
  group: Group;
  show(
    speakers: readonly { speaker: SpeakerInput; placed: PlacedSpeaker }[],
    selected: string | null,
    hovered: string | null,
    /** Those that another one runs into. */
    runInto?: ReadonlySet<string>,
  ): void;
  shown(): readonly ShownSpeaker[];
  dispose(): void;
}

const STROKES_PER_ARROW = 5;
/** Arrows drawn at most; more speakers than a car has room for. */
const MOST_ARROWS = 64;

interface Drawn {
  group: Group;
  contour: Mesh;
  shape: string;
  bin: Bin;
}

export function createSpeakersPart(kit: Kit): SpeakersPart {
  const group = new Group();
  const bin = createBin();
  const arrows = bin.keep(inkGeometry([], STROKES_PER_ARROW * MOST_ARROWS));
  const arrowMesh = new Mesh(arrows, kit.path);
  arrowMesh.renderOrder = LAYER.path;
  arrowMesh.frustumCulled = false;
  group.add(arrowMesh);
  const drawn = new Map<string, Drawn>();
  let shown: ShownSpeaker[] = [];

  function make(body: SpeakerBody, diaphragm: number, shape: string): Drawn {
    const own = createBin();
    const solid = solidGeometry(speakerParts(body, diaphragm), false);
    const geometry = own.keep(solid.geometry);
    const holder = new Group();
    holder.matrixAutoUpdate = false;
    const contour = new Mesh(geometry, kit.contour);
    const trace = new Mesh(geometry, kit.trace);
    trace.renderOrder = LAYER.hidden;
    holder.add(new Mesh(geometry, kit.surface), contour, trace);
    group.add(holder);
    return { group: holder, contour, shape, bin: own };
  }

  function drop(id: string): void {
    const one = drawn.get(id);
    if (!one) return;
    group.remove(one.group);
    one.bin.empty();
    drawn.delete(id);
  }

  return {
    group,
    show(speakers, selected, hovered, runInto) {
      const gone = new Set(drawn.keys());
      const strokes: Stroke[] = [];
      shown = speakers.map(({ speaker, placed }) => {
        gone.delete(speaker.id);
        const body = bodyOf(speaker);
        const diaphragm = speaker.diaphragm ?? body.cutout * 0.85;
        const shape = `${body.flange}|${body.cutout}|${body.depth}|${diaphragm}`;
        if (drawn.get(speaker.id)?.shape !== shape) drop(speaker.id);
        let one = drawn.get(speaker.id);
        if (!one) {
          one = make(body, diaphragm, shape);
          drawn.set(speaker.id, one);
        }
        const axis = placed.axis ?? placed.normal ?? ([1, 0, 0] as Vec3);
        setFrame(one.group, placed.position, axis);
        const active = speaker.id === selected;
        one.contour.material =
          active || speaker.id === hovered
            ? kit.accentContour
            : runInto?.has(speaker.id)
              ? kit.blockedContour
              : kit.contour;
        const reach = Math.min(230, Math.max(120, body.flange * 1.3));
        const tip = placed.axis ? along(placed.position, placed.axis, reach) : null;
        if (tip && placed.axis) strokes.push(...arrow(placed.position, placed.axis, reach, active));
        return { speaker, placed, body, tip };
      });
      for (const id of gone) drop(id);
      setStrokes(arrows, strokes);
    },
    shown: () => shown,
    dispose() {
      for (const id of [...drawn.keys()]) drop(id);
      bin.empty();
    },
  };
}

const matrix = new Matrix4();

/** Local +Z along the axis, +Y as near the car's up as the axis allows. */
function setFrame(group: Group, at: Vec3, axis: Vec3): void {
  const { right, up } = speakerFrame(axis);
  matrix.set(
    -right[0],
    up[0],
    axis[0],
    at[0],
    -right[1],
    up[1],
    axis[1],
    at[1],
    -right[2],
    up[2],
    axis[2],
    at[2],
    0,
    0,
    0,
    1,
  );
  group.matrix.copy(matrix);
  group.matrixWorldNeedsUpdate = true;
}

function arrow(from: Vec3, axis: Vec3, reach: number, active: boolean): Stroke[] {
  const tone = active ? 'accent' : 'ink';
  const width = active ? 1.8 : 1.1;
  const pen = { tone, width, strength: active ? 1 : 0.8 } as const;
  const tip = along(from, axis, reach);
  const back = along(from, axis, reach - 26);
  const { right, up } = speakerFrame(axis);
  const barbs = [
    along(back, right, 9),
    along(back, right, -9),
    along(back, up, 9),
    along(back, up, -9),
  ];
  return [
    { start: along(from, axis, 6), end: tip, ...pen },
    ...barbs.map((barb) => ({ start: barb, end: tip, ...pen })),
  ];
}

/** A speaker's own body, or the usual one of its diaphragm or role. */
export function bodyOf(speaker: SpeakerInput): SpeakerBody {
  if (speaker.body) return speaker.body;
  const { diaphragm } = speaker;
  const usual = ROLE_HABITS[speaker.role]?.sizes[0];
  const generic = diaphragm
    ? GENERIC_BODIES.find((body) => body.diaphragm >= diaphragm)
    : GENERIC_BODIES.find((body) => body.id === usual);
  return generic ? bodyFor(generic) : { flange: 60, cutout: 50, depth: 30 };
}
