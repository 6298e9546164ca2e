import { partWords } from '@hubwright/contracts/inventory/quantity';
import type { Judgement } from './closing.ts';
import { waitingInWords } from './waiting-lines.ts';

/** What stands against closing a build, each in a sentence with what to do about it. */
export function closingInWords({ leftOver, missing, unexpected, waiting }: Omit<Judgement, 'sentences'>): string[] {
  return [
    ...leftOver.map(({ quantity, place, lots, ...each }) => {
      const what = `${partWords(quantity, partOf(each))} left in the ${place} (${lots.join(', ')})`;
      return place === 'tray'
        ? `${what}: install it, or bring it back to its bin.`
        : `${what}: put it back, replace it, scrap it or return it to its owner.`;
    }),
    ...missing.map(
      ({ quantity, position, ...each }) =>
        `${partWords(quantity, partOf(each))} missing${position ? ` at ${position}` : ''}.`,
    ),
    ...unexpected.map(({ quantity, places, ...each }) => {
      const where = places.length > 0 ? ` at ${places.join(', ')}` : '';
      return `${partWords(quantity, partOf(each))} in the unit${where} beyond the list, or from a source its position does not take: take it out, or have an inspector decide.`;
    }),
    ...waiting.map(waitingInWords),
  ];
}

function partOf({ part, description, issueUnit }: { part: string; description: string; issueUnit: string }) {
  return { number: part, description, issueUnit };
}
