import { Module } from '@nestjs/common';
import { SupplierController } from './supplier.controller.ts';
import { SupplierQueries } from './supplier.queries.ts';

@Module({ controllers: [SupplierController], providers: [SupplierQueries] })
export class PurchasingModule {}
