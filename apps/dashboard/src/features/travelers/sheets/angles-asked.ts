import type { EntryOf } from '@hubwright/contracts/work-orders/sheet-entries';
import {
  type AngleReading,
  type AnglesAsked,
  acceptedAngles,
  anglesFor,
  judgeAngle,
  spreadsOf,
} from '@hubwright/rules/angles';
import { RuleError } from '@hubwright/rules/errors';
import type { StopDrawn } from '../../../ui/pictures/BladeAngles.tsx';
import type { About } from './sheet-form.ts';

/** The angles of the unit’s own application as they are accepted; undefined where there are none. Throws RuleError for too coarse a protractor. */
export function acceptedOf({ spec, traveler, doubt, method }: About<'angles'>): AnglesAsked | undefined {
  const asked = anglesFor(spec, traveler.workOrder.application?.id ?? null);
  return asked && acceptedAngles(asked, doubt, method);
}

/** The same to show them by: as the manual prints them where the protractor is too coarse. */
export function shownOf(about: About<'angles'>): AnglesAsked | undefined {
  try {
    return acceptedOf(about);
  } catch (error) {
    if (!(error instanceof RuleError)) throw error;
    return anglesFor(about.spec, about.traveler.workOrder.application?.id ?? null);
  }
}

export type Standing = 'to read' | 'inside' | 'outside' | 'cannot be';

/** Where one typed angle stands, and by how much it is out or why it cannot be. */
export function standingOfAngle(
  reading: AngleReading,
  asked: Pick<AnglesAsked, 'stops'> & Partial<Pick<AnglesAsked, 'protractor'>>,
): { standing: Standing; words: string } {
  if (reading.angle === '') return { standing: 'to read', words: 'to read' };
  try {
    const judged = judgeAngle(reading, asked);
    return judged.state === 'inside'
      ? { standing: 'inside', words: 'inside' }
      : { standing: 'outside', words: `outside by ${judged.by}°` };
  } catch (error) {
    if (!(error instanceof RuleError)) throw error;
    return { standing: 'cannot be', words: 'cannot be read so' };
  }
}

/** A stop as it is drawn: what can be read of it so far. */
export function drawnOf(readings: EntryOf<'angles'>['readings'], asked: Pick<AnglesAsked, 'stops'>): StopDrawn[] {
  const judged = readings.map((reading) => ({ ...reading, ...standingOfAngle(reading, asked) }));
  const read = judged.filter(({ standing }) => standing === 'inside' || standing === 'outside');
  const spreads = spreadsOf(read, asked);
  return asked.stops.map(({ stop, low, high, spread: most }) => {
    const between = spreads.find((one) => one.stop === stop);
    return {
      ...{ stop, low, high, most: most ?? null },
      readings: read
        .filter((one) => one.stop === stop)
        .map(({ blade, angle, standing }) => ({ blade, angle, isGood: standing === 'inside' })),
      ...{ spread: between?.spread ?? null, isSpreadGood: between?.good ?? true },
    };
  });
}
