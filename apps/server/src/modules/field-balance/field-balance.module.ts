import { Module } from '@nestjs/common';
import { FieldBalanceController } from './field-balance.controller.ts';
import { FieldBalanceQueries } from './field-balance.queries.ts';
import { HardwareQueries } from './hardware.queries.ts';

@Module({ controllers: [FieldBalanceController], providers: [FieldBalanceQueries, HardwareQueries] })
export class FieldBalanceModule {}
