import { Module } from '@nestjs/common';
import { InstrumentQueries } from './instruments.queries.ts';
import { ProcessesController } from './processes.controller.ts';
import { StudyQueries } from './studies.queries.ts';

@Module({ controllers: [ProcessesController], providers: [InstrumentQueries, StudyQueries] })
export class ProcessesModule {}
