import type { BladeRules } from '@hubwright/contracts/manuals/measures';
import { explodeKit } from '../apps/server/src/modules/kits/explode-kit.command.ts';
import { takeOff } from '../apps/server/src/modules/kits/take-off.command.ts';
import { approveQuote } from '../apps/server/src/modules/quotes/approve-quote.command.ts';
import { sendQuote } from '../apps/server/src/modules/quotes/send-quote.command.ts';
import { writeQuote } from '../apps/server/src/modules/quotes/write-quote.command.ts';
import { approveRelease } from '../apps/server/src/modules/releases/approve-release.command.ts';
import { beginTeardown } from '../apps/server/src/modules/work-orders/begin-teardown.command.ts';
import { closeBuild } from '../apps/server/src/modules/work-orders/close-build.command.ts';
import { closeWorkOrder } from '../apps/server/src/modules/work-orders/close-work-order.command.ts';
import { okToShip } from '../apps/server/src/modules/work-orders/ok-to-ship.command.ts';
import { receiveUnit } from '../apps/server/src/modules/work-orders/receive-unit.command.ts';
import { recordCarried } from '../apps/server/src/modules/work-orders/record-carried.command.ts';
import { shipUnit } from '../apps/server/src/modules/work-orders/ship-unit.command.ts';
import { signPreliminaryInspection } from '../apps/server/src/modules/work-orders/sign-preliminary-inspection.command.ts';
import { arrival } from './arrival.ts';
import type { Milestone, VisitSeed } from './data/visits.ts';
import { KitPull } from './kit-pull.ts';
import type { Reference } from './reference.ts';
import { presigned, type SeedRun } from './run.ts';
import { StepSigner } from './step-signer.ts';

type QuoteKind = 'estimate' | 'firm' | 'over-and-above';

/** One unit's visit to the invented shop, milestone by milestone. */
export class Visit {
  workOrderId = '';
  private kitId = '';
  readonly signer: StepSigner;
  private pulling: KitPull | undefined;

  constructor(
    readonly run: SeedRun,
    readonly ids: Reference,
    readonly seed: VisitSeed,
  ) {
    this.signer = new StepSigner(run, ids.instruments);
  }

  /** What each milestone takes. */
  reach: Record<Milestone, () => Promise<unknown>> = {
    received: () => this.receive(),
    'looked-at': () => this.lookAt(),
    'estimate-sent': () => this.offer('estimate'),
    'evaluation-approved': () => this.approve('estimate'),
    teardown: () => this.teardown(),
    evaluated: () => this.signer.sign(this.workOrderId, ['evaluation']),
    'quote-sent': () => this.offer('firm'),
    approved: () => this.approve('firm'),
    repaired: () => this.signer.sign(this.workOrderId, ['repair']),
    pulled: () => this.kit.pull(),
    built: () => this.build(),
    released: () => this.release(),
    shipped: () => this.ship(),
    closed: () => this.close(),
  };

  get kit(): KitPull {
    this.pulling ??= new KitPull(this.run, this.kitId, this.workOrderId);
    return this.pulling;
  }

  private async receive(): Promise<void> {
    const { id, kitId } = await this.run.run(receiveUnit, arrival(this.seed, this.ids), { by: 'desk' });
    this.workOrderId = id;
    const needBy = this.run.day(this.seed.received + Math.round(this.seed.days * 0.6));
    this.kitId = kitId ?? (await this.run.run(explodeKit, { workOrderId: id, needBy }, { by: 'parts' })).id;
  }

  private async lookAt(): Promise<void> {
    const hiddenDamage = this.seed.events?.length
      ? 'Hub, shanks and mounting bolts looked over: no deformation seen.'
      : '';
    const input = {
      workOrderId: this.workOrderId,
      result: 'As described by the desk',
      hiddenDamage,
      signature: presigned,
    };
    await this.run.run(signPreliminaryInspection, input, { by: 'inspector', version: await this.version() });
  }

  async offer(kind: QuoteKind): Promise<void> {
    const promiseDays =
      kind === 'firm' ? { promiseDays: this.seed.promiseDays ?? Math.ceil(this.seed.days * 0.6) } : {};
    const plating = { description: 'Outside plating, bench service', amountMinor: 18_500, taxable: false };
    const outsideServices =
      kind === 'firm' && this.seed.model === 'Q3C-76' && this.seed.scope === 'overhaul' ? [plating] : [];
    const input = { workOrderId: this.workOrderId, kind, outsideServices, ...promiseDays };
    const { id, version } = await this.run.run(writeQuote, input, { by: 'desk' });
    await this.run.run(sendQuote(this.run.files), { quoteId: id }, { by: 'desk', version });
  }

  private async approve(kind: QuoteKind): Promise<void> {
    const quote = await this.openQuote(kind);
    const { contactName } = await this.run.reads.customer.findUniqueOrThrow({ where: { code: this.seed.customer } });
    const input = {
      quoteId: quote.id,
      decidedByName: contactName,
      decidedAt: this.run.now(),
      amount: { currency: quote.currency, minor: quote.totalMinor },
    };
    await this.run.run(approveQuote, input, { by: 'desk', version: quote.version });
  }

  openQuote(kind: QuoteKind) {
    const where = { workOrderId: this.workOrderId, kind, state: 'sent' };
    return this.run.reads.quote.findFirstOrThrow({ where, orderBy: { revision: 'desc' } });
  }

  private async teardown(): Promise<void> {
    await this.run.run(beginTeardown, { workOrderId: this.workOrderId, energyReleased: true }, { by: 'tech' });
    const { rack } = await this.run.run(takeOff, { kitId: this.kitId }, { by: 'tech' });
    this.kit.rack.push(...rack);
    await this.readDiameter();
  }

  /** Where limits go by it, the current diameter is read first. */
  private async readDiameter(): Promise<void> {
    const { revisionId, modelId, unitId } = await this.run.reads.workOrder.findUniqueOrThrow({
      where: { id: this.workOrderId },
    });
    const rules = await this.run.reads.bladeRules.findUnique({
      where: { revisionId_modelId: { revisionId, modelId } },
    });
    const [design] = (rules?.content as BladeRules | undefined)?.diameters ?? [];
    if (!design) return;
    const read = { kind: 'diameter', place: '', value: design.diameter, basis: 'measured' } as const;
    await this.run.run(recordCarried, { workOrderId: this.workOrderId, itemId: unitId, ...read }, { by: 'tech' });
  }

  private async build(): Promise<void> {
    await this.kit.putTogether();
    await this.signer.sign(this.workOrderId, ['build']);
    await this.run.run(closeBuild, { workOrderId: this.workOrderId, signature: presigned }, { by: 'tech' });
  }

  private async release(): Promise<void> {
    await this.signer.sign(this.workOrderId, ['final']);
    const input = { workOrderId: this.workOrderId, signature: presigned };
    await this.run.run(approveRelease(this.run.files), input, { by: 'inspector', version: await this.version() });
  }

  private async ship(): Promise<void> {
    const { workOrderId } = this;
    const loose = await this.run.reads.looseItem.findMany({ where: { workOrderId } });
    const packed = { workOrderId, looseItemsPacked: loose.map(({ id }) => id) };
    const { version } = await this.run.run(okToShip, packed, { by: 'desk', version: await this.version() });
    const carried = { workOrderId, carrier: 'Customer’s own van', reference: '' };
    await this.run.run(shipUnit, carried, { by: 'desk', version });
  }

  private async close(): Promise<void> {
    await this.run.run(
      closeWorkOrder,
      { workOrderId: this.workOrderId },
      { by: 'desk', version: await this.version() },
    );
  }

  async version(): Promise<number> {
    const { version } = await this.run.reads.workOrder.findUniqueOrThrow({ where: { id: this.workOrderId } });
    return version;
  }
}
