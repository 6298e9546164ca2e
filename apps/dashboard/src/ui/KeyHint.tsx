/** A key to press, shown beside what it does. */
export function KeyHint({ keys }: { keys: string }) {
  return <kbd className="key-hint">{keys}</kbd>;
}
