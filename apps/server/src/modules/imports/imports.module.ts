import { Module } from '@nestjs/common';
import { ExportQueries } from './exports.queries.ts';
import { ImportsController } from './imports.controller.ts';
import { ImportQueries } from './imports.queries.ts';
import { TableUploads } from './table-uploads.ts';

@Module({
  controllers: [ImportsController],
  providers: [ImportQueries, ExportQueries, TableUploads],
  exports: [TableUploads],
})
export class ImportsModule {}
