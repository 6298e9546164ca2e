import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type LaidStep, mayRepairAgain, type RoutedStep, routeFaults, standingOf, takesStep } from './index.ts';

const laid = (id: string, branch: string | null = null, more: Partial<LaidStep> = {}): LaidStep => ({
  ...{ id, branch, sequence: Number(id.replace(/\D/g, '')), state: 'open', waitUntil: null },
  ...more,
});
const ready = (steps: readonly LaidStep[]) =>
  standingOf(steps)
    .filter(({ before }) => before.length === 0)
    .map(({ id }) => id);

/** A route as someone would draw it: steps one after the other, or branches side by side. */
type Drawn = { one: true } | { branches: number[] };
const drawn: fc.Arbitrary<Drawn[]> = fc.array(
  fc.oneof(
    fc.constant({ one: true as const }),
    fc.record({ branches: fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 2, maxLength: 3 }) }),
  ),
  { minLength: 1, maxLength: 7 },
);

/** The same written as steps, with what comes before each by the drawing alone. Blocks side by side get a joint between. */
function written(drawing: readonly Drawn[]) {
  const steps: LaidStep[] = [];
  const before = new Map<string, string[]>();
  let sequence = 0;
  const add = (branch: string | null, first: readonly string[]) => {
    sequence += 1;
    const id = `s${sequence}`;
    steps.push(laid(id, branch));
    before.set(id, [...first]);
    return id;
  };
  for (const [index, part] of drawing.entries()) {
    const done = steps.map(({ id }) => id);
    if ('one' in part) add(null, done);
    else {
      for (const [name, length] of part.branches.entries()) {
        const own = [...done];
        for (let step = 0; step < length; step += 1) own.push(add(`branch ${name}`, own));
      }
      if (drawing[index + 1] && !('one' in (drawing[index + 1] as Drawn)))
        add(
          null,
          steps.map(({ id }) => id),
        );
    }
  }
  return { steps, before };
}

describe('which steps can be done', () => {
  it('is the first of a route without branches', () => {
    expect(ready([laid('s2'), laid('s1'), laid('s3')])).toEqual(['s1']);
    expect(ready([laid('s1', null, { state: 'signed' }), laid('s2'), laid('s3')])).toEqual(['s2']);
  });

  it('is the first of each branch, and what joins them waits for all', () => {
    const steps = [laid('s1', 'bore'), laid('s2', 'bore'), laid('s3', 'airfoil'), laid('s4')];
    expect(ready(steps)).toEqual(['s1', 's3']);
    expect(standingOf(steps).at(-1)?.before).toEqual(['s1', 's2', 's3']);
  });

  it('does not let a failed or ended step hold the rest: its finding does', () => {
    expect(
      ready([laid('s1', null, { state: 'failed' }), laid('s2', null, { state: 'not-needed' }), laid('s3')]),
    ).toEqual(['s3']);
  });

  it('tells how long what is done still cures, for what is behind it only', () => {
    const cures = { state: 'signed' as const, waitUntil: '2027-03-01T10:00:00.000Z' };
    const steps = [laid('s1', 'paint', cures), laid('s2', 'paint'), laid('s3', 'boot'), laid('s4')];
    expect(standingOf(steps).map(({ waitsUntil }) => waitsUntil)).toEqual([cures.waitUntil, null, cures.waitUntil]);
  });

  it('never signs a step before one that the drawing puts first, and always ends', () => {
    fc.assert(
      fc.property(drawn, fc.infiniteStream(fc.nat(1000)), (drawing, picks) => {
        const { steps, before } = written(drawing);
        const signed: string[] = [];
        for (let left = steps.length; left > 0; left -= 1) {
          const now = steps.map((step) => (signed.includes(step.id) ? { ...step, state: 'signed' as const } : step));
          const can = ready(now);
          const expected = now
            .filter(({ id, state }) => state === 'open' && before.get(id)?.every((one) => signed.includes(one)))
            .map(({ id }) => id);
          expect(can).toEqual(expected);
          signed.push(can[picks.next().value % can.length] as string);
        }
        expect(new Set(signed).size).toBe(steps.length);
      }),
    );
  });
});

describe('a repair loop', () => {
  it('ends, however often the step fails', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 9 }), (mostRepairs) => {
        let attempt = 1;
        while (mayRepairAgain({ attempt, mostRepairs })) attempt += 1;
        expect(attempt).toBe(mostRepairs + 1);
      }),
    );
  });
});

describe('a step of some units only', () => {
  it('is taken where its event was declared', () => {
    expect(takesStep({ events: [] }, { events: [] })).toBe(true);
    expect(takesStep({ events: ['strike'] }, { events: [] })).toBe(false);
    expect(takesStep({ events: ['lightning', 'strike'] }, { events: ['strike'] })).toBe(true);
  });
});

describe('a route nobody could work by', () => {
  const step = (title: string, phase: RoutedStep['phase'] = 'repair', branch: string | null = null): RoutedStep => ({
    title,
    phase,
    branch,
  });
  it.each<[string, RoutedStep[], string[]]>([
    ['a phase comes back', [step('a', 'build'), step('b', 'repair')], ['1 phase']],
    ['two steps have one title', [step('Clean'), step('clean')], ['1 title']],
    ['a branch is alone', [step('a'), step('b', 'repair', 'one'), step('c')], ['1 branch']],
    ['a block lies over two phases', [step('a', 'repair', 'one'), step('b', 'build', 'two')], ['1 branch']],
  ])('is told where %s', (_, steps, faults) => {
    expect(routeFaults(steps).map(({ step: at, field }) => `${at} ${field}`)).toEqual(faults);
  });

  it('is none of these', () => {
    expect(
      routeFaults([step('a', 'evaluation'), step('b', 'repair', 'x'), step('c', 'repair', 'y'), step('d', 'final')]),
    ).toEqual([]);
  });
});
