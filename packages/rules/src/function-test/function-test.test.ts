import { describe, expect, it } from '@jest/globals';
import {
  acceptedValue,
  type FunctionTestAsked,
  type FunctionTestMade,
  judgeFunctionTest,
  sayFunctionTest,
  valuesAsked,
} from './index.ts';

const asked: FunctionTestAsked = {
  blades: 2,
  leak: {
    media: ['dry air', 'nitrogen'],
    cycles: 5,
    ...{ pressure: { low: '195', high: '205', unit: 'psi' }, minutes: '10', lost: '2.0' },
  },
  play: [
    { direction: 'fore-and-aft', most: '0.010', unit: 'in' },
    { direction: 'edgewise', most: '0.010', unit: 'in' },
    { direction: 'in-and-out', most: '0.005', unit: 'in' },
    { direction: 'rotation', most: '0.5', unit: 'degrees' },
  ],
  friction: { low: '20', high: '45', unit: 'in-lb' },
  travel: { up: { low: '1.0', high: '3.0' }, down: { low: '1.0', high: '4.0' } },
};
const good: Record<string, string> = Object.fromEntries(
  valuesAsked(asked).map(({ path, low, high }) => [path, high ?? low ?? '']),
);
const made = (changes: Record<string, string> = {}, more: Partial<FunctionTestMade> = {}): FunctionTestMade => ({
  ...{ medium: 'nitrogen', cycles: 5 },
  values: Object.entries({ ...good, ...changes }).map(([of, value]) => ({ of, value })),
  ...more,
});

describe('a function test', () => {
  it('asks four ways of play of every blade, friction of each, the leak and the way up and down', () => {
    expect(valuesAsked(asked).map(({ name }) => name)).toEqual([
      ...['test pressure', 'held for', 'pressure lost'],
      ...['blade 1 play fore-and-aft', 'blade 2 play fore-and-aft', 'blade 1 play edgewise', 'blade 2 play edgewise'],
      ...['blade 1 play in-and-out', 'blade 2 play in-and-out', 'blade 1 play rotation', 'blade 2 play rotation'],
      ...['blade 1 friction', 'blade 2 friction', 'travel up', 'travel down'],
    ]);
  });
  it('with every value at its limit is good', () => {
    expect(judgeFunctionTest(made(), asked)).toEqual({ good: true, reasons: [] });
  });
  it('says which value is out and by how much, in decimals', () => {
    const out = { 'play/2/in-and-out': '0.0053', 'leak/lost': '2.1', 'travel/up': '0.9' };
    expect(judgeFunctionTest(made(out), asked).reasons).toEqual([
      'Pressure lost: 2.1 psi; at most 2.0 psi is asked for, 0.1 psi too much.',
      'Blade 2 play in-and-out: 0.0053 in; at most 0.005 in is asked for, 0.0003 in too much.',
      'Travel up: 0.9 s; 1.0 to 3.0 s is asked for, 0.1 s too little.',
    ]);
  });
  it('takes a unit that holds no pressure at all for what it is', () => {
    const out = { 'leak/pressure': '4', 'leak/minutes': '0.2', 'leak/lost': '4' };
    expect(judgeFunctionTest(made(out), asked).reasons).toHaveLength(3);
  });
  it('asks nothing that the revision leaves out', () => {
    const { travel } = asked;
    const only = { blades: 3, travel } as FunctionTestAsked;
    const values = [
      { of: 'travel/up', value: '2' },
      { of: 'travel/down', value: '2' },
    ];
    expect(judgeFunctionTest({ values }, only).good).toBe(true);
    expect(sayFunctionTest({ values }, only).map(({ name }) => name)).toEqual(['travel up', 'travel down']);
  });
  it('is accepted inside its limits by the doubt of its instrument, where the instrument measures that at all', () => {
    const doubt = { uncertainty: '0.001', unit: 'in' };
    const narrowed = valuesAsked(asked).map((one) => acceptedValue(one, doubt, 'uncertainty'));
    expect(narrowed.find(({ path }) => path === 'play/1/in-and-out')?.high).toBe('0.0040');
    expect(narrowed.find(({ path }) => path === 'friction/1')).toMatchObject({ low: '20', high: '45' });
  });
  it('is said in a line for each way of play', () => {
    const said = sayFunctionTest(made(), asked);
    expect(said.find(({ name }) => name === 'play fore-and-aft')?.value).toBe(
      'blade 1 0.010, blade 2 0.010 (at most 0.010 in)',
    );
    expect(said[0]?.value).toBe('with nitrogen, cycled 5 times, 5 asked for');
  });
});

describe('what is no such test is refused at its place', () => {
  it.each<[string, FunctionTestMade, string]>([
    ['another medium', made({}, { medium: 'oil' }), 'medium-wrong'],
    ['fewer cycles', made({}, { cycles: 4 }), 'cycles-short'],
    ['a negative time', made({ 'travel/up': '-2' }), 'below-zero'],
    ['a negative play', made({ 'play/1/edgewise': '-0.001' }), 'below-zero'],
    ['millimetres for inches', made({ 'play/1/edgewise': '0.254' }), 'reading-impossible'],
    ['milliseconds for seconds', made({ 'travel/down': '2100' }), 'reading-impossible'],
    ['kilopascals for psi', made({ 'leak/pressure': '1380' }), 'reading-impossible'],
    ['more lost than there was', made({ 'leak/pressure': '150', 'leak/lost': '151' }), 'reading-impossible'],
    ['no number', made({ 'friction/1': 'stiff' }), 'not-a-number'],
    ['a third blade', made({ 'friction/3': '30' }), 'value-unknown'],
    [
      'a blade left out',
      { ...made(), values: made().values.filter(({ of }) => of !== 'play/2/rotation') },
      'value-missing',
    ],
  ])('%s', (_, test, code) => {
    expect(() => judgeFunctionTest(test, asked)).toThrow(expect.objectContaining({ name: 'RuleError', code }));
  });
});
