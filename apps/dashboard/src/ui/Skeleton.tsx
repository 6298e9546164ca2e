/** Stands where content will come, in about its size, so that nothing jumps. */
export function Skeleton({ lines = 4, label = 'Reading from the shop server' }: { lines?: number; label?: string }) {
  return (
    <div className="skeleton" role="status">
      <span className="only-heard">{label}</span>
      {Array.from({ length: lines }, (_, line) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the lines are alike and never move
        <span key={line} aria-hidden="true" />
      ))}
    </div>
  );
}
