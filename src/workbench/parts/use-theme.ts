import { useEffect } from 'react';
import { useSession } from '../../store';
import { useMedia } from './use-media';

/** Puts the chosen look, or the machine's, on the document; the tokens follow it. */
export function useTheme(): 'light' | 'dark' {
  const chosen = useSession((session) => session.theme);
  const machineDark = useMedia('(prefers-color-scheme: dark)');
  const theme = chosen === 'system' ? (machineDark ? 'dark' : 'light') : chosen;
  useEffect(() => {
    document.documentElement.dataset.theme = theme;
  }, [theme]);
  return theme;
}
