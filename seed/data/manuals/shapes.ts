// size: tables of data, one entry a line
import type { ModelContent } from '@hubwright/contracts/manuals/revision';
import type { Dimension, Scope } from '@hubwright/contracts/manuals/words';
import type { Process } from '@hubwright/contracts/people/operations';

/** What a revision says about a model, before the server gave the model its id. All of it is invented. */
export type ContentSeed = Omit<ModelContent, 'modelId' | 'tboRules' | 'lifeLimits' | 'bladeRules' | 'serviceLimits'> & {
  readonly tboRules: readonly (Omit<ModelContent['tboRules'][number], 'applicationId'> & {
    readonly airframe?: string;
  })[];
  readonly lifeLimits?: ModelContent['lifeLimits'];
  readonly bladeRules?: ModelContent['bladeRules'];
  readonly serviceLimits?: ModelContent['serviceLimits'];
};
export type LineSeed = ModelContent['kitList'][number];
export type StepSeed = ModelContent['routes'][number]['steps'][number];
export type MeasureSeed = StepSeed['measures'][number];

/** Kit list line: part, position, pieces. New, once per unit, for overhaul unless said otherwise. */
export function line(part: string, position: string, quantity: number, more: Partial<LineSeed> = {}): LineSeed {
  return {
    part,
    position,
    quantity,
    scopes: ['overhaul', 'inspect-and-repair', 'strike-inspection'],
    per: 'unit',
    source: 'new',
    ...more,
  };
}

/** Scopes in which the unit comes apart, so that its seals and locking hardware are new. */
export const wheneverApart: Scope[] = ['overhaul', 'inspect-and-repair', 'strike-inspection', 'reseal'];

type StepRest = Partial<Omit<StepSeed, 'title' | 'process' | 'standardMinutes'>>;

/** A step someone does, in the evaluation phase unless said otherwise. */
export function work(title: string, process: Process, standardMinutes: number, more: StepRest = {}): StepSeed {
  return {
    title,
    process,
    standardMinutes,
    instruction: '',
    level: 'perform',
    kind: 'work',
    phase: 'evaluation',
    events: [],
    whenShortened: false,
    form: [],
    waitMinutes: 0,
    outside: false,
    batched: false,
    tools: [],
    materials: [],
    mostRepairs: 2,
    measures: [],
    ...more,
  };
}

/** A step in which values are measured against limits with an instrument. */
export function measured(
  title: string,
  process: Process,
  rest: StepRest & Pick<StepSeed, 'measures' | 'standardMinutes'>,
): StepSeed {
  return { ...work(title, process, rest.standardMinutes, rest), kind: 'measure' };
}

/** A step an inspector signs. */
export function inspected(title: string, process: Process, standardMinutes: number, more: StepRest = {}): StepSeed {
  return { ...work(title, process, standardMinutes, more), kind: 'inspect', level: 'inspect' };
}

/** A value in the manual's unit with its limits, compared as read. */
export function limit(name: string, unit: string, low: string | undefined, high?: string): MeasureSeed {
  const decimals = Math.max(...[low, high].map((text) => text?.split('.')[1]?.length ?? 0));
  return {
    name,
    unit,
    decimals,
    method: 'absolute',
    byDiameter: [],
    oversizes: [],
    ...(low === undefined ? {} : { low }),
    ...(high === undefined ? {} : { high }),
  };
}

/** A dimension a part is followed by from visit to visit, at a blade station where it has one. */
export function dimension(what: Dimension, given: MeasureSeed, station?: string): MeasureSeed {
  return { ...given, dimension: what, ...(station === undefined ? {} : { station }) };
}

/** One limit per blade. */
export function perBlade(count: number, one: (blade: number) => MeasureSeed[]): MeasureSeed[] {
  return Array.from({ length: count }, (_, index) => one(index + 1)).flat();
}

type TorqueSeed = Extract<NonNullable<StepSeed['sheet']>, { kind: 'torque' }>;

/** Nuts of one kind, tightened at half and at the whole torque and once more after cycling unless said otherwise. */
export function nuts(
  name: string,
  count: number,
  more: Partial<TorqueSeed['groups'][number]> & { low: string; high: string },
): TorqueSeed['groups'][number] {
  return { ...{ name, count, passes: ['50', '100'], threads: 'dry', retorque: true }, ...more };
}

/** A step that is torqued with one wrench, cycled ten times before anything is torqued again. */
export function torqued(
  title: string,
  standardMinutes: number,
  { unit, groups, ...rest }: StepRest & Pick<TorqueSeed, 'unit' | 'groups'>,
): StepSeed {
  return work(title, 'assembly', standardMinutes, {
    phase: 'build',
    instrumentKind: 'torque-wrench',
    caution: cautions.cycling,
    sheet: { kind: 'torque', unit, lengthUnit: 'in', cycles: groups.some(({ retorque }) => retorque) ? 10 : 0, groups },
    ...rest,
  });
}

/** Grease weighed into each blade, of the one type the manual names. */
export function greased(blades: number, low: string, high: string): StepSeed {
  return measured('Grease the blades', 'assembly', {
    standardMinutes: 5 * blades,
    phase: 'build',
    instruction: 'One type of grease only, weighed into each blade; never mixed with what another type left behind.',
    materials: ['LM-GR6'],
    measures: perBlade(blades, (n) => [limit(`blade ${n} grease`, 'g', low, high)]),
  });
}

export const cautions = {
  charge:
    'Air charge and springs store energy that injures: discharge and restrain as the current approved manual says before loosening anything.',
  charging:
    'Compressed gas stores energy that injures: regulated supply, shield up, hands and face clear, never above the pressure for the temperature read, as the current approved manual says.',
  strippers:
    'Strippers and solvents burn skin and lungs: gloves, eye protection and extraction as the safety data sheet says.',
  cycling: 'Blades move with force when cycled on air: stand clear, hands off, and follow the current approved manual.',
  pressure: 'Test pressure injures: shield up, gauge checked, pressure released before touching the unit.',
  balance: 'Weights only in places, counts and lengths the current approved manual allows.',
  plating: 'Plating chemicals are poisonous: only trained people, under the process specification and local law.',
  peening: 'Shot at peening speed injures: cabinet closed and interlock working before the air is on.',
  release:
    'This record prepares a release; only a person licensed for it, under the shop’s certificate and the local authority, can make it.',
} as const;

/** One tick of its own for each face that paint must not reach. */
export const masked = (...faces: string[]) => faces.map((face) => ({ name: `${face} masked`, confirm: true as const }));
