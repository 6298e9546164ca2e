import type { manualOperations } from '@hubwright/contracts/manuals/operations';
import type { Scope } from '@hubwright/contracts/manuals/words';
import type { Input, Reply } from '@hubwright/contracts/operation';
import { Inject, Injectable } from '@nestjs/common';
import { found } from '../../platform/command/version.ts';
import { fromDbDateOrNull } from '../../platform/database/dates.ts';
import { Reads } from '../../platform/database/reads.ts';

type ModelRow = Reply<typeof manualOperations.listModels>['rows'][number];
type ModelDetail = Reply<typeof manualOperations.showModel>;

const withManual = {
  manual: { include: { revisions: { where: { state: 'current' }, take: 1 } } },
} as const;

@Injectable()
export class ModelQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  async list(input: Input<typeof manualOperations.listModels>): Promise<Reply<typeof manualOperations.listModels>> {
    const { search, after, limit } = input;
    const contains = search ? { contains: search, mode: 'insensitive' as const } : undefined;
    const last = after ? await this.reads.models.unitModel.findFirst({ where: { designation: after } }) : null;
    const rows = await this.reads.models.unitModel.findMany({
      where: {
        AND: [
          contains ? { OR: [{ designation: contains }, { maker: contains }, { description: contains }] } : {},
          last
            ? { OR: [{ maker: { gt: last.maker } }, { maker: last.maker, designation: { gt: last.designation } }] }
            : {},
        ],
      },
      orderBy: [{ maker: 'asc' }, { designation: 'asc' }],
      take: limit + 1,
      include: withManual,
    });
    const shown = rows.slice(0, limit);
    return { rows: shown.map(modelRow), next: rows.length > limit ? (shown.at(-1)?.designation ?? null) : null };
  }

  async show(modelId: string): Promise<ModelDetail> {
    const model = found(
      await this.reads.models.unitModel.findUnique({
        where: { id: modelId },
        include: {
          ...withManual,
          applications: { orderBy: [{ airframe: 'asc' }, { position: 'asc' }] },
          flatRates: { orderBy: { scope: 'asc' } },
        },
      }),
      'This model',
    );
    return {
      ...modelRow(model),
      applications: model.applications as ModelDetail['applications'],
      flatRates: model.flatRates.map((rate) => ({ ...rate, scope: rate.scope as Scope })),
    };
  }
}

interface StoredModel {
  kind: string;
  material: string;
  pitch: string;
  identityCarriedBy: string;
  manual: {
    id: string;
    number: string;
    title: string;
    revisions: { id: string; revision: string; currencyCheckedOn: Date | null }[];
  };
}

function modelRow<M extends StoredModel>(model: M) {
  const { manual } = model;
  const [current] = manual.revisions;
  return {
    ...model,
    kind: model.kind as ModelRow['kind'],
    material: model.material as ModelRow['material'],
    pitch: model.pitch as ModelRow['pitch'],
    identityCarriedBy: model.identityCarriedBy as ModelRow['identityCarriedBy'],
    manual: { id: manual.id, number: manual.number, title: manual.title },
    currentRevision: current
      ? {
          id: current.id,
          revision: current.revision,
          currencyCheckedOn: fromDbDateOrNull(current.currencyCheckedOn),
        }
      : null,
  };
}
