import { Module } from '@nestjs/common';
import { UnitsModule } from '../units/public.ts';
import { UnitHistoryController } from './unit-history.controller.ts';
import { UnitHistoryQueries } from './unit-history.queries.ts';

@Module({ imports: [UnitsModule], controllers: [UnitHistoryController], providers: [UnitHistoryQueries] })
export class UnitHistoryModule {}
