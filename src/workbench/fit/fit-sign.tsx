import { VERDICT_WORDS, type Verdict } from './fit-words';

const SHAPES: Readonly<Record<Verdict, string>> = {
  fits: 'M2 7l3 3 6-7',
  unknown: 'M3.5 6.5h6',
  not: 'M2.5 2.5l8 8M10.5 2.5l-8 8',
  zone: 'M1.5 1.5h10v10h-10zM1.5 6.5l5-5M1.5 11.5l10-10M6.5 11.5l5-5',
};

/** A tick, a dash, a cross, a hatched square; and the word, unless the words beside it say it. */
export function FitSign({ verdict, wordless }: { verdict: Verdict; wordless?: boolean }) {
  return (
    <span className={`sign fit-sign fit-${verdict}`}>
      <svg width="13" height="13" viewBox="0 0 13 13" aria-hidden="true">
        <path d={SHAPES[verdict]} />
      </svg>
      {!wordless && VERDICT_WORDS[verdict]}
    </span>
  );
}
