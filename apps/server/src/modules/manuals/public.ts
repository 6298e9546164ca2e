import { type BladeRules, noBladeRules } from '@hubwright/contracts/manuals/measures';
import type { Scope } from '@hubwright/contracts/manuals/words';
import { Problem } from '@hubwright/contracts/problems';
import { type ExplodedKitList, explodeKitList, type ListLine } from '@hubwright/rules/kit-list';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import type { Reads } from '../../platform/database/reads.ts';

export { type DraftLine, kitListsNow, writeKitListDrafts } from './kit-list-drafts.ts';

/** Which unit a kit list is asked for. */
export interface KitListQuestion {
  readonly revisionId: string;
  readonly modelId: string;
  readonly scope: Scope;
  /** Null while it could not be read. */
  readonly serial: string | null;
  /** Zero for a governor. */
  readonly bladeCount: number;
}

/**
 * The revision's kit list exploded for one unit. `undecided` names lines of a serial range that wait for the serial to be
 * read: a kit made meanwhile is not complete.
 */
export async function kitListFor(tx: Tx, unit: KitListQuestion): Promise<ExplodedKitList> {
  const rows = await tx.kitListLine.findMany({
    where: { revisionId: unit.revisionId, modelId: unit.modelId },
    orderBy: { sequence: 'asc' },
  });
  return explodeKitList(rows.map(listLine), unit);
}

function listLine(row: Awaited<ReturnType<Tx['kitListLine']['findMany']>>[number]): ListLine {
  return {
    id: row.id,
    partId: row.partId,
    position: row.position,
    scopes: row.scopes,
    per: row.per as ListLine['per'],
    quantity: row.quantity,
    source: row.source as ListLine['source'],
    ...(row.minimum === null ? {} : { minimum: row.minimum }),
    ...(row.serialFrom === null ? {} : { serialFrom: row.serialFrom }),
    ...(row.serialTo === null ? {} : { serialTo: row.serialTo }),
  };
}

/** The routes of a scope with steps and measures in order, one per part class. */
export function routesFor(tx: Tx, asked: { revisionId: string; modelId: string; scope: Scope }) {
  return tx.routeTemplate.findMany({
    where: { revisionId: asked.revisionId, modelId: asked.modelId, scopes: { has: asked.scope } },
    orderBy: [{ partClass: 'asc' }, { title: 'asc' }],
    include: {
      steps: { orderBy: { sequence: 'asc' }, include: { measures: { orderBy: { sequence: 'asc' } } } },
    },
  });
}
export type Route = Awaited<ReturnType<typeof routesFor>>[number];

/** What the revision says of life-limited parts of a model, by part number in capitals. */
export async function lifeLimitsOf(tx: Tx, asked: { revisionId: string; modelId: string }) {
  const rows = await tx.lifeLimit.findMany({ where: { revisionId: asked.revisionId, modelId: asked.modelId } });
  return new Map(rows.map((row) => [row.partNumber, row]));
}

/** What the revision says of the model's blades as a set, of corrosion and of parts that stay together. */
export async function bladeRulesOf(
  tx: Pick<Reads['models'], 'bladeRules'>,
  { revisionId, modelId }: { revisionId: string; modelId: string },
): Promise<BladeRules> {
  const row = await tx.bladeRules.findUnique({ where: { revisionId_modelId: { revisionId, modelId } } });
  return row ? (row.content as unknown as BladeRules) : noBladeRules;
}

/** The manual's current revision. Throws `no-current-revision`. */
export async function currentRevision(tx: Tx, manualId: string) {
  const revision = await tx.manualRevision.findFirst({ where: { manualId, state: 'current' } });
  if (revision) return revision;
  const manual = found(await tx.manual.findUnique({ where: { id: manualId } }), 'This manual');
  throw new Problem('no-current-revision', `${manual.number} has no current revision`, { manual: manual.number });
}

/** Throws `revision-superseded`, naming the current one, unless this revision is still current. */
export async function requireCurrentRevision(tx: Tx, revisionId: string): Promise<void> {
  const used = found(
    await tx.manualRevision.findUnique({ where: { id: revisionId }, include: { manual: true } }),
    'This manual revision',
  );
  if (used.state === 'current') return;
  const current = await currentRevision(tx, used.manualId);
  throw new Problem(
    'revision-superseded',
    `The work is on revision ${used.revision} of ${used.manual.number}; revision ${current.revision} is current`,
    { used: used.revision, current: current.revision, revisionId: current.id },
  );
}

/** The current issues of the documents that belong to a model, by number: what its work goes by beside the manual. */
export function documentsOf(tx: Tx, modelId: string) {
  return tx.documentIssue.findMany({
    where: { state: 'current', document: { models: { some: { modelId } } } },
    orderBy: [{ document: { number: 'asc' } }, { document: { kind: 'asc' } }],
    include: { document: true },
  });
}
