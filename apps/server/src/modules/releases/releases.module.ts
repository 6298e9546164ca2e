import { Module } from '@nestjs/common';
import { ReleasesController } from './releases.controller.ts';
import { ReleaseQueries } from './releases.queries.ts';

@Module({ controllers: [ReleasesController], providers: [ReleaseQueries] })
export class ReleasesModule {}
