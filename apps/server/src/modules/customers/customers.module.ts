import { Module } from '@nestjs/common';
import { CustomersController } from './customers.controller.ts';
import { CustomerQueries } from './customers.queries.ts';
import { MetersController } from './meters.controller.ts';
import { MeterQueries } from './meters.queries.ts';
import { OwnersController } from './owners.controller.ts';
import { OwnerQueries } from './owners.queries.ts';

@Module({
  controllers: [CustomersController, MetersController, OwnersController],
  providers: [CustomerQueries, MeterQueries, OwnerQueries],
})
export class CustomersModule {}
