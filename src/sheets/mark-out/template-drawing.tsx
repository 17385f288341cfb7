import type { Ellipse, MarkTemplate, Point2 } from '../../geometry';

/** mm; a cross of hair lines. */
const CROSS = 9;
const TEXT = 3.2;

/** In holes of this radius the ways to the points are drawn inside, mm: the page then holds more. */
const ROOMY = 32;

const isRoomy = ({ cutout, middle }: MarkTemplate): boolean =>
  cutout !== null && cutout.half[1] >= ROOMY && Math.sqrt(middle[0] ** 2 + middle[1] ** 2) < 12;

/** What is drawn, with marks and words round it, mm about the origin. */
export function templateBounds(template: MarkTemplate): { low: Point2; high: Point2 } {
  const side = isRoomy(template) || template.rays.length === 0 ? 4 : 15;
  const { low, high } = template;
  return { low: [low[0] - side, low[1] - side], high: [high[0] + side, high[1] + 15] };
}

/** What the words on the drawing itself are; the rest is in the legend. */
export interface TemplateWords {
  /** "up", "front": where 12 o'clock leads. */
  up: string;
  spot: string;
}

export interface TemplateDrawingProps {
  template: MarkTemplate;
  words: TemplateWords;
}

/** Everything is given with y up; the page's y goes down. */
const at = ([x, y]: Point2): string => `${x.toFixed(3)} ${(-y).toFixed(3)}`;

/** The shapes of a template at true size, in mm about the spot; goes into an `<svg>` of any window. */
export function TemplateDrawing({ template, words }: TemplateDrawingProps) {
  const { cutout, flange, ring, screwCircle, screws, lean, middle, rays } = template;
  const roomy = isRoomy(template);
  return (
    <g className="template">
      {ring && <Round className="template-ring" of={ring} />}
      <Round className="template-flange" of={flange} />
      <Round className="template-screw-circle" of={screwCircle} />
      {cutout && <Round className="template-cutout" of={cutout} />}
      {screws.map((screw) => (
        <path key={at(screw)} className="template-screw" d={crossAt(screw, 2.5)} />
      ))}
      {lean && (
        <Aim from={middle} to={along(middle, lean.way, reach(ring ?? flange, lean.way) + 4)} />
      )}
      {placeRays(template, roomy).map(({ reference, from, badge }, i) => (
        <Ray key={reference} number={i + 1} from={from} badge={badge} />
      ))}
      <UpMark
        at={[0, template.high[1]]}
        words={words.up}
        toLeft={rays.some(({ way: [x, y] }) => x > 0 && y > 0.5)}
      />
      {lean && <path className="template-middle" d={crossAt(middle, 4)} />}
      <path className="template-spot" d={crossAt([0, 0], CROSS)} />
      <circle className="template-spot" r={1.5} />
      {lean && (
        <text className="template-text" x={2} y={TEXT + 1} fontSize={TEXT}>
          {words.spot}
        </text>
      )}
    </g>
  );
}

const along = ([x, y]: Point2, [dx, dy]: Point2, far: number): Point2 => [
  x + dx * far,
  y + dy * far,
];

const crossAt = ([x, y]: Point2, arm: number): string =>
  `M${at([x - arm, y])}L${at([x + arm, y])}M${at([x, y - arm])}L${at([x, y + arm])}`;

function Round({ of: { centre, half, turnDeg }, className }: { of: Ellipse; className: string }) {
  return (
    <ellipse
      className={className}
      cx={centre[0]}
      cy={-centre[1]}
      rx={half[0]}
      ry={half[1]}
      transform={`rotate(${-turnDeg} ${centre[0]} ${-centre[1]})`}
    />
  );
}

/** From an ellipse's middle to its edge that way, mm. */
export function reach({ half: [long, short], turnDeg }: Ellipse, [x, y]: Point2): number {
  const turn = (turnDeg * Math.PI) / 180;
  const a = x * Math.cos(turn) + y * Math.sin(turn);
  const b = -x * Math.sin(turn) + y * Math.cos(turn);
  return 1 / Math.sqrt((a / long) ** 2 + (b / short) ** 2);
}

/** How far from the spot, that way, what is drawn ends, mm. */
function edgeFromSpot({ ring, flange, middle }: MarkTemplate, way: Point2): number {
  const of = ring ?? flange;
  const holds = ([x, y]: Point2) => {
    const [dx, dy] = [x - middle[0], y - middle[1]];
    const size = Math.sqrt(dx * dx + dy * dy);
    return size === 0 || size < reach(of, [dx / size, dy / size]);
  };
  // In steps, since the spot may lie anywhere in the outermost edge, or outside it.
  let far = 0;
  for (let mm = 1; mm <= FARTHEST; mm++) if (holds(along([0, 0], way, mm))) far = mm;
  return far;
}

/** No ring is larger, mm. */
const FARTHEST = 1500;

/** mm. */
const BADGE = 2.6;

interface PlacedRay {
  reference: string;
  from: Point2;
  badge: Point2;
}

/** Rays with their numbers, those of rays close together one behind the other. */
function placeRays(template: MarkTemplate, roomy: boolean): PlacedRay[] {
  const placed: PlacedRay[] = [];
  for (const { reference, way } of template.rays) {
    const start = roomy ? CROSS + 2 : edgeFromSpot(template, way) + 2;
    let far = start + 8.5;
    const near = (badge: Point2) =>
      placed.some((one) => {
        const [dx, dy] = [one.badge[0] - badge[0], one.badge[1] - badge[1]];
        return dx * dx + dy * dy < (2 * BADGE + 0.4) ** 2;
      });
    while (near(along([0, 0], way, far))) far += 1;
    placed.push({
      reference,
      from: along([0, 0], way, start),
      badge: along([0, 0], way, far),
    });
  }
  return placed;
}

/** The way to a tape's reference point: laid toward it, the template is turned right. */
function Ray({ number, from, badge }: { number: number; from: Point2; badge: Point2 }) {
  const [dx, dy] = [badge[0] - from[0], badge[1] - from[1]];
  const size = Math.sqrt(dx * dx + dy * dy) || 1;
  return (
    <g>
      <path
        className="template-ray"
        d={`M${at(from)}L${at(along(from, [dx / size, dy / size], size - BADGE))}`}
      />
      <circle className="template-badge" cx={badge[0]} cy={-badge[1]} r={BADGE} />
      <text
        className="template-text"
        x={badge[0]}
        y={-badge[1] + 1.1}
        fontSize={TEXT}
        textAnchor="middle"
      >
        {number}
      </text>
    </g>
  );
}

/** Which way the axis leans over the panel: a chain line with an arrow. */
function Aim({ from, to }: { from: Point2; to: Point2 }) {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const size = Math.sqrt(dx * dx + dy * dy) || 1;
  const [ux, uy] = [dx / size, dy / size];
  const back = (side: number): Point2 => [
    to[0] - ux * 4 - uy * side * 1.6,
    to[1] - uy * 4 + ux * side * 1.6,
  ];
  return (
    <g>
      <path className="template-aim" d={`M${at(from)}L${at(to)}`} />
      <path className="template-aim-head" d={`M${at(back(1))}L${at(to)}L${at(back(-1))}`} />
    </g>
  );
}

interface UpMarkProps {
  at: Point2;
  words: string;
  /** Where numbers stand to the right of it. */
  toLeft: boolean;
}

function UpMark({ at: [x, y], words, toLeft }: UpMarkProps) {
  const top = y + 11;
  return (
    <g>
      <path
        className="template-up"
        d={`M${at([x, y + 3])}L${at([x, top])}M${at([x - 2, top - 3])}L${at([x, top])}L${at([x + 2, top - 3])}`}
      />
      <text
        className="template-text"
        x={toLeft ? x - 3 : x + 3}
        y={-(y + 7)}
        fontSize={TEXT}
        textAnchor={toLeft ? 'end' : 'start'}
      >
        {words}
      </text>
    </g>
  );
}
