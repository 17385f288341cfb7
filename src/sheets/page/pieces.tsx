import type { ReactNode } from 'react';
import type { PieceBlock, Told } from './blocks';

/** One piece that is never cut. */
export const piece = (
  id: string,
  content: ReactNode | ((told: Told) => ReactNode),
  rules: Pick<PieceBlock, 'keepWithNext' | 'startsPage' | 'tight'> = {},
): PieceBlock => ({ kind: 'piece', id, content, ...rules });

/** A heading that stays with what follows. `level` 1 is the paper's own. */
export function heading(
  id: string,
  text: ReactNode,
  level: 1 | 2 | 3 = 2,
  rules: Pick<PieceBlock, 'startsPage'> = {},
): PieceBlock {
  const Tag = `h${level}` as const;
  return piece(id, <Tag>{text}</Tag>, { keepWithNext: true, ...rules });
}

/** Longer than this a paragraph is cut between two sentences or words, so that any text fits. */
const LONGEST = 900;

/** Text of any length as paragraphs, each a piece of its own. */
export const paragraphs = (id: string, text: string, className?: string): PieceBlock[] =>
  text
    .split(/\n+/)
    .flatMap(shortEnough)
    .map((line, i) => piece(`${id}-${i}`, <p className={className}>{line}</p>));

function shortEnough(text: string): string[] {
  const rest = text.trim();
  if (rest.length <= LONGEST) return rest ? [rest] : [];
  const start = rest.slice(0, LONGEST);
  const cut = Math.max(start.lastIndexOf('. ') + 1, 0) || start.lastIndexOf(' ') || LONGEST;
  const at = cut > 0 ? cut : LONGEST;
  return [rest.slice(0, at).trim(), ...shortEnough(rest.slice(at))];
}
