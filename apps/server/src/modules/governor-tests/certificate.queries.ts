import type { governorOperations } from '@hubwright/contracts/governor-tests/operations';
import type { Input } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import { Inject, Injectable, StreamableFile } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { found } from '../../platform/command/version.ts';
import { Reads } from '../../platform/database/reads.ts';
import { namesFor } from './names.ts';
import { printCertificate, type SignedBy } from './print-certificate.ts';
import type { RunRecord } from './run-record.ts';

@Injectable()
export class CertificateQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  async print({ runId }: Input<typeof governorOperations.governorCertificatePdf>): Promise<StreamableFile> {
    const { models } = this.reads;
    const run = found(
      await models.governorRun.findUnique({
        where: { id: runId },
        include: {
          program: { include: { model: true } },
          step: { include: { traveler: { include: { item: true, workOrder: { include: { customer: true } } } } } },
        },
      }),
      'This run',
    );
    if (run.state !== 'passed') throw new Problem('run-not-passed', `${run.number} is ${run.state}`);
    const shop = found(await models.shopProfile.findUnique({ where: { id: 1 } }), 'The shop profile');
    const { caution } = shop.recordStatements as { caution: string };
    const words = new Intl.DateTimeFormat('sv-SE', { timeZone: shop.zone, dateStyle: 'short', timeStyle: 'short' });
    const { item, workOrder, number: traveler } = run.step.traveler;
    const bytes = await printCertificate(run.record as unknown as RunRecord, {
      ...{ shopName: shop.name, caution, at: this.clock.now(), traveler },
      workOrder: `${workOrder.number}, ${workOrder.customer.name}`,
      unit: `${run.program.model.maker} ${run.program.model.designation}, serial ${item.serial ?? 'not readable yet'}`,
      step: run.step.title,
      signed: await this.signatures(run.stepId, run.number),
      inWords: (instant) => words.format(new Date(instant)),
    });
    return new StreamableFile(bytes, { type: 'application/pdf', disposition: `inline; filename="${run.number}.pdf"` });
  }

  /** Standing signatures of the step that bind this very run. */
  private async signatures(stepId: string, number: string): Promise<SignedBy[]> {
    const rows = await this.reads.models.signOff.findMany({
      where: { stepId, result: 'pass' },
      orderBy: { signedAt: 'asc' },
      take: 20,
    });
    const superseded = new Set(rows.map(({ supersedesId }) => supersededId(supersedesId)));
    const standing = rows.filter(
      ({ id, countersignsId, content }) => !superseded.has(countersignsId ?? id) && runIn(content) === number,
    );
    const names = await namesFor(
      this.reads,
      standing.map(({ personId }) => personId),
    );
    return standing.map(({ personId, authorisation, signedAt, countersignsId, contentHash }) => ({
      ...{ name: names(personId).displayName, isSupervisor: countersignsId !== null, contentHash },
      under: (authorisation as { process?: string }).process ?? '',
      signedAt: signedAt.toISOString(),
    }));
  }
}

const supersededId = (id: string | null) => id ?? '';

/** The number of the run that a signed content binds. */
function runIn(content: string): string | undefined {
  const { sheet } = JSON.parse(content) as { sheet?: { verdict?: { number?: string } } };
  return sheet?.verdict?.number;
}
