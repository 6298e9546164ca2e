import { Module } from '@nestjs/common';
import { FreezerController } from './freezer.controller.ts';
import { FrozenLotQueries } from './frozen-lots.queries.ts';
import { InventoryController } from './inventory.controller.ts';
import { InventoryQueries } from './inventory.queries.ts';
import { MovementsQueries } from './movements.queries.ts';
import { PartsController } from './parts.controller.ts';
import { PartsQueries } from './parts.queries.ts';
import { PlacesQueries } from './places.queries.ts';

@Module({
  controllers: [InventoryController, PartsController, FreezerController],
  providers: [InventoryQueries, MovementsQueries, PartsQueries, PlacesQueries, FrozenLotQueries],
})
export class InventoryModule {}
