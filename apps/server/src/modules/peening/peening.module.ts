import { Module } from '@nestjs/common';
import { PeeningController } from './peening.controller.ts';
import { PeeningQueries } from './peening.queries.ts';

@Module({ controllers: [PeeningController], providers: [PeeningQueries] })
export class PeeningModule {}
