import { Module } from '@nestjs/common';
import { InventoryController } from './inventory.controller.ts';
import { InventoryQueries } from './inventory.queries.ts';

@Module({ controllers: [InventoryController], providers: [InventoryQueries] })
export class InventoryModule {}
