import { Module } from '@nestjs/common';
import { KitsModule } from '../kits/public.ts';
import { BuyingController } from './buying.controller.ts';
import { BuyingQueries } from './buying.queries.ts';
import { ChaseQueries } from './chase.queries.ts';

@Module({ imports: [KitsModule], controllers: [BuyingController], providers: [BuyingQueries, ChaseQueries] })
export class BuyingModule {}
