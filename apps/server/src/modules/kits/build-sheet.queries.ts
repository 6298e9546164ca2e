import type { kitsOperations } from '@hubwright/contracts/kits/operations';
import type { Input } from '@hubwright/contracts/operation';
import { Inject, Injectable } from '@nestjs/common';
import { found } from '../../platform/command/version.ts';
import { Reads } from '../../platform/database/reads.ts';
import { type Ask, askThrough } from './ask.ts';
import { judge } from './closing.ts';
import { type Held, heldAt } from './held.ts';
import { placedLot } from './kits.queries.ts';
import { waitingForView } from './waiting-lines.ts';

interface SheetLine {
  lineId: string;
  kitId: string;
  kitCode: string;
  sequence: number;
  part: object;
  position: string;
  source: string;
  quantity: number;
  minimum: number | null;
}
interface SheetKit {
  id: string;
  code: string;
  state: string;
  version: number;
}

const kitsSql = `
  SELECT id, code, state, version FROM kits WHERE work_order_id = $1::uuid AND state <> 'cancelled' ORDER BY created_at, code`;
const linesSql = `
  SELECT kl.id AS "lineId", k.id AS "kitId", k.code AS "kitCode", kl.sequence, kl.position, kl.source, kl.quantity, kl.minimum,
    json_build_object('id', p.id, 'number', p.number, 'description', p.description, 'issueUnit', p.issue_unit) AS part
  FROM kit_lines kl JOIN kits k ON k.id = kl.kit_id JOIN parts p ON p.id = kl.part_id
  WHERE k.work_order_id = $1::uuid AND k.state <> 'cancelled' ORDER BY k.created_at, kl.sequence`;

/** The builder's sheet: position by position what is required and what the ledger proves to be in the unit. */
@Injectable()
export class BuildSheetQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  async buildSheet({ workOrderId }: Input<typeof kitsOperations.buildSheet>) {
    const ask = askThrough(this.reads);
    const orders = await ask<{ number: string }>('SELECT number FROM work_orders WHERE id = $1::uuid', [workOrderId]);
    const workOrder = found(orders[0], 'This work order');
    const kits = await ask<SheetKit>(kitsSql, [workOrderId]);
    const [lines, judgement, unit, rack, trays] = await Promise.all([
      ask<SheetLine>(linesSql, [workOrderId]),
      waitingForView(this.reads.models, workOrderId).then((waiting) => judge(ask, workOrderId, waiting)),
      heldAt(ask, { kind: 'unit', ref: workOrderId }),
      heldAt(ask, { kind: 'rack', ref: workOrderId }),
      this.trays(ask, kits),
    ]);
    const kitOf = new Map(lines.map(({ lineId, kitId }) => [lineId, kitId]));
    const tray = trays.map(({ held }) => held);
    return {
      workOrderId,
      workOrderNumber: workOrder.number,
      kits,
      positions: lines.map((line) => sheetLine(line, { unit, tray, rack })),
      tray: trays.map(({ held, kitId }) => ({ ...placedLot(held), kitId })),
      rack: rack.map((held) => ({ ...placedLot(held), kitId: kitOf.get(held.lineId ?? '') ?? null })),
      judgement,
    };
  }

  /** One or two kits a work order: a query each. */
  private async trays(ask: Ask, kits: readonly SheetKit[]): Promise<{ kitId: string; held: Held }[]> {
    const trays = await Promise.all(
      kits.map(async ({ id }) => (await heldAt(ask, { kind: 'tray', ref: id })).map((held) => ({ kitId: id, held }))),
    );
    return trays.flat();
  }
}

function sheetLine(line: SheetLine, places: { unit: Held[]; tray: Held[]; rack: Held[] }) {
  const { quantity, ...rest } = line;
  const at = (held: readonly Held[]) => held.filter(({ lineId }) => lineId === line.lineId);
  const count = (held: readonly Held[]) => at(held).reduce((sum, each) => sum + each.quantity, 0);
  const installed = count(places.unit);
  return {
    ...rest,
    required: quantity,
    installed,
    missing: Math.max(0, (line.minimum ?? quantity) - installed),
    inTray: count(places.tray),
    inRack: count(places.rack),
    lots: at(places.unit).map(({ lotId, lotCode, quantity: pieces, origin, movementId }) => ({
      lotId,
      lotCode,
      quantity: pieces,
      from: origin === 'taken-off' ? 'reused' : 'new',
      movementId,
    })),
  };
}
