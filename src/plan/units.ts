/**
 * Reading and showing numbers. The plan keeps mm, ms, degrees, °C; inches, centimetres and
 * Fahrenheit exist only here.
 */
export * from './read-numbers';
export * from './show-numbers';
export * from './unit-names';
