/** Reflections off the panels: the only door of this folder. */
export { firstReflectionExtra } from './first-reflection';
export {
  firstNotchHz,
  type ReflectionQuery,
  reflectionsBetween,
} from './reflections';
export { type Reflector, reflectorOf, type View } from './reflector';
export { type SpecularPoint, specularPoints } from './specular-points';
export { type Bounce, type TwoBounces, twoBounces } from './two-bounces';
