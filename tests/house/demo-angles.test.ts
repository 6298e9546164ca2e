import { describe, expect, test } from '@jest/globals';
import { models } from '../../seed/data/models.ts';

/** What an application’s settings call each stop. */
const named = {
  low: 'low blade angle',
  high: 'high blade angle',
  feather: 'feather angle',
  reverse: 'reverse angle',
} as const;

describe('blade angles of the invented manuals', () => {
  const set = models.filter(({ model }) => !['none', 'fixed'].includes(model.pitch));
  const tables = set.flatMap(({ model, applications, revisions }) =>
    revisions.flatMap(({ revision, content }) =>
      content.routes.flatMap(({ steps }) =>
        steps.flatMap(({ sheet }) =>
          sheet?.kind === 'angles' ? [{ name: `${model.designation} revision ${revision}`, sheet, applications }] : [],
        ),
      ),
    ),
  );

  test('are there for every model whose pitch changes', () => {
    expect(new Set(tables.map(({ name }) => name.split(' ')[0]))).toEqual(
      new Set(set.map(({ model }) => model.designation)),
    );
  });

  test.each(tables)(
    '$name: every application has what its own settings say, and no other stop',
    ({ sheet, applications }) => {
      for (const { airframe, settings } of applications) {
        const own = sheet.applications.find(({ applicationId }) => applicationId === airframe);
        const said = Object.entries(named).flatMap(([stop, key]) => {
          const [middle, room] = (settings[key] ?? '').split(' ± ').map(Number);
          return middle === undefined || room === undefined
            ? []
            : [[stop, (middle - room).toFixed(1), (middle + room).toFixed(1)]];
        });
        expect([airframe, own?.stops.map(({ stop, low, high }) => [stop, low, high])]).toEqual([airframe, said]);
        expect(settings['reference station']).toBe(`${sheet.station.at} ${sheet.station.unit}`);
      }
    },
  );
});
