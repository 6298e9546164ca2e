import { countOperations } from '@hubwright/contracts/inventory/count-operations';
import { handlingOperations } from '@hubwright/contracts/inventory/handling-operations';
import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { partOperations } from '@hubwright/contracts/inventory/part-operations';
import { manualOperations } from '@hubwright/contracts/manuals/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { beginBinCount } from '../../apps/server/src/modules/inventory/begin-bin-count.command.ts';
import { countLot } from '../../apps/server/src/modules/inventory/count-lot.command.ts';
import { receiveLot } from '../../apps/server/src/modules/inventory/receive-lot.command.ts';
import { suspectLot } from '../../apps/server/src/modules/inventory/suspect-lot.command.ts';
import { actorOf, as, pin } from '../support/people.ts';
import { expectUnchanged } from '../support/refused.ts';
import type { Answer, Visitor } from '../support/shop-app.ts';
import { Stockroom } from '../support/stockroom.ts';

/** What can go wrong in the parts room: how it is refused, and at which field. */
type Row = [what: string, refusal: { status: number; type: string; pointer?: string }, send: () => Promise<Answer>];

describe('what the parts room gets wrong is refused with what to do, and nothing is changed', () => {
  let room: Stockroom;
  const people: Record<string, Visitor> = {};
  const lots: Record<string, { id: string; code: string; version: number }> = {};
  let deliveredLine: string;
  let waitingCount: string;

  beforeAll(async () => {
    room = await Stockroom.open();
    for (const who of ['parts-room', 'inspector', 'caspar']) people[who] = await as(room.shop, who);
    await room.onShelf('flyweight', 1, { serial: 'FW-001' });
    lots.washer = await room.onShelf('washer', 100);
    lots.other = await room.onShelf('washer', 5, { certificate: 'C-2' });
    lots.paperless = await room.received('spring', 2, { certificate: '' });
    lots.counted = await room.onShelf('washer', 50, { bin: 'B-03' });
    lots.suspected = await room.onShelf('washer', 5);
    await room.shop.run(suspectLot, { lotId: lots.suspected.id, reason: 'mark' }, room.inspector);
    lots.suspected.version = (await room.reads.lot.findUniqueOrThrow({ where: { id: lots.suspected.id } })).version;
    const customerId = await room.customer('PRR', ['customer-supplied']);
    lots.theirs = await room.onShelf('spring', 2, { sourceClass: 'customer-supplied', customerId });
    deliveredLine = await room.ordered('washer', 5);
    const delivery = { ...room.input('washer', 5), purchaseOrderLineId: deliveredLine };
    await room.shop.run(receiveLot, delivery, room.clerk);
    const far = { lotId: lots.counted.id, bin: 'B-03', counted: 1, reason: 'count' };
    waitingCount = (await room.shop.run(countLot, far, room.clerk, { version: lots.counted.version })).countId;
    await room.shop.run(beginBinCount, { bin: 'B-02' }, await actorOf(room.shop, 'caspar'));
  });
  afterAll(() => room.close());

  const by = (who: string) => people[who] as Visitor;
  const clerk = () => by('parts-room');
  const receive = (change: object) =>
    clerk().call(inventoryOperations.receiveLot, { ...room.input('washer', 5), ...change });
  const receiveSeal = (cureDate: string) =>
    clerk().call(inventoryOperations.receiveLot, { ...room.input('seal', 5), cureDate });
  const lot = (name: string) => lots[name] as { id: string; code: string; version: number };
  const seen = (name: string) => ({ version: lot(name).version });
  const alternates = async (name: 'seal' | 'other seal', given: object[]) => {
    const { id, version } = await room.reads.part.findUniqueOrThrow({ where: { id: room.part(name) } });
    const input = { partId: id, alternates: given } as never;
    return clerk().call(partOperations.setAlternates, input, { version });
  };
  const revise = async () => {
    const model = await room.reads.unitModel.findFirstOrThrow({ where: { designation: 'VX-TEST' } });
    const line = {
      scopes: ['governor'],
      per: 'unit',
      part: 'NO-SUCH-1',
      position: 'cover',
      quantity: 2,
      source: 'new',
    };
    const models = [{ modelId: model.id, kitList: [line], routes: [], tboRules: [] }];
    const input = { manualId: model.manualId, revision: '2', issuedOn: room.day(-1), models } as never;
    return by('inspector').call(manualOperations.issueRevision, input);
  };
  const count = (who: string, more: object = {}) =>
    by(who).call(
      countOperations.countLot,
      { lotId: lot('washer').id, bin: 'B-02', counted: 5, reason: 'count', ...more },
      seen('washer'),
    );
  const split = (name: string, quantity: number) =>
    clerk().call(
      handlingOperations.splitLot,
      { lotId: lot(name).id, bin: 'B-01', quantity, reason: 'apart' },
      seen(name),
    );
  const scrap = (name: string, more: object = {}) => {
    const input = { lotId: lot(name).id, bin: 'B-01', quantity: 1, reason: 'bent', ...room.witnessed, ...more };
    return clerk().call(handlingOperations.scrapLot, input);
  };

  const rows: Row[] = [
    [
      'expired on receipt',
      { status: 409, type: 'lot-expired', pointer: '/cureDate' },
      () => receiveSeal(room.day(-2500)),
    ],
    [
      'a cure date in the future',
      { status: 422, type: 'cure-date-wrong', pointer: '/cureDate' },
      () => receiveSeal(room.day(3)),
    ],
    [
      'a certificate that is missing when the lot is accepted',
      { status: 409, type: 'certificate-missing' },
      () => {
        const input = { lotId: lot('paperless').id, verdict: 'accepted' as const, signature: pin };
        return by('inspector').call(inventoryOperations.judgeLot, input, seen('paperless'));
      },
    ],
    [
      'a serial that is in stock already',
      { status: 409, type: 'serial-in-stock', pointer: '/serial' },
      () => clerk().call(inventoryOperations.receiveLot, room.input('flyweight', 1, { serial: 'fw-001' })),
    ],
    [
      'a second person beginning to count a bin',
      { status: 409, type: 'being-counted' },
      () => clerk().call(countOperations.beginBinCount, { bin: 'B-02' }),
    ],
    ['a second person entering a count there', { status: 409, type: 'being-counted' }, () => count('parts-room')],
    [
      'a second count while one waits to be decided',
      { status: 409, type: 'count-waiting' },
      () =>
        clerk().call(
          countOperations.countLot,
          { lotId: lot('counted').id, bin: 'B-03', counted: 50, reason: 'again' },
          seen('counted'),
        ),
    ],
    [
      'approving one’s own count',
      { status: 409, type: 'second-person-needed' },
      () => clerk().call(countOperations.decideCount, { countId: waitingCount, verdict: 'approved' }),
    ],
    [
      'alternates in a circle',
      { status: 409, type: 'alternates-loop' },
      () => alternates('other seal', [{ number: room.number('seal') }]),
    ],
    [
      'a part superseded by two',
      { status: 409, type: 'superseded-twice' },
      () =>
        alternates('seal', [
          { number: room.number('other seal'), supersedes: true },
          { number: room.number('washer'), supersedes: true },
        ]),
    ],
    [
      'a stand-in from a day on, without the day',
      { status: 422, type: 'invalid-input', pointer: '/alternates/0/from' },
      () => alternates('seal', [{ number: room.number('other seal'), effectivity: 'from-date' }]),
    ],
    ['a kit list that refers to a missing part', { status: 422, type: 'unknown-part' }, revise],
    [
      'an order received twice',
      { status: 409, type: 'order-line-closed' },
      () => receive({ purchaseOrderLineId: deliveredLine }),
    ],
    [
      'a paper that counts in another unit',
      { status: 422, type: 'unit-differs', pointer: '/unit' },
      () => receive({ unit: 'sheet' }),
    ],
    [
      'fewer than no pieces received',
      { status: 422, type: 'invalid-input', pointer: '/quantity' },
      () => receive({ quantity: -5 }),
    ],
    [
      'half a piece received',
      { status: 422, type: 'invalid-input', pointer: '/quantity' },
      () => receive({ quantity: 0.5 }),
    ],
    [
      'half a piece counted',
      { status: 422, type: 'invalid-input', pointer: '/counted' },
      () => count('caspar', { counted: 1.5 }),
    ],
    [
      'fewer than none counted',
      { status: 422, type: 'invalid-input', pointer: '/counted' },
      () => count('caspar', { counted: -1 }),
    ],
    [
      'half a piece split off',
      { status: 422, type: 'invalid-input', pointer: '/quantity' },
      () => split('washer', 0.5),
    ],
    ['more split off than lies there', { status: 409, type: 'not-enough' }, () => split('washer', 101)],
    [
      'a lot split off whole',
      { status: 409, type: 'nothing-to-split', pointer: '/quantity' },
      () => split('washer', 100),
    ],
    [
      'two lots merged that differ',
      { status: 409, type: 'lots-differ', pointer: '/intoId' },
      () =>
        clerk().call(
          handlingOperations.mergeLots,
          { lotId: lot('other').id, intoId: lot('washer').id, reason: 'tidy' },
          seen('other'),
        ),
    ],
    [
      'being one’s own witness',
      { status: 409, type: 'second-person-needed', pointer: '/witnessId' },
      () => scrap('washer', { witnessId: room.clerk.personId }),
    ],
    [
      'a witness’s PIN that is somebody’s guess',
      { status: 403, type: 'signature-refused', pointer: '/witnessSignature' },
      () => scrap('washer', { witnessSignature: { pin: '0000' } }),
    ],
    [
      'scrap without a witness',
      { status: 422, type: 'invalid-input', pointer: '/witnessId' },
      () => scrap('washer', { witnessId: undefined, witnessSignature: undefined }),
    ],
    ['scrapping what is a customer’s', { status: 409, type: 'owned-by-customer' }, () => scrap('theirs')],
    [
      'scrapping what is suspected',
      { status: 409, type: 'lot-suspected' },
      () => scrap('suspected', { bin: undefined }),
    ],
    [
      'accepting what is suspected',
      { status: 409, type: 'lot-suspected' },
      () => {
        const input = { lotId: lot('suspected').id, verdict: 'accepted' as const, signature: pin };
        return by('inspector').call(inventoryOperations.judgeLot, input, seen('suspected'));
      },
    ],
    [
      'deciding one’s own suspicion',
      { status: 409, type: 'second-person-needed' },
      () => {
        const input = { lotId: lot('suspected').id, decision: 'cleared' as const, basis: 'looks well', signature: pin };
        return by('inspector').call(handlingOperations.decideSuspicion, input, seen('suspected'));
      },
    ],
    [
      'returning what came without an order',
      { status: 409, type: 'came-without-order' },
      () => {
        const input = { lotId: lot('washer').id, bin: 'B-01', quantity: 1, reference: 'RG', reason: 'burrs' };
        return clerk().call(handlingOperations.returnToSupplier, input, seen('washer'));
      },
    ],
    [
      'giving up what was not rejected',
      { status: 409, type: 'not-rejected' },
      () => {
        const input = { lotId: lot('theirs').id, letter: 'mail', dated: room.day(0), givenBy: 'the owner' };
        return clerk().call(handlingOperations.surrenderLot, input, seen('theirs'));
      },
    ],
  ];

  it.each(rows)('%s', async (_, refusal, send) => {
    const { body } = await expectUnchanged(room.shop, send, refusal);
    expect(body.next).toMatch(/\w+.*\.$/);
  });
});
