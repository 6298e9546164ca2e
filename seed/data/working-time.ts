import type { Process } from '@hubwright/contracts/people/operations';

const lunch = [{ from: '12:00', to: '12:30' }];
const free: never[] = [];

/** Shifts of the invented shop, and who does not work by the first one. */
export const shifts = [
  { name: 'Day shift', shift: { from: '07:30', to: '16:00', breaks: lunch }, people: [] },
  {
    name: 'Early shift',
    shift: { from: '06:00', to: '14:30', breaks: [{ from: '10:00', to: '10:30' }] },
    people: ['maren', 'rurik'],
  },
  {
    name: 'Late shift',
    shift: { from: '13:30', to: '22:00', breaks: [{ from: '17:30', to: '18:00' }] },
    people: ['tobit'],
  },
].map(({ name, shift, people }) => ({
  ...{ name, people },
  week: [[shift], [shift], [shift], [shift], [shift], free, free],
}));

/** Trainings with who took each how many days ago, the first at the beginning. */
export const trainings: readonly {
  readonly title: string;
  readonly everyMonths: number | null;
  readonly processes: readonly Process[];
  readonly minutes: number;
  readonly givenBy: string;
  readonly taken: Readonly<Record<string, number>>;
}[] = [
  {
    ...{ title: 'Eye examination and penetrant refresher', everyMonths: 12, processes: ['non-destructive-test'] },
    ...{ minutes: 120, givenBy: 'Fernlea Eye Practice', taken: { inspector: 200, sunniva: 290, tech: 150, ludo: 345 } },
  },
  {
    ...{ title: 'Plating chemicals and spill drill', everyMonths: 12, processes: ['plating'] },
    ...{ minutes: 180, givenBy: 'Maren Skogby', taken: { inspector: 170, sunniva: 170, tech: 170, maren: 170 } },
  },
];

/** What a trainee was taught first, in days ago. */
export const induction = {
  title: 'Shop induction and safety round',
  person: 'piers',
  ago: 40,
  minutes: 240,
  givenBy: 'Rurik Thane',
};

/** Who is away around today; `from` and `to` in days from today. */
export const absences = [
  { person: 'tobit', kind: 'sick', from: -1, to: 1, note: 'back on his feet soon' },
  { person: 'elspeth', kind: 'training', from: 5, to: 6, note: '' },
  { person: 'odile', kind: 'holiday', from: 12, to: 19, note: '' },
] as const;
