import { Module } from '@nestjs/common';
import { CustomersController } from './customers.controller.ts';
import { CustomerQueries } from './customers.queries.ts';

@Module({ controllers: [CustomersController], providers: [CustomerQueries] })
export class CustomersModule {}
