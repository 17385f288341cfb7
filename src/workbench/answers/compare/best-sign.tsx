/** A filled diamond: best in its row. With weight, and a word for those who do not see it. */
export function BestSign() {
  return (
    <>
      <svg className="best-sign" width="11" height="11" viewBox="0 0 11 11" aria-hidden="true">
        <path d="M5.5 0 11 5.5 5.5 11 0 5.5Z" />
      </svg>
      <span className="unseen">best: </span>
    </>
  );
}
