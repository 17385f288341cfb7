const WIDTH = 76;
const HALF = WIDTH / 2;

/** A bar from the middle: to the left for a minus, hollow; to the right for a plus, filled. */
export function ChangeBar({ share }: { share: number }) {
  const length = Math.min(1, Math.abs(share)) * (HALF - 1);
  return (
    <svg
      className="change-bar"
      width={WIDTH}
      height="10"
      viewBox={`0 0 ${WIDTH} 10`}
      aria-hidden="true"
    >
      <rect
        className={share < 0 ? 'change-less' : 'change-more'}
        x={share < 0 ? HALF - length : HALF}
        y="1.5"
        width={length}
        height="7"
      />
      <path className="change-zero" d={`M${HALF} 0v10`} />
    </svg>
  );
}
