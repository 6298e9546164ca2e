import type { PeeningSpec } from '@hubwright/contracts/manuals/measures';
import type { Input } from '@hubwright/contracts/operation';
import type { PeeningLot } from '@hubwright/contracts/peening/operations';
import type { peeningPaperOperations } from '@hubwright/contracts/peening/paper-operations';
import { Inject, Injectable, StreamableFile } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { found } from '../../platform/command/version.ts';
import { Reads } from '../../platform/database/reads.ts';
import { namedTraveler, withTraveler } from '../work-orders/public.ts';
import { newestChecks } from './media.ts';
import { peopleNamed } from './people-named.ts';
import { printLot } from './print-lot.ts';
import { type PrintOptions, printSetup, type SetupOnPaper } from './print-setup.ts';

const withMachine = { include: { machine: true } } as const;
const parts = {
  orderBy: { id: 'asc' },
  include: { step: { include: { ...withTraveler, signOffs: { orderBy: { id: 'asc' } } } } },
} as const;

@Injectable()
export class PeeningPaperQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  async setup({ setupId }: Input<typeof peeningPaperOperations.peeningSetupPdf>): Promise<StreamableFile> {
    const setup = found(
      await this.reads.models.peeningSetup.findUnique({ where: { id: setupId }, ...withMachine }),
      'This qualification',
    );
    const people = await peopleNamed(this.reads, [setup.qualifiedBy]);
    const bytes = await printSetup(onPaper(setup, people), await this.options());
    return file(bytes, `${setup.machine.code}-${setup.qualifiedAt.toISOString().slice(0, 10)}`);
  }

  async lot({ lotId }: Input<typeof peeningPaperOperations.peeningLotPdf>): Promise<StreamableFile> {
    const lot = found(await this.whole(lotId), 'This lot');
    const signOffs = lot.parts.flatMap(({ step }) => step.signOffs);
    const check = lot.mediaId ? await this.checkOf(lot.mediaId, lot.startedAt) : null;
    const people = await peopleNamed(this.reads, [
      ...[lot.startedBy, lot.signedBy, lot.closedBy, lot.decidedBy, lot.setup.qualifiedBy, check?.checkedBy ?? null],
      ...lot.reviews.map(({ decidedBy }) => decidedBy),
      ...signOffs.map(({ personId }) => personId),
    ]);
    const options = await this.options();
    const bytes = await printLot(
      {
        ...{
          number: lot.number,
          state: lot.state as PeeningLot['state'],
          reasons: lot.reasons,
          decision: lot.decision,
        },
        ...{ spec: lot.areas as unknown as PeeningSpec, setup: onPaper(lot.setup, people) },
        opening: lot.opening as PeeningLot['opening'],
        closing: lot.closing as PeeningLot['closing'],
        coverage: lot.coverage as PeeningLot['coverage'],
        mediaLot: lot.media?.code ?? lot.setup.mediaLot,
        check: check && { ...check, who: people(check.checkedBy).displayName, at: check.checkedAt },
        parts: lot.parts.map(({ step }) => ({
          ...namedTraveler(step.traveler),
          signed: signedWords(step.signOffs, people, options),
        })),
        signatures: signaturesOf(lot, people),
        doubts: lot.reviews.map((review) => doubtWords(review, people)),
      },
      options,
    );
    return file(bytes, lot.number);
  }

  private whole(id: string) {
    return this.reads.models.peeningLot.findUnique({
      where: { id },
      include: {
        setup: withMachine,
        media: true,
        parts,
        reviews: { orderBy: { id: 'asc' }, include: { check: { include: { media: true } } }, take: 100 },
      },
    });
  }

  /** The check that held when the lot began. */
  private checkOf(mediaId: string, startedAt: Date) {
    return this.reads.models.peeningCheck.findFirst({
      where: { mediaId, checkedAt: { lte: startedAt } },
      ...newestChecks,
    });
  }

  private async options(): Promise<PrintOptions> {
    const shop = found(await this.reads.models.shopProfile.findUnique({ where: { id: 1 } }), 'The shop profile');
    const { caution } = shop.recordStatements as { caution: string };
    const words = new Intl.DateTimeFormat('sv-SE', { timeZone: shop.zone, dateStyle: 'short', timeStyle: 'short' });
    const inWords = (instant: Date) => words.format(instant);
    return { shopName: shop.name, caution, at: this.clock.now(), inWords };
  }
}

type People = Awaited<ReturnType<typeof peopleNamed>>;

interface Signed {
  readonly state: string;
  readonly startedBy: string;
  readonly startedAt: Date;
  readonly signedBy: string | null;
  readonly signedAt: Date | null;
  readonly closedBy: string | null;
  readonly closedAt: Date | null;
  readonly decidedBy: string | null;
  readonly decidedAt: Date | null;
}

function signaturesOf(lot: Signed, people: People) {
  const named = (what: string, id: string | null, at: Date | null) => ({
    ...{ what, at, who: id && people(id).displayName },
  });
  return [
    named('Opening strips, nozzles and media', lot.startedBy, lot.startedAt),
    named('Peening and coverage', lot.signedBy, lot.signedAt),
    ...(lot.state === 'broken-up' ? [] : [named('Closing strips', lot.closedBy, lot.closedAt)]),
    ...(lot.decidedBy ? [named('Decision', lot.decidedBy, lot.decidedAt)] : []),
  ];
}

function signedWords(
  signOffs: readonly {
    id: string;
    personId: string;
    signedAt: Date;
    supersedesId: string | null;
    countersignsId: string | null;
  }[],
  people: People,
  { inWords }: PrintOptions,
): string {
  const standing = signOffs.filter(({ id }) => !signOffs.some(({ supersedesId }) => supersedesId === id));
  return standing
    .map(({ personId, signedAt, countersignsId }) =>
      countersignsId
        ? `under the eyes of ${people(personId).displayName}`
        : `${people(personId).displayName}, ${inWords(signedAt)}`,
    )
    .join('; ');
}

function doubtWords(
  review: {
    check: { media: { code: string }; reasons: readonly string[] };
    decision: string | null;
    reason: string | null;
    decidedBy: string | null;
  },
  people: People,
): string {
  const { check, decision, reason, decidedBy } = review;
  const decided =
    decision && decidedBy
      ? `${people(decidedBy).displayName} decided: ${decision.replaceAll('-', ' ')}, ${reason}`
      : 'nobody decided yet';
  return `Media ${check.media.code} failed a later check (${check.reasons.join(' ')}): ${decided}.`;
}

function onPaper(
  setup: { areas: unknown; parameters: unknown; qualifiedBy: string } & Omit<
    SetupOnPaper,
    'qualifiedBy' | 'areas' | 'parameters'
  >,
  people: People,
): SetupOnPaper {
  return {
    ...setup,
    areas: setup.areas as SetupOnPaper['areas'],
    parameters: setup.parameters as SetupOnPaper['parameters'],
    qualifiedBy: people(setup.qualifiedBy).displayName,
  };
}

function file(bytes: Buffer, name: string): StreamableFile {
  return new StreamableFile(bytes, { type: 'application/pdf', disposition: `inline; filename="${name}.pdf"` });
}
