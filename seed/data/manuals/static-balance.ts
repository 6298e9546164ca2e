import type { SheetOf } from '@hubwright/contracts/manuals/sheets';
import { cautions, dimension, limit, measured, type StepSeed, work } from './shapes.ts';

// Demonstration data, not for use on aircraft: every number here is invented.
type Sheet = SheetOf<'static-balance'>;
type Ring = Omit<Sheet['places'][number], 'name' | 'angle'> & { readonly count: number; readonly from: number };

/** So many places evenly around the hub, the first at an angle from blade 1, called W1, W2, … clockwise. */
function ring({ count, from, ...place }: Ring): Sheet['places'] {
  return Array.from({ length: count }, (_, index) => ({
    ...place,
    name: `W${index + 1}`,
    angle: String(from + (360 * index) / count),
  }));
}

const onThings = (things: readonly string[]) => things.map((name) => ({ name, confirm: true as const }));

/** The balance of the whole propeller, in the build: its weights come through the kit. `after` is what must be on it by then. */
export function staticBalance(
  standardMinutes: number,
  given: { blades: number; ring?: Ring; limit: Sheet['limit']; after: readonly string[] },
): StepSeed {
  const hardware = [{ part: 'Q-BW-1', mass: '6', thickness: '0.063' }];
  return work('Static balance, vertical and horizontal', 'static-balance', standardMinutes, {
    phase: 'build',
    instrumentKind: 'balance-stand',
    caution: cautions.balance,
    instruction:
      'After paint, boots and decals. Blade 1 up, then blade 1 level; the weight on the light side levels it.',
    form: onThings(given.after),
    sheet: {
      ...{ kind: 'static-balance', unit: 'g-in', blades: given.blades, limit: given.limit },
      places: given.ring ? ring(given.ring) : [],
      hardware: given.ring ? hardware : [],
    },
  });
}

/** What teardown writes down of weights: static and dynamic ones are different things, and the dynamic ones come off. */
export const weightsFound = [{ name: 'static weights found' }, { name: 'dynamic weights found and taken off' }];

/** What a blade weighs about the hub, by which blades are matched; in the state it is built in, so after paint. */
export function bladeMoment(low: string, high: string): StepSeed {
  return measured('Measure static moment', 'static-balance', {
    phase: 'repair',
    standardMinutes: 25,
    instrumentKind: 'balance-stand',
    instruction: 'Painted and with its bushes. About the hub centre.',
    measures: [dimension('static-moment', limit('static moment', 'in-lb', low, high))],
  });
}
