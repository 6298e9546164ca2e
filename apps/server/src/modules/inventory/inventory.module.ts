import { Module } from '@nestjs/common';
import { FreezerController } from './freezer.controller.ts';
import { FrozenLotQueries } from './frozen-lots.queries.ts';
import { InventoryController } from './inventory.controller.ts';
import { InventoryQueries } from './inventory.queries.ts';
import { MovementsQueries } from './movements.queries.ts';
import { PartsController } from './parts.controller.ts';
import { PartsQueries } from './parts.queries.ts';
import { PlacesQueries } from './places.queries.ts';
import { ReceivingController } from './receiving.controller.ts';
import { ReceivingQueries } from './receiving.queries.ts';

@Module({
  controllers: [InventoryController, PartsController, FreezerController, ReceivingController],
  providers: [InventoryQueries, MovementsQueries, PartsQueries, PlacesQueries, FrozenLotQueries, ReceivingQueries],
})
export class InventoryModule {}
