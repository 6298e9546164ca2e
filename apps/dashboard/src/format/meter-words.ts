import type { Meter } from '@hubwright/contracts/customers/operations';

/** The meters hours are read from. */
export const meterWords: Record<Meter, string> = {
  tachometer: 'tachometer',
  'hour-meter': 'hour meter',
  airframe: 'airframe hours',
};
export const meterChoices = Object.entries(meterWords).map(([value, text]) => ({ value: value as Meter, text }));
