import { Module } from '@nestjs/common';
import { ComingDueQueries } from './coming-due.queries.ts';
import { DueDatesController } from './due-dates.controller.ts';
import { DueDateQueries } from './due-dates.queries.ts';
import { KeptDue } from './kept-due.ts';

@Module({
  controllers: [DueDatesController],
  providers: [DueDateQueries, ComingDueQueries, KeptDue],
  exports: [KeptDue],
})
export class DueDatesModule {}
