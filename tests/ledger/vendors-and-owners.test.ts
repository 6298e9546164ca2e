import { addDays } from '@hubwright/rules/dates';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import pg from 'pg';
import { giveBackLot } from '../../apps/server/src/modules/inventory/give-back-lot.command.ts';
import { judgeLot } from '../../apps/server/src/modules/inventory/judge-lot.command.ts';
import { receiveLot } from '../../apps/server/src/modules/inventory/receive-lot.command.ts';
import { scrapLot } from '../../apps/server/src/modules/inventory/scrap-lot.command.ts';
import { surrenderLot } from '../../apps/server/src/modules/inventory/surrender-lot.command.ts';
import { clearRack } from '../../apps/server/src/modules/kits/clear-rack.command.ts';
import { passRackPart } from '../../apps/server/src/modules/kits/pass-rack-part.command.ts';
import { replaceRackPart } from '../../apps/server/src/modules/kits/replace-rack-part.command.ts';
import { issueRevision } from '../../apps/server/src/modules/manuals/issue-revision.command.ts';
import { sendToVendor } from '../../apps/server/src/modules/vendors/send-to-vendor.command.ts';
import { takeBack } from '../../apps/server/src/modules/vendors/take-back.command.ts';
import { takeBackPieces } from '../../apps/server/src/modules/vendors/take-back-pieces.command.ts';
import { writeOffPieces } from '../../apps/server/src/modules/vendors/write-off-pieces.command.ts';
import { day } from '../support/days.ts';
import { Job } from '../support/job.ts';
import { ledgerFaults } from '../support/ledger-faults.ts';
import { threeBladeContent } from '../support/manual-content.ts';
import { pin } from '../support/people.ts';
import { ShopApp } from '../support/shop-app.ts';

/** What may be tried with a unit's own pieces, and with parts a customer brings; whether it is allowed is the server's to say. */
const tries = [
  'send out',
  'send out',
  'come back',
  'come back',
  'come late',
  'lose',
  'pass',
  'replace',
  'clear rack',
  'customer brings',
  'accept',
  'reject',
  'give up',
  'destroy',
  'give back',
] as const;
type Step = { readonly do: (typeof tries)[number]; readonly pick: number; readonly quantity: number };
const refusals = new Set([409, 412, 404, 403, 422]);

describe('pieces at vendors and parts of customers, under whatever people do', () => {
  let shop: ShopApp;
  let job: Job;
  let stepId: string;
  let supplierId: string;
  /** How often each kind of step went through: a history in which nothing happened proves nothing. */
  const done = new Map<string, number>();

  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    job = await Job.arrived(shop, 'QV9000');
    const { revisionId, modelId } = await job.workOrder();
    const { manualId } = await job.reads.manualRevision.findUniqueOrThrow({ where: { id: revisionId } });
    const content = await threeBladeContent(shop);
    const routes = content.routes.map((route) => ({
      ...route,
      steps: route.steps.map((step) => ({ ...step, outside: step.title === 'Plate and bake' })),
    }));
    const models = [{ ...content, routes, modelId, tboRules: [] }];
    const revision = { manualId, revision: '9', issuedOn: '2026-06-01', models };
    await shop.run(issueRevision, revision as never, job.people.inspector);
    job = await Job.arrived(shop, 'QV9001');
    await job.tornDown();
    await job.takenOff();
    await job.signed('evaluation');
    await job.approved('firm');
    await job.sign(await job.nextAt('hub'));
    stepId = (await job.nextAt('hub')).id;
    supplierId = (await job.reads.supplier.findFirstOrThrow({ where: { approvedUntil: { gte: new Date() } } })).id;
  }, 180_000);
  afterAll(() => shop.close());

  /** The most that was ever out after a history. */
  const most = { vendor: 0 };
  const heldAs = async (placeKind: string) =>
    (await job.reads.balance.aggregate({ where: { placeKind }, _sum: { onHand: true } }))._sum.onHand ?? 0;
  const racked = (pick: number) =>
    job.reads.lot
      .findMany({
        where: { workOrderId: job.id, balances: { some: { placeKind: 'rack', onHand: { gt: 0 } } } },
        orderBy: { code: 'asc' },
      })
      .then((lots) => lots[pick % Math.max(1, lots.length)]);
  const brought = (pick: number) =>
    job.reads.lot
      .findMany({ where: { origin: 'customer' }, orderBy: { code: 'desc' }, take: 4 })
      .then((lots) => lots[pick % Math.max(1, lots.length)]);

  async function send({ pick, quantity }: Step): Promise<unknown> {
    const lot = await racked(pick);
    const pieces = lot && pick !== 7 ? [{ lotId: lot.id, quantity }] : [];
    const order = { supplierId, purchaseOrder: 'PO-V', paperDue: 'certificate', expectedOn: addDays(day(0), 5) };
    return shop.run(sendToVendor, { ...order, stepIds: [stepId], pieces }, job.people.clerk);
  }
  /** Some of the pieces or all; what does not come stays at the vendor, and is never lost from sight. */
  async function back({ pick, quantity }: Step): Promise<unknown> {
    const order = await job.reads.vendorOrder.findFirst({
      where: { state: 'out' },
      orderBy: { number: 'desc' },
      include: { lines: true, pieces: true },
    });
    const line = order?.lines.find(({ condition }) => condition === null);
    if (!order || !line) return undefined;
    const pieces = pick % 3 === 0 ? [] : order.pieces.map(({ lotId }) => ({ lotId, quantity }));
    const inspected = { lineId: line.id, condition: 'damaged' as const, note: 'burnt' };
    const input = {
      orderId: order.id,
      lines: [inspected],
      certificate: 'VC-1',
      paperCame: true,
      pieces,
      signature: pin,
    };
    return shop.run(takeBack, input, job.people.inspector, { version: order.version });
  }
  /** An order that still has pieces out, also after its part was inspected. */
  async function piecesOut({ pick, quantity }: Step) {
    const order = await job.reads.vendorOrder.findFirst({
      where: { state: 'out', pieces: { some: {} } },
      orderBy: { number: pick % 2 === 0 ? 'desc' : 'asc' },
      include: { pieces: { orderBy: { id: 'asc' } } },
    });
    const piece = order?.pieces[pick % order.pieces.length];
    if (!order || !piece) return undefined;
    return { orderId: order.id, pieces: [{ lotId: piece.lotId, quantity }], signature: pin, version: order.version };
  }
  async function late(step: Step): Promise<unknown> {
    const came = await piecesOut(step);
    if (!came) return undefined;
    const { version, pieces, ...input } = came;
    const looked = pieces.map((piece) => ({ ...piece, condition: step.pick % 3 === 0 ? 'damaged' : 'good' }) as const);
    const paper = { certificate: 'VC-2', paperCame: true };
    return shop.run(takeBackPieces, { ...input, ...paper, pieces: looked }, job.people.inspector, { version });
  }
  async function lose(step: Step): Promise<unknown> {
    const gone = await piecesOut(step);
    if (!gone) return undefined;
    const { version, ...input } = gone;
    const told = { how: 'lost' as const, vendorPaper: 'letter', reason: 'nobody finds them' };
    const witnessed = { witnessId: job.people.technician.personId, witnessSignature: pin };
    return shop.run(writeOffPieces, { ...input, ...told, ...witnessed }, job.people.clerk, { version });
  }
  async function ofRack({ do: what, pick, quantity }: Step): Promise<unknown> {
    const { kitId, people } = job;
    const lotId = (await racked(pick))?.id ?? '';
    if (what === 'pass') return shop.run(passRackPart, { kitId, lotId, signature: pin }, people.inspector);
    if (what === 'replace')
      return shop.run(replaceRackPart, { kitId, lotId, quantity, reason: 'worn' }, people.inspector);
    const to = (['scrap', 'customer', 'held'] as const)[pick % 3] ?? 'scrap';
    // Once in a while: it empties the rack of what always comes new.
    return pick > 5 ? shop.run(clearRack, { kitId, to, reason: 'old' }, people.technician) : undefined;
  }
  async function ofCustomer({ do: what, pick, quantity }: Step): Promise<unknown> {
    const { clerk, inspector, technician } = job.people;
    if (what === 'customer brings') {
      const { customerId } = await job.workOrder();
      const part = await job.reads.part.findFirstOrThrow({
        where: { shelfLifeMonths: null, serialised: false, class: 'hardware' },
      });
      const paper = { sourceClass: 'customer-supplied' as const, supplierLot: 'CL', certificate: 'CC' };
      return shop.run(receiveLot, { partId: part.id, quantity, customerId, ...paper }, clerk);
    }
    const lot = await brought(pick);
    if (!lot) return undefined;
    const { id: lotId, version } = lot;
    if (what === 'accept' || what === 'reject') {
      const verdict =
        what === 'accept' ? { verdict: 'accepted' as const, bin: 'B-01' } : { verdict: 'rejected' as const };
      return shop.run(judgeLot, { lotId, ...verdict, signature: pin }, inspector, { version });
    }
    if (what === 'give up') {
      const letter = { letter: 'L-1', dated: day(-1), givenBy: 'the owner' };
      return shop.run(surrenderLot, { lotId, ...letter }, clerk, { version });
    }
    if (what === 'give back') return shop.run(giveBackLot, { lotId, quantity, reference: 'P-1' }, clerk, { version });
    const witnessed = { signature: pin, witnessId: technician.personId, witnessSignature: pin };
    return shop.run(scrapLot, { lotId, quantity, reason: 'rejected', ...witnessed }, clerk, { version });
  }
  const kinds: Partial<Record<Step['do'], (step: Step) => Promise<unknown>>> = {
    'send out': send,
    'come back': back,
    'come late': late,
    lose,
    pass: ofRack,
    replace: ofRack,
    'clear rack': ofRack,
  };
  async function attempt(step: Step): Promise<void> {
    try {
      const reply = await (kinds[step.do] ?? ofCustomer)(step);
      if (reply !== undefined) done.set(step.do, (done.get(step.do) ?? 0) + 1);
    } catch (error) {
      if (!refusals.has((error as { status?: number }).status ?? 0)) throw error;
    }
  }

  it('all that ever came is on hand, installed, scrapped, given back, at a vendor or lost there', async () => {
    const steps = fc.array(
      fc.record({ do: fc.constantFrom(...tries), pick: fc.nat(7), quantity: fc.integer({ min: 1, max: 3 }) }),
      { minLength: 10, maxLength: 30 },
    );
    await fc.assert(
      fc.asyncProperty(steps, async (plan) => {
        for (const step of plan) await attempt(step);
        expect(await ledgerFaults(shop.databaseUrl)).toEqual([]);
        expect(await vendorFaults(shop.databaseUrl)).toEqual([]);
        most.vendor = Math.max(most.vendor, await heldAs('vendor'));
      }),
      { numRuns: 24, seed: 711 },
    );
    expect(Object.fromEntries(done)).toMatchObject({
      'send out': expect.any(Number),
      'come back': expect.any(Number),
      'come late': expect.any(Number),
      lose: expect.any(Number),
      'customer brings': expect.any(Number),
      reject: expect.any(Number),
      'give up': expect.any(Number),
      destroy: expect.any(Number),
      'give back': expect.any(Number),
    });
  }, 300_000);

  it('a piece that never came back is still counted, at the vendor or as lost there', async () => {
    expect(most.vendor).toBeGreaterThan(0);
    const told = await job.reads.vendorLoss.aggregate({ _sum: { quantity: true } });
    expect(told._sum.quantity).toBeGreaterThan(0);
    expect(await heldAs('lost')).toBe(told._sum.quantity);
  });
});

/** What the ledger has at vendors against what their orders say is out, lot by lot. */
async function vendorFaults(databaseUrl: string): Promise<string[]> {
  const client = new pg.Client({ connectionString: databaseUrl });
  await client.connect();
  try {
    const { rows } = await client.query<{ what: string }>(`
      WITH out AS (SELECT p.lot_id, o.supplier_id::text AS ref, sum(p.quantity - p.back - p.lost) AS pieces
        FROM vendor_pieces p JOIN vendor_orders o ON o.id = p.order_id GROUP BY 1, 2),
      held AS (SELECT lot_id, place_ref AS ref, on_hand FROM balances WHERE place_kind = 'vendor')
      SELECT coalesce(h.lot_id, o.lot_id)::text AS what FROM held h FULL JOIN out o ON o.lot_id = h.lot_id AND o.ref = h.ref
      WHERE coalesce(h.on_hand, 0) <> coalesce(o.pieces, 0)`);
    return rows.map(({ what }) => `at the vendor is not what its orders say: ${what}`);
  } finally {
    await client.end();
  }
}
