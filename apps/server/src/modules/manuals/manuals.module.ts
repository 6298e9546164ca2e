import { Module } from '@nestjs/common';
import { DocumentsController } from './documents.controller.ts';
import { DocumentQueries } from './documents.queries.ts';
import { KitListsController } from './kit-lists.controller.ts';
import { KitListQueries } from './kit-lists.queries.ts';
import { ManualsController } from './manuals.controller.ts';
import { ManualQueries } from './manuals.queries.ts';
import { ModelQueries } from './models.queries.ts';

@Module({
  controllers: [ManualsController, DocumentsController, KitListsController],
  providers: [ManualQueries, ModelQueries, DocumentQueries, KitListQueries],
})
export class ManualsModule {}
