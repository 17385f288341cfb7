import type { ReactNode } from 'react';
import { sentence } from '../parts/check-number';

export interface BannerProps {
  title: ReactNode;
  text?: string | null;
  children?: ReactNode;
  actions?: ReactNode;
  /** Read out at once. */
  alert?: boolean;
  onDismiss?: () => void;
}

/** A line across the page: what to know, and what can be done about it. */
export function Banner({ title, text, children, actions, alert, onDismiss }: BannerProps) {
  return (
    <div className="notice banner" role={alert ? 'alert' : 'status'}>
      <div>
        <strong>{title}</strong>
        {text && <p>{sentence(text)}</p>}
        {children}
      </div>
      {(actions || onDismiss) && (
        <div className="banner-actions">
          {actions}
          {onDismiss && (
            <button type="button" onClick={onDismiss}>
              Understood
            </button>
          )}
        </div>
      )}
    </div>
  );
}
