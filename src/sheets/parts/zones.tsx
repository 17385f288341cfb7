import { zonesOfOption } from '../../exchange/keep-clear/spot-zones';
import { letterOf } from '../drawing/letters';
import type { PaperFacts } from '../facts';
import { type Block, piece } from '../page';
import type { PrintedWords } from '../words/use-words';
import { capital } from './capital';

/** A warning for every speaker that reaches into a place kept clear; nothing where none does. */
export function zoneBlocks({ cabin, option, result }: PaperFacts, words: PrintedWords): Block[] {
  const { t, n, names } = words;
  return zonesOfOption(cabin, option, result).flatMap(({ speaker, zones }, place): Block[] => {
    if (zones.length === 0) return [];
    const given = zones.every((zone) => zone.given);
    return [
      piece(
        `zone-${speaker.id}`,
        <p className="paper-warning">
          <strong>
            {'⚠ '}
            {t('customer.zone', {
              letter: letterOf(place),
              speaker: capital(names.speaker(speaker, option.speakers)),
              zones: n.list(zones.map((zone) => names.zone(zone))),
            })}
          </strong>{' '}
          {t(given ? 'caution.zone.given' : 'caution.zone.usual')}
        </p>,
      ),
    ];
  });
}
