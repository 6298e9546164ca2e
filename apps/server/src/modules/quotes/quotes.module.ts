import { Module } from '@nestjs/common';
import { QuotesController } from './quotes.controller.ts';
import { QuotesQueries } from './quotes.queries.ts';

@Module({ controllers: [QuotesController], providers: [QuotesQueries] })
export class QuotesModule {}
