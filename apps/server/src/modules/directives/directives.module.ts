import { Module } from '@nestjs/common';
import { DirectivesController } from './directives.controller.ts';
import { DirectiveQueries } from './directives.queries.ts';

@Module({ controllers: [DirectivesController], providers: [DirectiveQueries] })
export class DirectivesModule {}
