import type { RuleError } from '@hubwright/rules/errors';
import { impossibleTimes, type SupposedTimes } from '../units/public.ts';
import type { FleetStep, JudgedRow } from './judge-row.ts';
import type { CustomersTable, FleetModels } from './shapes.ts';

/**
 * Names what cannot be together with what is on record of a unit: its times are computed as they would be once the table is taken over.
 * In the preview that is a fault of its row; inside the command, where everything named is held, nothing else can come of it.
 */
export async function judgeRecord(
  models: FleetModels,
  { today }: Pick<CustomersTable, 'today'>,
  judged: readonly JudgedRow[],
): Promise<void> {
  const known = judged.flatMap(({ read, step }) =>
    step?.placed.unit.id !== undefined && read.cells.errors.length === 0 && isNews(step)
      ? [{ cells: read.cells, step, supposed: supposedOf(step, step.placed.unit.id) }]
      : [],
  );
  if (known.length === 0) return;
  const readings = judged.flatMap(({ step }) => (step ? readingsOf(step) : []));
  const faults = await impossibleTimes(
    models,
    known.map(({ supposed }) => supposed),
    { readings, asOf: today },
  );
  for (const { cells, step, supposed } of known) {
    const fault = faults.get(supposed.itemId);
    if (fault) cells.wrong(fieldOf(fault, step), wordsOf(fault));
  }
}

function isNews({ installation, papers }: FleetStep): boolean {
  return installation !== 'none' || papers.length > 0;
}

function supposedOf({ was, installation, placed, papers }: FleetStep, itemId: string): SupposedTimes {
  const { row } = placed;
  const fromTenths = row.meterThen === 'unknown' ? (was?.fromTenths ?? 'unknown') : row.meterThen;
  return {
    itemId,
    papers,
    interval:
      installation === 'none'
        ? undefined
        : {
            ...{ id: was?.intervalId ?? 'new', aircraftId: aircraftOf(placed), meter: row.meter ?? was?.meter ?? '' },
            ...{ from: row.installedOn, fromTenths },
          },
  };
}

/** One that the table adds has no id yet. */
function aircraftOf({ aircraft }: FleetStep['placed']): string {
  return aircraft.id ?? aircraft.registration;
}

function readingsOf({ placed, addsReading }: FleetStep) {
  const { meter, reading, readOn } = placed.row;
  if (!addsReading || meter === undefined || readOn === undefined || reading === 'unknown') return [];
  return [{ aircraftId: aircraftOf(placed), meter, date: readOn, tenths: reading }];
}

function fieldOf({ code }: RuleError, { placed, papers }: FleetStep): string {
  const saysOverhaul = placed.row.overhauledOn !== undefined && papers.some(({ basis }) => basis === 'overhaul');
  if (code === 'meter-runs-backwards') return placed.row.meterThen === 'unknown' ? 'reading' : 'meterThen';
  return saysOverhaul ? 'overhauledOn' : 'installedOn';
}

function wordsOf({ code, message }: RuleError): string {
  const said =
    code === 'overhauled-while-installed'
      ? 'By what is on record it was installed on an aircraft on the day of an overhaul'
      : `With what is on record that cannot be: ${message.replace(/\.$/, '')}`;
  return `${said}. Correct the row, or what is on record of the unit first`;
}
