import type { ReactNode } from 'react';
import { sessionStore } from '../../store';

interface DetailsHeadProps {
  title: string;
  mark?: ReactNode;
  children?: ReactNode;
}

/** What is selected, in one line, and the way back to the whole car. */
export function DetailsHead({ title, mark, children }: DetailsHeadProps) {
  return (
    <div className="details-head">
      <div className="section-head">
        <h2>
          {mark}
          <span className="first-large">{title}</span>
        </h2>
        <button
          type="button"
          className="words"
          onClick={() => sessionStore.setState({ selection: null })}
        >
          Whole car
        </button>
      </div>
      {children && <p className="quiet-text">{children}</p>}
    </div>
  );
}
