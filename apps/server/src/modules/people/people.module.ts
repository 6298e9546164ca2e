import { Global, Module } from '@nestjs/common';
import { PassportModule } from '@nestjs/passport';
import { IDENTITY } from '../../platform/command/actor.ts';
import { LocalStrategy } from './local.strategy.ts';
import { PeopleController } from './people.controller.ts';
import { PeopleQueries } from './people.queries.ts';
import { PersonIdentity } from './person-identity.ts';
import { SignInAttempts } from './sign-in-attempts.ts';

/** Global because the door and the runner ask who is there. */
@Global()
@Module({
  imports: [PassportModule],
  controllers: [PeopleController],
  providers: [
    PeopleQueries,
    SignInAttempts,
    LocalStrategy,
    PersonIdentity,
    { provide: IDENTITY, useExisting: PersonIdentity },
  ],
  exports: [IDENTITY],
})
export class PeopleModule {}
