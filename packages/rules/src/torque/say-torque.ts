import type { PassDone, TorqueDone } from './judge-torque.ts';
import { decimalsOf, passesOf, placesOf, type TorqueSpec } from './plan.ts';
import { torqueAt } from './wrench.ts';

/** A torque sheet as it stands beside its signature. */
export function sayTorque(done: TorqueDone, spec: TorqueSpec): { name: string; value: string }[] {
  const passes = passesOf(spec).flatMap(({ group, title, places }, index) => {
    const given = done.passes[index];
    if (!given) return [];
    const nut = given.adapter
      ? `, ${torqueAt(given.setting, given.adapter, decimalsOf(group))} ${spec.unit} at the nut`
      : '';
    const value = `wrench at ${given.setting} ${spec.unit}${adapterWords(given, spec)}${nut}${sequenceWords(places)}`;
    return [{ name: `${group.name}, ${title}`, value }];
  });
  return [
    ...spec.groups.map(({ name, threads }) => ({ name: `threads of ${name}`, value: threads })),
    ...passes,
    ...(done.cycled === undefined ? [] : [{ name: 'cycled on air', value: `${done.cycled} times` }]),
    ...spec.groups.flatMap((group) =>
      group.safety ? [{ name: `${group.name} safetied`, value: `${group.safety}: ${placesOf(group).join(', ')}` }] : [],
    ),
  ];
}

function adapterWords({ adapter }: PassDone, { lengthUnit }: TorqueSpec): string {
  if (!adapter) return ', no adapter';
  const { lever, length, effect } = adapter;
  return `, lever ${lever} ${lengthUnit}, adapter ${length} ${lengthUnit} ${effect}`;
}

function sequenceWords(places: readonly string[]): string {
  return places.length > 1 ? `, in the sequence ${places.map((place) => place.split(' ').at(-1)).join(', ')}` : '';
}
