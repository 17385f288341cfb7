import type { CabinModel } from '../../geometry';
import type { WordKey } from '../words/catalogue';
import type { PrintedWords } from '../words/use-words';
import type { SpeakerMarks } from './mark-data';
import { aimSentences, cutSentences, errorSentence, heightSentences } from './mark-sentences';
import { neighbourhood } from './neighbourhood';
import { NeighbourhoodDrawing } from './neighbourhood-drawing';

export interface SpotBlockProps {
  one: SpeakerMarks;
  cabin: CabinModel;
  name: string;
  /** What keeps it from fitting, keep-clear zones apart. */
  misfits: readonly string[];
  words: PrintedWords;
}

/** Most the drawing takes, mm: two spots stand on a page. */
const DRAWING = [78, 58] as const;

/** How one spot is found, turned and cut: drawing and tapes beside each other, the rest below. */
export function SpotBlock({ one, cabin, name, misfits, words }: SpotBlockProps) {
  const { t, names } = words;
  const { mark, placed, zones, cautions } = one;
  const heights = heightSentences(words, one);
  const facing = placed.normal ?? placed.axis;
  return (
    <div className="mark-spot-block">
      {zones.length > 0 && (
        <div className="mark-zones">
          <strong>{t('mark.zones')}. </strong>
          {zones.map((zone) => (
            <p key={zone.id}>
              <strong>{t('mark.zone', { zone: names.zone(zone) })}</strong>{' '}
              {t(zone.given ? 'caution.zone.given' : 'caution.zone.usual')}
            </p>
          ))}
        </div>
      )}
      <div className="mark-beside">
        {facing && mark.tapes.length > 0 && (
          <NeighbourhoodDrawing
            seen={neighbourhood(cabin, mark, facing)}
            room={DRAWING}
            label={t('mark.near', { speaker: name })}
            words={words}
          />
        )}
        <div>
          {mark.tapes.length > 0 && <Tapes one={one} words={words} />}
          <p className="paper-small">{errorSentence(words, one)}</p>
          {heights.length > 0 && (
            <p className="mark-heights">
              <strong>{t('mark.heights')}: </strong>
              {heights.join('; ')}.
            </p>
          )}
        </div>
      </div>
      <div className="mark-columns">
        <Told head={t('mark.aim')} told={aimSentences(words, one, cabin)} />
        <Told head={t('mark.cut')} told={cutSentences(words, one)} />
      </div>
      {misfits.length > 0 && (
        <p className="mark-misfits">
          <strong>{t('mark.misfits')}: </strong>
          {misfits.join('; ')}.
        </p>
      )}
      {cautions.length > 0 && (
        <p className="paper-small">
          {t('mark.look-up', {
            titles: cautions.map(({ id }) => t(`caution.${id}.title` as WordKey)).join('; '),
          })}
        </p>
      )}
    </div>
  );
}

function Told({ head, told }: { head: string; told: readonly string[] }) {
  if (told.length === 0) return null;
  return (
    <div className="mark-told">
      <h3>{head}</h3>
      <ul>
        {told.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </div>
  );
}

function Tapes({ one, words }: { one: SpeakerMarks; words: PrintedWords }) {
  const { t, n, names } = words;
  return (
    <table className="paper-table mark-tapes">
      <caption className="unseen">{t('mark.tapes')}</caption>
      <thead>
        <tr>
          <th scope="col">#</th>
          <th scope="col">{t('mark.tapes')}</th>
          <th scope="col" className="number">
            {t('mark.distance')}
          </th>
        </tr>
      </thead>
      <tbody>
        {one.mark.tapes.map(({ reference, distance }, i) => (
          <tr key={reference.id}>
            <td>{i + 1}</td>
            <th scope="row">
              {names.reference(reference)}
              {i >= 3 && ` (${t('mark.check')})`}
            </th>
            <td className="number">{n.length(distance)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
