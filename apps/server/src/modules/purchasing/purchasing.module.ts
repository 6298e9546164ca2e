import { Module } from '@nestjs/common';
import { ApprovalController } from './approval.controller.ts';
import { ApprovalQueries } from './approval.queries.ts';
import { HeldController } from './held.controller.ts';
import { HeldQueries } from './held.queries.ts';
import { OfferController } from './offer.controller.ts';
import { OfferQueries } from './offer.queries.ts';
import { OrderPaperController } from './order-paper.controller.ts';
import { OrderPaperQueries } from './order-paper.queries.ts';
import { PurchasingController } from './purchasing.controller.ts';
import { PurchasingQueries } from './purchasing.queries.ts';
import { SupplierController } from './supplier.controller.ts';
import { SupplierQueries } from './supplier.queries.ts';

@Module({
  controllers: [
    SupplierController,
    PurchasingController,
    ApprovalController,
    OfferController,
    OrderPaperController,
    HeldController,
  ],
  providers: [SupplierQueries, PurchasingQueries, ApprovalQueries, OfferQueries, OrderPaperQueries, HeldQueries],
})
export class PurchasingModule {}
