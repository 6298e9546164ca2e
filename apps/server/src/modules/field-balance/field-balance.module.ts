import { Module } from '@nestjs/common';
import { FieldBalanceController } from './field-balance.controller.ts';
import { FieldBalanceQueries } from './field-balance.queries.ts';
import { HardwareQueries } from './hardware.queries.ts';
import { FieldReviewsController } from './reviews.controller.ts';
import { FieldReviewQueries } from './reviews.queries.ts';

@Module({
  controllers: [FieldBalanceController, FieldReviewsController],
  providers: [FieldBalanceQueries, HardwareQueries, FieldReviewQueries],
})
export class FieldBalanceModule {}
