import { type Panel, pointOnPatch, type Role, type Seat } from '../../../geometry';
import { mirrorPanelId } from '../../../plan/mirror';

/** A panel and its mirror image on the other side, searched as one. */
export interface PanelCouple {
  /** The left one's id, or the one panel's own. */
  id: string;
  /** "A-pillar", "centre dash top". */
  name: string;
  /** One panel across the car's middle: the two speakers stand on it side by side. */
  central: boolean;
  /** False where only one side has it: nothing can be mirrored onto it. */
  both: boolean;
  roles: readonly Role[];
  /** How far rearward its middle is, mm. */
  x: number;
}

/** Every panel something can be mounted on, left and right as one, from front to back. */
export function panelCouples(panels: readonly Panel[]): PanelCouple[] {
  const known = new Map(panels.map((panel) => [panel.id, panel]));
  const couples: PanelCouple[] = [];
  for (const panel of panels) {
    if (!panel.mountable) continue;
    const twin = mirrorPanelId(panel.id);
    const central = twin === panel.id;
    const other = known.get(twin);
    const both = central || other?.mountable === true;
    // The left one speaks for both.
    if (both && !central && /\bright\b/.test(panel.id)) continue;
    couples.push({
      id: panel.id,
      name: both && !central ? panel.name.replace(/^(left|right) /, '') : panel.name,
      central,
      both,
      roles: panel.roles,
      x: pointOnPatch(panel.patch, 0.5, 0.5)[0],
    });
  }
  return couples.sort((a, b) => a.x - b.x);
}

/** So far ahead of the ears a panel counts as in front, mm: choice of ours, no source. */
const AHEAD = 100;

const FRONT: readonly Role[] = ['tweeter', 'midrange', 'midbass', 'wideband'];

export const isFrontRole = (role: Role): boolean => FRONT.includes(role);

/**
 * The couples usually searched for a role: those it is commonly mounted on; for a pair of the front
 * stage ahead of the listener and not the middle of the dash, where left and right would stand side
 * by side; and where the pair stands now.
 */
export function usualCouples(
  couples: readonly PanelCouple[],
  role: Role,
  listener: Seat | undefined,
  standing: readonly string[],
): string[] {
  const front = isFrontRole(role);
  const isUsual = ({ id, roles, central, both, x }: PanelCouple): boolean => {
    if (!both) return false;
    if (standing.includes(id) || standing.includes(mirrorPanelId(id))) return true;
    if (!roles.includes(role)) return false;
    return !front || (!central && (!listener || x < listener.head[0] - AHEAD));
  };
  const usual = couples.filter(isUsual);
  const any = couples.filter(({ roles, both }) => both && roles.includes(role));
  return (usual.length > 0 ? usual : any).map(({ id }) => id);
}
