import { directiveOperations } from '@hubwright/contracts/directives/operations';
import { Problem } from '@hubwright/contracts/problems';
import { serialPlace } from '@hubwright/rules/directives';
import { RuleError } from '@hubwright/rules/errors';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { toDbDate } from '../../platform/database/dates.ts';
import { contentHashOf } from '../people/public.ts';

const operation = directiveOperations.issueDirective;
type Issuing = Context<typeof operation>;

/** A directive as it reads is never edited: what was entered wrongly is withdrawn and issued anew, a revision is a record of its own. */
export const issueDirective = defineCommand(operation, {
  locks: (input) => [`directive-number:${input.issuer} ${input.number}`],
  async execute(context) {
    const { tx, input, actor, now, entryId, newId } = context;
    refuseContradiction(context);
    await refuseKnown(context);
    await requireModels(context);
    const { signature: _, lines, supersedes, credits, ends, ...said } = input;
    const { everyHoursTenths = null, everyMonths = null, terminatingAction = null, deferDays = null } = said;
    const { firstDays = null, firstMonths = null, firstHoursTenths = null, firstTotalTenths = null } = said;
    const first = { firstDays, firstMonths, firstHoursTenths, firstTotalTenths };
    const id = newId();
    const contentHash = contentHashOf({ ...said, lines, supersedes, credits, ends });
    const dates = { issuedOn: toDbDate(said.issuedOn), effectiveOn: toDbDate(said.effectiveOn) };
    const by = { issuedBy: actor.personId, issuedAt: now, contentHash, entryId };
    await tx.directive.create({
      data: { ...said, ...first, everyHoursTenths, everyMonths, terminatingAction, deferDays, ...dates, ...by, id },
    });
    await tx.directiveLine.createMany({
      data: lines.map(({ modelId = null, partNumber, serialFrom = null, serialTo = null }, index) => ({
        ...{ modelId, partNumber: partNumber?.toUpperCase() ?? null, serialFrom, serialTo },
        ...{ id: newId(), directiveId: id, sequence: index + 1 },
      })),
    });
    const links = Object.entries({ supersedes, credits, ends }).flatMap(([kind, ids]) =>
      [...new Set(ids)].map((toId) => ({ fromId: id, toId, kind })),
    );
    await requireDirectives(context, links);
    await tx.directiveLink.createMany({ data: links });
    return {
      reply: { id, version: 1 },
      subjects: [{ kind: 'directive', id, after: 1 }],
      facts: { number: said.number, revision: said.revision, contentHash },
    };
  },
});

function refuseContradiction({ input, today }: Issuing): void {
  const { repeats, everyHoursTenths, everyMonths, terminatingAction, kind, binding, issuedOn, effectiveOn } = input;
  const says = everyHoursTenths !== undefined || everyMonths !== undefined;
  if (issuedOn > today)
    throw new Problem('date-ahead', `${issuedOn} is still to come`, {}, [
      { pointer: '/issuedOn', detail: `${issuedOn} is still to come` },
    ]);
  if (effectiveOn < issuedOn) throw wrong('/effectiveOn', 'It is in force on or after the day it was issued');
  if (repeats === 'recurring' && !says) throw wrong('/everyMonths', 'Say how often it recurs: hours, months or both');
  if (repeats !== 'recurring' && says) throw wrong('/repeats', 'Only a recurring one has hours or months');
  if (repeats === 'one-time' && terminatingAction !== undefined)
    throw wrong('/terminatingAction', 'Only one that comes again is ended by a terminating action');
  const { firstDays, firstMonths, firstHoursTenths, firstTotalTenths } = input;
  const waits = [firstDays, firstMonths, firstHoursTenths, firstTotalTenths].some((one) => one !== undefined);
  if (repeats === 'at-overhaul' && waits)
    throw wrong('/repeats', 'What is due at overhaul has no other time for its first action');
  if (kind === 'airworthiness-directive' && binding !== 'required')
    throw wrong('/binding', 'An airworthiness directive is required');
  input.lines.forEach((line, index) => {
    refuseLine(line, index);
  });
}

function refuseLine(line: Issuing['input']['lines'][number], index: number): void {
  if (line.modelId === undefined && line.partNumber === undefined)
    throw wrong(`/lines/${index}`, 'A line names a model, a part number or both');
  try {
    const { serialFrom: from, serialTo: to } = line;
    serialPlace(null, { ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) });
  } catch (error) {
    if (error instanceof RuleError) throw wrong(`/lines/${index}/serialTo`, error.message);
    throw error;
  }
}

function wrong(pointer: string, detail: string): Problem {
  return new Problem('directive-wrong', detail, {}, [{ pointer, detail }]);
}

async function refuseKnown({ tx, input: { issuer, number, revision } }: Issuing): Promise<void> {
  const known = await tx.directive.findUnique({ where: { issuer_number_revision: { issuer, number, revision } } });
  if (known) throw new Problem('directive-known', `${number}, ${revision}, of ${issuer} is on record`);
}

async function requireModels({ tx, input }: Issuing): Promise<void> {
  const ids = [...new Set(input.lines.flatMap(({ modelId }) => modelId ?? []))];
  const there = await tx.unitModel.count({ where: { id: { in: ids } } });
  found(there === ids.length || null, 'One of the models');
}

async function requireDirectives({ tx }: Issuing, links: readonly { toId: string }[]): Promise<void> {
  const ids = [...new Set(links.map(({ toId }) => toId))];
  const there = await tx.directive.count({ where: { id: { in: ids } } });
  found(there === ids.length || null, 'One of the directives it names');
}
