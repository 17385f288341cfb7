import { fileSave } from 'browser-fs-access';
import { stlOf } from '../../../exchange/ring/stl';
import { threeMfOf } from '../../../exchange/ring/three-mf';
import type { MeshShape } from '../../../geometry';
import { safeFileName } from '../../../plan/schema';

export interface RingPart {
  /** "left mid". */
  title: string;
  mesh: MeshShape;
}

export type SaveOutcome = { kind: 'saved' } | { kind: 'closed' } | { kind: 'failed'; why: string };

/** Closing the file window is no fault. */
async function saved(bytes: Uint8Array, fileName: string, type: string): Promise<SaveOutcome> {
  try {
    const ending = fileName.slice(fileName.lastIndexOf('.'));
    await fileSave(new Blob([bytes.slice().buffer], { type }), {
      fileName,
      extensions: [ending],
      id: 'rings',
    });
    return { kind: 'saved' };
  } catch (error) {
    return (error as Error).name === 'AbortError'
      ? { kind: 'closed' }
      : { kind: 'failed', why: (error as Error).message };
  }
}

/** One ring, mm. */
export const saveStl = (plan: string, { title, mesh }: RingPart): Promise<SaveOutcome> =>
  saved(stlOf(mesh, title), `${safeFileName(`${plan} ring ${title}`)}.stl`, 'model/stl');

/** Rings side by side in one file, mm. */
export const saveThreeMf = (
  plan: string,
  name: string,
  parts: readonly RingPart[],
): Promise<SaveOutcome> =>
  saved(threeMfOf(parts), `${safeFileName(`${plan} ring ${name}`)}.3mf`, 'model/3mf');
