import type { Input } from '@hubwright/contracts/operation';
import type { orderOperations } from '@hubwright/contracts/purchasing/order-operations';
import { orderSum } from '@hubwright/rules/replenishment';
import { Inject, Injectable, StreamableFile } from '@nestjs/common';
import { found } from '../../platform/command/version.ts';
import { Reads } from '../../platform/database/reads.ts';
import { Paper } from '../../platform/print/paper.ts';
import type { OrderContent } from './order-revision.ts';

const revisionsSql = `
  SELECT r.revision, r.changes, r.reason, to_char(r.at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"') AS at,
    json_build_object('id', p.id, 'displayName', p.display_name) AS person
  FROM order_revisions r JOIN people p ON p.id = r.person_id
  WHERE r.order_id = $1::uuid AND ($2::int IS NULL OR r.revision < $2) ORDER BY r.revision DESC LIMIT $3`;

@Injectable()
export class OrderPaperQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  async revisions({ orderId, after, limit }: Input<typeof orderOperations.orderRevisions>) {
    const before = /^\d{1,9}$/.test(after ?? '') ? Number(after) : null;
    const rows = await this.reads.sql<{ revision: number }>(revisionsSql, [orderId, before, limit + 1]);
    const shown = rows.slice(0, limit);
    return { rows: shown, next: rows.length > limit ? String(shown.at(-1)?.revision) : null };
  }

  async pdf({ orderId, revision }: Input<typeof orderOperations.orderPdf>): Promise<StreamableFile> {
    const kept = found(
      await this.reads.models.orderRevision.findFirst({
        where: { orderId, ...(revision === undefined ? {} : { revision }) },
        orderBy: { revision: 'desc' },
      }),
      'This revision of the order',
    );
    const shop = found(await this.reads.models.shopProfile.findUnique({ where: { id: 1 } }), 'The shop profile');
    const content = kept.content as unknown as OrderContent;
    const bytes = await printOrder(content, { ...kept, shopName: shop.name, currency: shop.currency });
    const name = `${content.number}-revision-${kept.revision}`;
    return new StreamableFile(bytes, { type: 'application/pdf', disposition: `inline; filename="${name}.pdf"` });
  }
}

interface Printed {
  readonly revision: number;
  readonly changes: readonly string[];
  readonly at: Date;
  readonly shopName: string;
  readonly currency: string;
}

/** The same revision prints the same bytes: it is dated when it was made. */
function printOrder(order: OrderContent, printed: Printed): Promise<Buffer> {
  const { revision, changes, at, shopName, currency } = printed;
  const paper = new Paper({
    ...{ title: `Purchase order ${order.number}, revision ${revision}`, shopName, at },
    foot: `${order.number} revision ${revision}`,
  });
  paper.barcode(order.number);
  if (order.state === 'cancelled') paper.heading('Cancelled: nothing more is expected on this order.');
  paper.facts([
    ['To', `${order.supplier.name} (${order.supplier.code})`],
    ['E-mail', order.supplier.email],
    ['Phone', order.supplier.phone],
    ['Ordered', order.orderedOn],
  ]);
  printLines(paper, order, currency);
  paper.paragraph(`In all ${orderSum(order.lines)} ${currency}. Please confirm day and number for each line.`);
  paper.paragraph('Every line comes with its certificate; what has a shelf life comes with its cure date.');
  if (order.note) paper.paragraph(order.note);
  if (revision > 1) {
    paper.heading(`Changed with revision ${revision}`);
    for (const change of changes) paper.paragraph(change);
  }
  return paper.finish();
}

/** The supplier's own number stands first where it named one: that is what its people look for. */
function printLines(paper: Paper, order: OrderContent, currency: string): void {
  const isNamed = order.lines.some(({ supplierPart }) => supplierPart !== undefined);
  paper.table(
    [
      { head: 'Line', width: 30, side: 'right' },
      ...(isNamed ? [{ head: 'Your part', width: 80 } as const] : []),
      { head: isNamed ? 'Our part' : 'Part', width: isNamed ? 76 : 90 },
      { head: 'Description', width: '*' },
      { head: 'Quantity', width: 70, side: 'right' },
      { head: 'Due', width: 66 },
      { head: `Each, ${currency}`, width: 66, side: 'right' },
    ],
    order.lines.map((line) => [
      ...[
        String(line.sequence),
        ...(isNamed ? [line.supplierPart ?? ''] : []),
        line.part,
        line.description,
        `${line.quantity} ${line.issueUnit}`,
      ],
      ...[line.dueOn, line.unitPrice],
    ]),
  );
}
