import { type DynamicModule, Global, Module } from '@nestjs/common';
import { APP_FILTER, APP_GUARD } from '@nestjs/core';
import { ScheduleModule } from '@nestjs/schedule';
import { BuyingModule } from './modules/buying/buying.module.ts';
import { CustomersModule } from './modules/customers/customers.module.ts';
import { DirectivesModule } from './modules/directives/directives.module.ts';
import { DueDatesModule } from './modules/due-dates/due-dates.module.ts';
import { FieldBalanceModule } from './modules/field-balance/field-balance.module.ts';
import { FindingsModule } from './modules/findings/findings.module.ts';
import { FleetTablesModule } from './modules/fleet-tables/fleet-tables.module.ts';
import { GovernorTestsModule } from './modules/governor-tests/governor-tests.module.ts';
import { ImportsModule } from './modules/imports/imports.module.ts';
import { InventoryModule } from './modules/inventory/inventory.module.ts';
import { KitsModule } from './modules/kits/kits.module.ts';
import { ManualsModule } from './modules/manuals/manuals.module.ts';
import { PeeningModule } from './modules/peening/peening.module.ts';
import { PeopleModule } from './modules/people/people.module.ts';
import { ProcessesModule } from './modules/processes/processes.module.ts';
import { PurchasingModule } from './modules/purchasing/purchasing.module.ts';
import { QuotesModule } from './modules/quotes/quotes.module.ts';
import { RecordsModule } from './modules/records/records.module.ts';
import { ReleasesModule } from './modules/releases/releases.module.ts';
import { RemindersModule } from './modules/reminders/reminders.module.ts';
import { UnitHistoryModule } from './modules/unit-history/unit-history.module.ts';
import { UnitsModule } from './modules/units/units.module.ts';
import { VendorsModule } from './modules/vendors/vendors.module.ts';
import { WorkOrdersModule } from './modules/work-orders/work-orders.module.ts';
import { BACKUP_PLACES, type BackupPlaces, Backups } from './platform/backup/backups.ts';
import { CLOCK, type Clock } from './platform/command/clock.ts';
import { IDS, type Ids } from './platform/command/ids.ts';
import { CLOCK_SET_BACK, RecordClock } from './platform/command/record-clock.ts';
import { Refusals } from './platform/command/refusals.ts';
import { CommandRunner } from './platform/command/runner.ts';
import { ShopZone } from './platform/command/shop-zone.ts';
import { Database } from './platform/database/client.ts';
import { KeptResults } from './platform/database/kept-results.ts';
import { Reads } from './platform/database/reads.ts';
import { FilesController } from './platform/files/files.controller.ts';
import { StagedFiles } from './platform/files/staged-files.ts';
import { FILES, type FileStore } from './platform/files/store.ts';
import { Uploads } from './platform/files/uploads.ts';
import { Attempts } from './platform/http/attempts.ts';
import { Devices } from './platform/http/devices.ts';
import { DoorGuard } from './platform/http/door.guard.ts';
import { OneTimeCodes } from './platform/http/one-time-codes.ts';
import { ProblemFilter } from './platform/http/problem.filter.ts';
import { ServerController } from './platform/http/server.controller.ts';
import { Anchoring } from './platform/jobs/anchoring.ts';
import { Pruning } from './platform/jobs/pruning.ts';
import { LiveController } from './platform/live/live.controller.ts';
import { LiveFeed } from './platform/live/live-feed.ts';
import { LiveSessions } from './platform/live/live-sessions.ts';
import { Mailer } from './platform/mail/mailer.ts';
import { KeyFolder } from './platform/records/shop-key.ts';

/** What is injected from outside: the database, time, ids and stored files. */
export interface Surroundings {
  readonly database: Database;
  readonly clock: Clock;
  readonly ids: Ids;
  readonly files: FileStore;
  readonly keys: KeyFolder;
  /** When and where backups are written by themselves. */
  readonly schedule: BackupPlaces | undefined;
  /** True at the one start after a clock that ran ahead was set right. */
  readonly clockSetBack: boolean;
  readonly mailer: Mailer;
}

/** The departments in the order a unit meets them. */
const departments = [
  PeopleModule,
  CustomersModule,
  ManualsModule,
  UnitsModule,
  ProcessesModule,
  InventoryModule,
  PurchasingModule,
  KitsModule,
  BuyingModule,
  ImportsModule,
  FleetTablesModule,
  FindingsModule,
  DirectivesModule,
  ReleasesModule,
  DueDatesModule,
  RemindersModule,
  WorkOrdersModule,
  VendorsModule,
  PeeningModule,
  FieldBalanceModule,
  GovernorTestsModule,
  QuotesModule,
  UnitHistoryModule,
  RecordsModule,
];

/** What departments are given. */
const shared = [
  CLOCK,
  IDS,
  FILES,
  KeyFolder,
  Mailer,
  Backups,
  KeptResults,
  Reads,
  CommandRunner,
  ShopZone,
  Refusals,
  Attempts,
  Devices,
  OneTimeCodes,
  LiveFeed,
];

@Global()
@Module({})
export class AppModule {
  static with({ database, clock, ids, files, keys, schedule, clockSetBack, mailer }: Surroundings): DynamicModule {
    return {
      module: AppModule,
      imports: [ScheduleModule.forRoot(), ...departments],
      controllers: [ServerController, LiveController, FilesController],
      providers: [
        { provide: Database, useValue: database },
        { provide: CLOCK, useValue: clock },
        { provide: IDS, useValue: ids },
        { provide: FILES, useValue: files },
        { provide: KeyFolder, useValue: keys },
        { provide: Mailer, useValue: mailer },
        { provide: CLOCK_SET_BACK, useValue: clockSetBack },
        { provide: BACKUP_PLACES, useValue: schedule ?? null },
        KeptResults,
        Reads,
        Refusals,
        Attempts,
        Devices,
        OneTimeCodes,
        ShopZone,
        RecordClock,
        LiveFeed,
        LiveSessions,
        CommandRunner,
        Pruning,
        Uploads,
        StagedFiles,
        Anchoring,
        Backups,
        { provide: APP_GUARD, useClass: DoorGuard },
        { provide: APP_FILTER, useClass: ProblemFilter },
      ],
      exports: [...shared],
    };
  }
}
