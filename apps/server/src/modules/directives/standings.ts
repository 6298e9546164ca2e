import {
  type Directive,
  type DirectiveAsked,
  type DirectiveItem,
  type DirectiveRecord,
  type DirectiveUnit,
  type DirectiveVerdict,
  decideDirective,
} from '@hubwright/rules/directives';
import { found } from '../../platform/command/version.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import { type DirectiveWithLinks, nameOf, ruleShape, withLinks } from './rule-shapes.ts';
import {
  followedNumbers,
  hoursOn,
  type Models,
  silentOn,
  type UnitOnRecord,
  unitsOnRecord,
} from './units-on-record.ts';

/** How one directive stands for one item, and what was last recorded of it there. */
export interface Standing extends DirectiveVerdict {
  readonly directive: DirectiveWithLinks;
  readonly called: string;
  readonly last: { readonly method: string; readonly by: string; readonly on: string; readonly outcome: string } | null;
}

export interface UnitStandings {
  readonly standings: readonly Standing[];
  readonly unit: DirectiveUnit;
  readonly records: readonly DirectiveRecord[];
}

/** How every directive that may concern a unit or its parts stands on a day, the ones to look after first. */
export async function standingsOf(
  models: Models,
  { unitId, asked }: { unitId: string; asked: DirectiveAsked },
): Promise<UnitStandings> {
  return found((await standingsOfUnits(models, { unitIds: [unitId], asked })).get(unitId), 'This unit');
}

/** The same for several units at once, in so many statements however many there are. */
export async function standingsOfUnits(
  models: Models,
  { unitIds, asked }: { unitIds: readonly string[]; asked: DirectiveAsked },
): Promise<Map<string, UnitStandings>> {
  const onRecord = await unitsOnRecord(models, { unitIds, asOf: asked.asOf });
  const modelIds = [...new Set([...onRecord.values()].flatMap(({ modelId }) => modelId ?? []))];
  const directives = await directivesFor(models, modelIds);
  const numbers = directives.flatMap(({ lines }) => lines.flatMap(({ partNumber }) => partNumber ?? []));
  const followed = numbers.length === 0 ? new Set<string>() : await followedNumbers(models, numbers);
  const names = await namesOf(
    models,
    [...onRecord.values()].flatMap(({ rows }) => rows),
  );
  const shaped = directives.map((directive) => ({ directive, rule: ruleShape(directive) }));
  return new Map(
    [...onRecord].map(([unitId, known]) => {
      const own = shaped.filter(({ directive: { lines } }) =>
        lines.some(({ modelId }) => modelId === null || modelId === known.modelId),
      );
      const named = own.flatMap(({ directive: { lines } }) => lines.flatMap(({ partNumber }) => partNumber ?? []));
      const begun = own.flatMap(({ rule }) =>
        rule.first.hoursTenths === null || rule.effectiveOn > asked.asOf ? [] : [rule.effectiveOn],
      );
      const unit = { ...withHoursOn(known, begun), silentOn: silentOn(known, named, followed) };
      return [unitId, standingsIn(unit, { own, asked, names })];
    }),
  );
}

/** With the hours on the days directives that count from then came into force. */
function withHoursOn(known: UnitOnRecord, days: readonly string[]): UnitOnRecord {
  if (days.length === 0) return known;
  const dated = (item: DirectiveItem) => ({
    ...item,
    earlier: hoursOn(known.times, item.itemId, [...(item.earlier ?? []).map(({ on }) => on), ...days]),
  });
  return { ...known, unit: dated(known.unit), parts: known.parts.map(dated) };
}

type Shaped = { readonly directive: DirectiveWithLinks; readonly rule: Directive };

function standingsIn(
  unit: UnitOnRecord & DirectiveUnit,
  { own, asked, names }: { own: readonly Shaped[]; asked: DirectiveAsked; names: ReadonlyMap<string, string> },
): UnitStandings {
  const { rows, records } = unit;
  const lastOf = (directiveId: string, itemId: string): Standing['last'] => {
    const row = rows.findLast((one) => one.directiveId === directiveId && one.itemId === itemId);
    if (!row) return null;
    const { method, outcome } = row;
    return { method, outcome, by: names.get(row.recordedBy) ?? '', on: fromDbDate(row.doneOn) };
  };
  const standings = own.flatMap(({ directive, rule }) =>
    decideDirective(rule, unit, { records, asked })
      .filter(({ state }) => state !== 'not-applicable' || directive.lines.some(({ modelId }) => modelId !== null))
      .map((verdict) => ({
        ...{ ...verdict, directive, called: nameOf(directive) },
        last: lastOf(directive.id, verdict.itemId),
      })),
  );
  return { standings: standings.sort((a, b) => order.indexOf(a.state) - order.indexOf(b.state)), unit, records };
}

const order: DirectiveVerdict['state'][] = [
  ...(['open', 'undecided', 'deferred', 'complied', 'not-due', 'terminated', 'not-applicable'] as const),
];

/** Those that name the model, and those that name a part whatever it sits in. */
function directivesFor(models: Models, modelIds: readonly string[]): Promise<DirectiveWithLinks[]> {
  const named = { lines: { some: { modelId: { in: [...modelIds] } } } };
  return models.directive.findMany({
    where: { withdrawnOn: null, OR: [{ lines: { some: { modelId: null } } }, named] },
    include: withLinks,
    orderBy: [{ number: 'asc' }, { revision: 'asc' }],
    take: 1000,
  });
}

async function namesOf(models: Models, rows: readonly { recordedBy: string }[]): Promise<Map<string, string>> {
  const ids = [...new Set(rows.map(({ recordedBy }) => recordedBy))];
  const people = await models.person.findMany({ where: { id: { in: ids } }, select: { id: true, displayName: true } });
  return new Map(people.map(({ id, displayName }) => [id, displayName]));
}
