import { Module } from '@nestjs/common';
import { AverageQueries } from './average.queries.ts';
import { CountsController } from './counts.controller.ts';
import { CountsQueries } from './counts.queries.ts';
import { FreezerController } from './freezer.controller.ts';
import { FrozenLotQueries } from './frozen-lots.queries.ts';
import { GivingBackController } from './giving-back.controller.ts';
import { HandlingController } from './handling.controller.ts';
import { InventoryController } from './inventory.controller.ts';
import { InventoryQueries } from './inventory.queries.ts';
import { MovementsQueries } from './movements.queries.ts';
import { PartsController } from './parts.controller.ts';
import { PartsQueries } from './parts.queries.ts';
import { PlacesQueries } from './places.queries.ts';
import { ReceivingController } from './receiving.controller.ts';
import { ReceivingQueries } from './receiving.queries.ts';
import { UsageQueries } from './usage.queries.ts';
import { ValueController } from './value.controller.ts';
import { ValueQueries } from './value.queries.ts';
import { WitnessQueries } from './witness.queries.ts';

@Module({
  controllers: [
    InventoryController,
    PartsController,
    FreezerController,
    ReceivingController,
    HandlingController,
    GivingBackController,
    CountsController,
    ValueController,
  ],
  providers: [
    InventoryQueries,
    MovementsQueries,
    PartsQueries,
    PlacesQueries,
    FrozenLotQueries,
    ReceivingQueries,
    CountsQueries,
    WitnessQueries,
    ValueQueries,
    AverageQueries,
    UsageQueries,
  ],
})
export class InventoryModule {}
