import { describe, expect, it } from 'vitest';
import { DIMENSIONS, dimensionInfo, TEMPLATES } from '../../src/geometry';
import { groupsOf } from '../../src/workbench/dimensions/groups';
import { inWords, showDimension, showRange } from '../../src/workbench/dimensions/show-dimension';

const ids = (template: string, filter?: string) =>
  groupsOf(template, filter).flatMap(({ dimensions }) => dimensions.map(({ id }) => id));

const info = (id: string) => {
  const found = dimensionInfo(id);
  if (!found) throw new Error(`no dimension ${id}`);
  return found;
};

describe('the list of dimensions', () => {
  it('holds every dimension of a car with two rows, each once, in walking order', () => {
    expect(ids('estate')).toEqual(DIMENSIONS.map(({ id }) => id));
  });

  it('leaves the second row out where there is none', () => {
    const oneRow = TEMPLATES.filter(({ rows }) => rows === 1);
    expect(oneRow.length).toBeGreaterThan(0);
    for (const { id } of oneRow) {
      expect(ids(id)).not.toContain('secondRowDistance');
      expect(ids(id)).toContain('rearGlassSlope');
    }
  });

  it('is empty for a plan without a template', () => {
    expect(ids('none')).toEqual([]);
  });

  it('finds a dimension by its trade code, by words of its name and by what moves with it', () => {
    expect(ids('estate', 'H30')).toEqual(['seatHeight']);
    expect(ids('estate', 'wheel height heel')).toEqual([]);
    expect(ids('estate', 'above heel wheel')).toContain('wheelHeight');
    expect(ids('estate', 'ears')).toContain('occupantHeight');
    expect(ids('estate', 'nothing like it')).toEqual([]);
  });
});

describe('a dimension in words', () => {
  it('is shown in the user’s length unit, angles in degrees whatever that is', () => {
    expect(showDimension(info('seatHeight'), 270, 'mm')).toBe('270 mm');
    expect(showDimension(info('seatHeight'), 254, 'in')).toBe('10.00 in');
    expect(showDimension(info('torsoAngle'), 24, 'in')).toBe('24°');
    expect(showDimension(info('torsoAngle'), 24.5, 'mm')).toBe('24.5°');
  });

  it('is called in a refusal as it is called on screen', () => {
    expect(inWords('seatHeight (120 mm) and bPillarX (985 mm) disagree: no seat')).toBe(
      'seat height (120 mm) and B-pillar from heel (985 mm) disagree: no seat',
    );
  });

  it('has its range beside it', () => {
    const { min, max } = info('seatHeight');
    expect(showRange(info('seatHeight'), 'mm')).toBe(`${min} mm to ${max} mm`);
  });
});
