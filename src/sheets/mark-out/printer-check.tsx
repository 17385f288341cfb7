import { useId, useState } from 'react';
import { parseLength } from '../../plan/units';
import type { PrintedWords } from '../words/use-words';
import { MOST_STRETCH, type PrinterScale, printerScale } from './printer-scale';

export interface PrinterCheckProps {
  words: PrintedWords;
  onChange: (scale: PrinterScale | null) => void;
}

/** Shown for lengths of this size, mm: a usual cut-out. */
const FOR_EXAMPLE = 150;

/** On screen alone: what the rulers measured on paper, and whether the template may be used. */
export function PrinterCheck({ words, onChange }: PrinterCheckProps) {
  const { t } = words;
  const id = useId();
  const [typed, setTyped] = useState({ across: '', up: '' });
  const scale = readScale(typed.across, typed.up);
  const unread = Object.values(typed).some((text) => text.trim() !== '' && !lengthIn(text));
  const change = (next: typeof typed) => {
    setTyped(next);
    onChange(readScale(next.across, next.up));
  };
  const field = (key: 'across' | 'up', label: string) => (
    <div className="field">
      <label htmlFor={`${id}-${key}`}>{label}</label>
      <input
        id={`${id}-${key}`}
        type="text"
        inputMode="decimal"
        autoComplete="off"
        placeholder="100"
        aria-invalid={typed[key].trim() !== '' && !lengthIn(typed[key])}
        value={typed[key]}
        aria-describedby={`${id}-said`}
        onChange={(event) => change({ ...typed, [key]: event.target.value })}
      />
    </div>
  );
  return (
    <section className="printer-check" aria-labelledby={`${id}-head`}>
      <h2 id={`${id}-head`}>{t('printer.title')}</h2>
      <p>{t('printer.ask')}</p>
      <div className="printer-fields">
        {field('across', t('printer.across'))}
        {field('up', t('printer.up'))}
      </div>
      <p id={`${id}-said`} role="status" className={scale && !scale.ok ? 'printer-bad' : undefined}>
        {unread ? t('printer.unread') : scale && scaleSentence(words, scale)}
      </p>
    </section>
  );
}

/** In mm unless it says otherwise; `null`: no length. */
function lengthIn(text: string): number | null {
  const read = parseLength(text, 'mm');
  return read.ok && read.value > 0 ? read.value : null;
}

/** `null` while one of the two is no length yet. */
export function readScale(across: string, up: string): PrinterScale | null {
  const [a, b] = [lengthIn(across), lengthIn(up)];
  return a && b ? printerScale(a, b) : null;
}

export function scaleSentence({ t, n }: PrintedWords, { across, up, ok }: PrinterScale): string {
  // To a hundredth: what is refused never reads as what is allowed.
  const percent = (share: number) => `${n.signed(share * 100, 2)} %`;
  const told = { across: percent(across), up: percent(up) };
  return ok
    ? t('printer.good', {
        ...told,
        mm: n.length(FOR_EXAMPLE),
        off: n.length(
          Math.max(Math.abs(across), Math.abs(up)) * FOR_EXAMPLE,
          n.unit === 'mm' ? 1 : 2,
        ),
      })
    : t('printer.bad', { ...told, most: `${n.number(MOST_STRETCH * 100, 1)} %` });
}
