const grouped = new Intl.NumberFormat('en-US', { maximumFractionDigits: 0 });

/** A whole number with thousands grouped: `12,400`. */
export function formatWhole(value: number): string {
  return grouped.format(value);
}

/** Hours kept in tenths: `12345` → `1,234.5`; unknown stays a word, never zero. */
export function formatHours(tenths: number | 'unknown'): string {
  if (tenths === 'unknown') return 'unknown';
  return `${formatWhole(Math.trunc(tenths / 10))}.${Math.abs(tenths % 10)}`;
}

/** Typed hours (`1234.5`, at most one decimal) or the word unknown, to tenths; undefined when it is neither. */
export function parseHours(text: string): number | 'unknown' | undefined {
  const typed = text.trim().toLowerCase().replaceAll(',', '');
  if (typed === 'unknown') return 'unknown';
  const match = /^(\d{1,7})(?:\.(\d))?$/.exec(typed);
  return match ? Number(match[1]) * 10 + Number(match[2] ?? 0) : undefined;
}

/** Puts an s on the word unless it is one: `1 line`, `3 lines`. */
export function countOf(count: number, one: string, many = `${one}s`): string {
  return `${formatWhole(count)} ${count === 1 ? one : many}`;
}
