import { Module } from '@nestjs/common';
import { ImportsController } from './imports.controller.ts';
import { ImportQueries } from './imports.queries.ts';
import { TableUploads } from './table-uploads.ts';

@Module({ controllers: [ImportsController], providers: [ImportQueries, TableUploads] })
export class ImportsModule {}
