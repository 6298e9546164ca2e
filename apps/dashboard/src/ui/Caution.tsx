import type { ReactNode } from 'react';

/** One plain line where work can hurt someone. It defers to the current approved manual, licensed people and the local authority. */
export function Caution({ children }: { children: ReactNode }) {
  return (
    <p className="caution" role="note">
      <svg viewBox="0 0 20 20" aria-hidden="true">
        <path d="M10 1.500 19 18H1z" />
        <path className="mark" d="M10 7v5.500m0 2v1.200" />
      </svg>
      <span>
        <strong>Caution: </strong>
        {children}
      </span>
    </p>
  );
}
