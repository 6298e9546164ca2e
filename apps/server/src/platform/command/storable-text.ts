import type { Pointed } from '@hubwright/contracts/problems';

/** Where a value holds text that PostgreSQL and UTF-8 cannot: U+0000, or half of a surrogate pair. */
export function unstorableText(value: unknown, pointer = ''): Pointed[] {
  if (typeof value === 'string')
    return value.includes('\u0000') || /\p{Surrogate}/u.test(value)
      ? [{ pointer, detail: 'This holds a character that is no text' }]
      : [];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => {
    const here = `${pointer}/${key.replaceAll('~', '~0').replaceAll('/', '~1')}`;
    return [...unstorableText(key, here), ...unstorableText(inner, here)];
  });
}
