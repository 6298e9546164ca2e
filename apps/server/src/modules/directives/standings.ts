import {
  type DirectiveAsked,
  type DirectiveRecord,
  type DirectiveUnit,
  type DirectiveVerdict,
  decideDirective,
} from '@hubwright/rules/directives';
import { fromDbDate } from '../../platform/database/dates.ts';
import { type DirectiveWithLinks, nameOf, ruleShape, withLinks } from './rule-shapes.ts';
import { type Models, silentOn, unitOnRecord } from './unit-on-record.ts';

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
  const { rows, records, isWhole, ...known } = await unitOnRecord(models, unitId);
  const directives = await directivesFor(models, known.modelId);
  const numbers = directives.flatMap(({ lines }) => lines.flatMap(({ partNumber }) => partNumber ?? []));
  const unit = { ...known, silentOn: await silentOn(models, { parts: known.parts, isWhole }, numbers) };
  const names = await namesOf(models, rows);
  const lastOf = (directiveId: string, itemId: string): Standing['last'] => {
    const row = rows.findLast((one) => one.directiveId === directiveId && one.itemId === itemId);
    if (!row) return null;
    return {
      method: row.method,
      by: names.get(row.recordedBy) ?? '',
      on: fromDbDate(row.doneOn),
      outcome: row.outcome,
    };
  };
  const standings = directives.flatMap((directive) =>
    decideDirective(ruleShape(directive), unit, { records, asked })
      .filter(({ state }) => state !== 'not-applicable' || directive.lines.some(({ modelId }) => modelId !== null))
      .map((verdict) => ({
        ...verdict,
        directive,
        called: nameOf(directive),
        last: lastOf(directive.id, verdict.itemId),
      })),
  );
  return { standings: standings.sort((a, b) => order.indexOf(a.state) - order.indexOf(b.state)), unit, records };
}

const order: DirectiveVerdict['state'][] = [
  ...(['open', 'undecided', 'deferred', 'complied', 'not-due', 'terminated', 'not-applicable'] as const),
];

/** Those that name the model, and those that name a part whatever it sits in. */
function directivesFor(models: Models, modelId: string | null): Promise<DirectiveWithLinks[]> {
  const named = modelId === null ? [] : [{ lines: { some: { modelId } } }];
  return models.directive.findMany({
    where: { withdrawnOn: null, OR: [{ lines: { some: { modelId: null } } }, ...named] },
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
