/** What must be read before anything is cut: the page's own sentences, so that they cannot differ. */
import { CAUTIONS, SHORT_CAUTION } from '../../../exchange/cautions';
import { NO_ZONE_KNOWN, zoneCaution } from '../../../exchange/keep-clear/zone-cautions';

function caution(id: string) {
  const found = CAUTIONS.find((one) => one.id === id);
  if (!found) throw new RangeError(`caution: expected one of the cautions, got "${id}"`);
  return found;
}
const title = (id: string) => caution(id).title;
const text = (id: string) => caution(id).text;

export const cautions = {
  'caution.short': SHORT_CAUTION,
  'caution.maker-first.title': title('maker-first'),
  'caution.maker-first.text': text('maker-first'),
  'caution.airbags.title': title('airbags'),
  'caution.airbags.text': text('airbags'),
  'caution.sight.title': title('sight'),
  'caution.sight.text': text('sight'),
  'caution.pedals.title': title('pedals'),
  'caution.pedals.text': text('pedals'),
  'caution.behind.title': title('behind'),
  'caution.behind.text': text('behind'),
  'caution.impact.title': title('impact'),
  'caution.impact.text': text('impact'),
  'caution.structure.title': title('structure'),
  'caution.structure.text': text('structure'),
  'caution.enclosures.title': title('enclosures'),
  'caution.enclosures.text': text('enclosures'),
  'caution.electrics.title': title('electrics'),
  'caution.electrics.text': text('electrics'),
  'caution.tune.title': title('tune'),
  'caution.tune.text': text('tune'),
  'caution.zone.given': zoneCaution({ given: true }),
  'caution.zone.usual': zoneCaution({ given: false }),
  'caution.zone.none': NO_ZONE_KNOWN,
};
