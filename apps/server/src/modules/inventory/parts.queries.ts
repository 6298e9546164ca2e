import type { partOperations } from '@hubwright/contracts/inventory/part-operations';
import type { Input, Reply } from '@hubwright/contracts/operation';
import { Inject, Injectable } from '@nestjs/common';
import { fromDbDate } from '../../platform/database/dates.ts';
import { Reads } from '../../platform/database/reads.ts';

type PartRow = Reply<typeof partOperations.listParts>['rows'][number];

/** Of a link what both its sides show. */
function linkOf(link: { twoWay: boolean; supersedes: boolean; effectivity: string; fromDate: Date | null }) {
  const { twoWay, supersedes, fromDate } = link;
  const effectivity = link.effectivity as PartRow['alternates'][number]['effectivity'];
  return { twoWay, supersedes, effectivity, from: fromDate && fromDbDate(fromDate) };
}

@Injectable()
export class PartsQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  async listParts(input: Input<typeof partOperations.listParts>): Promise<Reply<typeof partOperations.listParts>> {
    const { search, after, limit } = input;
    const contains = search ? { contains: search, mode: 'insensitive' as const } : undefined;
    const rows = await this.reads.models.part.findMany({
      where: {
        ...(contains ? { OR: [{ number: contains }, { description: contains }] } : {}),
        ...(input.class ? { class: input.class } : {}),
        ...(input.partId ? { id: input.partId } : {}),
        ...(after ? { number: { gt: after } } : {}),
      },
      orderBy: { number: 'asc' },
      take: limit + 1,
      include: {
        supplier: { select: { id: true, code: true, name: true } },
        alternates: { orderBy: { preference: 'asc' }, include: { use: { select: { id: true, number: true } } } },
        standsInFor: {
          orderBy: { partId: 'asc' },
          take: 50,
          include: { part: { select: { id: true, number: true } } },
        },
      },
    });
    const shown = rows.slice(0, limit).map((row) => ({
      ...row,
      class: row.class as PartRow['class'],
      issueUnit: row.issueUnit as PartRow['issueUnit'],
      alternates: row.alternates.map((link) => ({ ...link.use, ...linkOf(link), preference: link.preference })),
      standsInFor: row.standsInFor.map((link) => ({ ...link.part, ...linkOf(link) })),
    }));
    return { rows: shown, next: rows.length > limit ? (shown.at(-1)?.number ?? null) : null };
  }

  async listBins(input: Input<typeof partOperations.listBins>): Promise<Reply<typeof partOperations.listBins>> {
    const last = input.after ? await this.reads.models.bin.findUnique({ where: { code: input.after } }) : null;
    const rows = await this.reads.models.bin.findMany({
      where: last ? { OR: [{ walk: { gt: last.walk } }, { walk: last.walk, code: { gt: last.code } }] } : {},
      orderBy: [{ walk: 'asc' }, { code: 'asc' }],
      take: input.limit + 1,
    });
    const shown = rows.slice(0, input.limit);
    return { rows: shown, next: rows.length > input.limit ? (shown.at(-1)?.code ?? null) : null };
  }
}
