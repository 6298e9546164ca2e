import type { CureVerdict } from './judge-cure.ts';

const titles = {
  'heat-up': 'heated',
  hold: 'held',
  'cool-down': 'cooled',
  vacuum: 'vacuum',
  'out-time': 'material',
} as const;

/** A cure as it stands beside its signature, segment by segment: instants in milliseconds in, ISO out. */
export function sayCure({ startedAt, endedAt }: { startedAt: number; endedAt: number }, { segments }: CureVerdict) {
  return [
    { name: 'cure began', at: new Date(startedAt).toISOString() },
    { name: 'chart ends', at: new Date(endedAt).toISOString() },
    ...segments.map(({ name, said, reasons }) => ({
      name: titles[name],
      value: reasons.length === 0 ? said : `${said}: not as asked for`,
    })),
  ];
}
