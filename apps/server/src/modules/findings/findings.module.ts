import { Module } from '@nestjs/common';
import { FindingsController } from './findings.controller.ts';
import { FindingQueries } from './findings.queries.ts';

@Module({ controllers: [FindingsController], providers: [FindingQueries] })
export class FindingsModule {}
