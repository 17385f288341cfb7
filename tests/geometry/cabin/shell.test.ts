import { describe, expect, it } from 'vitest';
import { bodyLines } from '../../../src/geometry/cabin/body-lines';
import type { Dimensions } from '../../../src/geometry/cabin/dimensions';
import { DIMENSIONS } from '../../../src/geometry/cabin/dimensions';
import {
  mirrorCentrePatch,
  mirrorSidedPatch,
  mirrorWords,
} from '../../../src/geometry/cabin/mirror';
import type { Panel } from '../../../src/geometry/cabin/model';
import {
  nearestOnPatch,
  patchNormal,
  patchPartials,
  pointOnPatch,
} from '../../../src/geometry/cabin/patch';
import { buildShell } from '../../../src/geometry/cabin/shell/build-shell';
import { TEMPLATES, type TemplateData } from '../../../src/geometry/cabin/templates';
import { tessellatePanel } from '../../../src/geometry/cabin/tessellate-panel';
import type { Side } from '../../../src/geometry/input';
import {
  along,
  cross,
  distance,
  dot,
  length,
  radians,
  sub,
  type Vec3,
} from '../../../src/geometry/vector';

/** For checks of thousands of cabins: a second or two alone, more on a busy machine. */
const SLOW = { timeout: 120_000 };

const template = (id: string) => TEMPLATES.find((t) => t.id === id) as TemplateData;

function answer(t: TemplateData, wheelSide: Side, change: Partial<Dimensions> = {}) {
  return buildShell(
    { ...t.dimensions, ...change },
    {
      rows: t.rows,
      wheelSide,
      thirdSideGlass: t.body.thirdSideGlass,
      templateDimensions: t.dimensions,
    },
  );
}

function panelsOf(t: TemplateData, wheelSide: Side = 'left', change: Partial<Dimensions> = {}) {
  const shell = answer(t, wheelSide, change);
  if (!shell.ok) throw new Error(`${t.id}: ${shell.error.message}`);
  return shell.panels;
}

const find = (panels: readonly Panel[], id: string): Panel => {
  const panel = panels.find((p) => p.id === id);
  if (!panel) throw new Error(`no panel ${id}`);
  return panel;
};

/** Panels the design names, in every car. */
const CENTRE =
  'screen roof rear-glass parcel-shelf dash-top-center dash-face-center console-top'.split(' ');
const SIDED =
  'pillar mirror-corner door-upper door-lower side-glass b-pillar c-pillar dash-top dash-face dash-lower kick toe-board footrest floor tunnel seat-base'.split(
    ' ',
  );

/** The seat bases lie loose in the cabin; everything else is its skin. */
const skinOf = (panels: readonly Panel[]) => panels.filter((p) => !p.id.startsWith('seat-base'));

/**
 * How often the skin winds round a point: −1 inside a closed cabin whose normals point in, 0 outside.
 * Solid angles by Van Oosterom and Strackee (IEEE Trans. Biomed. Eng. 30, 1983).
 */
function winding(triangles: Float64Array, [px, py, pz]: Vec3): number {
  let sum = 0;
  for (let i = 0; i < triangles.length; i += 9) {
    const t = (k: number) => triangles[i + k] as number;
    const [ax, ay, az] = [t(0) - px, t(1) - py, t(2) - pz];
    const [bx, by, bz] = [t(3) - px, t(4) - py, t(5) - pz];
    const [cx, cy, cz] = [t(6) - px, t(7) - py, t(8) - pz];
    const a = Math.sqrt(ax * ax + ay * ay + az * az);
    const b = Math.sqrt(bx * bx + by * by + bz * bz);
    const c = Math.sqrt(cx * cx + cy * cy + cz * cz);
    const det = ax * (by * cz - bz * cy) - ay * (bx * cz - bz * cx) + az * (bx * cy - by * cx);
    const below =
      a * b * c +
      (ax * bx + ay * by + az * bz) * c +
      (bx * cx + by * cy + bz * cz) * a +
      (cx * ax + cy * ay + cz * az) * b;
    sum += 2 * Math.atan2(det, below);
  }
  return sum / (4 * Math.PI);
}

function flat(panels: readonly Panel[]): Float64Array {
  const all: number[] = [];
  for (const panel of skinOf(panels)) {
    const mesh = tessellatePanel(panel);
    for (const t of mesh.triangles) for (const i of t) all.push(...(mesh.vertices[i] as Vec3));
  }
  return Float64Array.from(all);
}

describe('the shell', () => {
  for (const t of TEMPLATES) {
    it(`has every panel an installer looks for, each once: ${t.name}`, () => {
      const ids = panelsOf(t).map((p) => p.id);
      expect(new Set(ids).size).toBe(ids.length);
      for (const id of CENTRE) expect(ids).toContain(id);
      for (const id of SIDED) {
        expect(ids).toContain(`${id}-left`);
        expect(ids).toContain(`${id}-right`);
      }
      expect(ids.includes('rear-door-left')).toBe(t.rows === 2);
    });

    it(
      `meets without gaps, crossings or overlaps, its normals into the cabin: ${t.name}`,
      SLOW,
      () => {
        const panels = panelsOf(t);
        const triangles = flat(panels);
        for (const panel of skinOf(panels)) {
          if (panel.id.endsWith('-right')) continue;
          for (const [u, v] of [
            [0.5, 0.5],
            [0.12, 0.85],
            [0.9, 0.12],
          ] as const) {
            const p = pointOnPatch(panel.patch, u, v);
            const n = patchNormal(panel.patch, u, v);
            const where = `${panel.id} at ${u}, ${v}`;
            expect(Math.abs(winding(triangles, along(p, n, 6)) + 1), where).toBeLessThan(0.02);
            expect(Math.abs(winding(triangles, along(p, n, -6))), where).toBeLessThan(0.02);
          }
        }
      },
    );

    it(`is the exact mirror image with the wheel on the other side, but for the footrest: ${t.name}`, () => {
      const left = panelsOf(t, 'left');
      const right = panelsOf(t, 'right');
      expect(right.map((p) => p.id)).toEqual(left.map((p) => p.id));
      for (const panel of left) {
        const twin = find(right, mirrorWords(panel.id));
        if (/^(toe-board|footrest)-left$/.test(panel.id)) continue;
        const sided = /-(left|right)$/.test(panel.id);
        const image = sided ? mirrorSidedPatch(panel.patch) : mirrorCentrePatch(panel.patch);
        // toEqual tells 0 from −0; every coordinate must be the same number.
        expect(twin.patch, panel.id).toEqual(image);
        expect({ ...twin, patch: null }).toEqual({
          ...panel,
          id: mirrorWords(panel.id),
          name: mirrorWords(panel.name),
          patch: null,
        });
      }
    });
  }

  it('lays the driver’s footrest beside the kick panel in left-hand drive, beside the tunnel in right-hand drive', () => {
    const t = template('compact-hatch');
    const middle = (panels: readonly Panel[], id: string) =>
      Math.abs(pointOnPatch(find(panels, id).patch, 0.5, 0.5)[1]);
    const lhd = panelsOf(t, 'left');
    const rhd = panelsOf(t, 'right');
    expect(middle(lhd, 'footrest-left')).toBeGreaterThan(middle(lhd, 'toe-board-left'));
    expect(middle(rhd, 'footrest-right')).toBeLessThan(middle(rhd, 'toe-board-right'));
    // The passenger's strip lies at the kick panel in both.
    expect(middle(lhd, 'footrest-right')).toBeGreaterThan(middle(lhd, 'toe-board-right'));
    expect(middle(rhd, 'footrest-left')).toBeGreaterThan(middle(rhd, 'toe-board-left'));
    for (const panels of [lhd, rhd]) {
      for (const side of ['left', 'right']) {
        const { patch } = find(panels, `footrest-${side}`);
        const width = distance(pointOnPatch(patch, 0, 0), pointOnPatch(patch, 1, 0));
        expect(Math.abs(width - t.dimensions.footrestWidth)).toBeLessThan(1e-9);
      }
    }
  });

  it('runs u rearward and v upward on side panels, u outboard on sided ones across the car', () => {
    for (const t of TEMPLATES) {
      const panels = panelsOf(t);
      for (const side of ['left', 'right'] as const) {
        const out = side === 'left' ? -1 : 1;
        for (const id of [
          'pillar',
          'mirror-corner',
          'door-upper',
          'door-lower',
          'side-glass',
          'b-pillar',
          'c-pillar',
          'kick',
          'sill',
          'tunnel',
          'console-side',
        ]) {
          const { du, dv } = patchPartials(find(panels, `${id}-${side}`).patch, 0.5, 0.5);
          expect(du[0], id).toBeGreaterThan(0);
          expect(dv[2], id).toBeGreaterThan(0);
        }
        for (const id of ['dash-top', 'floor', 'footwell-floor', 'under-dash']) {
          const { du, dv } = patchPartials(find(panels, `${id}-${side}`).patch, 0.5, 0.5);
          expect(du[1] * out, id).toBeGreaterThan(0);
          expect(dv[0], id).toBeGreaterThan(0);
        }
        for (const id of ['dash-face', 'dash-lower', 'toe-board', 'footrest', 'seat-base']) {
          const { du, dv } = patchPartials(find(panels, `${id}-${side}`).patch, 0.5, 0.5);
          expect(du[1] * out, id).toBeGreaterThan(0);
          expect(dv[2], id).toBeGreaterThan(0);
        }
      }
      for (const id of ['screen', 'rear-glass', 'dash-face-center', 'rear-wall']) {
        const { du, dv } = patchPartials(find(panels, id).patch, 0.5, 0.5);
        expect(du[1] > 0 && dv[2] > 0, id).toBe(true);
      }
      for (const id of ['roof', 'parcel-shelf', 'dash-top-center', 'console-top']) {
        const { du, dv } = patchPartials(find(panels, id).patch, 0.5, 0.5);
        expect(du[1] > 0 && dv[0] > 0, id).toBe(true);
      }
    }
  });

  it('puts the headliner where the headroom says, above the seat and not only on the centreline', () => {
    for (const t of TEMPLATES) {
      for (const change of [{}, { headroom: t.dimensions.headroom + 15 }]) {
        const d = { ...t.dimensions, ...change };
        const panels = panelsOf(t, 'left', change);
        const reach = d.headroom - 102;
        const point: Vec3 = [
          d.seatReach + reach * Math.sin(radians(8)),
          -d.seatOffset,
          d.seatHeight + reach * Math.cos(radians(8)),
        ];
        const off = Math.min(
          ...['roof', 'roof-rear'].map(
            (id) => nearestOnPatch(find(panels, id).patch, point).distance,
          ),
        );
        expect(off, t.id).toBeLessThan(0.01);
      }
    }
  });

  it('bows the windscreen in plan, rakes it in section and swells it between', () => {
    const t = template('estate');
    const { patch } = find(panelsOf(t), 'screen');
    const d = t.dimensions;
    const foot = pointOnPatch(patch, 0.5, 0);
    expect(distance(foot, [d.cowlX, 0, d.cowlHeight])).toBeLessThan(1e-9);
    expect(Math.abs(pointOnPatch(patch, 0, 0)[0] - d.cowlX - d.screenBow)).toBeLessThan(1e-9);
    const top = pointOnPatch(patch, 0.5, 1);
    const rake = Math.atan2(top[0] - foot[0], top[2] - foot[2]);
    expect(Math.abs(rake - radians(d.screenSlope))).toBeLessThan(1e-9);
    const chord = along(foot, sub(top, foot), 0.5);
    expect(distance(pointOnPatch(patch, 0.5, 0.5), chord)).toBeGreaterThan(8);
  });

  it('keeps the roof free of a kink above the B-pillar', () => {
    for (const t of TEMPLATES) {
      const panels = panelsOf(t);
      const [front, rear] = [find(panels, 'roof'), find(panels, 'roof-rear')];
      for (const u of [0.2, 0.5]) {
        const turn = dot(patchNormal(front.patch, u, 1), patchNormal(rear.patch, u, 0));
        expect(turn, t.id).toBeGreaterThan(Math.cos(radians(1.5)));
      }
    }
  });

  it('crowns the roof and leans the side glass inward', () => {
    for (const t of TEMPLATES) {
      const panels = panelsOf(t);
      const roof = find(panels, 'roof').patch;
      const [edge, middle] = [pointOnPatch(roof, 0, 1), pointOnPatch(roof, 0.5, 1)];
      expect(Math.abs(middle[2] - edge[2] - t.dimensions.roofCrown), t.id).toBeLessThan(0.01);
      const n = patchNormal(find(panels, 'side-glass-left').patch, 0.5, 0.5);
      expect(n[1], t.id).toBeGreaterThan(0.8);
      expect(n[2], t.id).toBeLessThan(0);
    }
  });

  it('knows of every panel its material, and of every mountable one what goes there', () => {
    for (const p of panelsOf(template('large-saloon'))) {
      expect(p.reflectivity, p.id).toBeGreaterThan(0);
      expect(p.reflectivity, p.id).toBeLessThanOrEqual(1);
      expect(p.name, p.id).not.toMatch(/[_A-Z]{2}|-left|-right|center/);
      expect(p.mountable ? p.roles.length > 0 : p.roles.length === 0, p.id).toBe(true);
      if (p.material === 'glass') {
        expect([p.mountable, p.depthBehind, p.airspaceBehind], p.id).toEqual([false, null, null]);
      } else if (p.mountable) expect(p.depthBehind, p.id).toBeGreaterThan(0);
    }
    const deep = panelsOf(template('large-saloon'), 'left', { doorThickness: 61 });
    expect(find(deep, 'door-lower-left').depthBehind).toBe(61);
  });

  it('is drawn with its whole car round it, the outline outside the cabin', () => {
    for (const t of TEMPLATES) {
      const lines = bodyLines(t.dimensions, t);
      const ids = lines.map((l) => l.id);
      for (const id of [
        'profile',
        'tyre-front-left',
        'tyre-rear-right',
        'shoulder-left',
        'nose',
        'tail',
      ]) {
        expect(ids, t.id).toContain(id);
      }
      for (const line of lines) {
        for (const p of line.points)
          expect(p.every(Number.isFinite), `${t.id} ${line.id}`).toBe(true);
      }
      const profile = lines.find((l) => l.id === 'profile')?.points ?? [];
      const roof = find(panelsOf(t), 'roof').patch;
      const highest = Math.max(...[0.2, 0.5, 1].map((v) => pointOnPatch(roof, 0.5, v)[2]));
      expect(Math.max(...profile.map((p) => p[2])), t.id).toBeGreaterThan(highest + 20);
    }
  });
});

describe('dimensions at their extremes', () => {
  /** A panel that folds over itself has normals that turn against its middle's. */
  function folded(panel: Panel): boolean {
    const middle = patchNormal(panel.patch, 0.5, 0.5);
    for (const u of [0.03, 0.5, 0.97]) {
      for (const v of [0.03, 0.5, 0.97]) {
        const { du, dv } = patchPartials(panel.patch, u, v);
        const n = cross(du, dv);
        const l = length(n);
        if (!(l > 1) || !Number.isFinite(l)) return true;
        if ((panel.patch.facing * dot(n, middle)) / l < 0.02) return true;
      }
    }
    return false;
  }

  function check(t: TemplateData, change: Partial<Dimensions>): 'closed' | 'refused' {
    const said = `${t.id} ${JSON.stringify(change)}`;
    const shell = answer(t, 'left', change);
    if (!shell.ok) {
      const { message, path } = shell.error;
      const named =
        /^(\w+) \(-?[\d.]+(?: mm|°)\) and (\w+) \(-?[\d.]+(?: mm|°)\) disagree: [^.]+$/.exec(
          message,
        );
      const [first, second] = [named?.[1] as keyof Dimensions, named?.[2] as keyof Dimensions];
      expect(
        DIMENSIONS.some((d) => d.id === first),
        `${said}: ${message}`,
      ).toBe(true);
      expect(DIMENSIONS.some((d) => d.id === second) && first !== second, said).toBe(true);
      expect(first in change || second in change, `${said}: ${message}`).toBe(true);
      expect(path).toBe(`cabin.dimensions.${first}`);
      return 'refused';
    }
    for (const panel of shell.panels) {
      if (!panel.id.endsWith('-right') && folded(panel))
        throw new Error(`${said}: ${panel.id} folds`);
    }
    return 'closed';
  }

  it('one at a time close the cabin or name two that disagree, in every car', SLOW, () => {
    const count = { closed: 0, refused: 0 };
    for (const t of TEMPLATES) {
      for (const { id, min, max } of DIMENSIONS) {
        for (const value of [min, max]) count[check(t, { [id]: value })]++;
      }
    }
    // Were everything refused, nothing would have been shown.
    expect(count.closed).toBeGreaterThan(600);
  });

  // Every pair in one car; in the others a share of them, each another share.
  const STRIDE: Record<string, number> = { 'compact-hatch': 1, 'two-seat-coupe': 3 };
  for (const t of TEMPLATES) {
    const stride = STRIDE[t.id] ?? 9;
    const offset = TEMPLATES.indexOf(t) % stride;
    it(
      `two at a time do so too: ${t.name}${stride > 1 ? `, one pair in ${stride}` : ''}`,
      SLOW,
      () => {
        let [k, closed] = [0, 0];
        DIMENSIONS.forEach((a, i) => {
          for (const b of DIMENSIONS.slice(i + 1)) {
            for (const x of [a.min, a.max]) {
              for (const y of [b.min, b.max]) {
                if (k++ % stride === offset && check(t, { [a.id]: x, [b.id]: y }) === 'closed')
                  closed++;
              }
            }
          }
        });
        expect(closed).toBeGreaterThan((0.2 * k) / stride);
      },
    );
  }

  it('that are accepted leave every head inside one closed skin', SLOW, () => {
    const t = template('compact-hatch');
    const d = t.dimensions;
    const head: Vec3 = [d.seatReach + 100, -d.seatOffset, d.seatHeight + 630];
    const moves = new Set(['seatHeight', 'seatReach', 'seatOffset', 'headroom']);
    let seen = 0;
    for (const { id, min, max } of DIMENSIONS) {
      if (moves.has(id)) continue;
      for (const value of [min, max]) {
        const shell = answer(t, 'left', { [id]: value });
        if (!shell.ok) continue;
        seen++;
        expect(Math.abs(winding(flat(shell.panels), head) + 1), `${id} = ${value}`).toBeLessThan(
          0.01,
        );
      }
    }
    expect(seen).toBeGreaterThan(35);
  });
});
