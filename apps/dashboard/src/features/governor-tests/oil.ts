/** The oil temperature as it is read for one reading; empty before each, as everything measured is. */
export interface OilRead {
  readonly value: string;
  readonly unit: 'degF' | 'degC';
}

export function oilInput({ value, unit }: OilRead) {
  return { oilTemperature: value, oilUnit: unit };
}
