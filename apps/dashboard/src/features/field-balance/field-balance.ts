import { fieldBalanceOperations } from '@hubwright/contracts/field-balance/operations';
import { type FieldPlane, placesOf, planesInUse, planesOf } from '@hubwright/contracts/field-balance/planes';
import type { FieldBalanceDetail, FieldRun, FieldState } from '@hubwright/contracts/field-balance/shapes';
import type { Reply } from '@hubwright/contracts/operation';
import { queryFor } from '../../api/query.ts';
import type { PolarPoint } from '../../ui/pictures/PolarPlot.tsx';
import type { PropellerPosition } from '../../ui/pictures/PropellerFront.tsx';
import type { WeightPlace } from '../../ui/pictures/WeightPlaces.tsx';
import type { State } from '../../ui/StateMark.tsx';

export type FieldBalance = FieldBalanceDetail;
export type BalanceRow = Reply<typeof fieldBalanceOperations.listFieldBalances>['rows'][number];

export const balanceQuery = (fieldBalanceId: string) =>
  queryFor(fieldBalanceOperations.fieldBalance, { fieldBalanceId });
export const dataQuery = queryFor(fieldBalanceOperations.listFieldBalanceData, {});
export const hardwareQuery = queryFor(fieldBalanceOperations.listBalanceHardware, {});

export const stateMarks: Record<FieldState, { state: State; word: string }> = {
  planned: { state: 'open', word: 'planned' },
  'set-up': { state: 'open', word: 'set up, baseline next' },
  runs: { state: 'waiting', word: 'running' },
  'weights-fitted': { state: 'waiting', word: 'weights changed, run next' },
  balanced: { state: 'signed', word: 'balanced, to be released' },
  released: { state: 'passed', word: 'released' },
  abandoned: { state: 'note', word: 'abandoned' },
};

export const runWords: Record<FieldRun['kind'], string> = {
  baseline: 'Baseline',
  trial: 'Trial weight',
  check: 'With weights as they stand',
};

/** Grams to a tenth: no scale in the field reads finer; common practice, no source. */
export const grams = (mass: number) => `${mass.toFixed(1)} g`;
export const degrees = (angle: number) => `${Math.round(angle) % 360}°`;

/** Runs that count, in their order: a reading put right stands where the wrong one stood. */
export function countingRuns({ runs, setUp }: FieldBalance): FieldRun[] {
  const byId = new Map(runs.map((run) => [run.id, run]));
  const corrections = new Set(runs.flatMap(({ supersededById }) => supersededById ?? []));
  const newest = (run: FieldRun): FieldRun => {
    const next = run.supersededById === null ? undefined : byId.get(run.supersededById);
    return next ? newest(next) : run;
  };
  return runs.filter(({ id, setUpId }) => setUpId === setUp?.id && !corrections.has(id)).map(newest);
}

/** Where both sensors of a sheet sit, where it has two. */
export const sensorsOf = (setUp: FieldBalance['setUp']) =>
  setUp?.secondSensor ? ([setUp.sensorPlace, setUp.secondSensor.sensorPlace] as const) : undefined;

/** What each sensor read at each speed: every speed of the first, then every speed of the second. */
export const sensorAfterSensor = ({ readings }: Pick<FieldRun, 'readings'>) => [
  ...readings.map(({ rpm, amplitude, phase }) => ({ rpm, sensor: 0, amplitude, phase })),
  ...readings.flatMap(({ rpm, second }) => (second ? [{ rpm, sensor: 1, ...second }] : [])),
];

/** The planes that are balanced under the sheet as it is. */
export const planesUsed = ({ spec, setUp }: FieldBalance) => (spec ? planesInUse(spec, setUp ?? {}) : []);
export const allPlaces = ({ spec }: FieldBalance) => (spec ? placesOf(planesOf(spec)) : []);

/** Places that weights may go into, each with its angle and, of two planes, its plane. */
export const placeChoices = (balance: FieldBalance) =>
  placesOf(planesUsed(balance)).map(({ name, angle, planeName }) => ({
    value: name,
    text: planeName === null ? `${name}, ${angle}°` : `${name}, ${angle}°, ${planeName}`,
  }));

/** The runs at one speed and sensor (`channel`, as `sensorAfterSensor` counts them) as points of a polar plot, what is expected of the proposal last. */
export function pointsOf(balance: FieldBalance, channel: number): PolarPoint[] {
  const runs = countingRuns(balance);
  const words = (run: FieldRun, at: number) => `${at + 1}: ${runWords[run.kind].toLowerCase()}`;
  const read = runs.flatMap((run, at) => {
    const reading = sensorAfterSensor(run)[channel];
    return reading
      ? [
          {
            key: run.id,
            label: String(at + 1),
            words: words(run, at),
            amplitude: Number(reading.amplitude),
            phase: Number(reading.phase),
          },
        ]
      : [];
  });
  const expected = balance.answer?.beside.predicted[channel];
  const isMirrored = balance.setUp !== null && balance.setUp.counting !== balance.spec?.counting;
  if (!expected || balance.open.length === 0) return read;
  const phase = isMirrored ? (360 - expected.phase) % 360 : expected.phase;
  return [
    ...read,
    { key: 'expected', label: 'e', words: 'expected', amplitude: expected.amplitude, phase, isExpected: true },
  ];
}

/** Every lot that stands on the propeller with the letter that the pictures write beside its places: a code is too long there. */
export const lotLetters = (standing: FieldBalance['standing']) =>
  [...new Set(standing.flatMap(({ lotCode }) => lotCode ?? []))].map((lot, at) => ({
    ...{ lot, letter: String.fromCharCode(97 + (at % 26)).repeat(1 + Math.floor(at / 26)) },
  }));

const lettersOf = (standing: FieldBalance['standing'], here: FieldBalance['standing']) =>
  lotLetters(standing).flatMap(({ lot, letter }) => (here.some(({ lotCode }) => lotCode === lot) ? letter : []));

/** Blades, hub and every place of a plane with what stands in it, as the front view draws them. */
export function frontOf(
  { bladeCount, spec, standing, propeller }: FieldBalance,
  plane: FieldPlane,
): {
  blades: PropellerPosition[];
  hub: PropellerPosition;
  places: WeightPlace[];
} {
  const blades = Array.from({ length: bladeCount }, (_, index) => ({
    ...{ key: `blade-${index + 1}`, label: String(index + 1), state: 'open' as const },
    words: index === 0 ? 'the reference blade' : 'blade',
  }));
  const places = plane.places.map(({ name, angle }) => {
    const here = standing.filter(({ place }) => place === name);
    const mass = here.reduce((sum, weight) => sum + weight.mass, 0);
    return {
      ...{ key: name, label: name, isFilled: here.length > 0 },
      turn: spec?.counting === 'counterclockwise' ? 360 - Number(angle) : Number(angle),
      words: here.length > 0 ? [grams(mass), ...lettersOf(standing, here)].join(' ') : 'empty',
    };
  });
  return { blades, hub: { key: 'hub', label: '', state: 'open', words: `hub, serial ${propeller.serial}` }, places };
}
