/** What the fan's lines and marks mean. */
export function FanKey() {
  return (
    <ul className="fan-key">
      <li>
        <svg width="34" height="14" viewBox="0 0 34 14" aria-hidden="true">
          <path className="fan-on" d="M1 7h26" />
          <circle className="fan-on-mark" cx="28" cy="7" r="4" />
        </svg>
        with delays and gains
      </li>
      <li>
        <svg width="34" height="14" viewBox="0 0 34 14" aria-hidden="true">
          <path className="fan-off" d="M1 7h26" />
          <circle className="fan-off-mark" cx="28" cy="7" r="4" />
        </svg>
        without
      </li>
      <li>
        <svg width="26" height="14" viewBox="0 0 26 14" aria-hidden="true">
          <circle className="fan-on-mark" cx="6" cy="7" r="4" />
          <path className="fan-on-mark" d="M15 7l5-5 5 5-5 5z" />
        </svg>
        by time, by level
      </li>
    </ul>
  );
}
