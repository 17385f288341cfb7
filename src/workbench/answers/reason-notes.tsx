import type { SpeakerInput } from '../../geometry';
import { speakerName } from '../../plan/names';
import { NO_VALUE } from '../../plan/units';
import { plainReasons } from '../parts/plain-reason';
import { capital } from './capital';

export interface ReasonNotesProps {
  speakers: readonly SpeakerInput[];
  /** Why some numbers are missing, by speaker. */
  of: readonly { speaker: SpeakerInput; reasons: readonly string[] | undefined }[];
}

/** Why a dash stands where a number should, under the table that has it. */
export function ReasonNotes({ speakers, of }: ReasonNotesProps) {
  const notes = of.flatMap(({ speaker, reasons }) =>
    plainReasons(reasons, speakers).map(
      (text) => `${capital(speakerName(speaker, speakers))}: ${text}`,
    ),
  );
  if (notes.length === 0) return null;
  return (
    <ul className="reason-notes" aria-label={`Why a “${NO_VALUE}” stands in the table`}>
      {[...new Set(notes)].map((text) => (
        <li key={text}>{text}</li>
      ))}
    </ul>
  );
}
