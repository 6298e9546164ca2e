import type { SourceClass } from '@hubwright/contracts/inventory/operations';
import pg from 'pg';
import { addCustomer } from '../../apps/server/src/modules/customers/add-customer.command.ts';
import { addPart } from '../../apps/server/src/modules/inventory/add-part.command.ts';
import { judgeLot } from '../../apps/server/src/modules/inventory/judge-lot.command.ts';
import { receiveLot } from '../../apps/server/src/modules/inventory/receive-lot.command.ts';
import { issueLot } from '../../apps/server/src/modules/kits/issue-lot.command.ts';
import { takeOff } from '../../apps/server/src/modules/kits/take-off.command.ts';
import { addManual } from '../../apps/server/src/modules/manuals/add-manual.command.ts';
import { addModel } from '../../apps/server/src/modules/manuals/add-model.command.ts';
import { issueRevision } from '../../apps/server/src/modules/manuals/issue-revision.command.ts';
import { raiseOrder } from '../../apps/server/src/modules/purchasing/raise-order.command.ts';
import { receiveUnit } from '../../apps/server/src/modules/work-orders/receive-unit.command.ts';
import { Reads } from '../../apps/server/src/platform/database/reads.ts';
import { day } from './days.ts';
import { actorOf, pin } from './people.ts';
import { ShopApp } from './shop-app.ts';

type Actor = Awaited<ReturnType<typeof actorOf>>;

/** Part numbers of the little governor that the stock and kit tests build. */
const parts = {
  washer: { number: 'TW-10', class: 'hardware', certificateRequired: false },
  seal: { number: 'TS-20', class: 'seal', shelfLifeMonths: 60, minimumDaysAtBuild: 100 },
  'other seal': { number: 'TS-21', class: 'seal', shelfLifeMonths: 60, minimumDaysAtBuild: 100 },
  spring: { number: 'TP-30', class: 'mandatory' },
  bushing: { number: 'TB-40', class: 'mandatory' },
  wire: { number: 'TX-50', class: 'consumable', certificateRequired: false },
  flyweight: { number: 'TF-60', class: 'serialized', serialised: true },
} as const;
export type PartName = keyof typeof parts;

export interface KitOf {
  readonly workOrderId: string;
  readonly number: string;
  readonly kitId: string;
  /** Kit line ids by position. */
  readonly line: Readonly<Record<'cover' | 'drive' | 'speeder' | 'pilot' | 'safety', string>>;
}

/** A line of the little governor's kit list. */
export interface RevisedLine {
  readonly part: PartName;
  readonly position: string;
  readonly quantity: number;
  readonly minimum?: number;
  readonly source: 'new' | 'reused' | 'any';
  readonly serialFrom?: string;
  readonly serialTo?: string;
}

/** Its list as it is first issued. */
export const firstList: readonly RevisedLine[] = [
  { part: 'washer', position: 'cover', quantity: 2, source: 'new' },
  { part: 'seal', position: 'drive', quantity: 1, source: 'new' },
  { part: 'spring', position: 'speeder', quantity: 1, source: 'reused' },
  { part: 'bushing', position: 'pilot', quantity: 1, source: 'any' },
  { part: 'wire', position: 'safety', quantity: 40, minimum: 0, source: 'new' },
];

/**
 * The invented shop with a few part numbers, one customer and a small governor: two washers and a seal always new, a spring
 * that is reused, a bushing of either, and safety wire as needed.
 */
export class Stockroom {
  private readonly opened = new Date();
  private constructor(
    readonly shop: ShopApp,
    readonly clerk: Actor,
    readonly technician: Actor,
    readonly inspector: Actor,
    private readonly ids: Map<PartName, string>,
    private readonly modelId: string,
  ) {}

  static async open(options: Parameters<typeof ShopApp.open>[1] = {}): Promise<Stockroom> {
    const shop = await ShopApp.open('shop', options);
    const [clerk, technician, inspector] = [
      await actorOf(shop, 'parts-room'),
      await actorOf(shop, 'technician'),
      await actorOf(shop, 'inspector'),
    ];
    const ids = new Map<PartName, string>();
    // The stand-in before the part that names it.
    for (const name of ['other seal', ...Object.keys(parts)] as PartName[]) {
      if (!ids.has(name)) ids.set(name, await addOne(shop, clerk, name));
    }
    const modelId = await littleGovernor(shop, inspector);
    return new Stockroom(shop, clerk, technician, inspector, ids, modelId);
  }

  get reads(): Reads['models'] {
    return this.shop.running.app.get(Reads).models;
  }

  part(name: PartName): string {
    return this.ids.get(name) as string;
  }

  number(name: PartName): string {
    return parts[name].number;
  }

  /** A day counted from the day it was opened, also when a story runs over midnight. */
  day(offset: number): string {
    return day(offset, this.opened);
  }

  async customer(code: string, acceptedSources: SourceClass[]): Promise<string> {
    const desk = await actorOf(this.shop, 'front-desk');
    return (await this.shop.run(addCustomer, { code, name: `Customer ${code}`, acceptedSources }, desk)).id;
  }

  /** Pieces in quarantine. */
  async received(name: PartName, quantity: number, more: Partial<Parameters<typeof this.input>[2]> = {}) {
    return this.shop.run(receiveLot, this.input(name, quantity, more), this.clerk);
  }

  input(
    name: PartName,
    quantity: number,
    more: {
      sourceClass?: SourceClass;
      cureDate?: string;
      certificate?: string;
      serial?: string;
      customerId?: string;
      purchaseOrderLineId?: string;
    } = {},
  ) {
    const shelfLife = 'shelfLifeMonths' in parts[name];
    return {
      partId: this.part(name),
      quantity,
      sourceClass: 'maker-new' as SourceClass,
      supplierLot: 'SL-1',
      certificate: 'C-1',
      ...(shelfLife ? { cureDate: this.day(-30) } : {}),
      ...more,
    };
  }

  /** An order line that expects this many pieces. */
  async ordered(name: PartName, quantity: number): Promise<string> {
    const { id: supplierId } = await this.reads.supplier.findUniqueOrThrow({ where: { code: 'HARROW' } });
    const lines = [{ partId: this.part(name), quantity, dueOn: this.day(5) }];
    const { id: orderId } = await this.shop.run(raiseOrder, { supplierId, lines }, this.clerk);
    return (await this.reads.purchaseOrderLine.findFirstOrThrow({ where: { orderId } })).id;
  }

  /** Pieces accepted and in a bin. */
  async onShelf(name: PartName, quantity: number, more: Parameters<typeof this.input>[2] & { bin?: string } = {}) {
    const { bin = 'B-01', ...rest } = more;
    const lot = await this.received(name, quantity, rest);
    const input = { lotId: lot.id, verdict: 'accepted' as const, bin, signature: pin };
    const { version } = await this.shop.run(judgeLot, input, this.inspector, { version: lot.version });
    return { id: lot.id, code: lot.code, version };
  }

  /** A little governor received for a customer, with its kit; past its evaluation unless told otherwise. */
  async kit(serial: string | null, customerId: string, stage = 'teardown'): Promise<KitOf> {
    const desk = await actorOf(this.shop, 'front-desk');
    const received = await this.shop.run(
      receiveUnit,
      {
        customerId,
        modelId: this.modelId,
        scope: 'governor',
        serial,
        parts: [],
        times: { sinceNewTenths: 'unknown', sinceOverhaulTenths: 'unknown' },
        reason: 'overhaul due',
      },
      desk,
    );
    return this.kitOf(received.id, stage);
  }

  /** The kit of an order that was received, by whatever way, moved on to a stage. */
  async kitOf(workOrderId: string, stage: string): Promise<KitOf> {
    await this.sql('UPDATE work_orders SET stage = $2 WHERE id = $1', [workOrderId, stage]);
    const order = await this.reads.workOrder.findUniqueOrThrow({ where: { id: workOrderId }, include: { kits: true } });
    const kitId = order.kits[0]?.id as string;
    const lines = await this.reads.kitLine.findMany({ where: { kitId } });
    const line = Object.fromEntries(lines.map(({ position, id }) => [position, id])) as KitOf['line'];
    return { workOrderId, number: order.number, kitId, line };
  }

  /** Issues the next revision of the little governor's manual with this kit list; open work on the one before is held by it. */
  async revised(
    kitList: readonly RevisedLine[],
    lifeLimits: { partNumber: string; hoursTenths: number }[] = [],
  ): Promise<void> {
    const model = await this.reads.unitModel.findUniqueOrThrow({ where: { id: this.modelId } });
    const issued = await this.reads.manualRevision.count({ where: { manualId: model.manualId } });
    const lines = kitList.map(({ part, ...line }) => ({
      ...{ scopes: ['governor' as const], per: 'unit' as const, part: parts[part].number },
      ...line,
    }));
    const models = [{ modelId: this.modelId, kitList: lines, routes: [], tboRules: [], lifeLimits }];
    const revision = { manualId: model.manualId, revision: String(issued + 1), issuedOn: this.day(-1), models };
    await this.shop.run(issueRevision, revision, this.inspector);
  }

  /** Issues by scan, as the clerk. */
  issue(kit: KitOf, lotCode: string, more: { lineId?: string; quantity?: number } = {}) {
    return this.shop.run(issueLot, { kitId: kit.kitId, lotCode, ...more }, this.clerk);
  }

  /** Takes everything off that the list names; answers the tag of each position's lot. */
  async takenOff(kit: KitOf): Promise<Record<string, { lotId: string; lotCode: string }>> {
    const { rack } = await this.shop.run(takeOff, { kitId: kit.kitId }, this.technician);
    const lines = await this.reads.kitLine.findMany({ where: { kitId: kit.kitId } });
    return Object.fromEntries(
      rack.map(({ lineId, lotId, lotCode }) => [
        lines.find(({ id }) => id === lineId)?.position ?? '',
        { lotId, lotCode },
      ]),
    );
  }

  /** The clerk's signature and that of the technician who saw it. */
  get witnessed() {
    return { signature: pin, witnessId: this.technician.personId, witnessSignature: pin };
  }

  /** How much of a lot lies where, by place. */
  async places(lotId: string): Promise<Record<string, number>> {
    const rows = await this.reads.balance.findMany({ where: { lotId, onHand: { gt: 0 } } });
    return Object.fromEntries(
      rows.map(({ placeKind, placeRef, onHand }) => [placeKind === 'bin' ? `bin ${placeRef}` : placeKind, onHand]),
    );
  }

  /** Past the commands, for states whose way there is another test's story. As the owner of the tables. */
  async sql(text: string, parameters: readonly unknown[] = []): Promise<Record<string, unknown>[]> {
    const client = new pg.Client({ connectionString: this.shop.databaseUrl });
    await client.connect();
    try {
      return (await client.query(text, [...parameters])).rows;
    } finally {
      await client.end();
    }
  }

  close(): Promise<void> {
    return this.shop.close();
  }
}

async function addOne(shop: ShopApp, clerk: Actor, name: PartName): Promise<string> {
  const { id } = await shop.run(
    addPart,
    {
      ...parts[name],
      maker: 'Vexley',
      description: `test ${name}`,
      issueUnit: name === 'wire' ? 'inch' : 'piece',
      leadTimeDays: 10,
      unitPrice: '2.50',
      packSize: 5,
      homeBin: 'B-01',
      alternates: name === 'seal' ? [parts['other seal'].number] : [],
    },
    clerk,
  );
  return id;
}

async function littleGovernor(shop: ShopApp, inspector: Actor): Promise<string> {
  const manual = {
    number: 'TH-TEST-1',
    title: 'Little governor, overhaul',
    kind: 'overhaul' as const,
    maker: 'Vexley',
  };
  const { id: manualId } = await shop.run(addManual, manual, inspector);
  const { id: modelId } = await shop.run(
    addModel,
    {
      kind: 'governor',
      maker: 'Vexley',
      designation: 'VX-TEST',
      material: 'aluminium',
      pitch: 'none',
      identityCarriedBy: 'plate',
      manualId,
    },
    await actorOf(shop, 'manager'),
  );
  const kitList = firstList.map(({ part, ...line }) => ({
    ...{ scopes: ['governor' as const], per: 'unit' as const, part: parts[part].number },
    ...line,
  }));
  const models = [{ modelId, kitList, routes: [], tboRules: [] }];
  await shop.run(issueRevision, { manualId, revision: '1', issuedOn: '2025-01-01', models }, inspector);
  return modelId;
}
