/** Not written yet. */
export default () => <p className="quiet-text">Not worked out yet.</p>;
