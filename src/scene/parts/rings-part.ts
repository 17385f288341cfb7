/** The wedge rings speakers stand on. Moved in place while dragged: their faces are the same ones. */
import { Group, Mesh } from 'three';
import {
  formOfSpeaker,
  inputOfSpeaker,
  type MeshShape,
  type PlacedSpeaker,
  placeOfSpeaker,
  ringInCar,
  type SpeakerInput,
} from '../../geometry';
import { type Solid, solidGeometry } from '../meshes/solid';
import { type Bin, createBin } from './bin';
import type { Kit } from './kit';

export interface RingsPart {
  group: Group;
  show(speakers: readonly { speaker: SpeakerInput; placed: PlacedSpeaker }[]): void;
  /** How many are drawn. */
  shown(): number;
  dispose(): void;
}

/** Faces round a drawn ring: enough for the eye, a third of what is printed. */
const AROUND = 48;

interface Drawn {
  of: SpeakerInput;
  at: PlacedSpeaker;
  solid: Solid;
  group: Group;
  bin: Bin;
}

export function createRingsPart(kit: Kit): RingsPart {
  const group = new Group();
  const drawn = new Map<string, Drawn>();

  function drop(id: string): void {
    const one = drawn.get(id);
    if (!one) return;
    group.remove(one.group);
    one.bin.empty();
    drawn.delete(id);
  }

  function make(speaker: SpeakerInput, placed: PlacedSpeaker, mesh: MeshShape): void {
    const bin = createBin();
    const solid = solidGeometry([{ tone: 'speaker-basket', mesh }], false);
    const geometry = bin.keep(solid.geometry);
    const holder = new Group();
    holder.add(new Mesh(geometry, kit.surface), new Mesh(geometry, kit.contour));
    group.add(holder);
    drawn.set(speaker.id, { of: speaker, at: placed, solid, group: holder, bin });
  }

  return {
    group,
    show(speakers) {
      const gone = new Set(drawn.keys());
      for (const { speaker, placed } of speakers) {
        if (!speaker.ring) continue;
        const known = drawn.get(speaker.id);
        if (known?.of === speaker && known.at === placed) {
          gone.delete(speaker.id);
          continue;
        }
        const mesh = meshOf(speaker, placed);
        if (!mesh) continue;
        gone.delete(speaker.id);
        if (known?.solid.reshape([{ tone: 'speaker-basket', mesh }])) {
          known.of = speaker;
          known.at = placed;
          continue;
        }
        drop(speaker.id);
        make(speaker, placed, mesh);
      }
      for (const id of gone) drop(id);
    },
    shown: () => drawn.size,
    dispose() {
      for (const id of [...drawn.keys()]) drop(id);
    },
  };
}

/** `null` where there is no such ring: a speaker with too little stand-off stands on none. */
function meshOf(speaker: SpeakerInput, placed: PlacedSpeaker): MeshShape | null {
  const [input, place] = [inputOfSpeaker(speaker), placeOfSpeaker(speaker, placed)];
  const answer = formOfSpeaker(speaker, placed);
  return input && place && answer?.ok ? ringInCar(input, place, answer.ring, AROUND) : null;
}
