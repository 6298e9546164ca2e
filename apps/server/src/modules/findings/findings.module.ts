import { Module } from '@nestjs/common';
import { FindingsController } from './findings.controller.ts';
import { FindingQueries } from './findings.queries.ts';
import { PhotosController } from './photos.controller.ts';
import { PhotoQueries } from './photos.queries.ts';

@Module({ controllers: [FindingsController, PhotosController], providers: [FindingQueries, PhotoQueries] })
export class FindingsModule {}
