import { type BladeRules, noBladeRules } from '@hubwright/contracts/manuals/measures';
import { type Dimension, dimensionTitles } from '@hubwright/contracts/manuals/words';
import { judgeSet, opposite, type Spread } from '@hubwright/rules/blades';
import type { Reads } from '../../platform/database/reads.ts';
import { bladeRulesOf } from '../manuals/public.ts';
import { carriedBy } from '../units/public.ts';
import { dimensionKey, type Measured, measuredOf } from './measured.ts';

interface Unit {
  readonly id: string;
  readonly unitId: string;
  readonly modelId: string;
  readonly revisionId: string;
}

type Blade = { readonly id: string; readonly position: string; readonly disposition: string | null };

/** A rejected blade whose mates nobody has answered for. */
export interface SetQuestion {
  readonly findingId: string;
  readonly number: string;
  readonly position: string;
  readonly mates: readonly { readonly travelerId: string; readonly position: string; readonly isOpposite: boolean }[];
}

export interface BladeSet {
  readonly rules: BladeRules;
  readonly spreads: readonly (Spread & {
    readonly dimension: Dimension;
    readonly station: string | null;
    readonly master: string | null;
  })[];
  readonly questions: readonly SetQuestion[];
  readonly sets: readonly { place: string; pieces: number; found: string | null; built: string | null }[];
  /** What holds the build, in sentences. */
  readonly open: readonly string[];
}

type Reading = Pick<Reads['models'], 'bladeRules' | 'traveler' | 'finding' | 'measurement' | 'signOff' | 'carriedFact'>;

/** How the blades of a unit stand as a set: how far they differ, what was not decided, which matched sets are not confirmed. */
export async function bladeSetOf(tx: Reading, unit: Unit, known?: readonly Measured[]): Promise<BladeSet> {
  const rules = await bladeRulesOf(tx, unit);
  const isEmpty = [rules.setSpreads, rules.matchedSets].every(({ length }) => length === 0);
  if (isEmpty) return { rules: rules ?? noBladeRules, spreads: [], questions: [], sets: [], open: [] };
  const blades = await tx.traveler.findMany({
    where: { workOrderId: unit.id, partClass: 'blade' },
    orderBy: { position: 'asc' },
    select: { id: true, position: true, disposition: true },
  });
  const spreads = spreadsOf(rules, blades, known ?? (await measuredOf(tx, unit.id)));
  const questions = rules.setSpreads.length > 0 ? await questionsOf(tx, unit, blades) : [];
  const sets = await setsOf(tx, unit, rules);
  return { rules, spreads, questions, sets, open: openOf({ spreads, questions, sets }) };
}

/** `blade-3` is the third. */
export function numberOf(position: string): number {
  return Number(/(\d+)$/.exec(position)?.[1] ?? 0);
}

function spreadsOf(rules: BladeRules, blades: readonly Blade[], measured: readonly Measured[]): BladeSet['spreads'] {
  const left = blades.filter(({ disposition }) => disposition !== 'reject');
  const set = left.map(({ id, position }) => ({
    position: numberOf(position),
    values: new Map(measured.filter(({ travelerId }) => travelerId === id).map((one) => [one.key, one.value])),
  }));
  const limits = rules.setSpreads.map((one) => ({
    ...one,
    key: dimensionKey(one.dimension, one.station ?? null, null),
  }));
  return judgeSet(set, limits, blades.length).map((spread, index) => ({
    ...spread,
    dimension: rules.setSpreads[index]?.dimension ?? 'width',
    station: rules.setSpreads[index]?.station ?? null,
    master: rules.setSpreads[index]?.master ?? null,
  }));
}

async function questionsOf(tx: Reading, { id }: Unit, blades: readonly Blade[]): Promise<SetQuestion[]> {
  const rejecting = await tx.finding.findMany({
    where: {
      ...{ workOrderId: id, disposition: 'reject', setDecision: null },
      damage: { not: 'mate-rejected' },
      traveler: { partClass: 'blade' },
    },
    orderBy: { number: 'asc' },
    select: { id: true, number: true, traveler: { select: { position: true } } },
  });
  const left = blades.filter(({ disposition }) => disposition !== 'reject');
  return rejecting.flatMap(({ id: findingId, number, traveler: { position } }) => {
    const across = opposite(numberOf(position), blades.length);
    const mates = left.map((blade) => ({
      travelerId: blade.id,
      position: blade.position,
      isOpposite: numberOf(blade.position) === across,
    }));
    return mates.length === 0 ? [] : [{ findingId, number, position, mates }];
  });
}

async function setsOf(tx: Reading, { id, unitId }: Unit, { matchedSets }: BladeRules): Promise<BladeSet['sets']> {
  if (matchedSets.length === 0) return [];
  const facts = (await carriedBy(tx, [unitId])).get(unitId) ?? [];
  return matchedSets.map(({ position, pieces }) => {
    const fact = facts.find(({ kind, place }) => kind === 'matched-set' && place === position);
    const isBuilt = fact?.workOrderId === id && (fact.basis === 'kept' || fact.basis === 'new');
    return { place: position, pieces, found: fact?.value ?? null, built: isBuilt ? fact.value : null };
  });
}

function openOf({ spreads, questions, sets }: Pick<BladeSet, 'spreads' | 'questions' | 'sets'>): string[] {
  return [
    ...questions.map(({ number, position }) => `${number} rejected ${position}: nobody has decided on its mates`),
    ...spreads
      .filter(({ verdict }) => verdict === 'fail')
      .map(({ dimension, station, widest, most, master }) => {
        const where = station === null ? '' : ` at station ${station}`;
        const pair = widest?.between.map((blade) => `blade ${blade}`).join(' and ');
        const differ = master === null ? 'differ' : `differs from the master (${master})`;
        return `${dimensionTitles[dimension]}${where}: ${pair} ${differ} by ${widest?.spread}, at most ${most} is allowed`;
      }),
    ...sets.filter(({ built }) => built === null).map(({ place }) => `Nobody has confirmed which set is in: ${place}`),
  ];
}
