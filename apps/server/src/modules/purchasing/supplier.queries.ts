import type { Input, Reply } from '@hubwright/contracts/operation';
import type { supplierOperations } from '@hubwright/contracts/purchasing/supplier-operations';
import { Inject, Injectable } from '@nestjs/common';
import { fromDbDateOrNull } from '../../platform/database/dates.ts';
import { Reads } from '../../platform/database/reads.ts';

@Injectable()
export class SupplierQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  async list(
    input: Input<typeof supplierOperations.listSuppliers>,
  ): Promise<Reply<typeof supplierOperations.listSuppliers>> {
    const rows = await this.reads.models.supplier.findMany({
      where: input.after ? { code: { gt: input.after } } : {},
      orderBy: { code: 'asc' },
      take: input.limit + 1,
    });
    const shown = rows
      .slice(0, input.limit)
      .map((row) => ({ ...row, approvedUntil: fromDbDateOrNull(row.approvedUntil) }));
    return { rows: shown, next: rows.length > input.limit ? (shown.at(-1)?.code ?? null) : null };
  }
}
