import { planOfFragment } from '../../exchange';
import { type FileAnswer, judgeFile } from './judge-file';

/**
 * What can be done with a link said to carry a plan: as with a file, but only to be looked at.
 * @param link a whole address, or what follows its #
 * @param why why it may only be looked at
 */
export function judgeLink(link: string, why: string): FileAnswer {
  const text = link.trim();
  const at = text.indexOf('#');
  const unpacked = planOfFragment(at < 0 ? `#${text}` : text.slice(at));
  if (!unpacked.ok) return { kind: 'refused', sentence: unpacked.message };
  const answer = judgeFile(unpacked.bytes);
  return answer.kind === 'refused' ? answer : { ...answer, readOnly: answer.readOnly ?? why };
}
