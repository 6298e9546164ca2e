import { type FieldPlane, planesInUse } from '@hubwright/contracts/field-balance/planes';
import type {
  FieldAnswer,
  FieldBalanceData,
  FieldReadings,
  FieldSheet,
  StandingWeight,
} from '@hubwright/contracts/field-balance/shapes';
import {
  type BalanceRun,
  changeFor,
  combine,
  fillPlaces,
  type Piece,
  type PlaneWeight,
  readingWith,
  repeatScatter,
  type SpeedAnswer,
  surpriseOf,
  type Weight,
} from '@hubwright/rules/balance';
import { RuleError } from '@hubwright/rules/errors';
import type { EffectiveRun } from './field-balance.ts';
import { ownOf, planeOf, trialAt } from './weights.ts';

export interface Counted {
  readonly data: FieldBalanceData;
  /** Which way the instrument counts phase, and whether there is a second sensor. */
  readonly sheet: Pick<FieldSheet, 'counting' | 'secondSensor'>;
}

/** A run as the rules take it, sensor after sensor; phases counted the other way than the places are mirrored. */
export function ruleRun(
  { data, sheet }: Counted,
  run: Pick<EffectiveRun, 'readings' | 'trial' | 'weights'>,
): BalanceRun {
  const mirrored = sheet.counting !== data.counting;
  const trial = run.trial ? [{ mass: Number(run.trial.mass), ...trialAt(data, run.trial) }] : [];
  const fitted = run.weights.map(({ place, mass, angle }) => ({ mass, angle, plane: planeOf(data, place) }));
  return {
    weights: [...fitted, ...trial.map(({ mass, angle, plane }) => ({ mass, angle, plane }))],
    readings: sensorAfterSensor(run.readings).map(({ amplitude, phase }) => ({
      amplitude: Number(amplitude),
      phase: mirrored ? (360 - Number(phase)) % 360 : Number(phase),
    })),
  };
}

/** Every speed of the first sensor, then every speed of the second. */
export function sensorAfterSensor(readings: FieldReadings) {
  return [
    ...readings.map(({ rpm, amplitude, phase }) => ({ rpm, sensor: 0, amplitude, phase })),
    ...readings.flatMap(({ rpm, second }) => (second ? [{ rpm, sensor: 1, ...second }] : [])),
  ];
}

/** The scatter that counts: what the data expects, or what repeated runs showed where that is more. */
export function scatterOf(data: FieldBalanceData, runs: BalanceRun[]): number {
  return Math.max(Number(data.scatter), runs.length > 0 ? (repeatScatter(runs) ?? 0) : 0);
}

/** For each run whether it reads what no linear rotor gives, by the runs before it. */
export function surprisesOf(counted: Counted, runs: readonly EffectiveRun[]): boolean[] {
  const all = runs.map((run) => ruleRun(counted, run));
  return all.map((run, at) => {
    const before = all.slice(0, at);
    return surpriseOf(before, run, scatterOf(counted.data, before))?.surprising ?? false;
  });
}

/** What the runs ask for now, and whole pieces of stock that come nearest to it; or why they ask for nothing. */
export function answerOf(
  counted: Counted,
  runs: readonly EffectiveRun[],
  stock: { standing: readonly StandingWeight[]; pieces: readonly Piece[] },
): { answer: FieldAnswer | null; unanswered: string | null } {
  try {
    return { answer: computed(counted, runs, stock), unanswered: null };
  } catch (error) {
    if (!(error instanceof RuleError)) throw error;
    return { answer: null, unanswered: error.code === 'too-few-runs' ? null : error.message };
  }
}

function computed(
  counted: Counted,
  runs: readonly EffectiveRun[],
  stock: { standing: readonly StandingWeight[]; pieces: readonly Piece[] },
): FieldAnswer {
  const { data, sheet } = counted;
  const all = runs.map((run) => ruleRun(counted, run));
  const scatter = scatterOf(data, all);
  const own = ownOf(stock.standing).map(({ place, mass, angle }) => ({ mass, angle, plane: planeOf(data, place) }));
  const planes = planesInUse(data, sheet);
  const said = changeFor(all, { standing: own, scatter, planes: planes.length === 2 ? 2 : 1 });
  const { changes, speeds } = said;
  const about = { data, planes, changes, speeds, unread: unread(data, scatter), ...stock };
  const names = planes.map(({ planeName }) => planeName);
  const read = sensorAfterSensor(runs[0]?.readings ?? []);
  return {
    changes: changes.map((change, plane) => ({ ...change, plane: names[plane] ?? null })),
    speeds: speeds.map((speed, k) => ({ rpm: read[k]?.rpm ?? 0, sensor: read[k]?.sensor ?? 0, ...speed })),
    weakPlanes: said.weakPlanes.flatMap((plane) => names[plane] ?? []),
    scatter,
    scattersMore: scatter > Number(data.scatter),
    beside: proposal(about, stock.standing),
    anew: own.length === 0 ? null : anew(about, own),
  };
}

/** A rest of whole pieces that does less than scatter, or than a quarter of the target, is near enough: common practice, no source. */
function unread({ ranges }: FieldBalanceData, scatter: number): number {
  return Math.max(scatter, Math.min(...ranges.map(({ target }) => Number(target))) / 4);
}

interface About {
  readonly data: FieldBalanceData;
  readonly planes: readonly FieldPlane[];
  readonly changes: readonly Weight[];
  readonly speeds: readonly SpeedAnswer[];
  /** What nobody reads, in the unit. */
  readonly unread: number;
  readonly standing: readonly StandingWeight[];
  readonly pieces: readonly Piece[];
}

function anew(about: About, own: PlaneWeight[]): FieldAnswer['beside'] {
  const back = (part: string) =>
    about.standing.reduce((sum, { partNumber, pieces }) => sum + (partNumber === part ? pieces : 0), 0);
  const pieces = about.pieces.map((piece) => ({ ...piece, onHand: piece.onHand + back(piece.part) }));
  const found = about.standing.filter((weight) => weight.found);
  const changes = about.changes.map((change, plane) => combine([...own.filter((one) => one.plane === plane), change]));
  return proposal({ ...about, pieces, changes }, found);
}

/** Pieces for the change of each plane in the room that what stands leaves; the second plane has what the first one leaves in stock. */
function proposal(about: About, standing: readonly StandingWeight[]): FieldAnswer['beside'] {
  const { data, planes, changes, speeds } = about;
  let pieces = about.pieces;
  const filled = planes.map((limits, plane) => {
    const here = standing.filter(({ place }) => planeOf(data, place) === plane);
    const enough = about.unread / Math.max(...speeds.map(({ influences }) => influences[plane]?.amplitude ?? 0));
    const { room, mostPlaces, mostMass } = roomIn(limits, here);
    const found = fillPlaces(changes[plane] ?? { mass: 0, angle: 0 }, {
      ...{ places: room, catalogue: [...pieces], mostPlaces, mostMass, enough },
    });
    const taken = found.fillings.flatMap((filling) => filling.pieces);
    const used = (part: string) => taken.reduce((sum, one) => sum + (one.part === part ? one.count : 0), 0);
    pieces = pieces.map((piece) => ({ ...piece, onHand: piece.onHand - used(piece.part) }));
    return found;
  });
  const residuals = filled.map(({ residual }) => residual);
  return {
    fillings: filled.flatMap(({ fillings }) =>
      fillings.map(({ place, mass, pieces: parts }) => ({
        ...{ place, mass },
        pieces: parts.map(({ part, count }) => ({ partNumber: part, count })),
      })),
    ),
    residuals,
    predicted: speeds.map((speed) => readingWith(speed, residuals)),
  };
}

/** The room that what stands leaves in the places of a plane. */
function roomIn(limits: FieldPlane, standing: readonly StandingWeight[]) {
  const used = new Set(standing.map(({ place }) => place));
  const free = limits.mostPlaces - used.size;
  const room = limits.places
    .filter(({ name }) => free > 0 || used.has(name))
    .map(({ name, angle }) => {
      const here = standing.filter(({ place }) => place === name);
      return {
        ...{ name, angle: Number(angle) },
        mass: Number(limits.mostPerPlace) - here.reduce((sum, { mass }) => sum + mass, 0),
        pieces: limits.mostPieces - here.reduce((sum, one) => sum + one.pieces, 0),
      };
    });
  const mostMass = Number(limits.mostInAll) - standing.reduce((sum, { mass }) => sum + mass, 0);
  return { room, mostMass, mostPlaces: free > 0 ? free : used.size };
}
