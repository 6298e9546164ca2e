import { areaOf } from '@hubwright/contracts/findings/areas';
import type { Dimension, PartClass, Scope } from '@hubwright/contracts/manuals/words';
import type { Input } from '@hubwright/contracts/operation';
import type { CarriedKind } from '@hubwright/contracts/units/carried';
import type {
  dimensionOperations,
  MeasuredPart,
  WorkOrderDimensions,
} from '@hubwright/contracts/work-orders/dimension-operations';
import { Inject, Injectable } from '@nestjs/common';
import { found } from '../../platform/command/version.ts';
import { Reads } from '../../platform/database/reads.ts';
import { carriedBy, carriedValue } from '../units/public.ts';
import { type BladeSet, bladeSetOf, numberOf } from './blade-set.ts';
import { dimensionRows } from './dimension-rows.ts';
import { measuredOf } from './measured.ts';
import { oversizesForReading } from './part-limits.ts';
import { pastOf } from './past-dimensions.ts';
import { planShorteningForReading } from './plan-shortening.ts';

@Injectable()
export class DimensionQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  async of({ workOrderId }: Input<typeof dimensionOperations.workOrderDimensions>): Promise<WorkOrderDimensions> {
    const { models } = this.reads;
    const workOrder = found(
      await models.workOrder.findUnique({ where: { id: workOrderId }, include: { application: true } }),
      'This work order',
    );
    const [measured, travelers] = await Promise.all([measuredOf(models, workOrderId), this.travelers(workOrderId)]);
    const itemIds = travelers.map(({ itemId }) => itemId);
    const [set, carried, past, decided, oversizes] = await Promise.all([
      bladeSetOf(models, workOrder, measured),
      carriedBy(models, [...new Set([workOrder.unitId, ...itemIds])]),
      pastOf(models, { itemIds, notOf: workOrderId }),
      this.decisions(workOrderId),
      oversizesForReading(models, { ...workOrder, scope: workOrder.scope as Scope }),
    ]);
    const serials = new Map(travelers.map((one) => [one.id, serialOf(one)]));
    const current = carriedValue(carried.get(workOrder.unitId), 'diameter');
    return {
      parts: travelers.map((one) => ({
        ...partOf(one, { measured, past: past.get(one.itemId) ?? [] }),
        oversizes: oversizes.get(one.partClass) ?? [],
      })),
      spreads: set.spreads.map(spreadOf),
      questions: set.questions.map(({ mates, ...question }) => ({
        ...question,
        mates: mates.map((mate) => ({ ...mate, serial: serials.get(mate.travelerId) ?? '' })),
      })),
      decisions: decided,
      alike: alikeOf(travelers),
      diameter: diameterOf(workOrder, set, current),
      carried: [...carried].flatMap(([itemId, facts]) =>
        facts.map(({ kind, workOrderId: recordedOn, recordedAt, ...fact }) => ({
          ...{ itemId, place: fact.place, value: fact.value, basis: fact.basis, kind: kind as CarriedKind },
          ...{ recordedAt: recordedAt.toISOString(), isNow: recordedOn === workOrderId },
        })),
      ),
      matchedSets: [...set.sets],
      open: [...set.open],
    };
  }

  async shortening({ workOrderId, diameter }: Input<typeof dimensionOperations.shorteningDifferences>) {
    const { differences, reopensBuild } = await planShorteningForReading(this.reads.models, workOrderId, diameter);
    return { differences, reopensBuild };
  }

  private travelers(workOrderId: string) {
    return this.reads.models.traveler.findMany({
      where: { workOrderId },
      orderBy: [{ partClass: 'asc' }, { position: 'asc' }],
      take: 60,
      include: {
        item: { select: { serial: true, provisionalName: true } },
        findings: { where: { damage: { in: ['corroded', 'worn'] } }, orderBy: { number: 'asc' } },
        steps: {
          where: { state: { not: 'not-needed' }, measures: { some: { dimension: { not: null } } } },
          orderBy: { sequence: 'asc' },
          select: { phase: true, measures: { orderBy: { sequence: 'asc' } } },
        },
      },
    });
  }

  private async decisions(workOrderId: string): Promise<WorkOrderDimensions['decisions']> {
    const rows = await this.reads.models.setDecision.findMany({
      where: { workOrderId },
      orderBy: { decidedAt: 'asc' },
      include: { finding: { select: { number: true, traveler: { select: { position: true } } } } },
    });
    return rows.map(({ finding, reason, decidedAt, mates }) => ({
      ...{ number: finding.number, position: finding.traveler.position, reason, decidedAt: decidedAt.toISOString() },
      mates: (mates as { position: string; stays: boolean }[]).map(({ position, stays }) => ({ position, stays })),
    }));
  }
}

type TravelerRow = Awaited<ReturnType<DimensionQueries['travelers']>>[number];

function serialOf({ item }: TravelerRow): string {
  return item.serial ?? item.provisionalName ?? '';
}

function partOf(
  traveler: TravelerRow,
  read: { measured: Awaited<ReturnType<typeof measuredOf>>; past: Parameters<typeof dimensionRows>[2] },
): Omit<MeasuredPart, 'oversizes'> {
  const own = read.measured.filter(({ travelerId }) => travelerId === traveler.id);
  return {
    ...{ travelerId: traveler.id, itemId: traveler.itemId, position: traveler.position, serial: serialOf(traveler) },
    partClass: traveler.partClass as PartClass,
    disposition: traveler.disposition as MeasuredPart['disposition'],
    rows: dimensionRows(traveler.steps, own, read.past),
    corrosion: traveler.findings
      .filter(({ damage }) => damage === 'corroded')
      .map(({ id, number, area, corrosionClass }) => ({
        ...{ findingId: id, number, class: corrosionClass ?? '' },
        area: areaOf(traveler.partClass as PartClass, area)?.title ?? area,
      })),
  };
}

function spreadOf({ dimension, station, most, among, master, widest, missing, verdict }: BladeSet['spreads'][number]) {
  const named = (blade: number) => `blade ${blade}`;
  return {
    ...{ dimension: dimension as Dimension, station, most, among, master, verdict },
    widest: widest && { spread: widest.spread, between: widest.between.map(named) },
    missing: missing.map(named),
  };
}

/** Corrosion and wear come together: what one blade has in an area, the others are looked at for (common practice, no source). */
function alikeOf(travelers: readonly TravelerRow[]): WorkOrderDimensions['alike'] {
  const blades = travelers.filter(({ partClass }) => partClass === 'blade');
  const areas = [...new Set(blades.flatMap(({ findings }) => findings.map(({ area }) => area)))].sort();
  return areas.flatMap((area) => {
    const has = (blade: TravelerRow) => blade.findings.some((finding) => finding.area === area);
    const names = (rows: readonly TravelerRow[]) => rows.map(({ position }) => `blade ${numberOf(position)}`);
    const lookAt = names(blades.filter((blade) => !has(blade) && blade.disposition !== 'reject'));
    const title = areaOf('blade', area)?.title ?? area;
    return lookAt.length === 0 ? [] : [{ area: title, found: names(blades.filter(has)), lookAt }];
  });
}

function diameterOf(
  workOrder: { shortenTo: string | null; application: { leastDiameter: string | null } | null },
  { rules }: BladeSet,
  current: string | null,
): WorkOrderDimensions['diameter'] {
  const now = workOrder.shortenTo ?? current;
  const named = rules.diameters.find(({ diameter }) => now !== null && Number(diameter) === Number(now));
  return {
    current,
    designation: named?.designation ?? null,
    shortenTo: workOrder.shortenTo,
    leastEligible: workOrder.application?.leastDiameter ?? null,
    allowed: rules.diameters,
  };
}
