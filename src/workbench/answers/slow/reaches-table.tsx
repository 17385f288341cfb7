import { memo } from 'react';
import type { Reach, Receiver, SlowMotion, SpeakerInput } from '../../../geometry';
import { formatNumber } from '../../../plan/units';
import { useSlowMotion } from '../../../store/slow-motion';
import { LineSign } from '../../parts/marks';
import { TableScroll } from '../../parts/table-scroll';
import { SpeakerHead, SpeakerRow } from '../speaker-button';
import { RECEIVER_WORDS } from './slow-words';

interface ReachesTableProps {
  title: string;
  motion: SlowMotion;
  /** In the order in which their sound arrives without delays. */
  speakers: readonly SpeakerInput[];
}

const RECEIVERS: readonly Receiver[] = ['left', 'head', 'right'];

/** Every arrival, ticked off when it happens: by sign and weight, and in words. */
export const ReachesTable = memo(function ReachesTable(props: ReachesTableProps) {
  const { title, motion, speakers } = props;
  const delayed = motion.delays === 'aligned';
  return (
    <TableScroll label={`Arrivals, ${title}`}>
      <table className="numbers reaches">
        <caption className="unseen">Arrivals in slow motion, {title}</caption>
        <thead>
          <tr>
            <th scope="col" className="text">
              Speaker
            </th>
            {delayed && <th scope="col">starts, ms</th>}
            {RECEIVERS.map((at) => (
              <th key={at} scope="col">
                {RECEIVER_WORDS[at]}, ms
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {speakers.map((speaker) => {
            const wave = motion.waves.find((one) => one.speaker === speaker.id);
            return (
              <SpeakerRow key={speaker.id} id={speaker.id}>
                <SpeakerHead speaker={speaker} among={speakers} />
                {delayed && <td>{formatNumber(wave?.start, 2)}</td>}
                {RECEIVERS.map((at) => (
                  <ReachCell key={at} reach={reachOf(motion, speaker.id, at)} />
                ))}
              </SpeakerRow>
            );
          })}
        </tbody>
      </table>
    </TableScroll>
  );
});

const reachOf = ({ reaches }: SlowMotion, speaker: string, at: Receiver): Reach | undefined =>
  reaches.find((reach) => reach.speaker === speaker && reach.at === at);

function ReachCell({ reach }: { reach: Reach | undefined }) {
  const there = useSlowMotion(({ time }) => reach !== undefined && reach.time <= time);
  if (!reach) return <td>–</td>;
  return (
    <td className="reach" data-there={there}>
      {reach.comes !== 'straight' && (
        <span title="Something stands in the way: what arrives comes round">
          <LineSign line="blocked" wordless />
          <span className="unseen">comes round, </span>
        </span>
      )}
      <Tick there={there} />
      <span className="unseen">{there ? 'there, ' : 'not yet, '}</span>
      {reach.comes === 'unknown' && 'after '}
      {formatNumber(reach.time, 2)}
    </td>
  );
}

/** An open ring that gets its tick. */
function Tick({ there }: { there: boolean }) {
  return (
    <svg className="reach-tick" width="13" height="13" viewBox="0 0 13 13" aria-hidden="true">
      {there ? (
        <path d="M1.5 7l3.5 4 6.5-9" strokeWidth="2.4" />
      ) : (
        <circle cx="6.5" cy="6.5" r="4" strokeWidth="1" />
      )}
    </svg>
  );
}
