import { Module } from '@nestjs/common';
import { FindQueries } from './find.queries.ts';
import { UnitsController } from './units.controller.ts';
import { UnitQueries } from './units.queries.ts';

@Module({ controllers: [UnitsController], providers: [UnitQueries, FindQueries] })
export class UnitsModule {}
