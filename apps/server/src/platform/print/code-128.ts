import bwip from 'bwip-js/node';

/** One black bar: where it begins and how wide it is, in modules. */
export interface Bar {
  readonly x: number;
  readonly width: number;
}

/** The bars of a Code 128 symbol (ISO/IEC 15417) for upper-case letters, digits and signs; without its quiet zones. */
export function code128(text: string): Bar[] {
  const [symbol] = bwip.raw({ bcid: 'code128', text }) as unknown as { sbs: readonly number[] }[];
  const bars: Bar[] = [];
  let x = 0;
  for (const [index, width] of (symbol?.sbs ?? []).entries()) {
    if (index % 2 === 0) bars.push({ x, width });
    x += width;
  }
  return bars;
}
