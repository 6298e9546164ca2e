import type { effectivities } from '@hubwright/contracts/inventory/part-operations';
import type { Part } from './lots.ts';

/** How a part may stand in for another, as it is being written. */
export interface LinkDraft {
  readonly number: string;
  readonly twoWay: boolean;
  readonly supersedes: boolean;
  readonly effectivity: (typeof effectivities)[number];
  readonly from: string;
}

export const sinceWords: Record<LinkDraft['effectivity'], string> = {
  now: 'from now on',
  'from-date': 'for builds from a day on',
  'until-used': 'when the old part is used up',
};

/** “two ways, when the old part is used up, supersedes it”; empty for what is usual. */
export function linkWords(
  link: Pick<Part['alternates'][number], 'twoWay' | 'supersedes' | 'effectivity' | 'from'>,
): string {
  const since = link.effectivity === 'from-date' ? `for builds from ${link.from} on` : sinceWords[link.effectivity];
  return [
    link.supersedes ? 'supersedes it' : '',
    link.effectivity === 'now' ? '' : since,
    link.twoWay ? 'both ways' : '',
  ]
    .filter(Boolean)
    .join(', ');
}

export const usualLink = (number: string): LinkDraft => ({
  number,
  twoWay: false,
  supersedes: false,
  effectivity: 'now',
  from: '',
});

/** Without a day where none belongs. */
export function linkToSend({ from, ...link }: LinkDraft) {
  return link.effectivity === 'from-date' ? { ...link, from } : link;
}
