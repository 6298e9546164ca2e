import { clearRack } from '../apps/server/src/modules/kits/clear-rack.command.ts';
import { installFromTray } from '../apps/server/src/modules/kits/install-from-tray.command.ts';
import { issueLot } from '../apps/server/src/modules/kits/issue-lot.command.ts';
import { passRackPart } from '../apps/server/src/modules/kits/pass-rack-part.command.ts';
import { reserveKit } from '../apps/server/src/modules/kits/reserve-kit.command.ts';
import { reuseFromRack } from '../apps/server/src/modules/kits/reuse-from-rack.command.ts';
import { presigned, type SeedRun } from './run.ts';

interface Piece {
  readonly lineId: string;
  readonly lotCode: string;
}

/** One kit: promised, pulled into its tray, and put into the unit together with what came off it. */
export class KitPull {
  /** What came off at teardown. */
  readonly rack: (Piece & { readonly lotId: string })[] = [];
  private readonly tray: Piece[] = [];

  constructor(
    private readonly run: SeedRun,
    private readonly kitId: string,
    private readonly workOrderId: string,
  ) {}

  /** Promises what the shelf can give; what is missing stays a shortage. */
  reserve() {
    return this.run.run(reserveKit, { kitId: this.kitId }, { by: 'parts' });
  }

  /** Scans every promised lot into the tray; of as-needed lines a third of what may be used. */
  async pull(): Promise<void> {
    await this.reserve();
    const lines = await this.run.reads.kitLine.findMany({
      where: { kitId: this.kitId },
      orderBy: { sequence: 'asc' },
      include: { reservations: { include: { lot: { select: { code: true } } }, orderBy: { createdAt: 'asc' } } },
    });
    for (const line of lines) {
      let left = line.minimum === null ? line.quantity : line.minimum + Math.floor((line.quantity - line.minimum) / 3);
      if (line.minimum === 0) continue;
      for (const { lot, quantity } of line.reservations) {
        const taken = Math.min(left, quantity);
        if (taken === 0) continue;
        left -= taken;
        const scan = { kitId: this.kitId, lotCode: lot.code, lineId: line.id, quantity: taken };
        await this.run.run(issueLot, scan, { by: 'parts' });
        this.tray.push({ lineId: line.id, lotCode: lot.code });
      }
    }
  }

  /** The inspector passes what goes back in, the technician builds, and the worn-out rest is scrapped. `share` of the pieces. */
  async putTogether(share = 1): Promise<void> {
    const { kitId } = this;
    const lines = await this.run.reads.kitLine.findMany({ where: { kitId } });
    const source = new Map(lines.map((line) => [line.id, line.source]));
    const again = this.rack.filter(({ lineId }) => source.get(lineId) !== 'new');
    const held = await this.inRack();
    for (const { lotId } of again.filter((piece) => held.has(piece.lotId)))
      await this.run.run(passRackPart, { kitId, lotId, signature: presigned }, { by: 'sunniva' });
    for (const { lineId, lotCode } of some(this.tray, share))
      await this.run.run(installFromTray, { kitId, lineId, lotCode }, { by: 'tech' });
    for (const { lineId, lotCode } of some(
      again.filter((piece) => held.has(piece.lotId)),
      share,
    ))
      await this.run.run(reuseFromRack, { kitId, lineId, lotCode }, { by: 'tech' });
    const reason = 'Old seals, hardware and mandatory parts';
    await this.run.run(clearRack, { kitId, to: 'scrap', reason }, { by: 'tech' });
  }

  private async inRack(): Promise<Set<string>> {
    const rows = await this.run.reads.balance.findMany({
      where: { placeKind: 'rack', placeRef: this.workOrderId, onHand: { gt: 0 } },
    });
    return new Set(rows.map(({ lotId }) => lotId));
  }
}

function some<T>(all: readonly T[], share: number): readonly T[] {
  return all.slice(0, Math.ceil(all.length * share));
}
