export { fitSaturation, type ProblemCode, type SaturationFit } from './fit-saturation.ts';
export type { Form } from './forms.ts';
export type { Point } from './least-squares.ts';
export { coverageAfter, judgeLot, type LotStrips } from './lot.ts';
export { judgeMedia, type MediaLimits, type MediaReading, type MediaStanding, mediaStanding } from './media.ts';
export { type Guidance, netArcHeight, onOtherStrips } from './strips.ts';
