import { Module } from '@nestjs/common';
import { RecordsController } from './records.controller.ts';
import { RecordsQueries } from './records.queries.ts';

@Module({ controllers: [RecordsController], providers: [RecordsQueries] })
export class RecordsModule {}
