import type { arrivalOperations } from '@hubwright/contracts/due-dates/arrival-operations';
import type { Reply } from '@hubwright/contracts/operation';
import { type Arrivals, expectedArrivals, type LikelyDates } from '@hubwright/rules/arrivals';

/** A unit out there with a likely date. */
export interface ArrivingUnit extends LikelyDates {
  readonly modelId: string;
  readonly designation: string;
  readonly isRequired: boolean;
}
type Answer = Reply<typeof arrivalOperations.expectedArrivals>;
interface Asked {
  readonly today: string;
  readonly months: number;
}

const mostModels = 30;

/** Months with what is required, what is recommended, and both as the shop assumes. */
export function arrivalsByMonth(
  units: readonly ArrivingUnit[],
  asked: Asked,
  recommendedPercent: number | null,
): Pick<Answer, 'months' | 'later' | 'undated' | 'units' | 'models'> {
  const [required, recommended] = [units.filter((unit) => unit.isRequired), units.filter((unit) => !unit.isRequired)];
  const [must, may] = [expectedArrivals(required, asked), expectedArrivals(recommended, asked)];
  const counted = countedOf({ required, recommended }, asked, recommendedPercent);
  return {
    months: must.months.map(({ month, ...expected }, index) => ({
      month,
      required: expected,
      recommended: figures(may, index),
      counted: counted ? figures(counted, index) : null,
    })),
    later: { required: must.later, recommended: may.later },
    undated: { required: must.undated, recommended: may.undated },
    units: { required: required.length, recommended: recommended.length },
    models: byModel(units, asked),
  };
}

function countedOf(
  { required, recommended }: { required: readonly ArrivingUnit[]; recommended: readonly ArrivingUnit[] },
  asked: Asked,
  percent: number | null,
): Arrivals | undefined {
  if (percent === null) return undefined;
  const all = [
    ...required.map((unit) => ({ ...unit, comes: 1 })),
    ...recommended.map((unit) => ({ ...unit, comes: percent / 100 })),
  ];
  return expectedArrivals(all, asked);
}

function figures({ months }: Arrivals, index: number) {
  const { expected = 0, low = 0, high = 0 } = months[index] ?? {};
  return { expected, low, high };
}

function byModel(units: readonly ArrivingUnit[], asked: Asked): Answer['models'] {
  const models = new Map<string, ArrivingUnit[]>();
  for (const unit of units) models.set(unit.modelId, [...(models.get(unit.modelId) ?? []), unit]);
  return [...models.entries()]
    .map(([modelId, own]) => {
      const { months, units: counts } = { ...kindsOf(own, asked), units: own.length };
      return { modelId, designation: own[0]?.designation ?? '', units: counts, months };
    })
    .toSorted((a, b) => sumOf(b.months) - sumOf(a.months) || a.designation.localeCompare(b.designation))
    .slice(0, mostModels);
}

function kindsOf(units: readonly ArrivingUnit[], asked: Asked) {
  const must = expectedArrivals(
    units.filter(({ isRequired }) => isRequired),
    asked,
  );
  const may = expectedArrivals(
    units.filter(({ isRequired }) => !isRequired),
    asked,
  );
  return {
    months: must.months.map(({ expected }, index) => ({
      required: expected,
      recommended: figures(may, index).expected,
    })),
  };
}

function sumOf(months: readonly { required: number; recommended: number }[]): number {
  return months.reduce((sum, { required, recommended }) => sum + required + recommended, 0);
}

/** What the numbers rest on, said where they are shown. */
export function conventionsOf(recommendedPercent: number | null): string[] {
  return [
    'Each unit counts by its 10, 50 and 90 % dates, and comes on its own: an assumption, since customers send in what suits them.',
    'What is overdue, or might have come before today and did not, counts in the current month. What is in the shop already does not count.',
    recommendedPercent === null
      ? 'A recommended interval binds nobody, and the shop has said no share of these units that comes: they are told apart and added to nothing.'
      : `Assumption of the shop: ${recommendedPercent} in a hundred of the units with a recommended interval come.`,
  ];
}
