import type { FieldAnswer, FieldBalanceData, StandingWeight } from '@hubwright/contracts/field-balance/shapes';
import {
  type BalanceRun,
  changeFor,
  combine,
  fillPlaces,
  type Piece,
  readingWith,
  repeatScatter,
  type SpeedAnswer,
  surpriseOf,
  type Weight,
} from '@hubwright/rules/balance';
import { RuleError } from '@hubwright/rules/errors';
import type { EffectiveRun } from './field-balance.ts';
import { ownOf, trialAt } from './weights.ts';

interface Counted {
  readonly data: FieldBalanceData;
  /** Which way the instrument counts phase. */
  readonly counting: FieldBalanceData['counting'];
}

/** A run as the rules take it; phases counted the other way than the places are mirrored. */
export function ruleRun(
  { data, counting }: Counted,
  run: Pick<EffectiveRun, 'readings' | 'trial' | 'weights'>,
): BalanceRun {
  const mirrored = counting !== data.counting;
  const trial = run.trial ? [{ mass: Number(run.trial.mass), angle: trialAt(data, run.trial) }] : [];
  return {
    weights: [...run.weights.map(({ mass, angle }) => ({ mass, angle })), ...trial],
    readings: run.readings.map(({ amplitude, phase }) => ({
      amplitude: Number(amplitude),
      phase: mirrored ? (360 - Number(phase)) % 360 : Number(phase),
    })),
  };
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
  const all = runs.map((run) => ruleRun(counted, run));
  const scatter = scatterOf(counted.data, all);
  const own = ownOf(stock.standing).map(({ mass, angle }) => ({ mass, angle }));
  try {
    const { change, speeds } = changeFor(all, { standing: own, scatter });
    const enough = unread(counted.data, scatter) / Math.max(...speeds.map(({ influence }) => influence.amplitude));
    const about = { data: counted.data, change, speeds, enough, ...stock };
    return {
      answer: {
        change,
        speeds: speeds.map((speed, k) => ({ rpm: runs[0]?.readings[k]?.rpm ?? 0, ...speed })),
        scatter,
        scattersMore: scatter > Number(counted.data.scatter),
        beside: proposal(about, stock.standing),
        anew: own.length === 0 ? null : anew(about, own),
      },
      unanswered: null,
    };
  } catch (error) {
    if (!(error instanceof RuleError)) throw error;
    return { answer: null, unanswered: error.code === 'no-influence' ? error.message : null };
  }
}

/** A rest of whole pieces that does less than scatter, or than a quarter of the target, is near enough: common practice, no source. */
function unread({ ranges }: FieldBalanceData, scatter: number): number {
  return Math.max(scatter, Math.min(...ranges.map(({ target }) => Number(target))) / 4);
}

interface About {
  readonly data: FieldBalanceData;
  readonly change: Weight;
  readonly speeds: readonly SpeedAnswer[];
  /** Grams. */
  readonly enough: number;
  readonly standing: readonly StandingWeight[];
  readonly pieces: readonly Piece[];
}

function anew(about: About, own: Weight[]): FieldAnswer['beside'] {
  const back = (part: string) =>
    about.standing.reduce((sum, { partNumber, pieces }) => sum + (partNumber === part ? pieces : 0), 0);
  const pieces = about.pieces.map((piece) => ({ ...piece, onHand: piece.onHand + back(piece.part) }));
  const found = about.standing.filter((weight) => weight.found);
  return proposal({ ...about, pieces, change: combine([...own, about.change]) }, found);
}

/** Pieces for the change in the room that what stands leaves. */
function proposal(
  { data, change, speeds, enough, pieces }: About,
  standing: readonly StandingWeight[],
): FieldAnswer['beside'] {
  const used = new Set(standing.map(({ place }) => place));
  const free = data.mostPlaces - used.size;
  const places = data.places
    .filter(({ name }) => free > 0 || used.has(name))
    .map(({ name, angle }) => {
      const here = standing.filter(({ place }) => place === name);
      return {
        ...{ name, angle: Number(angle) },
        mass: Number(data.mostPerPlace) - here.reduce((sum, { mass }) => sum + mass, 0),
        pieces: data.mostPieces - here.reduce((sum, one) => sum + one.pieces, 0),
      };
    });
  const mostMass = Number(data.mostInAll) - standing.reduce((sum, { mass }) => sum + mass, 0);
  const limits = { places, catalogue: [...pieces], mostPlaces: free > 0 ? free : used.size, mostMass, enough };
  const { fillings, residual } = fillPlaces(change, limits);
  return {
    fillings: fillings.map(({ place, mass, pieces: parts }) => ({
      ...{ place, mass },
      pieces: parts.map(({ part, count }) => ({ partNumber: part, count })),
    })),
    residual,
    predicted: speeds.map((speed) => readingWith(speed, residual)),
  };
}
