/** The sound on its way from every speaker: spheres, drawn only while they are looked at. */
import { Group, Mesh, SphereGeometry } from 'three';
import {
  type CabinModel,
  comeRound,
  radiusAt,
  type Seat,
  type SlowMotion,
  type Wave,
} from '../../geometry';
import { polyline } from '../meshes/ink';
import { createWavesLook } from '../shading/waves-look';
import { waveBounds } from '../waves/wave-bounds';
import { createBin } from './bin';
import { type Kit, LAYER } from './kit';
import { strokeSheet } from './stroke-sheet';

export interface WavesPart {
  group: Group;
  /** Takes up what is on its way, or with `null` lets all of it go. */
  show(motion: SlowMotion | null, seat: Seat | null, cabin: CabinModel | null): void;
  /** Puts every wave where it is at `time`, ms. */
  at(time: number): void;
  /** How waves are painted: coming, past, behind what stands before them. */
  look: ReturnType<typeof createWavesLook>;
  /** Radius of each wave drawn, mm, by speaker. */
  drawn(): ReadonlyMap<string, number>;
  dispose(): void;
}

/** mm; a mark, not a body. */
const DOT = 16;

const WAY = { tone: 'quiet-ink', width: 1.2, strength: 0.8 } as const;

interface DrawnWave {
  wave: Wave;
  shell: Mesh;
  /** What shows of it through what stands before it. */
  behind: Mesh;
  dot: Mesh;
  /** When what arrives is at the middle of the head. */
  there: number;
}

export function createWavesPart(kit: Kit): WavesPart {
  const look = createWavesLook(kit);
  const group = new Group();
  const bin = createBin();
  /** The ways round what stands in between. */
  const ways = strokeSheet([[kit.marks, LAYER.marks]]);
  let shown: SlowMotion | null = null;
  let waves: DrawnWave[] = [];

  function clear(): void {
    bin.empty();
    group.clear();
    waves = [];
    shown = null;
  }

  return {
    group,
    look,
    show(motion, seat, cabin) {
      group.visible = motion !== null && seat !== null && cabin !== null;
      if (!motion || !seat || !cabin) {
        if (shown) clear();
        return;
      }
      look.within(waveBounds(cabin), seat.head[2]);
      if (motion === shown) return;
      clear();
      shown = motion;
      const ball = bin.keep(new SphereGeometry(1, 96, 64));
      ways.draw(motion.waves.flatMap(({ round }) => (round ? polyline(round, false, WAY) : [])));
      group.add(...ways.meshes);
      waves = motion.waves.map((wave) => {
        const [shell, behind, dot] = [new Mesh(ball), new Mesh(ball), new Mesh(ball)];
        for (const one of [shell, behind]) {
          one.position.set(...wave.centre);
          one.renderOrder = LAYER.wave;
        }
        behind.material = look.comingBehind[wave.side ?? 'neither'];
        dot.renderOrder = LAYER.marks;
        dot.material = look.dots[wave.side ?? 'neither'];
        dot.scale.setScalar(DOT);
        group.add(behind, shell, dot);
        const reach = motion.reaches.find(
          ({ speaker, at }) => speaker === wave.speaker && at === 'head',
        );
        return { wave, shell, behind, dot, there: reach?.time ?? 0 };
      });
    },
    at(time) {
      if (!shown) return;
      for (const { wave, shell, behind, dot, there } of waves) {
        const radius = radiusAt(wave, time, shown.speed);
        shell.visible = radius > 0;
        behind.visible = radius > 0 && time < there;
        for (const one of [shell, behind]) one.scale.setScalar(Math.max(radius, 1e-3));
        const { past, coming } = look;
        shell.material = (time >= there ? past : coming)[wave.side ?? 'neither'];
        const come = comeRound(wave, time, shown.speed);
        dot.visible = come !== null;
        if (come) dot.position.set(...come.at);
      }
    },
    drawn: () =>
      new Map(
        waves.flatMap(({ wave, shell }) =>
          group.visible && shell.visible ? [[wave.speaker, shell.scale.x]] : [],
        ),
      ),
    dispose() {
      clear();
      ways.dispose();
      look.dispose();
    },
  };
}
