import { Module } from '@nestjs/common';
import { InstrumentQueries } from './instruments.queries.ts';
import { ProcessesController } from './processes.controller.ts';

@Module({ controllers: [ProcessesController], providers: [InstrumentQueries] })
export class ProcessesModule {}
