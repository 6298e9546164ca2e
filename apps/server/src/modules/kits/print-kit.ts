import { quantityText } from '@hubwright/contracts/inventory/quantity';
import { labelRoll } from '../../platform/print/label-roll.ts';
import { Paper } from '../../platform/print/paper.ts';
import type { Held } from './held.ts';

export interface KitOnPaper {
  readonly code: string;
  readonly workOrder: { readonly number: string; readonly unit: string; readonly customer: string };
  readonly needBy: string;
  readonly state: string;
  readonly lines: readonly LineOnPaper[];
  readonly held: Readonly<Record<'tray' | 'rack' | 'unit', readonly Held[]>>;
}
interface LineOnPaper {
  readonly id: string;
  readonly part: { readonly number: string; readonly description: string; readonly issueUnit: string };
  readonly position: string;
  readonly quantity: number;
  readonly minimum: number | null;
  readonly source: string;
}
interface PrintOptions {
  readonly shopName: string;
  readonly at: Date;
  readonly printed: string;
}

/** What stands on the tray: read at arm's length, and a code that opens the kit. */
export function printTrayLabel(kit: KitOnPaper, { shopName, at, printed }: PrintOptions): Promise<Buffer> {
  const { code, workOrder, needBy } = kit;
  return new Paper({ title: `Tray ${code}`, shopName, at, foot: `${code}   ·   printed ${printed}` })
    .barcode(code)
    .heading(`${workOrder.number}, ${workOrder.unit}`)
    .facts([
      ['For', workOrder.customer],
      ['Needed by', needBy],
    ])
    .finish();
}

/** The same on the label of a roll. */
export const rolledTrayLabel =
  (size: { widthMillimetres: number; heightMillimetres: number }) =>
  ({ code, workOrder, needBy }: KitOnPaper, { shopName, at }: PrintOptions): Promise<Buffer> =>
    labelRoll({ title: `Tray ${code}`, author: shopName, at, ...size }, [
      {
        ...{ code, head: workOrder.number },
        lines: [`Needed by ${needBy}`, workOrder.unit, workOrder.customer],
      },
    ]);

/** A sheet to count by: the ledger beside room for what is found. Only the ledger counts; a difference is a count or a scrap on record. */
export function printKitAudit(kit: KitOnPaper, { shopName, at, printed }: PrintOptions): Promise<Buffer> {
  const { code, workOrder, needBy, state, lines, held } = kit;
  const paper = new Paper({
    ...{ title: `Kit audit ${code}`, shopName, at },
    foot: `${code} of ${workOrder.number}   ·   printed ${printed}   ·   what moved since stands on screen, and only that counts`,
  });
  paper.barcode(code).facts([
    ['Work order', `${workOrder.number}, ${workOrder.customer}`],
    ['Unit', workOrder.unit],
    ['Kit', `${state}, needed by ${needBy}`],
  ]);
  paper.heading('Line by line: what is asked for and where the ledger has it');
  paper.table(
    [
      { head: 'Part and position', width: '*' },
      { head: 'Asked for', width: 90 },
      { head: 'Tray', width: 44, side: 'right' },
      { head: 'Rack', width: 44, side: 'right' },
      { head: 'Unit', width: 44, side: 'right' },
      { head: 'Counted', width: 70 },
    ],
    lines.map((line) => [
      `${line.part.number} ${line.part.description}\n${line.position}`,
      asks(line),
      ...(['tray', 'rack', 'unit'] as const).map((place) => String(of(held[place], line.id))),
      '',
    ]),
  );
  for (const place of ['tray', 'rack', 'unit'] as const) lots(paper, place, held[place]);
  return paper
    .heading('Counted by')
    .paragraph('Differences found: ________________________________________________________________')
    .paragraph('Counted by ______________________________    Date ________________')
    .paragraph('Checked by ______________________________    Date ________________')
    .finish();
}

function asks({ quantity, minimum, source, part }: LineOnPaper): string {
  const amount = quantityText(quantity, part.issueUnit);
  return `${minimum === null ? '' : `${minimum} to `}${amount}, ${source}`;
}

function of(held: readonly Held[], lineId: string): number {
  return held.reduce((sum, each) => sum + (each.lineId === lineId ? each.quantity : 0), 0);
}

const places = { tray: 'In the tray', rack: 'In the rack', unit: 'In the unit' } as const;

function lots(paper: Paper, place: keyof typeof places, held: readonly Held[]): void {
  paper.heading(places[place]);
  if (held.length === 0) {
    paper.paragraph('Nothing, by the ledger.');
    return;
  }
  paper.table(
    [
      { head: 'Lot', width: 80 },
      { head: 'Part', width: '*' },
      { head: 'For', width: 120 },
      { head: 'Pieces', width: 50, side: 'right' },
      { head: 'Found', width: 70 },
    ],
    held.map(({ lotCode, part, position, quantity }) => [
      lotCode,
      `${part.number} ${part.description}`,
      position,
      quantityText(quantity, part.issueUnit),
      '',
    ]),
  );
}
