import { partWords } from '@hubwright/contracts/inventory/quantity';
import type { BuildSheet } from './build-sheet.ts';

type Judged = Pick<BuildSheet['judgement']['missing'][number], 'part' | 'description' | 'issueUnit' | 'quantity'>;

/** What stands against closing, where it is: each list is one thing to empty. */
export interface LeftOver {
  readonly where: string;
  readonly rows: readonly string[];
}

/** The ledger's judgement by place, with units: what lies in the tray, in the rack, what is missing, what nobody asked for. */
export function leftOverOf({ judgement }: BuildSheet): LeftOver[] {
  const { leftOver, missing, unexpected, waiting } = judgement;
  const left = (place: 'tray' | 'rack') =>
    leftOver.filter((each) => each.place === place).map((each) => `${named(each)} (${each.lots.join(', ')})`);
  return [
    { where: 'left in the tray', rows: left('tray') },
    { where: 'left in the rack', rows: left('rack') },
    {
      where: 'missing in the unit',
      rows: missing.map((each) => `${named(each)}${each.position ? ` at ${each.position}` : ''}`),
    },
    {
      where: 'in the unit and not on the list',
      rows: unexpected.map((each) => `${named(each)}${each.places.length > 0 ? `: ${each.places.join(', ')}` : ''}`),
    },
    {
      where: 'on the list and not in the kit',
      rows: waiting.map(
        (each) =>
          `${named(each)} at ${each.position}: ${each.why === 'serial-unread' ? `for ${each.serials}; the unit’s serial is not read yet` : 'add it to the kit'}`,
      ),
    },
  ].filter((each) => each.rows.length > 0);
}

function named({ part, quantity, ...words }: Judged): string {
  return partWords(quantity, { number: part, ...words });
}
