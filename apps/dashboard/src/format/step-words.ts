import { type DeclaredEvent, eventTitles } from '@hubwright/contracts/manuals/words';
import { countOf } from './numbers.ts';

/** What a step asks for beside its work, as far as it asks for anything. */
interface Asks {
  readonly events?: readonly DeclaredEvent[] | undefined;
  readonly branch?: string | null | undefined;
  readonly waitMinutes: number;
  readonly outside: boolean;
  readonly batched: boolean;
  readonly tools: readonly string[];
  readonly equipmentKind?: string | null | undefined;
  readonly materials?: readonly string[];
}

/** Minutes as a person says them: `45 min`, `12 h`, `1 h 30 min`. */
export function durationWords(minutes: number): string {
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  return [hours > 0 ? `${hours} h` : '', rest > 0 || hours === 0 ? `${rest} min` : ''].filter(Boolean).join(' ');
}

/** One note for each thing a step asks for. */
export function stepNotes(asks: Asks): string[] {
  const { events = [], branch, waitMinutes, outside, batched, tools, equipmentKind, materials = [] } = asks;
  return [
    ...(events.length > 0 ? [`only after: ${events.map((event) => eventTitles[event].toLowerCase()).join(', ')}`] : []),
    ...(branch ? [`beside its neighbours (${branch})`] : []),
    ...(outside ? ['at an outside vendor'] : []),
    ...(batched ? ['many parts in one load'] : []),
    ...(equipmentKind ? [`on a ${equipmentKind.replaceAll('-', ' ')} that is fit`] : []),
    ...(materials.length > 0 ? [`lots named of ${materials.join(', ')}`] : []),
    ...(tools.length > 0 ? [`${countOf(tools.length, 'special tool')}: ${tools.join(', ')}`] : []),
    ...(waitMinutes > 0 ? [`then ${durationWords(waitMinutes)} untouched`] : []),
  ];
}
