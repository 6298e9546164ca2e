import type { LabelForm } from '@hubwright/contracts/inventory/label-forms';
import { Inject, Injectable, StreamableFile } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { found } from '../../platform/command/version.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import { Reads } from '../../platform/database/reads.ts';
import { rollSize } from '../inventory/public.ts';
import { askThrough } from './ask.ts';
import { heldAt } from './held.ts';
import { type KitOnPaper, printKitAudit, printTrayLabel, rolledTrayLabel } from './print-kit.ts';

const part = { select: { number: true, description: true, issueUnit: true } } as const;
const whole = {
  workOrder: { include: { customer: { select: { name: true } }, model: { select: { designation: true } } } },
  lines: { orderBy: { sequence: 'asc' }, include: { part } },
} as const;

/** The papers of a kit. */
@Injectable()
export class KitPaperQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  label({ kitId, form }: { kitId: string; form: LabelForm }): Promise<StreamableFile> {
    const size = rollSize(form);
    const print = size ? rolledTrayLabel(size) : printTrayLabel;
    return this.printed(kitId, { name: 'tray', print });
  }

  audit({ kitId }: { kitId: string }): Promise<StreamableFile> {
    return this.printed(kitId, { name: 'audit', print: printKitAudit });
  }

  private async printed(kitId: string, as: { name: string; print: typeof printKitAudit }): Promise<StreamableFile> {
    const kit = await this.kit(kitId);
    const shop = found(await this.reads.models.shopProfile.findUnique({ where: { id: 1 } }), 'The shop profile');
    const words = new Intl.DateTimeFormat('sv-SE', { timeZone: shop.zone, dateStyle: 'short', timeStyle: 'short' });
    const at = this.clock.now();
    const bytes = await as.print(kit, { shopName: shop.name, at, printed: words.format(at) });
    const disposition = `inline; filename="${kit.code}-${as.name}.pdf"`;
    return new StreamableFile(bytes, { type: 'application/pdf', disposition });
  }

  private async kit(kitId: string): Promise<KitOnPaper> {
    const kit = found(await this.reads.models.kit.findUnique({ where: { id: kitId }, include: whole }), 'This kit');
    const ask = askThrough(this.reads);
    const mine = new Set<string | null>(kit.lines.map(({ id }) => id));
    const [tray, rack, unit] = await Promise.all([
      heldAt(ask, { kind: 'tray', ref: kit.id }),
      heldAt(ask, { kind: 'rack', ref: kit.workOrderId }),
      heldAt(ask, { kind: 'unit', ref: kit.workOrderId }),
    ]);
    // Rack and unit belong to the work order; a second kit's pieces stand on its own sheet.
    const own = (held: typeof rack) => held.filter(({ lineId }) => lineId === null || mine.has(lineId));
    const { number, customer, model } = kit.workOrder;
    return {
      code: kit.code,
      workOrder: { number, unit: model.designation, customer: customer.name },
      needBy: fromDbDate(kit.needBy),
      state: kit.state,
      lines: kit.lines,
      held: { tray, rack: own(rack), unit: own(unit) },
    };
  }
}
