import { Global, Module } from '@nestjs/common';
import { PassportModule } from '@nestjs/passport';
import { IDENTITY } from '../../platform/command/actor.ts';
import { AccessController } from './access.controller.ts';
import { LocalStrategy } from './local.strategy.ts';
import { OwnAccount } from './own-account.ts';
import { PeopleController } from './people.controller.ts';
import { PeopleQueries } from './people.queries.ts';
import { PersonIdentity } from './person-identity.ts';
import { SecondFactors } from './second-factor.ts';
import { SignInAttempts } from './sign-in-attempts.ts';
import { SignatureQueries } from './signatures.queries.ts';
import { TrainingController } from './training.controller.ts';
import { TrainingQueries } from './training.queries.ts';
import { WorkingTimeController } from './working-time.controller.ts';
import { WorkingTimeQueries } from './working-time.queries.ts';

/** Global because the door and the runner ask who is there. */
@Global()
@Module({
  imports: [PassportModule],
  controllers: [PeopleController, AccessController, TrainingController, WorkingTimeController],
  providers: [
    PeopleQueries,
    SignInAttempts,
    LocalStrategy,
    PersonIdentity,
    SecondFactors,
    OwnAccount,
    SignatureQueries,
    TrainingQueries,
    WorkingTimeQueries,
    { provide: IDENTITY, useExisting: PersonIdentity },
  ],
  exports: [IDENTITY],
})
export class PeopleModule {}
