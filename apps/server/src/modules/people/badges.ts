import { randomBytes } from 'node:crypto';

const letters = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';

/** A code no scanner or keyboard layout mistakes: 65 random bits after the mark that tells a badge from a lot or a serial. */
export function newBadgeCode(): string {
  return `HB-${[...randomBytes(13)].map((byte) => letters[byte % 32]).join('')}`;
}
