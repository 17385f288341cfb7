import { Component, type ReactNode } from 'react';
import { planStore } from '../../store';
import { savePlanFile } from '../plans/plan-files';

interface BoundaryProps {
  /** What stands here, for the message: "the drawing". */
  what: string;
  /** The place its message takes on the page. */
  className?: string;
  children: ReactNode;
}

/** Keeps a part that fails from taking the rest of the page with it. */
export class Boundary extends Component<BoundaryProps, { failed: string | null }> {
  override state: { failed: string | null } = { failed: null };

  static getDerivedStateFromError(error: unknown): { failed: string } {
    return { failed: error instanceof Error ? error.message : String(error) };
  }

  override render(): ReactNode {
    const { failed } = this.state;
    if (failed === null) return this.props.children;
    return (
      <div className={this.props.className ?? 'scene-message'} role="alert">
        <p>
          <strong>Something went wrong with {this.props.what}.</strong> Your plan is safe; the rest
          of the page still works.
        </p>
        <p className="quiet-text">{failed}</p>
        <p>
          <button type="button" onClick={() => this.setState({ failed: null })}>
            Try again
          </button>{' '}
          <button type="button" onClick={() => void savePlanFile(planStore.getState().plan)}>
            Save the plan to a file
          </button>
        </p>
      </div>
    );
  }
}
