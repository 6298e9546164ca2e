import type { SheetKind, SheetOf, SheetSpec } from '@hubwright/contracts/manuals/sheets';
import { limitText } from '@hubwright/rules/balance';
import { limitsInWords, valuesAsked } from '@hubwright/rules/function-test';
import { unitText } from '@hubwright/rules/reading';
import { placesOf } from '@hubwright/rules/torque';

const words: { readonly [K in SheetKind]: (spec: SheetOf<K>) => string } = {
  angles: ({ blades, station, cycles, applications, seals }) =>
    `angles of ${blades} blades at ${station.at} ${station.unit} after ${cycles} cycles: ${applications.map(({ applicationId, stops }) => `application …${applicationId.slice(-6)} ${stops.map(({ stop, low, high, spread }) => `${stop} ${low} to ${high}${spread === undefined ? '' : ` spread ${spread}`}`).join(', ')}`).join('; ')}${touched(seals)}`,
  'function-test': (spec) =>
    `function test${spec.leak ? ` with ${spec.leak.media.join(' or ')}, ${spec.leak.cycles} cycles` : ''}: ${valuesAsked(
      spec,
    )
      .map((value) => `${value.name} ${limitsInWords(value)}`)
      .join(', ')}${touched(spec.seals)}`,
  bake: ({ startWithinMinutes, low, high, unit, minimumMinutes, dips, alarmMinutes }) =>
    `baked within ${startWithinMinutes} min of plating, ${minimumMinutes} min at ${low} to ${high} ${unit}, dips ${dips}${
      alarmMinutes ? `, called out ${alarmMinutes} min before` : ''
    }`,
  cure: (spec) =>
    `cured ${spec.minimumMinutes} min at ${spec.low} to ${spec.high} ${spec.unit}, dips ${spec.dips}, heated by ${spec.heatUpMost} and cooled by ${spec.coolDownMost} ${spec.unit}/min over ${spec.overMinutes} min, to ${spec.coolTo}${
      spec.vacuum ? `, vacuum ${spec.vacuum.least} ${spec.vacuum.unit}` : ''
    }`,
  charge: ({ medium, unit, temperatureUnit, table, tolerance, settleMinutes }) =>
    `charged with ${medium}, settled ${settleMinutes} min, ± ${tolerance} ${unit} of ${table.map(({ at, pressure }) => `${pressure} at ${at}`).join(', ')} ${unitText(temperatureUnit)}`,
  fit: ({ terms, constant, leaves, shims, mostPieces, trial, unit, places }) =>
    `shims at ${places.join(', ')}: ${constant}${terms.map(({ sign, name }) => ` ${sign} ${name}`).join('')} ${unit}, ${leaves.kind} ${leaves.low} to ${leaves.high}; ${shims.map(({ thickness }) => thickness).join(', ')}, ${mostPieces} at most; ${trial.name} ${trial.low} to ${trial.high} ${trial.unit}`,
  torque: ({ unit, cycles, groups }) =>
    `torqued in ${unit}: ${groups.map((group) => `${placesOf(group).join(', ')} ${group.low} to ${group.high} in ${group.passes.join(', ')} %, threads ${group.threads}${group.retorque ? `, again after ${cycles} cycles` : ''}${group.safety ? `, ${group.safety}` : ''}`).join('; ')}`,
  'governor-test': () => 'tested on the governor bench by the program of the application',
  'eddy-current': ({ frequency, notchDepth, unit, signal, drift }) =>
    `eddy current at ${frequency.low} to ${frequency.high} ${frequency.unit}, notch ${notchDepth} ${unit}, signal ${signal.low} to ${signal.high} %, drift ${drift} %`,
  'static-balance': ({ places, hardware, unit, limit }) => {
    const room = places.map(
      ({ name, angle, radius, pieces, stack }) => `${name} ${angle}° ${radius} ${pieces}×${stack ? ` ${stack}` : ''}`,
    );
    const kinds = hardware.map(({ part, mass, thickness }) => `${part} ${mass} ${thickness}`);
    const most = `${limitText({ limit, unit })} ${unit}${limit.by === 'manual' ? '' : ` (G ${limit.grade}, ${limit.massKg} kg, ${limit.rpm} rpm)`}`;
    return `static balance to ${most}; places ${room.join(', ') || 'none'}; weights ${kinds.join(', ') || 'none'}`;
  },
};

const touched = (seals: readonly string[]) => (seals.length === 0 ? '' : `; seals touched: ${seals.join(', ')}`);

/** What a sheet asks for, in words: what two revisions are compared by. */
export function sheetWords(spec: SheetSpec): string {
  return (words[spec.kind] as (spec: SheetSpec) => string)(spec);
}
