import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { dimensionLines } from '../../../src/geometry/cabin/dimension-lines';
import {
  DIMENSIONS,
  dimensionInfo,
  resolveDimensions,
} from '../../../src/geometry/cabin/dimensions';
import { buildShell } from '../../../src/geometry/cabin/shell/build-shell';
import { getTemplate, TEMPLATES } from '../../../src/geometry/cabin/templates';
import { distance, sub } from '../../../src/geometry/vector';

const folder = new URL('../../../vehicle-templates/', import.meta.url);
const hatch = TEMPLATES.find((t) => t.id === 'compact-hatch') as (typeof TEMPLATES)[number];

/** Every dimension the design names; a name lost here is a plan that no longer opens. */
const NAMED =
  'seatHeight seatReach seatOffset torsoAngle seatTravel headroom occupantHeight shoulderRoom hipRoom cowlWidth footwellWidth wheelReach wheelHeight wheelDiameter wheelTilt cowlX cowlHeight screenSlope headerX roofHeight roofCrown screenBow beltHeight sideGlassTumblehome pillarWidth mirrorCornerLength doorLength doorThickness dashDepth dashHeight dashFaceSlope dashLowerEdge binnacleHeight toeBoardSlope kickLength kickHeight kickSplay sillHeight footrestWidth tunnelWidth tunnelHeight consoleWidth consoleHeight consoleLength secondRowDistance rearSeatOffset rearSeatHeight bPillarX cPillarWidth rearGlassSlope shelfHeight tailX'.split(
    ' ',
  );

describe('the table of dimensions', () => {
  it('knows every dimension by name, once', () => {
    expect(DIMENSIONS.map((d) => d.id).sort()).toEqual([...NAMED].sort());
  });

  it('says of each in one sentence how to measure it, within a range that means something', () => {
    for (const d of DIMENSIONS) {
      expect(d.max, d.id).toBeGreaterThan(d.min);
      expect(d.measure, d.id).toMatch(/^[A-Z].{25,}\.$/s);
      expect(d.measure.slice(0, -1), d.id).not.toMatch(/\. [A-Z]/);
      expect(d.label.length, d.id).toBeLessThan(30);
    }
  });

  it('is explained in the folder of the templates', () => {
    const page = readFileSync(new URL('README.md', folder), 'utf8').replace(/ +/g, ' ');
    for (const d of DIMENSIONS) {
      expect(page, d.id).toContain(`| \`${d.id}\` | ${d.label} |`);
      expect(page, d.id).toContain(d.measure);
    }
  });
});

describe('the templates', () => {
  it('are the twelve body styles, one file each', () => {
    const files = readdirSync(folder).filter((f) => f.endsWith('.json'));
    expect(TEMPLATES.map((t) => `${t.id}.json`).sort()).toEqual(files.sort());
    expect(TEMPLATES).toHaveLength(12);
    expect(new Set(TEMPLATES.map((t) => t.name)).size).toBe(12);
  });

  it('give every dimension a value inside its range, and say where it comes from', () => {
    for (const t of TEMPLATES) {
      expect(Object.keys(t.dimensions).sort(), t.id).toEqual([...NAMED].sort());
      for (const d of DIMENSIONS) {
        const value = t.dimensions[d.id];
        expect(value >= d.min && value <= d.max, `${t.id} ${d.id} = ${value}`).toBe(true);
      }
      expect(t.note).toBe('typical value, from memory; measure the car');
    }
  });

  it('describe the car round the cabin well enough to draw it', () => {
    for (const { id, rows, manual, body, dimensions } of TEMPLATES) {
      expect([1, 2], id).toContain(rows);
      expect(typeof manual, id).toBe('boolean');
      expect(body.width, id).toBeGreaterThan(dimensions.shoulderRoom + 100);
      expect(body.groundZ, id).toBeLessThan(-150);
      expect(body.noseX, id).toBeLessThan(body.frontAxleX - body.tyreDiameter / 2);
      const last = body.tail[body.tail.length - 1] as readonly [number, number];
      expect(last[0], id).toBeGreaterThan(body.frontAxleX + body.wheelbase);
      for (const p of body.tail) expect(p, id).toHaveLength(2);
      expect(typeof body.thirdSideGlass, id).toBe('boolean');
    }
  });

  it('are found by id, and by no other name', () => {
    expect(getTemplate('estate')?.name).toBe('Estate');
    for (const id of ['', 'Estate', '__proto__', 'constructor']) expect(getTemplate(id)).toBeNull();
  });
});

describe('overrides', () => {
  it('replace the template’s value and leave the rest and the template alone', () => {
    const before = structuredClone(hatch);
    const answer = resolveDimensions(hatch, { seatHeight: 280, kickSplay: 0 });
    expect(answer).toEqual({
      ok: true,
      dimensions: { ...hatch.dimensions, seatHeight: 280, kickSplay: 0 },
    });
    expect(hatch).toEqual(before);
    expect(resolveDimensions(hatch)).toEqual({ ok: true, dimensions: hatch.dimensions });
  });

  it.each([
    [{ seatHight: 280 }, 'cabin.dimensions.seatHight', 'there is no dimension called "seatHight"'],
    [{ seatHeight: '280' }, 'cabin.dimensions.seatHeight', 'must be a number (mm), got "280"'],
    [{ seatHeight: Number.NaN }, 'cabin.dimensions.seatHeight', 'must be a number (mm), got NaN'],
    [{ torsoAngle: null }, 'cabin.dimensions.torsoAngle', 'must be a number (degrees), got null'],
    [
      { kickSplay: {} },
      'cabin.dimensions.kickSplay',
      'must be a number (degrees), got something else',
    ],
    [{ tailX: 1e308 }, 'cabin.dimensions.tailX', 'must be between 900 and 4000 mm, got 1e+308'],
    [{ kickSplay: -1 }, 'cabin.dimensions.kickSplay', 'must be between 0 and 30 degrees, got -1'],
    [
      { constructor: 1 },
      'cabin.dimensions.constructor',
      'there is no dimension called "constructor"',
    ],
  ])('that cannot be are refused in one sentence: %o', (overrides, path, message) => {
    expect(resolveDimensions(hatch, overrides)).toEqual({ ok: false, error: { path, message } });
  });
});

describe('dimension lines', () => {
  const NOT_TAPED = ['occupantHeight'];
  const SECOND_ROW = ['secondRowDistance', 'rearSeatOffset', 'rearSeatHeight'];

  for (const t of TEMPLATES) {
    it(`show where the tape goes in the ${t.name}, and are as long as the dimension says`, () => {
      const shell = buildShell(t.dimensions, {
        rows: t.rows,
        wheelSide: 'left',
        thirdSideGlass: t.body.thirdSideGlass,
      });
      if (!shell.ok) throw new Error(shell.error.message);
      const lines = dimensionLines(t.dimensions, shell.panels);
      const shown = new Set(lines.map((l) => l.dimension));
      const missing = NAMED.filter((id) => !shown.has(id));
      expect(missing.sort()).toEqual([...NOT_TAPED, ...(t.rows === 1 ? SECOND_ROW : [])].sort());
      for (const { dimension, from, to, view } of lines) {
        const info = dimensionInfo(dimension);
        if (!info) throw new Error(`no dimension ${dimension}`);
        const value = t.dimensions[info.id];
        if (info.unit === 'mm') {
          // The tape stops at the headliner; the code adds 102 mm.
          const expected = dimension === 'headroom' ? value - 102 : Math.abs(value);
          expect(Math.abs(distance(from, to) - expected), dimension).toBeLessThan(0.5);
          continue;
        }
        const [dx, dy, dz] = sub(to, from);
        const [run, rise] =
          view === 'front'
            ? [dy, dz]
            : view === 'plan'
              ? [dy, dx]
              : dimension === 'toeBoardSlope'
                ? [dz, dx]
                : [dx, dz];
        const angle = (Math.atan(Math.abs(run / rise)) * 180) / Math.PI;
        expect(Math.abs(angle - Math.abs(value)), `${dimension} ${angle}`).toBeLessThan(0.2);
      }
    });
  }
});
