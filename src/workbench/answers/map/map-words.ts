import type { MapQuantity, Panel, SpotMap, SpotReading } from '../../../geometry';
import { DOES_NOT_FIT, FITS, KEEP_CLEAR } from '../../../geometry';
import { roleName } from '../../../plan/names';
import type { LengthUnit } from '../../../plan/units';
import { asSentence, inUnit } from '../../fit/fit-words';
import { capital } from '../capital';
import { QUANTITIES, readingText, valueText, WORDS } from './map-quantities';

/** The engine's sentence on the fit as the page says it, roles by the page's names. */
export const fitSentence = (sentence: string, unit: LengthUnit): string =>
  asSentence(inUnit(sentence.replace(/\bmidrange\b/g, roleName('midrange')), unit));

const counted = new Intl.NumberFormat('en');

/** "Fits at 7,752 of 25,882 spots; 4,312 are kept clear." */
export function fitCount({ fit, done }: SpotMap): string {
  let [fits, clear, all] = [0, 0, 0];
  for (let k = 0; k < fit.length; k++) {
    if (done[k] !== 1) continue;
    all += 1;
    if (fit[k] === FITS) fits += 1;
    if (fit[k] === KEEP_CLEAR) clear += 1;
  }
  const kept = clear > 0 ? `; ${counted.format(clear)} are kept clear` : '';
  return `Fits at ${counted.format(fits)} of ${counted.format(all)} spots${kept}.`;
}

export const asksFit = ({ fit }: SpotMap): boolean =>
  fit.some((code) => code === FITS || code === DOES_NOT_FIT || code === KEEP_CLEAR);

/** "Least difference where it fits, on panels usual for mids: left dash top, 12 mm; here 283 mm." */
export function bestWords(
  quantity: MapQuantity,
  best: { panel: string; value: number },
  here: number | null,
  where: { fits: boolean; usualFor: string | null },
  unit: LengthUnit,
): string {
  const { fits, usualFor } = where;
  const among = usualFor ? `, on panels usual for ${usualFor}` : ', on any panel';
  const now = here === null ? '' : `; here ${valueText(quantity, here, unit)}`;
  return `${WORDS[quantity].best}${fits ? ' where it fits' : ' outside the places kept clear'}${among}: ${best.panel}, ${valueText(quantity, best.value, unit)}${now}.`;
}

/** Why a finished map shows nothing. */
export const emptyWords = (quantity: MapQuantity): string =>
  quantity === 'pathSpread'
    ? 'Nothing to paint: on neither side stands another speaker whose path could differ.'
    : 'Nothing to paint: no spot has a value.';

/** The whole reading as one sentence, for those who hear it. */
export function readingSentence(
  panel: Panel,
  place: string,
  { values, misfits }: SpotReading,
  unit: LengthUnit,
  blend: boolean,
): string {
  const numbers = QUANTITIES.filter((quantity) => quantity !== 'blend' || blend).map(
    (quantity) => `${WORDS[quantity].title} ${readingText(quantity, values[quantity], unit)}`,
  );
  const fit =
    misfits.length === 0
      ? 'Fits.'
      : `Does not fit: ${misfits.map(({ sentence }) => fitSentence(sentence, unit)).join(' ')}`;
  return `${capital(panel.name)}, ${place}. ${numbers.join('. ')}. ${fit}`;
}
