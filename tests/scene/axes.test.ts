import { Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { carRoot, toCar, toThree } from '../../src/scene/axes';

describe('car axes in three', () => {
  it('looks forward along −z, right along x and up along y', () => {
    expect(toThree([-1, 0, 0], new Vector3()).toArray()).toEqual([0, 0, -1]);
    expect(toThree([0, 1, 0], new Vector3()).toArray()).toEqual([1, 0, 0]);
    expect(toThree([0, 0, 1], new Vector3()).toArray()).toEqual([0, 1, 0]);
  });

  it('turns a point at the root exactly as it turns one by itself, and back', () => {
    const point = [120, -340, 560] as const;
    const byRoot = new Vector3(...point).applyMatrix4(carRoot().matrix);
    const alone = toThree(point, new Vector3());
    expect(byRoot.toArray()).toEqual(alone.toArray());
    expect(toCar(alone)).toEqual(point);
  });

  it('mirrors nothing', () => {
    expect(carRoot().matrix.determinant()).toBe(1);
  });
});
