import type { SpeakerInput } from '../../geometry';
import { letterOf } from '../drawing/letters';
import type { PaperFacts } from '../facts';
import { type Block, heading, paragraphs } from '../page';
import { capital } from '../parts/capital';
import type { PrintedWords } from '../words/use-words';

/** The key to the letters: every speaker, where it sits, and how far its sound goes. */
export function speakerBlocks(facts: PaperFacts, words: PrintedWords): Block[] {
  const { option, seat } = facts;
  const { t, n, names } = words;
  const { speakers } = option;
  const title = heading('speakers', t('customer.speakers'));
  if (speakers.length === 0)
    return [title, ...paragraphs('no-speakers', t('customer.speakers.none'))];
  return [
    title,
    {
      kind: 'table',
      id: 'speaker-table',
      caption: t('customer.speakers'),
      head: (
        <tr>
          <th scope="col">{t('customer.col.letter')}</th>
          <th scope="col">{t('customer.col.speaker')}</th>
          <th scope="col">{t('customer.col.where')}</th>
          <th scope="col" className="number">
            {t('customer.col.distance')}
          </th>
          <th scope="col" className="number">
            {t('customer.col.time')}
          </th>
        </tr>
      ),
      rows: speakers.map((speaker, place) => {
        const arrival = seat?.arrivals.find((one) => one.speaker === speaker.id);
        return (
          <tr key={speaker.id}>
            <td>
              <strong className={`letter ${speaker.side ?? ''}`}>{letterOf(place)}</strong>
            </td>
            <th scope="row">{capital(names.speaker(speaker, speakers))}</th>
            <td className="typed">{whereOf(speaker, facts, words)}</td>
            <td className="number">{n.length(arrival?.path)}</td>
            <td className="number">{n.time(arrival?.time)}</td>
          </tr>
        );
      }),
    },
  ];
}

/** The panel a speaker is mounted on, in words. */
export function whereOf(
  { mount }: SpeakerInput,
  { cabin }: PaperFacts,
  { t, names }: PrintedWords,
): string {
  if (!mount) return t('customer.free-point');
  return names.panel(cabin.panels.find(({ id }) => id === mount.panel) ?? mount.panel);
}
