import { expectedOperations } from '@hubwright/contracts/kits/expected-operations';
import type { Reply } from '@hubwright/contracts/operation';
import type { RowOf } from '../../api/pages.ts';
import { queryFor } from '../../api/query.ts';

export type ExpectedDemand = Reply<typeof expectedOperations.expectedDemand>;
export type Behind = RowOf<typeof expectedOperations.expectedUnits>;
export type ExpectedMonth = ExpectedDemand['months'][number];

export const expectedQuery = (partId: string) => queryFor(expectedOperations.expectedDemand, { partId });

/** An expectation as people read it: 8.4, and 0.04 where a tenth would be nothing. */
export function expectationText(quantity: number): string {
  const digits = quantity !== 0 && Math.abs(quantity) < 0.05 ? 2 : 1;
  return String(Number(quantity.toFixed(digits)));
}

export function percentText(share: number): string {
  return `${Math.round(share * 100)} %`;
}
