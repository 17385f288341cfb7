import { useKeeping } from '../../store';

const WORDS = {
  kept: 'kept',
  saving: 'keeping…',
  'memory-only': 'in memory only',
  failed: 'not kept',
} as const;

/** In two words whether the open plan is kept; for beside its title. */
export function KeepingSign() {
  const status = useKeeping((state) => state.status);
  const planId = useKeeping((state) => state.planId);
  const text = status === 'kept' && planId === null ? 'not changed yet' : WORDS[status];
  return <span className="keeping-sign">{text}</span>;
}
