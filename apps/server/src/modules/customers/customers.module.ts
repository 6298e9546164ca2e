import { Module } from '@nestjs/common';
import { CustomersController } from './customers.controller.ts';
import { CustomerQueries } from './customers.queries.ts';
import { MetersController } from './meters.controller.ts';
import { MeterQueries } from './meters.queries.ts';

@Module({ controllers: [CustomersController, MetersController], providers: [CustomerQueries, MeterQueries] })
export class CustomersModule {}
