/**
 * The cabin's skin: dimensions in, panels out. Laid out point by point, front to rear, then woven
 * into panels that share those points, so that the skin is closed.
 */

import type { Side } from '../../input';
import type { Dimensions } from '../dimensions';
import { dimensionInfo } from '../dimensions';
import type { Panel, Refusal } from '../model';
import { layOutCentre } from './centre';
import { type Conflict, Conflicts, twoOf } from './conflict';
import { layOutDash } from './dash';
import { layOutFoot } from './foot';
import { layOutFront } from './front';
import { layOutRear, type Rear } from './rear';
import { layOutRoof } from './roof';
import { Skin } from './skin';
import { weaveDash } from './weave-dash';
import { weaveFloor } from './weave-floor';
import { weaveSides } from './weave-sides';
import { weaveTop } from './weave-top';

export interface ShellSetting {
  rows: 1 | 2;
  wheelSide: Side;
  /** A window between the C-pillar and the rear glass (estates, large cars). */
  thirdSideGlass: boolean;
  /** The template's own dimensions: tells which of two that disagree was changed. */
  templateDimensions?: Readonly<Record<string, number>>;
}

export type ShellAnswer = { ok: true; panels: Panel[] } | { ok: false; error: Refusal };

export type Layout = ReturnType<typeof layOut>;

/** Every point the panels hang on, and the dimensions that disagree. */
export function layOut(d: Dimensions, setting: Pick<ShellSetting, 'rows' | 'thirdSideGlass'>) {
  const conflicts = new Conflicts();
  const front = layOutFront(d, conflicts);
  const dash = layOutDash(d, front, conflicts);
  const foot = layOutFoot(d, dash, conflicts);
  const centre = layOutCentre(d, dash, foot, conflicts);
  const rear: Rear = layOutRear(
    d,
    setting.rows,
    front,
    dash,
    foot,
    centre.consoleEnd[0],
    conflicts,
  );
  const roof = layOutRoof(d, setting.thirdSideGlass, front, rear, conflicts);
  return { d, front, dash, foot, centre, rear, roof, conflicts: conflicts.found };
}

/**
 * The panels of a closed cabin, or one sentence naming two dimensions that disagree.
 * mm, car axes; normals point into the cabin. The right-hand-drive shell is the exact mirror image
 * of the left-hand-drive one but for the footrest.
 */
export function buildShell(d: Dimensions, setting: ShellSetting): ShellAnswer {
  const layout = layOut(d, setting);
  const conflict = layout.conflicts[0];
  if (conflict) return { ok: false, error: refusal(conflict, d, setting.templateDimensions) };
  const skin = new Skin(d.doorThickness);
  weaveTop(skin, layout);
  weaveDash(skin, layout);
  weaveSides(skin, layout);
  weaveFloor(skin, layout, setting.wheelSide);
  return { ok: true, panels: skin.panels };
}

function refusal(
  conflict: Conflict,
  d: Dimensions,
  template: Readonly<Record<string, number>> | undefined,
): Refusal {
  const [first, second] = twoOf(conflict, d, template);
  const said = (id: keyof Dimensions) => {
    const unit = dimensionInfo(id)?.unit === 'deg' ? '°' : ' mm';
    return `${id} (${Math.round(d[id] * 10) / 10}${unit})`;
  };
  return {
    path: `cabin.dimensions.${first}`,
    message: `${said(first)} and ${said(second)} disagree: ${conflict.because}`,
  };
}
