// size: the plain reading of the rules and the shops drawn for it serve every property
import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { affectedParts, type CoverInput, cover } from './index.ts';

const asOf = '2026-03-01';
const seal = (id: string, quantity: number, needBy: string) => ({ id, part: 'seal', quantity, needBy });
const run = (input: Partial<CoverInput>) => cover({ asOf, demands: [], onHand: [], incoming: [], ...input });

describe('what covers a kit line', () => {
  it('pegs stock, then the late order, and names what is still short (the worked example)', () => {
    const { lines } = run({
      demands: [seal('k1', 4, '2026-03-05')],
      onHand: [{ id: 'lot', part: 'seal', quantity: 2 }],
      incoming: [{ id: 'po', part: 'seal', quantity: 1, date: '2026-03-10' }],
      leadTimeDays: { seal: 7 },
    });
    expect(lines).toEqual([
      {
        demand: 'k1',
        pegs: [
          { source: 'lot', part: 'seal', quantity: 2, date: '2026-03-01' },
          { source: 'po', part: 'seal', quantity: 1, date: '2026-03-10' },
        ],
        short: 1,
        covered: 'never',
        late: true,
        orderBy: '2026-02-26',
      },
    ]);
  });

  it('serves by need date, then priority with none last, then id, and answers in the order asked', () => {
    const { lines } = run({
      demands: [
        seal('d', 1, '2026-03-09'),
        seal('c', 1, '2026-03-09'),
        { ...seal('b', 1, '2026-03-09'), priority: 2 },
        { ...seal('a', 1, '2026-03-09'), priority: 3 },
        seal('e', 1, '2026-03-08'),
      ],
      onHand: [{ id: 'lot', part: 'seal', quantity: 4 }],
    });
    expect(lines.map(({ demand, short }) => [demand, short])).toEqual([
      ['d', 1],
      ['c', 0],
      ['b', 0],
      ['a', 0],
      ['e', 0],
    ]);
  });

  it('takes the lot that expires first and passes over one that is no longer usable on the need date', () => {
    const lots = [
      { id: 'keeps', part: 'seal', quantity: 1 },
      { id: 'later', part: 'seal', quantity: 1, expires: '2026-06-01' },
      { id: 'on the day', part: 'seal', quantity: 1, expires: '2026-03-05' },
      { id: 'day after', part: 'seal', quantity: 1, expires: '2026-03-06' },
    ];
    const { lines, free } = run({ demands: [seal('k', 3, '2026-03-05')], onHand: lots });
    expect(lines[0]!.pegs.map(({ source }) => source)).toEqual(['day after', 'later', 'keeps']);
    expect(free).toEqual([{ source: 'on the day', quantity: 1 }]);
  });

  it('leaves lots below the customer’s minimum expiry to others', () => {
    const { lines } = run({
      demands: [{ ...seal('strict', 1, '2026-03-05'), minimumExpiry: '2027-01-01' }, seal('plain', 1, '2026-03-06')],
      onHand: [
        { id: 'short-lived', part: 'seal', quantity: 1, expires: '2026-12-31' },
        { id: 'exactly', part: 'seal', quantity: 1, expires: '2027-01-01' },
      ],
    });
    expect(lines.map(({ pegs }) => pegs.map(({ source }) => source))).toEqual([['exactly'], ['short-lived']]);
  });

  it('prefers an alternate that is there in time to the own part late, but the own part to an alternate', () => {
    const supply = {
      onHand: [
        { id: 'own', part: 'seal', quantity: 1 },
        { id: 'alt', part: 'seal-b', quantity: 1 },
        { id: 'alt of alt', part: 'seal-c', quantity: 9 },
      ],
      incoming: [{ id: 'own late', part: 'seal', quantity: 5, date: '2026-04-01' }],
      alternates: [
        { part: 'seal', use: 'seal-b' },
        { part: 'seal-b', use: 'seal-c' },
      ],
    };
    const { lines } = run({ demands: [seal('k', 3, '2026-03-05')], ...supply });
    expect(lines[0]!.pegs.map(({ source }) => source)).toEqual(['own', 'alt', 'own late']);
    expect(lines[0]).toMatchObject({ short: 0, covered: '2026-04-01', late: true });
  });

  it('counts an order that should have come already as arriving today, and an old need as late', () => {
    const { lines } = run({
      demands: [seal('k', 1, '2026-02-20')],
      incoming: [{ id: 'po', part: 'seal', quantity: 1, date: '2026-02-10' }],
    });
    expect(lines[0]).toMatchObject({ covered: asOf, late: true, pegs: [{ source: 'po', date: asOf }] });
  });

  it('never pegs what has expired when it arrives', () => {
    const incoming = [{ id: 'po', part: 'seal', quantity: 1, date: '2026-04-01', expires: '2026-04-01' }];
    expect(run({ demands: [seal('k', 1, '2026-03-05')], incoming }).lines[0]!.short).toBe(1);
  });
});

describe('whom it serves first', () => {
  const lot = [{ id: 'lot', part: 'seal', quantity: 1 }];
  const wanted = [seal('soon', 1, '2026-03-05'), { ...seal('urgent', 1, '2026-03-20'), priority: 1 }];
  const served = (input: Partial<CoverInput>) =>
    run({ onHand: lot, ...input }).lines.flatMap(({ demand, short }) => (short === 0 ? [demand] : []));

  it('goes by need date, or by priority where the shop says so', () => {
    expect(served({ demands: wanted })).toEqual(['soon']);
    expect(served({ demands: wanted, order: 'priority' })).toEqual(['urgent']);
  });

  it('gives what is only likely nothing that a firm demand needs, however early', () => {
    const demands = [
      { ...seal('likely', 1, '2026-03-02'), priority: 1, expected: true },
      seal('firm', 1, '2026-03-30'),
    ];
    expect(served({ demands })).toEqual(['firm']);
    expect(served({ demands, order: 'priority' })).toEqual(['firm']);
  });

  it('shows an order late to a demand served after a later one', () => {
    const incoming = [{ id: 'po', part: 'seal', quantity: 2, date: '2026-03-10' }];
    const { lines } = run({ order: 'priority', demands: wanted, incoming });
    expect(lines.map(({ demand, late, covered }) => [demand, late, covered])).toEqual([
      ['soon', true, '2026-03-10'],
      ['urgent', false, '2026-03-10'],
    ]);
  });
});

describe('bad input', () => {
  const lot = { id: 'x', part: 'seal', quantity: 1 };
  it.each([
    ['not-a-quantity', 'demands[0].quantity', { demands: [seal('k', 1.5, asOf)] }],
    ['not-a-quantity', 'onHand[0].quantity', { onHand: [{ ...lot, quantity: -1 }] }],
    ['not-a-date', 'demands[0].needBy', { demands: [seal('k', 1, '2026-02-30')] }],
    ['not-a-date', 'onHand[0].expires', { onHand: [{ ...lot, expires: '' }] }],
    ['not-a-date', 'incoming[0].date', { incoming: [{ ...lot, date: '1 March' }] }],
    ['not-a-date', 'asOf', { asOf: '2026-3-1' }],
    ['missing-name', 'demands[0].id', { demands: [seal('', 1, asOf)] }],
    ['duplicate-id', 'incoming[0].id', { onHand: [lot], incoming: [{ ...lot, date: asOf }] }],
    ['duplicate-id', 'demands[1].id', { demands: [seal('k', 1, asOf), seal('k', 2, asOf)] }],
    ['not-a-priority', 'demands[0].priority', { demands: [{ ...seal('k', 1, asOf), priority: Number.NaN }] }],
    ['alternate-of-itself', 'alternates[0].use', { alternates: [{ part: 'seal', use: 'seal' }] }],
    ['not-a-lead-time', 'leadTimeDays.seal', { leadTimeDays: { seal: -1 } }],
  ])('refuses %s at %s', (code, path, input) => {
    expect(() => run(input)).toThrow(expect.objectContaining({ name: 'RuleError', code, path }));
  });
});

/** The serving rules said again as plainly as possible, quadratic, to judge the fast one by. */
function plainly(input: CoverInput) {
  const left = new Map([...input.onHand, ...input.incoming].map(({ id, quantity }) => [id, quantity]));
  const supplies = [
    ...input.onHand.map((lot) => ({ ...lot, order: 0, date: asOf, expires: lot.expires ?? '9999-12-31' })),
    ...input.incoming.map((po) => ({
      ...po,
      order: 1,
      date: po.date < asOf ? asOf : po.date,
      expires: po.expires ?? '9999-12-31',
    })),
  ];
  const rankOf = ({ id, needBy, priority = 9, expected, foreseen }: CoverInput['demands'][number]) => [
    ...[foreseen ? 2 : expected ? 1 : 0],
    ...(input.order === 'priority' ? [priority, needBy] : [needBy, priority]),
    id,
  ];
  const served = [...input.demands].sort((a, b) => (rankOf(a).join() < rankOf(b).join() ? -1 : 1));
  return served.map((demand) => {
    const parts = [demand.part, ...input.alternates!.filter(({ part }) => part === demand.part).map(({ use }) => use)];
    const horizon = demand.needBy > asOf ? demand.needBy : asOf;
    const rank = (s: (typeof supplies)[number]) =>
      s.date > horizon
        ? ['late', parts.indexOf(s.part), s.date, s.expires, s.id].join()
        : ['in time', parts.indexOf(s.part), s.order, s.expires, s.date, s.id].join();
    const usable = supplies
      .filter((s) => parts.includes(s.part) && (s.date > horizon ? s.expires > s.date : s.expires > horizon))
      .filter((s) => demand.minimumExpiry === undefined || s.expires >= demand.minimumExpiry)
      .sort((a, b) => (rank(a) < rank(b) ? -1 : 1));
    let wanted = demand.quantity;
    const pegs: [string, number][] = [];
    for (const { id } of usable) {
      const quantity = Math.min(wanted, left.get(id)!);
      if (quantity > 0) pegs.push([id, quantity]);
      left.set(id, left.get(id)! - quantity);
      wanted -= quantity;
    }
    return [demand.id, pegs, wanted];
  });
}

const part = fc.constantFrom('p1', 'p2', 'p3', 'p4');
const date = fc.integer({ min: 1, max: 30 }).map((day) => `2026-03-${String(day).padStart(2, '0')}`);
const early = fc.integer({ min: 20, max: 28 }).map((day) => `2026-02-${day}`);
const quantity = fc.integer({ min: 0, max: 6 });
const optional = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined });
const numbered = <T extends object>(prefix: string, rows: T[]) =>
  rows.map((row, i) => ({ ...row, id: `${prefix}${i}` }));
const shop: fc.Arbitrary<CoverInput> = fc
  .record({
    demands: fc.array(
      fc.record({
        part,
        quantity,
        needBy: fc.oneof(date, early),
        priority: optional(fc.integer({ min: 1, max: 3 })),
        minimumExpiry: optional(date),
        expected: optional(fc.boolean()),
        foreseen: optional(fc.boolean()),
      }),
      { maxLength: 25 },
    ),
    order: optional(fc.constantFrom('need-date' as const, 'priority' as const)),
    onHand: fc.array(fc.record({ part, quantity, expires: optional(date) }), { maxLength: 12 }),
    incoming: fc.array(fc.record({ part, quantity, date: fc.oneof(date, early), expires: optional(date) }), {
      maxLength: 12,
    }),
    alternates: fc.uniqueArray(
      fc.tuple(part, part).filter(([a, b]) => a !== b),
      { maxLength: 4, selector: String },
    ),
  })
  .map((s) => ({
    asOf,
    order: s.order,
    demands: numbered('d', s.demands),
    onHand: numbered('lot', s.onHand),
    incoming: numbered('po', s.incoming),
    alternates: s.alternates.map(([own, use]) => ({ part: own, use })),
  }));

/** The shop after everything about one part was changed to what another shop has of it. */
function withPartOf(now: CoverInput, other: CoverInput, part: string): CoverInput {
  const changed = <T extends { id: string; part: string }>(rows: T[], others: T[]) => [
    ...rows.filter((row) => row.part !== part),
    ...others.filter((row) => row.part === part).map((row) => ({ ...row, id: `${row.id} of ${part}` })),
  ];
  return {
    ...now,
    demands: changed(now.demands, other.demands),
    onHand: changed(now.onHand, other.onHand),
    incoming: changed(now.incoming, other.incoming),
    alternates: [
      ...now.alternates!.filter((row) => row.part !== part),
      ...other.alternates!.filter((row) => row.part === part),
    ],
  };
}

function onlyParts(input: CoverInput, parts: ReadonlySet<string>): CoverInput {
  const of = <T extends { part: string }>(rows: T[]) => rows.filter((row) => parts.has(row.part));
  return {
    ...input,
    demands: of(input.demands),
    onHand: of(input.onHand),
    incoming: of(input.incoming),
    alternates: of(input.alternates!),
  };
}

describe('on any shop', () => {
  it('answers as the rules read plainly', () => {
    fc.assert(
      fc.property(shop, (input) => {
        const fast = cover(input).lines.map(({ demand, pegs, short }) => [
          demand,
          pegs.map((peg) => [peg.source, peg.quantity]),
          short,
        ]);
        const byId = (rows: unknown[]) => new Map(rows.map((row) => [(row as [string])[0], row]));
        expect(byId(fast)).toEqual(byId(plainly(input)));
      }),
      { numRuns: 400 },
    );
  });

  it('asked again for the parts a change touches only, answers what asking for all would', () => {
    const change = fc.record({ part, as: shop });
    fc.assert(
      fc.property(shop, fc.array(change, { minLength: 1, maxLength: 4 }), (first, changes) => {
        let now = first;
        const kept = new Map(cover(now).lines.map((line) => [line.demand, line]));
        for (const { part: touched, as } of changes) {
          const next = withPartOf(now, as, touched);
          const parts = affectedParts([touched], [...now.alternates!, ...next.alternates!]);
          for (const { id, part: of } of now.demands) if (parts.has(of)) kept.delete(id);
          for (const line of cover(onlyParts(next, parts)).lines) kept.set(line.demand, line);
          now = next;
        }
        expect(kept).toEqual(new Map(cover(now).lines.map((line) => [line.demand, line])));
      }),
      { numRuns: 300 },
    );
  });

  it('gives firm and likely demand the very same pegs whatever is foreseen beside it', () => {
    fc.assert(
      fc.property(shop, (input) => {
        const known = input.demands.filter(({ foreseen }) => !foreseen);
        const alone = cover({ ...input, demands: known });
        const beside = cover(input).lines.filter((_, at) => !input.demands[at]!.foreseen);
        expect(beside).toEqual(alone.lines);
      }),
      { numRuns: 400 },
    );
  });

  it('loses and invents nothing, pegs nothing expired, and dates a line by its last peg', () => {
    fc.assert(
      fc.property(shop, (input) => {
        const { lines, free } = cover(input);
        const supplies = new Map([...input.onHand, ...input.incoming].map((s) => [s.id, s]));
        const used = new Map<string, number>();
        for (const { source, quantity: n } of [...free, ...lines.flatMap(({ pegs }) => pegs)]) {
          expect(n).toBeGreaterThan(0);
          used.set(source, (used.get(source) ?? 0) + n);
        }
        for (const { id, quantity: n } of supplies.values()) expect(used.get(id) ?? 0).toBe(n);
        lines.forEach((line, i) => {
          const demand = input.demands[i]!;
          expect(line.pegs.reduce((sum, peg) => sum + peg.quantity, line.short)).toBe(demand.quantity);
          const last = line.pegs.map((peg) => peg.date).sort();
          if (line.short === 0) expect(line.covered).toBe(last.at(-1) ?? asOf);
          for (const peg of line.pegs) {
            const expires = supplies.get(peg.source)!.expires ?? '9999-12-31';
            expect(expires > demand.needBy && expires > peg.date).toBe(true);
            expect(expires >= (demand.minimumExpiry ?? '')).toBe(true);
          }
        });
      }),
      { numRuns: 400 },
    );
  });
});
