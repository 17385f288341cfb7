import type { Tone } from './chart-types';

export interface ChartTokens {
  tones: Record<Tone, string>;
  paper: string;
  grid: string;
  text: string;
  font: string;
}

/** The page's colours and type as they are now: a canvas does not follow custom properties. */
export function chartTokens(element: Element): ChartTokens {
  const style = getComputedStyle(element);
  const token = (name: string) => style.getPropertyValue(name).trim();
  return {
    tones: {
      left: token('--left'),
      right: token('--right'),
      ink: token('--ink'),
      quiet: token('--ink-2'),
      accent: token('--accent'),
    },
    paper: token('--paper-2'),
    grid: token('--line'),
    text: token('--ink-2'),
    font: style.fontFamily,
  };
}
