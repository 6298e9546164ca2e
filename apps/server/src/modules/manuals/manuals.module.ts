import { Module } from '@nestjs/common';
import { ManualsController } from './manuals.controller.ts';
import { ManualQueries } from './manuals.queries.ts';
import { ModelQueries } from './models.queries.ts';

@Module({ controllers: [ManualsController], providers: [ManualQueries, ModelQueries] })
export class ManualsModule {}
