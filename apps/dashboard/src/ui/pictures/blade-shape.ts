/** One blade seen from the front, root at (0, 0), tip towards negative y, length 1: a quiet paddle, drawn by us. */
export const bladePath =
  'M-0.032 0 C-0.034 -0.10 -0.040 -0.16 -0.066 -0.26 C-0.094 -0.40 -0.098 -0.62 -0.082 -0.82 ' +
  'C-0.074 -0.93 -0.050 -1 -0.004 -1 C0.044 -1 0.066 -0.93 0.070 -0.82 C0.078 -0.62 0.074 -0.40 0.056 -0.26 ' +
  'C0.040 -0.16 0.034 -0.10 0.032 0 Z';

/** Degrees clockwise from the top at which blade `index` of `count` stands. */
export function bladeTurn(index: number, count: number): number {
  return (360 / count) * index;
}

/** A point at a distance from the hub's centre, at degrees clockwise from the top; y grows downwards as in SVG. */
export function pointAt(degrees: number, distance: number): { x: number; y: number } {
  const radians = (degrees * Math.PI) / 180;
  return { x: Math.sin(radians) * distance, y: -Math.cos(radians) * distance };
}
