/** What a badge's code looks like, so that a scan of it is told from a lot, a part or a serial. */
export function asBadge(code: string): string | undefined {
  const plain = code.trim().toUpperCase();
  return /^HB-[0-9A-Z]{13}$/.test(plain) ? plain : undefined;
}
