import { type FunctionTestAsked, limitsInWords, type ValueAsked, valuesAsked } from './asked.ts';
import type { FunctionTestMade } from './judge.ts';

/** A function test as it stands beside its signature: the leak, the play each way, friction, travel. */
export function sayFunctionTest(made: FunctionTestMade, asked: FunctionTestAsked) {
  const values = valuesAsked(asked);
  const { leak, play = [], friction } = asked;
  const single = values.filter(({ path }) => path.startsWith('leak/') || path.startsWith('travel/'));
  const line = (name: string, of: readonly ValueAsked[]) => ({
    name,
    value: `${of.map((one) => `blade ${one.path.split('/')[1]} ${read(made, one)}`).join(', ')} (${of[0] ? limitsInWords(of[0]) : ''})`,
  });
  return [
    ...(leak
      ? [{ name: 'leak test', value: `with ${made.medium}, cycled ${made.cycles} times, ${leak.cycles} asked for` }]
      : []),
    ...single.map((one) => ({ name: one.name, value: `${read(made, one)} ${one.unit} (${limitsInWords(one)})` })),
    ...play.map(({ direction }) =>
      line(
        `play ${direction}`,
        values.filter(({ path }) => path.startsWith('play/') && path.endsWith(`/${direction}`)),
      ),
    ),
    ...(friction
      ? [
          line(
            'friction',
            values.filter(({ path }) => path.startsWith('friction/')),
          ),
        ]
      : []),
  ];
}

function read({ values }: FunctionTestMade, { path }: ValueAsked): string {
  return values.find(({ of }) => of === path)?.value ?? '';
}
