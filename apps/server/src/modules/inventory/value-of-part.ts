import { RuleError } from '@hubwright/rules/errors';
import { type Flowed, type Held, movingAverage } from '@hubwright/rules/valuation';
import { dateIn } from '../../platform/command/clock.ts';
import { type FlowRow, flowOf } from './stock-flows.ts';

/** What the ledger says of one part: exact values, nothing rounded. */
export interface PartValue {
  /** Undefined where the ledger cannot be followed. */
  readonly held: Held | undefined;
  /** At the beginning of the period. */
  readonly before: Held | undefined;
  readonly flowed: Flowed;
  readonly found: number;
  readonly lost: number;
  readonly firstIn: string | undefined;
  readonly lastIssued: string | undefined;
}

const nothing: Held = { quantity: 0, value: '0' };
const nothingFlowed: Flowed = { used: '0', lost: '0', found: '0' };
const day = 24 * 60 * 60 * 1000;

/** Follows the movements of one part up to the period, and through it. */
export function valueOfPart(rows: readonly FlowRow[], { since, zone }: { since: string; zone: string }): PartValue {
  const border = new Date(`${since}T00:00:00Z`).getTime();
  // Days are looked up only near the border: asking the calendar for every movement costs more than all the rest.
  const isBefore = ({ at }: FlowRow) =>
    Math.abs(at.getTime() - border) > 2 * day ? at.getTime() < border : dateIn(zone, at) < since;
  const count = rows.filter(isBefore).length;
  const kinds = rows.map(flowOf);
  const lastIssue = rows.findLast((_, index) => kinds[index]?.kind === 'issue');
  const firstIn = rows.find((_, index) => kinds[index]?.kind === 'receipt') ?? rows[0];
  const counted = (kind: 'found' | 'lost') =>
    kinds.slice(count).reduce((sum, flow) => sum + (flow.kind === kind ? flow.quantity : 0), 0);
  return {
    ...followed(kinds, count),
    ...{ found: counted('found'), lost: counted('lost') },
    firstIn: firstIn && dateIn(zone, firstIn.at),
    lastIssued: lastIssue && dateIn(zone, lastIssue.at),
  };
}

function followed(flows: ReturnType<typeof flowOf>[], before: number): Pick<PartValue, 'held' | 'before' | 'flowed'> {
  try {
    const first = movingAverage(flows.slice(0, before), nothing);
    const then = movingAverage(flows.slice(before), first.held);
    return { held: then.held, before: first.held, flowed: then.flowed };
  } catch (error) {
    if (!(error instanceof RuleError)) throw error;
    return { held: undefined, before: undefined, flowed: nothingFlowed };
  }
}
