/** The camera, its controls and the short way from one view to the next. */
import { MOUSE, type PerspectiveCamera, Spherical, TOUCH, Vector3 } from 'three';
import { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js';
import type { ViewName } from '../../store';
import { toThree } from '../axes';
import type { Pose } from './poses';

const TRAVEL_MS = 420;

export interface Rig {
  controls: OrbitControls;
  /** Goes to a pose; at once when `travel` is false. */
  go(view: ViewName, pose: Pose, travel: boolean): void;
  /** Moves eye and target along by a car-axes step: follows a seat that slides. */
  shift(by: Vector3): void;
  /** Turns the view by degrees: sideways and downward. */
  turn(sidewaysDeg: number, downDeg: number): void;
  /** Steps back (above 1) or closer (below 1). */
  zoom(by: number): void;
  /** Call before each frame; true while under way, so another frame is needed. */
  step(now: number): boolean;
  /** True until the user turns, moves or zooms the view they asked for. */
  untouched(): boolean;
  /** Near and far planes round the car. */
  hold(middle: Vector3, radius: number): void;
  end(): void;
}

interface Stand {
  target: Vector3;
  way: Spherical;
  fov: number;
}

export function createRig(camera: PerspectiveCamera, canvas: HTMLElement, ask: () => void): Rig {
  const controls = new OrbitControls(camera, canvas);
  controls.enableDamping = false;
  controls.zoomToCursor = true;
  controls.minDistance = 0;
  controls.touches.TWO = TOUCH.DOLLY_PAN;
  let touched = false;
  let travel: { from: Stand; to: Stand; since: number | null } | null = null;
  const middle = new Vector3();
  let radius = 3000;
  const out = new Vector3();

  const onStart = () => {
    touched = true;
    travel = null;
  };
  controls.addEventListener('start', onStart);
  controls.addEventListener('change', ask);

  const standAt = (pose: Pose): Stand => {
    const target = toThree(pose.target, new Vector3());
    const eye = toThree(pose.eye, new Vector3());
    const way = new Spherical().setFromVector3(eye.sub(target)).makeSafe();
    return { target, way, fov: pose.fovDeg };
  };
  const standNow = (): Stand => ({
    target: controls.target.clone(),
    way: new Spherical().setFromVector3(out.copy(camera.position).sub(controls.target)),
    fov: camera.fov,
  });
  const put = (stand: Stand) => {
    controls.target.copy(stand.target);
    camera.position.copy(stand.target).add(out.setFromSpherical(stand.way));
    camera.fov = stand.fov;
    camera.lookAt(stand.target);
    camera.updateProjectionMatrix();
    camera.updateMatrixWorld();
  };

  function settle(view: ViewName): void {
    const turns = view === 'free' || view === 'seat';
    controls.mouseButtons.LEFT = turns ? MOUSE.ROTATE : MOUSE.PAN;
    controls.mouseButtons.RIGHT = turns ? MOUSE.PAN : MOUSE.ROTATE;
    controls.touches.ONE = turns ? TOUCH.ROTATE : TOUCH.PAN;
    controls.enableZoom = view !== 'seat';
    controls.enablePan = view !== 'seat';
    // Turning the head goes the way of the hand, as turning the car does.
    controls.rotateSpeed = view === 'seat' ? -0.4 : 0.8;
    controls.minDistance = view === 'seat' ? 0 : 250;
    controls.maxDistance = view === 'seat' ? 10 : 200_000;
  }

  return {
    controls,
    go(view, pose, animate) {
      touched = false;
      settle(view);
      const to = standAt(pose);
      if (!animate) {
        travel = null;
        put(to);
      } else {
        const from = standNow();
        // The short way round.
        const turn = to.way.theta - from.way.theta;
        to.way.theta -= Math.round(turn / (2 * Math.PI)) * 2 * Math.PI;
        travel = { from, to, since: null };
      }
      ask();
    },
    shift(by) {
      if (travel) travel.to.target.add(by);
      controls.target.add(by);
      camera.position.add(by);
    },
    step(now) {
      if (travel) {
        travel.since ??= now;
        const t = Math.min(1, (now - travel.since) / TRAVEL_MS);
        put(between(travel.from, travel.to, t * t * (3 - 2 * t)));
        if (t >= 1) travel = null;
      }
      const far = camera.position.distanceTo(middle);
      const near = Math.max(far - radius * 1.6, Math.min(20, radius / 100));
      camera.near = near;
      camera.far = far + radius * 1.6;
      camera.updateProjectionMatrix();
      return travel !== null;
    },
    turn(sidewaysDeg, downDeg) {
      onStart();
      const now = standNow();
      const way = controls.rotateSpeed < 0 ? -1 : 1;
      now.way.theta += (way * sidewaysDeg * Math.PI) / 180;
      now.way.phi -= (way * -downDeg * Math.PI) / 180;
      now.way.makeSafe();
      put(now);
      ask();
    },
    zoom(by) {
      if (!controls.enableZoom) return;
      onStart();
      const now = standNow();
      now.way.radius *= by;
      put(now);
      ask();
    },
    untouched: () => !touched,
    hold(at, size) {
      middle.copy(at);
      radius = size;
    },
    end() {
      controls.removeEventListener('change', ask);
      controls.dispose();
    },
  };
}

/** Between two stands: what is seen grows evenly, whatever lens it is seen through. */
function between(a: Stand, b: Stand, k: number): Stand {
  const lens = (fov: number) => Math.tan((fov * Math.PI) / 360);
  const fov = a.fov + (b.fov - a.fov) * k;
  const size = (stand: Stand) => Math.log(stand.way.radius * lens(stand.fov));
  const radius = Math.exp(size(a) + (size(b) - size(a)) * k) / lens(fov);
  return {
    target: a.target.clone().lerp(b.target, k),
    way: new Spherical(
      radius,
      a.way.phi + (b.way.phi - a.way.phi) * k,
      a.way.theta + (b.way.theta - a.way.theta) * k,
    ),
    fov,
  };
}
