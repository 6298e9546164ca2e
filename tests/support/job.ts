import type { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { confirmed, type FormField } from '@hubwright/contracts/manuals/revision';
import type { SheetSpec } from '@hubwright/contracts/manuals/sheets';
import type { Input, Reply } from '@hubwright/contracts/operation';
import type { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { judgeLot } from '../../apps/server/src/modules/inventory/judge-lot.command.ts';
import { receiveLot } from '../../apps/server/src/modules/inventory/receive-lot.command.ts';
import { clearRack } from '../../apps/server/src/modules/kits/clear-rack.command.ts';
import { installFromTray } from '../../apps/server/src/modules/kits/install-from-tray.command.ts';
import { issueLot } from '../../apps/server/src/modules/kits/issue-lot.command.ts';
import { passRackPart } from '../../apps/server/src/modules/kits/pass-rack-part.command.ts';
import { reuseFromRack } from '../../apps/server/src/modules/kits/reuse-from-rack.command.ts';
import { takeOff } from '../../apps/server/src/modules/kits/take-off.command.ts';
import { closeLot } from '../../apps/server/src/modules/peening/close-lot.command.ts';
import { signLot } from '../../apps/server/src/modules/peening/sign-lot.command.ts';
import { startLot } from '../../apps/server/src/modules/peening/start-lot.command.ts';
import { recordReadings } from '../../apps/server/src/modules/processes/record-readings.command.ts';
import { approveQuote } from '../../apps/server/src/modules/quotes/approve-quote.command.ts';
import { sendQuote } from '../../apps/server/src/modules/quotes/send-quote.command.ts';
import { writeQuote } from '../../apps/server/src/modules/quotes/write-quote.command.ts';
import { beginTeardown } from '../../apps/server/src/modules/work-orders/begin-teardown.command.ts';
import { receiveUnit } from '../../apps/server/src/modules/work-orders/receive-unit.command.ts';
import { recordCarried } from '../../apps/server/src/modules/work-orders/record-carried.command.ts';
import { signPreliminaryInspection } from '../../apps/server/src/modules/work-orders/sign-preliminary-inspection.command.ts';
import { signStep } from '../../apps/server/src/modules/work-orders/sign-step.command.ts';
import { CLOCK, type Clock } from '../../apps/server/src/platform/command/clock.ts';
import { FILES, type FileStore } from '../../apps/server/src/platform/files/store.ts';
import { fitEquipment } from '../../seed/fit-equipment.ts';
import { usualSheet } from '../../seed/usual-sheet.ts';
import { type Arrival, readsOf, threeBlade } from './arrivals.ts';
import { day } from './days.ts';
import { passedRun } from './passed-run.ts';
import { actorOf, pin } from './people.ts';
import type { ShopApp } from './shop-app.ts';

type Actor = Awaited<ReturnType<typeof actorOf>>;
type Step = Awaited<ReturnType<Job['nextSteps']>>[number];
type Received = Input<typeof inventoryOperations.receiveLot>;
type Values = { measureId: string; value: string }[];

/** One propeller carried through the shop by commands, each signed by whoever may. */
export class Job {
  private constructor(
    readonly shop: ShopApp,
    readonly id: string,
    readonly number: string,
    readonly unitId: string,
    readonly kitId: string,
    readonly people: { desk: Actor; clerk: Actor; technician: Actor; inspector: Actor },
  ) {}

  /** Booked in and looked at. */
  static async arrived(shop: ShopApp, serial: string, changes: Partial<Arrival> = {}): Promise<Job> {
    const people = {
      desk: await actorOf(shop, 'front-desk'),
      clerk: await actorOf(shop, 'parts-room'),
      technician: await actorOf(shop, 'technician'),
      inspector: await actorOf(shop, 'inspector'),
    };
    const unit = await shop.run(receiveUnit, await threeBlade(shop, serial, changes), people.desk);
    const hiddenDamage = changes.events?.length ? 'Hub and blade roots looked at: nothing found' : '';
    const looked = { workOrderId: unit.id, result: 'as booked in', hiddenDamage, signature: pin };
    await shop.run(signPreliminaryInspection, looked, people.inspector, { version: unit.version });
    return new Job(shop, unit.id, unit.number, unit.unitId, unit.kitId ?? '', people);
  }

  get reads() {
    return readsOf(this.shop);
  }

  /** The server’s time, which a test may have moved. */
  private now = (): Date => this.shop.running.app.get<Clock>(CLOCK).now();

  workOrder() {
    return this.reads.workOrder.findUniqueOrThrow({ where: { id: this.id } });
  }

  /** Writes, sends and has the customer approve a quote of this kind. */
  async approved(kind: 'estimate' | 'firm' | 'over-and-above'): Promise<void> {
    const { desk } = this.people;
    const files = this.shop.running.app.get<FileStore>(FILES);
    const quote = await this.shop.run(writeQuote, { workOrderId: this.id, kind }, desk);
    const sent = await this.shop.run(sendQuote(files), { quoteId: quote.id }, desk, { version: quote.version });
    const answer = {
      quoteId: quote.id,
      decidedByName: 'Alder Brackenmoor',
      decidedAt: this.now().toISOString(),
      amount: { currency: quote.currency, minor: quote.totalMinor },
    };
    await this.shop.run(approveQuote, answer, desk, { version: sent.version });
  }

  /** In teardown with its travelers; evaluation approved. */
  async tornDown(): Promise<Reply<typeof travelerOperations.beginTeardown>['travelers']> {
    await this.approved('estimate');
    const begun = { workOrderId: this.id, energyReleased: true as const };
    const { travelers } = await this.shop.run(beginTeardown, begun, this.people.technician);
    await this.diameterRead();
    return travelers;
  }

  /** The design's diameter measured and put on record, where the manual has limits by it. */
  private async diameterRead(): Promise<void> {
    const { revisionId, modelId } = await this.workOrder();
    const rules = await this.reads.bladeRules.findUnique({ where: { revisionId_modelId: { revisionId, modelId } } });
    const [design] = (rules?.content as { diameters?: { diameter: string }[] } | undefined)?.diameters ?? [];
    if (!design) return;
    const read = { kind: 'diameter', place: '', value: design.diameter, basis: 'measured' } as const;
    const input = { workOrderId: this.id, itemId: this.unitId, ...read };
    await this.shop.run(recordCarried, input, this.people.technician);
  }

  /** The step whose turn it is on each traveler of the unit. */
  async nextSteps() {
    const open = await this.reads.travelerStep.findMany({
      where: { traveler: { workOrderId: this.id }, state: 'open' },
      orderBy: [{ traveler: { number: 'asc' } }, { sequence: 'asc' }],
      include: { measures: { orderBy: { sequence: 'asc' } }, traveler: true },
    });
    return open.filter((step, index) => open.findIndex(({ travelerId }) => travelerId === step.travelerId) === index);
  }

  /** The step at the head of one position's traveler. */
  async nextAt(position: string): Promise<Step> {
    const step = (await this.nextSteps()).find(({ traveler }) => traveler.position === position);
    if (!step) throw new Error(`Nothing is open at ${position}`);
    return step;
  }

  /** Who may sign a step, unless it is their own work: the technician, or the inspector where inspecting is asked. */
  signerOf(step: { level: string }): Actor {
    return step.level === 'perform' ? this.people.technician : this.people.inspector;
  }

  /** What a signature of this step carries: values inside every limit, and an instrument in calibration. */
  async entryFor(step: Step, values: Values = goodValues(step)) {
    const instrument = step.instrumentKind
      ? await this.reads.instrument.findFirstOrThrow({
          where: { kind: step.instrumentKind, inService: true, calibrationDueOn: { gte: new Date() } },
          orderBy: { tag: 'asc' },
        })
      : undefined;
    const form = (step.form as FormField[]).map(({ name, unit, confirm }) => ({
      name,
      value: confirm ? confirmed : unit ? '70' : 'A-1',
    }));
    const isGovernor = (step.sheet as { kind: string } | null)?.kind === 'governor-test';
    return {
      ...{ stepId: step.id, values, form, signature: pin },
      ...(isGovernor ? { sheet: { kind: 'governor-test' as const, runId: await passedRun(this, step.id) } } : {}),
      ...usualSheet(step.sheet as SheetSpec | null, {
        ...{ applicationId: (await this.workOrder()).applicationId, at: this.now() },
      }),
      ...(instrument ? { instrumentId: instrument.id } : {}),
      ...(step.equipmentKind ? { equipmentId: await this.fit(step.equipmentKind) } : {}),
      ...(step.materials.length > 0 ? { lotIds: await this.lotsOf(step.materials) } : {}),
    };
  }

  /** A tank or test system of a kind, checked and good now. */
  fit(kind: string): Promise<string> {
    return fitEquipment(this.reads, { kind, at: this.now() }, (readings) =>
      this.shop.run(recordReadings, { ...readings, signature: pin }, this.people.technician),
    );
  }

  private async lotsOf(materials: readonly string[]): Promise<string[]> {
    const parts = await this.reads.part.findMany({ where: { number: { in: [...materials] } } });
    const ids: string[] = [];
    for (const { id } of parts) {
      const where = { code: await this.onShelf(id, 10) };
      ids.push((await this.reads.lot.findUniqueOrThrow({ where })).id);
    }
    return ids;
  }

  async sign(step: Step): Promise<void> {
    if (step.peening !== null) return this.peened([step.id]);
    await this.shop.run(signStep, await this.entryFor(step), this.signerOf(step));
  }

  /** Peened in a lot of their own, with strips in the middle of every band before and after. */
  async peened(stepIds: string[]): Promise<void> {
    const { technician } = this.people;
    const setup = await this.reads.peeningSetup.findFirstOrThrow({ orderBy: { qualifiedAt: 'desc' } });
    const step = await this.reads.travelerStep.findUniqueOrThrow({ where: { id: stepIds[0] ?? '' } });
    const { areas } = step.peening as { areas: { name: string; low: string; high: string }[] };
    const strips = areas.map(({ name, low, high }) => ({
      area: name,
      arcHeight: ((Number(low) + Number(high)) / 2).toFixed(4),
    }));
    const begun = { setupId: setup.id, stepIds, opening: strips, nozzlesChecked: true, mediaChecked: true } as const;
    const lot = await this.shop.run(startLot, { ...begun, signature: pin }, technician);
    const coverage = areas.map(({ name }) => ({ area: name, percent: 100 }));
    const signed = { lotId: lot.id, coverage, signature: pin };
    const { version } = await this.shop.run(signLot, signed, technician, { version: lot.version });
    await this.shop.run(closeLot, { lotId: lot.id, closing: strips, signature: pin }, technician, { version });
  }

  /** Signs whatever is next until nothing of these phases is. */
  async signed(...phases: string[]): Promise<void> {
    for (;;) {
      const steps = (await this.nextSteps()).filter(({ phase }) => phases.includes(phase));
      if (steps.length === 0) return;
      for (const step of steps) await this.sign(step);
    }
  }

  /** Evaluated without a finding, quoted and approved: repair may begin. */
  async inWork(): Promise<void> {
    await this.tornDown();
    await this.signed('evaluation');
    await this.approved('firm');
  }

  /** Everything off the unit is in its rack. */
  async takenOff(): Promise<void> {
    await this.shop.run(takeOff, { kitId: this.kitId }, this.people.technician);
  }

  /** Fills every position: new pieces from stock, the unit's own after inspection; the old ones are scrapped. */
  async filled(): Promise<void> {
    const lines = await this.reads.kitLine.findMany({ where: { kitId: this.kitId }, orderBy: { sequence: 'asc' } });
    for (const line of lines) {
      if (line.source === 'new') await this.fillNew(line, line.minimum ?? line.quantity);
      else await this.putBack(line.id);
    }
    await this.shop.run(
      clearRack,
      { kitId: this.kitId, to: 'scrap', reason: 'replaced by new' },
      this.people.technician,
    );
  }

  private async fillNew(line: { id: string; partId: string; position: string }, quantity: number): Promise<void> {
    if (quantity === 0) return;
    const { clerk, technician } = this.people;
    const lotCode = await this.onShelf(line.partId, quantity, await this.ownersPiece(line));
    await this.shop.run(issueLot, { kitId: this.kitId, lineId: line.id, lotCode, quantity }, clerk);
    await this.shop.run(installFromTray, { kitId: this.kitId, lineId: line.id, lotCode, quantity }, technician);
  }

  /** What has a serial goes in as the piece named at its position, which its owner brought in. */
  private async ownersPiece({ partId, position }: { partId: string; position: string }) {
    const part = await this.reads.part.findUniqueOrThrow({ where: { id: partId } });
    if (!part.serialised) return {};
    const { item } = await this.reads.installation.findFirstOrThrow({
      where: { parentId: this.unitId, position, toDate: null },
      include: { item: true },
    });
    const { customerId } = await this.workOrder();
    return { serial: item.serial ?? '', customerId, sourceClass: 'customer-supplied' as const };
  }

  /** An accepted lot in the part's own bin. */
  async onShelf(partId: string, quantity: number, more: Partial<Received> = {}): Promise<string> {
    const part = await this.reads.part.findUniqueOrThrow({ where: { id: partId } });
    const lot = await this.shop.run(
      receiveLot,
      {
        ...{ partId, quantity, sourceClass: 'maker-new', supplierLot: 'S-1', certificate: 'C-1' },
        ...(part.shelfLifeMonths === null ? {} : { cureDate: day(-20) }),
        ...more,
      },
      this.people.clerk,
    );
    const verdict = { lotId: lot.id, verdict: 'accepted' as const, bin: part.homeBin ?? 'A-01', signature: pin };
    await this.shop.run(judgeLot, verdict, this.people.inspector, { version: lot.version });
    return lot.code;
  }

  private async putBack(lineId: string): Promise<void> {
    const { inspector, technician } = this.people;
    const came = await this.reads.movement.findFirstOrThrow({
      where: { kitLineId: lineId, toKind: 'rack' },
      include: { lot: true },
    });
    await this.shop.run(passRackPart, { kitId: this.kitId, lotId: came.lotId, signature: pin }, inspector);
    await this.shop.run(reuseFromRack, { kitId: this.kitId, lineId, lotCode: came.lot.code }, technician);
  }
}

/** A value on a limit is inside: limits are inclusive. */
export function goodValues(step: {
  measures: readonly { id: string; low: string | null; high: string | null }[];
}): Values {
  return step.measures.map(({ id, low, high }) => ({ measureId: id, value: low ?? high ?? '0' }));
}

/** The first value outside its limits, as a worn part is; the rest good. */
export function badValues(step: Parameters<typeof goodValues>[0]): Values {
  const [first] = step.measures;
  return goodValues(step).map((value, index) => (index === 0 && first ? { ...value, value: outside(first) } : value));
}

function outside({ low, high }: { low: string | null; high: string | null }): string {
  if (low !== null) return (Number(low) - Math.max(Math.abs(Number(low)) * 0.1, 0.01)).toFixed(4);
  return (Number(high) + Math.max(Math.abs(Number(high)) * 0.5, 0.01)).toFixed(4);
}
