import { useLiveState } from '../api/live.ts';

const words = { connecting: 'Connecting…', live: 'Live', reconnecting: 'Reconnecting…' } as const;

/** Whether what is on screen follows the shop: a filled dot and "Live", or an open ring and what is happening. */
export function LiveMark() {
  const state = useLiveState();
  return (
    <span className={`live-mark ${state}`} role="status">
      <svg viewBox="0 0 12 12" aria-hidden="true">
        {state === 'live' ? (
          <circle className="dot" cx="6" cy="6" r="4" />
        ) : (
          <circle className="ring" cx="6" cy="6" r="4" />
        )}
      </svg>
      {words[state]}
    </span>
  );
}
