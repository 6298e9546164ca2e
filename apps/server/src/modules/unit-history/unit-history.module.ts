import { Module } from '@nestjs/common';
import { IntervalQueries, TimesQueries, UnitQueries } from '../units/public.ts';
import { UnitHistoryController } from './unit-history.controller.ts';
import { UnitHistoryQueries } from './unit-history.queries.ts';

/** The queries of units hold nothing of their own: each department that asks has its own of them. */
@Module({
  controllers: [UnitHistoryController],
  providers: [UnitHistoryQueries, UnitQueries, TimesQueries, IntervalQueries],
})
export class UnitHistoryModule {}
