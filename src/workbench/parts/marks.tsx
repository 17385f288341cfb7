import type { Line, Side } from '../../geometry';

/** L in a square, R in a dashed ring, a point for speakers of neither side. */
export function SideMark({ side }: { side: Side | undefined }) {
  return (
    <span className={side ? `side-mark ${side}` : 'side-mark'} aria-hidden="true">
      {side === 'left' ? 'L' : side === 'right' ? 'R' : '·'}
    </span>
  );
}

const LINE_WORDS: Readonly<Record<Line, string>> = {
  clear: 'free',
  grazing: 'near miss',
  blocked: 'blocked',
};

/** An arrow that gets through, one that scrapes past, one that ends at a wall; and the word.
 * `wordless` only where the sentence beside it says it. */
export function LineSign({ line, wordless }: { line: Line; wordless?: boolean }) {
  const kind = line === 'clear' ? 'free' : line === 'grazing' ? 'near' : 'blocked';
  return (
    <span className={`sign sign-${kind}`}>
      <svg width="22" height="12" viewBox="0 0 22 12" aria-hidden="true">
        <g fill="none" stroke="currentColor" strokeWidth="1.8" strokeLinecap="round">
          {line === 'blocked' ? (
            <path d="M1 6h10M14 1v10M18 1v10" />
          ) : (
            <path d="M1 6h18M15 2l4 4-4 4" />
          )}
          {line === 'grazing' && <path d="M9 10v1.5" />}
        </g>
      </svg>
      {!wordless && LINE_WORDS[line]}
    </span>
  );
}
