import type { ReactNode } from 'react';

/** Nothing is here: say so in one line, say what to do, offer the one action. */
export function EmptyState({ title, children, action }: { title: string; children?: ReactNode; action?: ReactNode }) {
  return (
    <div className="empty">
      <p className="empty-title">{title}</p>
      {children ? <p className="soft">{children}</p> : null}
      {action}
    </div>
  );
}
