import { Module } from '@nestjs/common';
import { PurchasingController } from './purchasing.controller.ts';
import { PurchasingQueries } from './purchasing.queries.ts';
import { SupplierController } from './supplier.controller.ts';
import { SupplierQueries } from './supplier.queries.ts';

@Module({
  controllers: [SupplierController, PurchasingController],
  providers: [SupplierQueries, PurchasingQueries],
})
export class PurchasingModule {}
