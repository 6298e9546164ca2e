import { Module } from '@nestjs/common';
import { VendorsController } from './vendors.controller.ts';
import { VendorQueries } from './vendors.queries.ts';

@Module({ controllers: [VendorsController], providers: [VendorQueries] })
export class VendorsModule {}
