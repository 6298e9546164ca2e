import { fieldBalanceOperations as op } from '@hubwright/contracts/field-balance/operations';
import type { Operation, Sent } from '@hubwright/contracts/operation';
import { sheet } from '../../seed/data/field-balance.ts';
import type { Job } from './job.ts';
import { analyser, planning } from './on-aircraft.ts';
import { as, pin } from './people.ts';
import type { ShopApp, Visitor } from './shop-app.ts';

/** A balance on the aircraft carried through over HTTP, of a propeller that runs smoothly from the first reading on. */
export class FieldOrder {
  private constructor(
    readonly shop: ShopApp,
    readonly id: string,
    readonly number: string,
    readonly instrumentId: string,
    readonly people: { desk: Visitor; technician: Visitor; inspector: Visitor },
  ) {}

  static async planned(shop: ShopApp, job: Job): Promise<FieldOrder> {
    const people = {
      desk: await as(shop, 'front-desk'),
      technician: await as(shop, 'technician'),
      inspector: await as(shop, 'inspector'),
    };
    const answer = await people.desk.call(op.planFieldBalance, await planning(job));
    if (answer.status !== 200) throw new Error(`Not planned: ${JSON.stringify(answer.body)}`);
    return new FieldOrder(shop, answer.body.id, answer.body.number, await analyser(shop), people);
  }

  async detail() {
    return (await this.people.technician.call(op.fieldBalance, { fieldBalanceId: this.id })).body;
  }

  /** As asked, whatever comes of it. */
  async ask<O extends Operation>(operation: O, changes: object = {}, visitor = this.people.technician) {
    const { version } = await this.detail();
    return visitor.call(operation, { fieldBalanceId: this.id, ...changes } as unknown as Sent<O>, { version });
  }

  setUpInput = (changes: object = {}) => ({ ...sheet, instrumentId: this.instrumentId, signature: pin, ...changes });

  async setUp(changes: object = {}): Promise<void> {
    done(await this.ask(op.signFieldSetUp, this.setUpInput(changes)));
  }

  async baseline(): Promise<void> {
    const readings = [{ rpm: 2_300, amplitude: '0.05', phase: '40' }];
    done(await this.ask(op.recordFieldRun, { kind: 'baseline', readings }));
  }

  /** Pieces fitted in a place, and run again. */
  async weighted(place: string, lotCode: string): Promise<void> {
    done(await this.ask(op.fitFieldWeights, { weights: [{ place, lotCode, pieces: 1 }] }));
    const readings = [{ rpm: 2_300, amplitude: '0.04', phase: '44' }];
    done(await this.ask(op.recordFieldRun, { kind: 'check', readings }));
  }

  async balanced(changes: object = {}): Promise<void> {
    done(await this.ask(op.signFieldBalance, { remarks: '', signature: pin, ...changes }));
  }

  async released(): Promise<void> {
    done(await this.ask(op.releaseFieldBalance, { signature: pin }, this.people.inspector));
  }

  async abandoned(): Promise<void> {
    done(await this.ask(op.abandonFieldBalance, { reason: 'The aircraft was sold' }, this.people.desk));
  }
}

function done({ status, body }: { status: number; body: unknown }): void {
  if (status !== 200) throw new Error(`Refused: ${JSON.stringify(body)}`);
}
