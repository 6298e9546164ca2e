import { Module } from '@nestjs/common';
import { ArrivalQueries } from './arrivals.queries.ts';
import { ComingDueQueries } from './coming-due.queries.ts';
import { DueDatesController } from './due-dates.controller.ts';
import { DueDateQueries } from './due-dates.queries.ts';
import { DueListFileQueries } from './due-list-files.queries.ts';
import { FleetController } from './fleet.controller.ts';
import { KeptDue } from './kept-due.ts';

@Module({
  controllers: [DueDatesController, FleetController],
  providers: [DueDateQueries, ComingDueQueries, KeptDue, ArrivalQueries, DueListFileQueries],
  exports: [KeptDue],
})
export class DueDatesModule {}
