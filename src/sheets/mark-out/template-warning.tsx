import type { KeepClearZone } from '../../geometry';
import type { PrintedWords } from '../words/use-words';

/** More zones than this, or more letters in all, are left to the speaker's own page. */
const MOST_ZONES = 3;
/** Of four lines in the widest of the usual faces; a choice of ours, held by the browser test. */
const MOST_LETTERS = 400;

export interface TemplateWarningProps {
  /** Keep-clear zones the speaker or its ring reaches into: at least one. */
  zones: readonly KeepClearZone[];
  words: PrintedWords;
}

/** What a template says above its drawing: it may come to lie elsewhere than the sheet. */
export function TemplateWarning({ zones, words }: TemplateWarningProps) {
  const { head, rest } = warningOf(zones, words);
  return (
    <p className="template-warning">
      <strong>{head}</strong> {rest}
    </p>
  );
}

/** Its zones by name where they have room, else how many; and always what that means. */
export function warningOf(zones: readonly KeepClearZone[], { t, names }: PrintedWords) {
  const rest = [
    ...(zones.every(({ given }) => given) ? [] : [t('caution.zone.usual')]),
    ...(zones.some(({ given }) => given) ? [t('caution.zone.given')] : []),
  ].join(' ');
  const told = t('mark.zone', { zone: zones.map((zone) => names.zone(zone)).join('; ') });
  const named = `${t('mark.zones')}. ${told}`;
  const fits = zones.length <= MOST_ZONES && named.length + rest.length < MOST_LETTERS;
  return {
    head: fits ? named : `${t('mark.zones')}. ${t('mark.zones-many', { count: zones.length })}`,
    rest,
  };
}
