import { ProgressBar } from 'react-aria-components';

/** A small turning mark with a spoken label, for anything that takes over a second. */
export function Spinner({ label }: { label: string }) {
  return (
    <svg className="spinner" viewBox="0 0 16 16" role="img" aria-label={label}>
      <circle cx="8" cy="8" r="6" />
      <path d="M8 2a6 6 0 0 1 6 6" />
    </svg>
  );
}

/** Work of known length: how many of how many are done. */
export function Progress({ label, done, of }: { label: string; done: number; of: number }) {
  const share = of === 0 ? 0 : done / of;
  return (
    <ProgressBar
      value={done}
      maxValue={Math.max(of, 1)}
      valueLabel={`${done} of ${of}`}
      aria-label={label}
      className="progress"
    >
      <span className="row between small">
        <span>{label}</span>
        <span className="soft">
          {done} of {of}
        </span>
      </span>
      <svg className="progress-line" viewBox="0 0 100 6" preserveAspectRatio="none" aria-hidden="true">
        <rect className="track" width="100" height="6" />
        <rect className="done" width={share * 100} height="6" />
      </svg>
    </ProgressBar>
  );
}
