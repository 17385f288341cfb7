/** A head seen from above, looking up the page: round, with a nose and two ears. */
export function HeadFromAbove({ radius: r }: { radius: number }) {
  return (
    <g className="fan-head">
      <ellipse cx={-r} cy="0" rx={r * 0.2} ry={r * 0.36} />
      <ellipse cx={r} cy="0" rx={r * 0.2} ry={r * 0.36} />
      <path d={`M${-r * 0.26} ${-r * 0.9}L0 ${-r * 1.28}L${r * 0.26} ${-r * 0.9}`} />
      <circle r={r} />
    </g>
  );
}
