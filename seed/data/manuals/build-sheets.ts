import type { SheetOf } from '@hubwright/contracts/manuals/sheets';
import type { StepSeed } from './shapes.ts';

// Demonstration data, not for use on aircraft: every number here is invented.
type Angles = SheetOf<'angles'>;
type Stop = Angles['applications'][number]['stops'][number];

/** Angles by airframe; whoever enters them puts the ids of its applications in the place of the name. */
export function angles(
  blades: number,
  station: string,
  byAirframe: Readonly<Record<string, readonly Stop[]>>,
): Pick<StepSeed, 'sheet'> {
  const applications = Object.entries(byAirframe).map(([airframe, stops]) => ({
    applicationId: airframe,
    stops: [...stops],
  }));
  const held = { station: { at: station, unit: 'in' }, cycles: 10, protractor: { low: '-30.0', high: '100.0' } };
  return { sheet: { kind: 'angles', blades, ...held, applications, seals: [] } };
}

export function stop(name: Stop['stop'], [low, high]: readonly [string, string], spread: string): Stop {
  return { stop: name, low, high, spread };
}

/** The leak test of a built propeller, with the seals it is put down to where it fails. */
export function leakTest(
  blades: number,
  [low, high]: readonly [string, string],
  seals: readonly string[],
): Pick<StepSeed, 'sheet'> {
  const pressure = { low, high, unit: 'psi' };
  const leak = { media: ['dry air', 'nitrogen'], cycles: 5, pressure, minutes: '10', lost: '2.0' };
  return { sheet: { kind: 'function-test', blades, leak, seals: [...seals] } };
}

/** What every blade leaves free, what it takes to turn it, and the way from stop to stop. */
export function playAndTravel(blades: number, [least, most]: readonly [string, string]): Pick<StepSeed, 'sheet'> {
  const play = (direction: 'fore-and-aft' | 'edgewise' | 'in-and-out' | 'rotation', at: string, unit = 'in') => ({
    ...{ direction, most: at, unit },
  });
  const ways = [
    play('fore-and-aft', '0.060'),
    play('edgewise', '0.060'),
    play('in-and-out', '0.032'),
    play('rotation', '0.50', 'degrees'),
  ];
  const travel = { up: { low: '1.0', high: '3.0' }, down: { low: '1.0', high: '4.0' } };
  const friction = { low: least, high: most, unit: 'in-lb' };
  return { sheet: { kind: 'function-test', blades, play: ways, friction, travel, seals: [] } };
}

type Routes<S> = readonly { readonly steps: readonly S[] }[];

/** The same routes with the applications’ ids where a table of angles names airframes. */
export function boundTo<S extends StepSeed, R extends Routes<S>[number]>(
  routes: readonly R[],
  idsOf: (airframe: string) => readonly string[],
): R[] {
  return routes.map((route) => ({ ...route, steps: route.steps.map((step) => boundStep(step, idsOf)) }));
}

function boundStep<S extends StepSeed>(step: S, idsOf: (airframe: string) => readonly string[]): S {
  if (step.sheet?.kind !== 'angles') return step;
  const applications = step.sheet.applications.flatMap(({ applicationId, stops }) =>
    idsOf(applicationId).map((id) => ({ applicationId: id, stops })),
  );
  return { ...step, sheet: { ...step.sheet, applications } };
}
