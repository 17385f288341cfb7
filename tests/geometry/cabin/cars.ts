/** Whole cars for the tests: a template's dimensions, its shell, and everybody in their seats. */

import { placeSeats } from '../../../src/geometry/cabin/seats';
import { buildShell } from '../../../src/geometry/cabin/shell/build-shell';
import type { TemplateData } from '../../../src/geometry/cabin/templates';
import type { Side } from '../../../src/geometry/input';

export function car(template: TemplateData, wheelSide: Side) {
  const { dimensions, rows, body } = template;
  const setting = { rows, wheelSide, thirdSideGlass: body.thirdSideGlass };
  const shell = buildShell(dimensions, setting);
  if (!shell.ok) throw new Error(shell.error.message);
  const seated = placeSeats(dimensions, template, wheelSide, []);
  if (!seated.ok) throw new Error(seated.error.message);
  return { template, dimensions, wheelSide, panels: shell.panels, seats: seated.seats };
}
