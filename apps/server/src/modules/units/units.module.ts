import { Module } from '@nestjs/common';
import { AssembliesController } from './assemblies.controller.ts';
import { FindQueries } from './find.queries.ts';
import { IntervalsController } from './intervals.controller.ts';
import { IntervalQueries } from './intervals.queries.ts';
import { KeepingController } from './keeping.controller.ts';
import { KeepingQueries } from './keeping.queries.ts';
import { TimesQueries } from './times.queries.ts';
import { UnitsController } from './units.controller.ts';
import { UnitQueries } from './units.queries.ts';

@Module({
  controllers: [UnitsController, IntervalsController, KeepingController, AssembliesController],
  providers: [UnitQueries, FindQueries, TimesQueries, IntervalQueries, KeepingQueries],
})
export class UnitsModule {}
