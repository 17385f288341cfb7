import type {
  Aim,
  CrossoverInput,
  DriveUnit,
  Mount,
  Role,
  SealedPocket,
  Side,
  SpeakerBody,
  SpeakerInput,
  Vec3,
} from '../geometry';
import type { Plan } from './types';

/** Between the heads of the two front seats: both sides of a pair aimed here are mirror images. */
const BETWEEN_THE_HEADS: Vec3 = [900, 0, 880];

interface Unit {
  role: Role;
  bandHz: readonly [number, number];
  diaphragm: number;
  body: SpeakerBody;
  smallSignal?: DriveUnit;
}

/** Middles of the generic bodies' ranges: typical values, from memory. */
const TWEETER: Unit = {
  role: 'tweeter',
  bandHz: [2500, 20000],
  diaphragm: 25,
  body: { flange: 50, cutout: 45, depth: 18 },
};
const MIDRANGE: Unit = {
  role: 'midrange',
  bandHz: [300, 2500],
  diaphragm: 58,
  body: { flange: 84, cutout: 75, depth: 42 },
};
const MIDBASS: Unit = {
  role: 'midbass',
  bandHz: [60, 300],
  diaphragm: 130,
  body: { flange: 158, cutout: 136, depth: 55 },
  smallSignal: { resonanceHz: 56, q: 0.4, vasLitres: 11 },
};

/** The left and right speaker of a unit on mirrored spots; `panel` without its side. */
function pair(unit: Unit, { panel, ...spot }: Mount, aim: Aim): SpeakerInput[] {
  return (['left', 'right'] as const).map((side: Side) => ({
    id: `${unit.role}-${side}`,
    pair: unit.role,
    side,
    mount: { panel: `${panel}-${side}`, ...spot },
    aim,
    ...unit,
  }));
}

/** What both options have in common, so that only the mids tell them apart. */
const tweeters = () =>
  pair(
    TWEETER,
    { panel: 'pillar', u: 0.5, v: 0.45, standoff: 15 },
    { kind: 'point', point: BETWEEN_THE_HEADS },
  );
const midbasses = () =>
  pair(MIDBASS, { panel: 'door-lower', u: 0.12, v: 0.3, standoff: 8 }, { kind: 'normal' });

/** Sealed boxes in the doors; in the right one something stands in the upper rear corner. */
const pockets = (): SealedPocket[] => [
  {
    id: 'pocket-left',
    panel: 'door-lower-left',
    outline: [
      [0.03, 0.04],
      [0.46, 0.04],
      [0.46, 0.82],
      [0.03, 0.82],
    ],
    depth: 66,
    lies: 'behind',
    wall: 6,
    speakers: ['midbass-left'],
  },
  {
    id: 'pocket-right',
    panel: 'door-lower-right',
    outline: [
      [0.03, 0.04],
      [0.4, 0.04],
      [0.4, 0.5],
      [0.26, 0.82],
      [0.03, 0.82],
    ],
    depth: 60,
    lies: 'behind',
    wall: 6,
    speakers: ['midbass-right'],
  },
];

/** Hand-overs where the bands meet. */
const crossovers = (): CrossoverInput[] => [
  { below: 'midbass', above: 'midrange', family: 'linkwitz-riley', order: 4, frequencyHz: 300 },
  { below: 'midrange', above: 'tweeter', family: 'linkwitz-riley', order: 4, frequencyHz: 2500 },
];

/** The plan that opens on first start. All of it is invented; a test holds its story to the engine. */
export function demoPlan(): Plan {
  return {
    format: 'earpath-plan',
    version: 1,
    title: 'Demo estate',
    story:
      'Tweeters and midbasses stay where they are in both options; only the mids move. In pods on ' +
      'the pillars nothing stands between them and the driver, who sits within 25° of their axis, but the left one is ' +
      'about 440 mm nearer; flush in the kick panels that falls to about 300 mm, yet both look ' +
      'well past the driver, and the legs of the people in front stand before both.',
    air: { temperatureC: 20, relativeHumidityPercent: 50, pressureKPa: 101.325 },
    cabin: { template: 'estate', wheelSide: 'left' },
    seats: [],
    options: [
      {
        id: 'a',
        title: 'Mids on the pillars',
        speakers: [
          ...tweeters(),
          ...pair(
            MIDRANGE,
            { panel: 'pillar', u: 0.4, v: 0.25, standoff: 60 },
            { kind: 'point', point: BETWEEN_THE_HEADS },
          ),
          ...midbasses(),
        ],
        crossovers: crossovers(),
        pockets: pockets(),
      },
      {
        id: 'b',
        title: 'Mids in the kick panels',
        speakers: [
          ...tweeters(),
          ...pair(MIDRANGE, { panel: 'kick', u: 0.4, v: 0.5, standoff: 5 }, { kind: 'normal' }),
          ...midbasses(),
        ],
        crossovers: crossovers(),
        pockets: pockets(),
      },
    ],
    alignment: {
      seat: 'front-left',
      sampleRateHz: 48000,
      seats: [
        { id: 'front-left', weight: 2 },
        { id: 'front-right', weight: 1 },
      ],
    },
  };
}
