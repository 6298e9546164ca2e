import { Module } from '@nestjs/common';
import { DueDatesController } from './due-dates.controller.ts';
import { DueDateQueries } from './due-dates.queries.ts';

@Module({ controllers: [DueDatesController], providers: [DueDateQueries] })
export class DueDatesModule {}
