import type { PageSize } from '../../store/paper-settings';
import a4 from './a4.css?url';
import letter from './letter.css?url';

const RULES: Readonly<Record<PageSize, string>> = { A4: a4, Letter: letter };

/** Tells the printer the size of the paper, by a file: the content policy allows no inline styles. */
export function PageRule({ size }: { size: PageSize }) {
  return <link rel="stylesheet" href={RULES[size]} media="print" />;
}
