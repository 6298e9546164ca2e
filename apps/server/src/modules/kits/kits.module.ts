import { Module } from '@nestjs/common';
import { BuildSheetQueries } from './build-sheet.queries.ts';
import { KitCover } from './kit-cover.ts';
import { KitsController } from './kits.controller.ts';
import { KitsQueries } from './kits.queries.ts';
import { UnitPartsController } from './unit-parts.controller.ts';

@Module({
  controllers: [KitsController, UnitPartsController],
  providers: [KitsQueries, BuildSheetQueries, KitCover],
  exports: [KitCover],
})
export class KitsModule {}
