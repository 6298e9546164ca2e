import { expect, it } from '@jest/globals';
import { governorPrograms } from '../../../../../seed/data/governor-programs.ts';
import type { Program } from './governor.ts';
import { draftOf, emptyPoint, programInput } from './program-draft.ts';

it('a program goes through its form unchanged, instructions and rounding included', () => {
  for (const given of Object.values(governorPrograms)) {
    const [first, ...more] = given.points;
    const points = [{ ...first, method: 'rounding', decimals: 1 }, ...more].map((point) => ({
      ...point,
      instruction: point.instruction ?? '',
    }));
    const { basis: _basis, ...content } = { ...given, points };
    const issued = { application: { id: 'a' }, content } as unknown as Program;
    const { revisionId, applicationId, basis, ...input } = programInput(draftOf(issued), 'r');
    expect(input).toEqual(content);
    expect([revisionId, applicationId, basis]).toEqual(['r', 'a', '']);
  }
});

it('a point has the places of its limits where nobody says otherwise', () => {
  const draft = {
    ...draftOf({ application: { id: 'a' }, content: { oil: {}, points: [], adjustments: [] } } as never),
  };
  const point = { ...emptyPoint(1), name: 'relief', low: '275', high: '295.5' };
  const places = (decimals: string) =>
    programInput({ ...draft, points: [{ ...point, decimals }] }, 'r').points[0]?.decimals;
  expect([places(''), places('0'), places('2')]).toEqual([1, 0, 2]);
});
