import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  atLotCost,
  averageOf,
  averageSteps,
  idleness,
  inMoney,
  movingAverage,
  type StockFlow,
  turns,
} from './index.ts';

const receipt = (quantity: number, unitPrice: string): StockFlow => ({ kind: 'receipt', quantity, unitPrice });
const issue = (quantity: number): StockFlow => ({ kind: 'issue', quantity, unitPrice: '0' });
const cents = (value: string) => inMoney(value, 'USD').minor;

describe('stock value by moving average', () => {
  it('answers a textbook exercise to the dollar', () => {
    // A brief exercise on the perpetual moving average with its published answer: 9,200 at 9.71 and 6,300 at 10.23, 7,400 sold, 8,200 at
    // 10.69, 11,100 sold; inventory at the end 53,602 dollars. quizlet.com/634164174 (chapter 8, moving-average method).
    const { held } = movingAverage([
      receipt(9_200, '9.71'),
      receipt(6_300, '10.23'),
      issue(7_400),
      receipt(8_200, '10.69'),
      issue(11_100),
    ]);
    expect(held.quantity).toBe(5_200);
    expect(Math.round(cents(held.value) / 100)).toBe(53_602);
  });

  it('answers a lesson step by step', () => {
    // instantcertcredit.com, lesson 318: 500 for 1,200; 300 sold for 720; 100 at 3.50, average 2.77; 250 sold; 300 at 4.00. The lesson rounds the
    // average to 2.77 before it goes on and ends at 1,338.50; unrounded it is 1,338.33.
    const first = movingAverage([receipt(500, '2.40'), issue(300)]);
    expect([first.held, first.flowed.used]).toEqual([{ quantity: 200, value: '480' }, '720']);
    const second = movingAverage([receipt(100, '3.50')], first.held);
    expect(Number(averageOf(second.held)).toFixed(2)).toBe('2.77');
    const third = movingAverage([issue(250), receipt(300, '4.00')], second.held);
    expect(third.held.quantity).toBe(350);
    expect(cents(third.held.value)).toBe(133_833);
  });

  it('tells every step of the lesson: what each movement was worth and what each piece then was', () => {
    // The same lesson; unrounded.
    const steps = averageSteps([receipt(500, '2.40'), issue(300), receipt(100, '3.50')]);
    expect(steps.map(({ worth, held }) => [worth, held.quantity, held.value, averageOf(held)])).toEqual([
      ['1200', 500, '1200', '2.4'],
      ['720', 200, '480', '2.4'],
      ['350', 300, '830', '2.7667'],
    ]);
  });

  it('gives back at what was paid, and everything else at the average of the moment', () => {
    const { held, flowed } = movingAverage([
      receipt(10, '1'),
      receipt(10, '3'),
      { kind: 'undone-receipt', quantity: 5, unitPrice: '3' },
      { kind: 'lost', quantity: 3, unitPrice: '9' },
      { kind: 'return', quantity: 3, unitPrice: '9' },
    ]);
    expect(held).toEqual({ quantity: 15, value: '25' });
    expect(flowed).toMatchObject({ lost: '5', used: '-5' });
  });

  it('holds no value where nothing is held, and nothing is lost on the way', () => {
    const flow = fc.oneof(
      fc.record({
        kind: fc.constant('receipt' as const),
        quantity: fc.integer({ min: 1, max: 99 }),
        price: fc.integer({ min: 1, max: 9_999 }),
      }),
      fc.record({
        kind: fc.constant('issue' as const),
        quantity: fc.integer({ min: 1, max: 99 }),
        price: fc.constant(0),
      }),
    );
    fc.assert(
      fc.property(fc.array(flow, { maxLength: 40 }), (flows) => {
        let [onHand, received] = [0, 0];
        const possible = flows.filter(({ kind, quantity, price }) => {
          if (kind === 'issue' && quantity > onHand) return false;
          onHand += kind === 'issue' ? -quantity : quantity;
          received += kind === 'issue' ? 0 : quantity * price;
          return true;
        });
        const { held, flowed } = movingAverage(
          possible.map(({ kind, quantity, price }) => ({ kind, quantity, unitPrice: (price / 100).toFixed(2) })),
        );
        expect(held.quantity).toBe(onHand);
        if (onHand === 0) expect(held.value).toBe('0');
        expect(Number(held.value) + Number(flowed.used)).toBeCloseTo(received / 100, 6);
      }),
    );
  });

  it.each([
    [[receipt(1, '-1')], 'not-a-decimal'],
    [[receipt(1.5, '1')], 'not-a-quantity'],
    [[receipt(1, '1'), issue(2)], 'less-than-nothing'],
  ])('refuses what cannot be', (flows, code) => {
    expect(() => movingAverage(flows)).toThrow(expect.objectContaining({ code }));
  });
});

describe('beside it', () => {
  it('lots at what each cost', () => {
    expect(
      atLotCost([
        { quantity: 3, unitPrice: '0.125' },
        { quantity: 2, unitPrice: '10' },
      ]),
    ).toBe('20.375');
    expect(atLotCost([])).toBe('0');
  });

  it('turns, as a published exercise answers it', () => {
    // wyzant.com/resources/answers/225697: cost of goods sold 398,600, inventory 29,783 and 34,038: 12.5 times.
    expect(turns({ used: '398600', before: '29783', after: '34038' })).toBe('12.5');
    expect(turns({ used: '0', before: '0', after: '0' })).toBeUndefined();
  });

  it('idle by the last issue', () => {
    const from = { slowFrom: '2025-11-27', deadFrom: '2024-11-27' };
    expect(['2025-11-28', '2025-11-27', '2024-11-28', '2024-11-27'].map((day) => idleness(day, from))).toEqual([
      'moving',
      'slow',
      'slow',
      'dead',
    ]);
  });
});
