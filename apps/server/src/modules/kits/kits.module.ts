import { Module } from '@nestjs/common';
import { AllocationController } from './allocation.controller.ts';
import { AllocationQueries } from './allocation.queries.ts';
import { BuildSheetQueries } from './build-sheet.queries.ts';
import { DestroyController } from './destroy.controller.ts';
import { ExpectedController } from './expected.controller.ts';
import { ExpectedQueries } from './expected.queries.ts';
import { FillQueries } from './fill.queries.ts';
import { HoldController } from './hold.controller.ts';
import { KitCover } from './kit-cover.ts';
import { KitPaperQueries } from './kit-paper.queries.ts';
import { KitsController } from './kits.controller.ts';
import { KitsQueries } from './kits.queries.ts';
import { PromisesController } from './promises.controller.ts';
import { PromisesQueries } from './promises.queries.ts';
import { TrayController } from './tray.controller.ts';
import { UnitPartsController } from './unit-parts.controller.ts';

@Module({
  controllers: [
    KitsController,
    UnitPartsController,
    TrayController,
    AllocationController,
    PromisesController,
    DestroyController,
    HoldController,
    ExpectedController,
  ],
  providers: [
    KitsQueries,
    BuildSheetQueries,
    KitCover,
    KitPaperQueries,
    FillQueries,
    AllocationQueries,
    PromisesQueries,
    ExpectedQueries,
  ],
  exports: [KitCover],
})
export class KitsModule {}
