import type { ReactNode } from 'react';
import styles from './outside.module.css';

/** A sheet alone on the bench, for people who are not signed in. */
export function OutsidePage({
  title,
  lead,
  wide,
  children,
}: {
  title: string;
  lead: string;
  wide?: boolean;
  children: ReactNode;
}) {
  return (
    <main className={styles.bench}>
      <title>{`${title} · Hubwright`}</title>
      <div className={`sheet ${wide ? styles.wide : styles.sheet}`}>
        <div className={styles.head}>
          <svg viewBox="0 0 64 64" aria-hidden="true" className={styles.mark}>
            {[0, 120, 240].map((turn) => (
              <path
                key={turn}
                transform={`rotate(${turn} 32 32)`}
                d="M32 26c-5-4-6.500-13-4-22 2-1.500 6-1.500 8 0 2.500 9 1 18-4 22z"
              />
            ))}
            <circle cx="32" cy="32" r="5" />
          </svg>
          <div>
            <h1>{title}</h1>
            <p className="soft">{lead}</p>
          </div>
        </div>
        {children}
      </div>
    </main>
  );
}
