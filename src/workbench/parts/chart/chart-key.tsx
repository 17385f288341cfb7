import type { ChartSeries } from './chart-types';

/** What each kind of stem means; lines carry their names at their ends. */
export function ChartKey({ series }: { series: readonly ChartSeries[] }) {
  const stems = series.filter((one) => one.stems);
  if (stems.length === 0) return null;
  return (
    <ul className="chart-key" aria-hidden="true">
      {stems.map((one) => (
        <li key={one.label} className={`tone-${one.tone}`}>
          <svg width="16" height="18" viewBox="0 0 16 18" aria-hidden="true">
            <g stroke="currentColor" strokeWidth="1.75">
              <path d="M8 18V6" strokeDasharray={one.dash ? '4 3' : undefined} />
              <Shape one={one} />
            </g>
          </svg>
          {one.label}
        </li>
      ))}
    </ul>
  );
}

function Shape({ one: { tone, hollow } }: { one: ChartSeries }) {
  const className = hollow ? 'hollow' : 'filled';
  if (tone === 'left') return <rect className={className} x="4" y="1.5" width="8" height="8" />;
  if (tone === 'right') return <circle className={className} cx="8" cy="5.5" r="4.5" />;
  return <path className={className} d="M3 5.5l5-5 5 5-5 5z" />;
}
