import { useSession } from '../../store';
import { paperOf } from '../papers';
import { useWords } from '../words/use-words';

/** What the paper in view is called, in its own language. */
export function usePaperTitle(): string {
  const { t } = useWords();
  return t(paperOf(useSession(({ paper }) => paper)).title);
}
