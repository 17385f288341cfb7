import type { SpeakerInput } from '../../geometry';
import { useSession } from '../../store';
import { problemsOf } from '../../store/fit-of-board';
import { capital } from '../answers/capital';
import type { Board } from '../parts/use-board';
import { useStage } from '../parts/use-stage';
import './fit.css';
import { FitSign } from './fit-sign';
import { groupFit, groupSentence } from './group-words';

interface GroupFitProps {
  board: Board;
  /** Ids of a pair, or of a speaker without a twin. */
  ids: readonly string[];
  /** In the list a few words; beside the answer the worst of it as well. */
  brief?: boolean;
}

/** Says so where a pair does not fit, or reaches into a keep-clear zone; nothing else. */
export default function GroupFitSign({ board, ids, brief = false }: GroupFitProps) {
  const stage = useStage(board);
  const unit = useSession((session) => session.lengthUnit);
  if (!stage) return null;
  const { speakers } = stage.option;
  const members = ids.flatMap((id): SpeakerInput[] => {
    const speaker = speakers.find((one) => one.id === id);
    return speaker ? [speaker] : [];
  });
  const fit = groupFit(members, (id) => problemsOf(stage, id), unit, speakers);
  if (!fit) return null;
  const words = brief ? `${fit.who} ${fit.what}`.trim() : groupSentence(fit, speakers);
  return (
    <p className={brief ? 'fit-brief' : 'pair-note'}>
      <FitSign verdict={fit.verdict} wordless /> {capital(words)}
    </p>
  );
}
