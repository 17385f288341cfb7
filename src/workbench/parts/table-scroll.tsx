import type { ReactNode } from 'react';

/** A wide table that scrolls sideways on its own, by keyboard as well. */
export function TableScroll({ label, children }: { label: string; children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section className="table-scroll" aria-label={label} tabIndex={0}>
      {children}
    </section>
  );
}
