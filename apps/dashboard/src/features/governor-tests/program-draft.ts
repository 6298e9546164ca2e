import type { governorOperations } from '@hubwright/contracts/governor-tests/operations';
import type { Sent } from '@hubwright/contracts/operation';
import type { Program } from './governor.ts';

type Issued = Sent<typeof governorOperations.issueGovernorProgram>;
export type ProgramInput = Omit<Issued, 'signature'>;
type PointInput = Issued['points'][number];

/** A point as it is typed: every limit a text, empty where there is none. */
export interface PointDraft {
  /** Tells points apart while they have no name. */
  readonly key: number;
  readonly name: string;
  readonly kind: PointInput['kind'];
  readonly unit: PointInput['unit'];
  readonly low: string;
  readonly high: string;
  readonly atRpm: string;
  /** Places of the manual's limits; empty for as many as the limits typed have. */
  readonly decimals: string;
  readonly method: PointInput['method'];
  readonly channel: string;
  readonly instruction: string;
}
export interface ProgramDraft {
  readonly applicationId: string | null;
  readonly basis: string;
  readonly rotation: ProgramInput['rotation'];
  readonly driveRatio: string;
  readonly oilKind: string;
  readonly oilLow: string;
  readonly oilHigh: string;
  readonly oilUnit: 'degF' | 'degC';
  readonly oilChannel: string;
  readonly points: readonly PointDraft[];
  /** A line each: what is adjusted, a colon, names of points parted by commas. */
  readonly adjustments: string;
}

export function emptyPoint(key: number): PointDraft {
  return {
    ...{ key, name: '', kind: 'relief-pressure', unit: 'psi', low: '', high: '', atRpm: '' },
    ...{ decimals: '', method: 'absolute', channel: '', instruction: '' },
  };
}
export const emptyDraft: ProgramDraft = {
  ...{ applicationId: null, basis: '', rotation: 'clockwise', driveRatio: '', oilKind: '', oilLow: '', oilHigh: '' },
  ...{ oilUnit: 'degF', oilChannel: '', points: [emptyPoint(1)], adjustments: '' },
};

/** A program that was issued, to begin another from. Where its figures come from is said anew. */
export function draftOf({ application, content }: Program): ProgramDraft {
  const { oil } = content;
  return {
    ...{ applicationId: application.id, basis: '', rotation: content.rotation, driveRatio: content.driveRatio },
    ...{ oilKind: oil.kind, oilLow: oil.low, oilHigh: oil.high, oilUnit: oil.unit, oilChannel: oil.channel ?? '' },
    points: content.points.map(({ low = '', high = '', atRpm = '', channel = '', ...point }, index) => ({
      ...{ ...point, key: index + 1, low, high, atRpm, channel, decimals: String(point.decimals) },
    })),
    adjustments: content.adjustments.map(({ what, reopens }) => `${what}: ${reopens.join(', ')}`).join('\n'),
  };
}

const decimalsOf = (text: string) => text.split('.')[1]?.length ?? 0;

function pointOf({ name, kind, unit, low, high, atRpm, decimals, method, channel, ...rest }: PointDraft): PointInput {
  const places = decimals === '' ? Math.max(decimalsOf(low), decimalsOf(high)) : Number(decimals);
  return {
    ...{ name, kind, unit, decimals: places, method, instruction: rest.instruction },
    ...(low ? { low } : {}),
    ...(high ? { high } : {}),
    ...(atRpm ? { atRpm } : {}),
    ...(channel ? { channel } : {}),
  };
}

/** What was typed as the command takes it; the command says what is missing. */
export function programInput(draft: ProgramDraft, revisionId: string): ProgramInput {
  const adjustments = draft.adjustments
    .split('\n')
    .filter((text) => text.trim() !== '')
    .map((text) => {
      const [what = '', names = ''] = text.split(':');
      const reopens = names.split(',').map((name) => name.trim());
      return { what: what.trim(), reopens: reopens.filter((name) => name !== '') };
    });
  return {
    ...{ revisionId, applicationId: draft.applicationId ?? '', basis: draft.basis, rotation: draft.rotation },
    driveRatio: draft.driveRatio,
    oil: {
      ...{ kind: draft.oilKind, low: draft.oilLow, high: draft.oilHigh, unit: draft.oilUnit },
      ...(draft.oilChannel ? { channel: draft.oilChannel } : {}),
    },
    points: draft.points.map(pointOf),
    adjustments,
  };
}
