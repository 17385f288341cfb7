import { formatFrequency, formatNumber, withSign } from '../../../plan/units';
import { TableScroll } from '../../parts/table-scroll';
import type { GroupLevels } from './group-levels';

const minus = (db: number | null): number | null => (db === null ? null : -db);
const HEADS = ['Off axis', 're window', 'In the way', 'Level'] as const;

/** Every band: what is lost off the axis and in the way, and what is left. */
export function LevelsTable({ levels }: { levels: GroupLevels }) {
  const { sides, differences } = levels;
  const frequencies = [
    ...new Set(sides.flatMap(({ bands }) => bands.map((band) => band.frequencyHz))),
  ].sort((a, b) => a - b);
  if (frequencies.length === 0) return null;
  return (
    <details className="sheet-more">
      <summary>Every band: what is lost off the axis and in the way</summary>
      <TableScroll label="Losses and levels by band">
        <table className="numbers bands">
          <caption className="unseen">Losses and levels by {levels.bandName}, dB</caption>
          <thead>
            <tr>
              <th scope="col" rowSpan={2} className="text">
                Band
              </th>
              {sides.map(({ speaker }) => (
                <th key={speaker.id} scope="colgroup" colSpan={HEADS.length}>
                  {speaker.side ?? 'This speaker'}, dB
                </th>
              ))}
              {differences.length > 0 && (
                <th scope="col" rowSpan={2}>
                  Left − <br />
                  right, dB
                </th>
              )}
            </tr>
            <tr>
              {sides.flatMap(({ speaker }) =>
                HEADS.map((head) => (
                  <th key={`${speaker.id} ${head}`} scope="col">
                    {head}
                  </th>
                )),
              )}
            </tr>
          </thead>
          <tbody>
            {frequencies.map((hz) => (
              <tr key={hz}>
                <th scope="row">{formatFrequency(hz)}</th>
                {sides.flatMap(({ speaker, bands }) => {
                  const band = bands.find((one) => one.frequencyHz === hz);
                  return [
                    <td key={`${speaker.id} d`}>{formatNumber(band?.directivityDb, 1)}</td>,
                    <td key={`${speaker.id} w`}>{formatNumber(band?.windowDb, 1)}</td>,
                    <td key={`${speaker.id} o`}>
                      {formatNumber(minus(band?.obstructionDb ?? null), 1)}
                    </td>,
                    <td key={`${speaker.id} l`} className="strong">
                      {formatNumber(band?.levelDb, 1)}
                    </td>,
                  ];
                })}
                {differences.length > 0 && (
                  <td className="strong">
                    {withSign(
                      formatNumber(differences.find((d) => d.frequencyHz === hz)?.levelDb, 1),
                    )}
                  </td>
                )}
              </tr>
            ))}
          </tbody>
        </table>
      </TableScroll>
    </details>
  );
}
