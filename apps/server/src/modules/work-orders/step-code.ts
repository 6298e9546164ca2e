/**
 * What the barcode of a step says: the number of its traveler and the end of its own id, which stays when steps come between or
 * change their order.
 *
 * @example stepCode('TR-00007', '0199a585-6598-7178-88b6-0598b8a7e4dc') // 'TR-00007.A7E4DC'
 */
export function stepCode(travelerNumber: string, stepId: string): string {
  return `${travelerNumber}.${stepId.slice(-6).toUpperCase()}`;
}
