import { Module } from '@nestjs/common';
import { FindQueries } from './find.queries.ts';
import { IntervalsController } from './intervals.controller.ts';
import { IntervalQueries } from './intervals.queries.ts';
import { TimesQueries } from './times.queries.ts';
import { UnitsController } from './units.controller.ts';
import { UnitQueries } from './units.queries.ts';

@Module({
  controllers: [UnitsController, IntervalsController],
  providers: [UnitQueries, FindQueries, TimesQueries, IntervalQueries],
})
export class UnitsModule {}
