import { Module } from '@nestjs/common';
import { LossesController } from './losses.controller.ts';
import { LossQueries } from './losses.queries.ts';
import { VendorPiecesController } from './vendor-pieces.controller.ts';
import { VendorsController } from './vendors.controller.ts';
import { VendorQueries } from './vendors.queries.ts';

@Module({
  controllers: [VendorsController, LossesController, VendorPiecesController],
  providers: [VendorQueries, LossQueries],
})
export class VendorsModule {}
