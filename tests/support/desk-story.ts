import { findingOperations } from '@hubwright/contracts/findings/operations';
import { quoteOperations as quotes } from '@hubwright/contracts/quotes/operations';
import { workOrderOperations as op } from '@hubwright/contracts/work-orders/operations';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { readsOf, threeBlade } from './arrivals.ts';
import { as, pin } from './people.ts';
import { type Answer, ShopApp, type Visitor } from './shop-app.ts';

/** The shop's time as a test sets it: the real one, moved by days. */
class MovedClock {
  days = 0;
  now(): Date {
    return new Date(Date.now() + this.days * 86_400_000);
  }
}

export interface Offer {
  readonly id: string;
  readonly number: string;
  readonly revision: number;
  readonly version: number;
  readonly totalMinor: number;
}

export const usd = (minor: number) => ({ currency: 'USD', minor });

/** Desk, inspector and technician bring propellers, over HTTP, to where a story about money begins. */
export class DeskStory {
  private constructor(
    readonly shop: ShopApp,
    readonly clock: MovedClock,
    readonly desk: Visitor,
    readonly inspector: Visitor,
    readonly technician: Visitor,
  ) {}

  static async open(): Promise<DeskStory> {
    const clock = new MovedClock();
    const shop = await ShopApp.open('shop', { clock });
    const [desk, inspector] = [await as(shop, 'front-desk'), await as(shop, 'inspector')];
    return new DeskStory(shop, clock, desk, inspector, await as(shop, 'technician'));
  }

  now(): string {
    return this.clock.now().toISOString();
  }

  async see(workOrderId: string) {
    return (await this.desk.call(op.workOrder, { workOrderId })).body;
  }

  async quote(quoteId: string) {
    return (await this.desk.call(quotes.quote, { quoteId })).body;
  }

  /** Received and looked at; answers the work order's id. */
  async arrived(serial: string): Promise<string> {
    const { id } = good(await this.desk.call(op.receiveUnit, await threeBlade(this.shop, serial)));
    const look = { workOrderId: id, result: 'as booked in', signature: pin };
    good(await this.inspector.call(op.signPreliminaryInspection, look, { version: 1 }));
    return id;
  }

  /** A quote of a kind, written and sent. */
  async offered(workOrderId: string, kind: 'estimate' | 'firm' | 'over-and-above', more: object = {}): Promise<Offer> {
    const written = good(await this.desk.call(quotes.writeQuote, { workOrderId, kind, ...more }));
    const sent = good(await this.desk.call(quotes.sendQuote, { quoteId: written.id }, { version: written.version }));
    return { ...written, version: sent.version };
  }

  approve(offer: Offer, minor = offer.totalMinor) {
    const input = { quoteId: offer.id, decidedByName: 'Leda Varley', decidedAt: this.now(), amount: usd(minor) };
    return this.desk.call(quotes.approveQuote, input, { version: offer.version });
  }

  decline(offer: Offer, more: object = {}) {
    const input = { quoteId: offer.id, decidedByName: 'Leda Varley', decidedAt: this.now(), ...more };
    return this.desk.call(quotes.declineQuote, input, { version: offer.version });
  }

  /** Evaluation approved, taken apart, declared inspected: the firm quote is due. */
  async inspected(serial: string, meanwhile: (workOrderId: string) => Promise<void> = async () => undefined) {
    const workOrderId = await this.arrived(serial);
    good(await this.approve(await this.offered(workOrderId, 'estimate'), 80_000));
    good(await this.technician.call(travelerOperations.beginTeardown, { workOrderId, energyReleased: true }));
    await meanwhile(workOrderId);
    const { version } = await this.see(workOrderId);
    good(await this.inspector.call(op.declareInspected, { workOrderId }, { version }));
    return workOrderId;
  }

  /** The firm quote approved: in work. */
  async inWork(serial: string): Promise<string> {
    const workOrderId = await this.inspected(serial);
    good(await this.approve(await this.offered(workOrderId, 'firm')));
    return workOrderId;
  }

  /** Something wrong with blade 1 that nobody has decided. */
  async raisedOnBlade(workOrderId: string): Promise<string> {
    const { travelers } = await this.see(workOrderId);
    const travelerId = travelers.find((traveler) => traveler.position === 'blade 1')?.id ?? '';
    const found = { area: 'leading-edge', damage: 'nicked', place: 'station 24', description: 'deep nick' } as const;
    return good(await this.technician.call(findingOperations.raiseFinding, { travelerId, ...found })).id;
  }

  /** The same, decided by the inspector, with labour and one part to pay for. */
  async foundOnBlade(workOrderId: string, labourMinor: number): Promise<string> {
    const id = await this.raisedOnBlade(workOrderId);
    const part = await readsOf(this.shop).part.findUniqueOrThrow({ where: { number: 'Q301-41' } });
    const decision = {
      ...{ findingId: id, disposition: 'repair' as const, labourMinor, signature: pin },
      steps: [{ title: 'Blend the nick', process: 'blade-repair' as const, standardMinutes: 40 }],
      parts: [{ partId: part.id, position: 'blade 1', quantity: 3 }],
    };
    good(await this.inspector.call(findingOperations.disposeFinding, decision, { version: 1 }));
    return id;
  }

  close(): Promise<void> {
    return this.shop.close();
  }
}

/** The body of an answer that must be a good one. */
function good<T>(answer: Answer<T>): T {
  if (answer.status !== 200) throw new Error(`answered ${answer.status}: ${JSON.stringify(answer.body)}`);
  return answer.body;
}
