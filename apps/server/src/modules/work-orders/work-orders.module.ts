import { Module } from '@nestjs/common';
import { BakesController } from './bakes.controller.ts';
import { BakeQueries } from './bakes.queries.ts';
import { BenchQueries } from './bench.queries.ts';
import { BoardsQueries } from './boards.queries.ts';
import { ClockController } from './clock.controller.ts';
import { ClockQueries } from './clock.queries.ts';
import { DimensionsController } from './dimensions.controller.ts';
import { DimensionQueries } from './dimensions.queries.ts';
import { DocumentSetController } from './documents.controller.ts';
import { DocumentSetQueries } from './documents.queries.ts';
import { IdentityController } from './identity.controller.ts';
import { IdentityQueries } from './identity.queries.ts';
import { LoadsController } from './loads.controller.ts';
import { LoadQueries } from './loads.queries.ts';
import { PrintQueries } from './print.queries.ts';
import { ReopeningController } from './reopening.controller.ts';
import { ReopeningQueries } from './reopening.queries.ts';
import { ReviewsController } from './reviews.controller.ts';
import { ReviewQueries } from './reviews.queries.ts';
import { ScopeController } from './scope.controller.ts';
import { ScopeQueries } from './scope.queries.ts';
import { TouchUpController } from './touch-up.controller.ts';
import { TravelersController } from './travelers.controller.ts';
import { TravelerQueries } from './travelers.queries.ts';
import { WorkOrderDetailQueries } from './work-order-detail.queries.ts';
import { WorkOrdersController } from './work-orders.controller.ts';
import { WorkOrdersQueries } from './work-orders.queries.ts';

@Module({
  controllers: [
    WorkOrdersController,
    TravelersController,
    LoadsController,
    BakesController,
    IdentityController,
    ScopeController,
    DocumentSetController,
    ClockController,
    ReviewsController,
    DimensionsController,
    ReopeningController,
    TouchUpController,
  ],
  providers: [
    WorkOrdersQueries,
    WorkOrderDetailQueries,
    BoardsQueries,
    TravelerQueries,
    BenchQueries,
    LoadQueries,
    BakeQueries,
    IdentityQueries,
    ScopeQueries,
    PrintQueries,
    DocumentSetQueries,
    ClockQueries,
    ReviewQueries,
    DimensionQueries,
    ReopeningQueries,
  ],
})
export class WorkOrdersModule {}
