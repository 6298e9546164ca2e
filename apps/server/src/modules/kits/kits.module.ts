import { Module } from '@nestjs/common';
import { BuildSheetQueries } from './build-sheet.queries.ts';
import { DestroyController } from './destroy.controller.ts';
import { KitCover } from './kit-cover.ts';
import { KitPaperQueries } from './kit-paper.queries.ts';
import { KitsController } from './kits.controller.ts';
import { KitsQueries } from './kits.queries.ts';
import { TrayController } from './tray.controller.ts';
import { UnitPartsController } from './unit-parts.controller.ts';

@Module({
  controllers: [KitsController, UnitPartsController, TrayController, DestroyController],
  providers: [KitsQueries, BuildSheetQueries, KitCover, KitPaperQueries],
  exports: [KitCover],
})
export class KitsModule {}
