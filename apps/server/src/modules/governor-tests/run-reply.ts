import type { AsRead, GovernorRun, GovernorRunDetail } from '@hubwright/contracts/governor-tests/run';
import { engineSpeed } from '@hubwright/rules/governor';
import { fromDbDate } from '../../platform/database/dates.ts';
import { namedTraveler } from '../work-orders/public.ts';
import { acceptedAt } from './acceptance.ts';
import type { Names } from './names.ts';
import { applicationInWords, contentOf } from './program.ts';
import { eventsOf, type Run, standingOf } from './run.ts';
import type { RunRecord } from './run-record.ts';

export type StoredRun = Run & {
  readonly step: {
    readonly traveler: Parameters<typeof namedTraveler>[0] & { readonly itemId: string };
  };
};

/** A run as a list shows it. */
export function runReply(row: StoredRun, names: Names): GovernorRun {
  const { points } = standingOf(row);
  const { bench } = row;
  return {
    ...{ id: row.id, number: row.number, stepId: row.stepId, reason: row.reason, oil: row.oil, version: row.version },
    state: row.state as GovernorRun['state'],
    ...namedTraveler(row.step.traveler),
    designation: row.program.model.designation,
    application: applicationInWords(row.program.application),
    bench: {
      ...{ id: bench.id, tag: bench.tag, title: bench.title },
      calibrationDueOn: fromDbDate(bench.calibrationDueOn),
    },
    pointsGood: points.filter(({ state }) => state === 'good').length,
    points: points.length,
    startedBy: names(row.startedBy),
    startedAt: row.startedAt.toISOString(),
    endedAt: row.endedAt?.toISOString() ?? null,
  };
}

type Shown = Pick<GovernorRunDetail, 'standing' | 'open' | 'out' | 'passes' | 'readings' | 'adjustments'>;

/** How each point stands, and all that was read and adjusted, in order. */
export function shownOf(row: StoredRun, names: Names): Shown {
  const content = contentOf(row);
  const events = eventsOf(row);
  const { points, open, out, passes } = standingOf(row);
  const standing = new Set(points.map(({ reading }) => (reading === null ? '' : events[reading]?.id)));
  return {
    ...{ open: [...open], out: [...out], passes },
    standing: points.map(({ point: name, state, reading }) => {
      const atRpm = content.points.find((one) => one.name === name)?.atRpm;
      return {
        ...{ point: name, state, accepted: acceptedAt(row, name) ?? null },
        ...{ atRpm: atRpm === undefined ? null : Number(atRpm) },
        engineRpm: atRpm === undefined ? null : engineSpeed(Number(atRpm), Number(content.driveRatio)),
        value: reading === null ? null : (row.readings.find(({ id }) => id === events[reading]?.id)?.value ?? null),
      };
    }),
    readings: row.readings.map((one) => ({
      ...{ id: one.id, sequence: one.sequence, point: one.point, value: one.value, pass: one.pass },
      ...{ oilTemperature: one.oilTemperature, asRead: one.asRead as unknown as AsRead },
      ...{ source: one.source as 'keyboard', takenBy: names(one.takenBy), takenAt: one.takenAt.toISOString() },
      stands: standing.has(one.id),
    })),
    adjustments: row.adjustments.map(({ madeBy, madeAt, ...one }) => ({
      ...one,
      ...{ madeBy: names(madeBy), madeAt: madeAt.toISOString() },
    })),
  };
}

/** What earlier runs ended with, point by point. */
export function historyOf(rows: readonly StoredRun[]): GovernorRunDetail['history'] {
  return rows.map((row) => ({
    ...{ runId: row.id, number: row.number, state: row.state as GovernorRun['state'] },
    workOrderNumber: row.step.traveler.workOrder.number,
    application: applicationInWords(row.program.application),
    startedAt: row.startedAt.toISOString(),
    values: (row.record as unknown as RunRecord).points.flatMap(({ name, value, unit, pass }) =>
      value === null || unit === null ? [] : [{ point: name, value, unit, pass: pass ?? false }],
    ),
  }));
}
