import { Module } from '@nestjs/common';
import { MediaController } from './media.controller.ts';
import { MediaQueries } from './media.queries.ts';
import { PeeningPaperQueries } from './paper.queries.ts';
import { PeeningController } from './peening.controller.ts';
import { PeeningQueries } from './peening.queries.ts';

@Module({
  controllers: [PeeningController, MediaController],
  providers: [PeeningQueries, MediaQueries, PeeningPaperQueries],
})
export class PeeningModule {}
