import type { Reply } from '@hubwright/contracts/operation';
import type { unitHistoryOperations } from '@hubwright/contracts/units/unit-history-operations';
import { fromDbDate } from '../../platform/database/dates.ts';
import type { Reads } from '../../platform/database/reads.ts';

type Papers = Reply<typeof unitHistoryOperations.unitPapers>;

/** More than any unit has in its life. */
const everything = 100_000;
const named = { select: { id: true, number: true } } as const;

/** Work orders an item went through: as the unit itself, or as a part with a traveler of its own. */
export async function visitsOf(models: Reads['models'], itemId: string): Promise<string[]> {
  const rows = await models.workOrder.findMany({
    where: { OR: [{ unitId: itemId }, { travelers: { some: { itemId } } }] },
    orderBy: { receivedOn: 'desc' },
    select: { id: true },
  });
  return rows.map(({ id }) => id);
}

/** Releases, documents worked to, and photos and papers of some visits; one statement each, newest first. */
export async function papersOf(models: Reads['models'], visits: readonly string[], most = everything): Promise<Papers> {
  const workOrderId = { in: [...visits] };
  const photos = await models.photo.findMany({
    where: { workOrderId },
    orderBy: [{ addedAt: 'desc' }, { id: 'desc' }],
    include: { struck: { select: { reason: true } } },
    take: most,
  });
  const orders = await models.workOrder.findMany({ where: { id: workOrderId }, select: { id: true, number: true } });
  const numbers = new Map(orders.map((one) => [one.id, one]));
  return {
    releases: await releasesOf(models, visits, most),
    documents: await documentsOf(models, visits, most),
    papers: photos.map(({ id, workOrderId: of, title, mediaType, fileHash, addedAt, struck }) => ({
      ...{ id, title, mediaType, fileHash, addedAt: addedAt.toISOString() },
      workOrder: numbers.get(of) ?? { id: of, number: '' },
      struckBecause: struck?.reason ?? null,
    })),
  };
}

async function releasesOf(
  models: Reads['models'],
  visits: readonly string[],
  most: number,
): Promise<Papers['releases']> {
  const rows = await models.release.findMany({
    where: { workOrderId: { in: [...visits] } },
    orderBy: [{ releasedAt: 'desc' }, { id: 'desc' }],
    include: { workOrder: named },
    omit: { content: true },
    take: most,
  });
  const takenBy = new Map(rows.map(({ id, supersedesId }) => [supersedesId, id]));
  return rows.map(({ id, number, workOrder, word, releasedAt, contentHash, fileHash, supersedesId, reason }) => ({
    ...{ id, number, workOrder, word, contentHash, fileHash, supersedesId, reason },
    releasedAt: releasedAt.toISOString(),
    supersededById: takenBy.get(id) ?? null,
  }));
}

/** The manual revision and the set of documents each visit was worked to. */
async function documentsOf(
  models: Reads['models'],
  visits: readonly string[],
  most: number,
): Promise<Papers['documents']> {
  const rows = await models.workOrder.findMany({
    where: { id: { in: [...visits] } },
    orderBy: [{ receivedOn: 'desc' }, { number: 'desc' }],
    select: {
      ...{ id: true, number: true },
      revision: { include: { manual: true } },
      documents: { include: { issue: { include: { document: true } } } },
    },
  });
  const documents = rows.flatMap(({ id, number, revision, documents: others }) => [
    {
      workOrder: { id, number },
      ...{ kind: 'manual', number: revision.manual.number, title: revision.manual.title, issue: revision.revision },
      issuedOn: fromDbDate(revision.issuedOn),
    },
    ...others.map(({ issue: { document, issue, issuedOn } }) => ({
      workOrder: { id, number },
      ...{ kind: document.kind, number: document.number, title: document.title, issue },
      issuedOn: fromDbDate(issuedOn),
    })),
  ]);
  return documents.slice(0, most);
}
