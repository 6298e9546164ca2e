import { type BuildSheet, quantityWords } from './build-sheet.ts';

/** What stands against closing, where it is: each list is one thing to empty. */
export interface LeftOver {
  readonly where: string;
  readonly rows: readonly string[];
}

/** The ledger's judgement by place, with units: what lies in the tray, in the rack, what is missing, what nobody asked for. */
export function leftOverOf(sheet: BuildSheet): LeftOver[] {
  const parts = [...sheet.positions, ...sheet.tray, ...sheet.rack].map((each) => each.part);
  const named = (number: string, quantity: number) => {
    const part = parts.find((each) => each.number === number);
    return `${quantityWords(quantity, part?.issueUnit ?? 'piece')} ${number}${part ? ` ${part.description}` : ''}`;
  };
  const { leftOver, missing, unexpected } = sheet.judgement;
  const left = (place: 'tray' | 'rack') =>
    leftOver
      .filter((each) => each.place === place)
      .map((each) => `${named(each.part, each.quantity)} (${each.lots.join(', ')})`);
  return [
    { where: 'left in the tray', rows: left('tray') },
    { where: 'left in the rack', rows: left('rack') },
    {
      where: 'missing in the unit',
      rows: missing.map((each) => `${named(each.part, each.quantity)}${each.position ? ` at ${each.position}` : ''}`),
    },
    { where: 'in the unit and not on the list', rows: unexpected.map((each) => named(each.part, each.quantity)) },
  ].filter((each) => each.rows.length > 0);
}
