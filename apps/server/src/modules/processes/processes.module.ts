import { Module } from '@nestjs/common';
import { EquipmentController } from './equipment.controller.ts';
import { EquipmentQueries } from './equipment.queries.ts';
import { InstrumentQueries } from './instruments.queries.ts';
import { ProcessesController } from './processes.controller.ts';
import { StudyQueries } from './studies.queries.ts';

@Module({
  controllers: [ProcessesController, EquipmentController],
  providers: [InstrumentQueries, StudyQueries, EquipmentQueries],
})
export class ProcessesModule {}
