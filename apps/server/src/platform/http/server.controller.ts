import { Problem } from '@hubwright/contracts/problems';
import { allOperations } from '@hubwright/contracts/routes';
import { serverOperations } from '@hubwright/contracts/server/operations';
import { Controller, Inject } from '@nestjs/common';
import { RecordClock } from '../command/record-clock.ts';
import { Reads } from '../database/reads.ts';
import { openApiDocument } from './open-api.ts';
import { Operation } from './operation.ts';

/** What the server says about itself. */
@Controller()
export class ServerController {
  private document: Record<string, unknown> | undefined;

  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(RecordClock) private readonly recordClock: RecordClock,
  ) {}

  @Operation(serverOperations.alive)
  alive() {
    return { ok: true };
  }

  @Operation(serverOperations.ready)
  async ready() {
    try {
      const [row] = await this.reads.sql<{ name: string }>(
        'SELECT migration_name AS name FROM _prisma_migrations WHERE finished_at IS NOT NULL ORDER BY migration_name DESC LIMIT 1',
      );
      const clock = await this.recordClock.check().then(
        () => 'right' as const,
        (problem) => {
          if (problem instanceof Problem) return 'behind' as const;
          throw problem;
        },
      );
      return { ok: true, schema: row?.name ?? 'empty', clock };
    } catch {
      throw new Problem('busy', 'The database does not answer yet');
    }
  }

  @Operation(serverOperations.openApi)
  openApi() {
    this.document ??= openApiDocument(allOperations);
    return this.document;
  }
}
