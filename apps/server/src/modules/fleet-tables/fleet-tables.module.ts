import { Module } from '@nestjs/common';
import { ImportsModule } from '../imports/public.ts';
import { FleetTablesController } from './fleet-tables.controller.ts';
import { FleetTableQueries } from './fleet-tables.queries.ts';

@Module({ imports: [ImportsModule], controllers: [FleetTablesController], providers: [FleetTableQueries] })
export class FleetTablesModule {}
