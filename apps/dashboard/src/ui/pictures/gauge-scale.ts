export interface GaugeScale {
  /** Shares of the width, 0 to 1. The value is held at the ends; `standing` says where it truly lies. */
  readonly low: number | null;
  readonly high: number | null;
  readonly value: number | null;
  readonly standing: 'none' | 'inside' | 'below' | 'above';
}

/** Decimal text as a number to draw with; null for nothing, and for text that is not a number (yet). */
function numberOf(text: string | null): number | null {
  return text !== null && /^-?\d+(\.\d+)?$/.test(text) ? Number(text) : null;
}

/** Limits and value as decimal text to places on a small scale, limits at a quarter and three quarters of it. */
export function gaugeScale(value: string | null, low: string | null, high: string | null): GaugeScale {
  const l = numberOf(low);
  const h = numberOf(high);
  const v = numberOf(value);
  const inside = v === null ? 0 : l !== null ? v - l : h !== null ? h - v : 0;
  // With one limit alone the scale reaches as far as what was read within it.
  const reach = l !== null && h !== null && h > l ? h - l : Math.max(Math.abs(l ?? h ?? 1) * 0.1, inside, 1e-9);
  const start = (l ?? (h ?? 0) - reach) - reach / 2;
  const place = (number: number | null) =>
    number === null ? null : Math.min(1, Math.max(0, (number - start) / (2 * reach)));
  const standing = v === null ? 'none' : l !== null && v < l ? 'below' : h !== null && v > h ? 'above' : 'inside';
  return { low: place(l), high: place(h), value: place(v), standing };
}
