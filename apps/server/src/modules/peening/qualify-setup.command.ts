import { peeningOperations } from '@hubwright/contracts/peening/operations';
import { type Pointed, Problem } from '@hubwright/contracts/problems';
import { fitSaturation, type ProblemCode, type SaturationFit } from '@hubwright/rules/peening';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { requireAuthorisation } from '../people/public.ts';
import { fitMedia } from './media.ts';

const operation = peeningOperations.qualifySetup;
type Qualifying = Context<typeof operation>;
type Area = Qualifying['input']['areas'][number];

/** What makes a curve no curve; the rest is said beside it. */
const unfit: readonly ProblemCode[] = [
  'fewer-than-four-times',
  'none-at-twice-saturation',
  'level-from-the-start',
  'never-levels-off',
];

/** A program is qualified area by area: the curve holds, its intensity lies in the band, and parts get saturation at least. */
export const qualifySetup = defineCommand(operation, {
  locks: ({ machineId }) => [`peening-machine:${machineId}`],
  async execute(context) {
    const { tx, input, actor, now, today, entryId, newId, expectedVersion } = context;
    const machine = found(await tx.peeningMachine.findUnique({ where: { id: input.machineId } }), 'This machine');
    sameVersion(machine.version, expectedVersion);
    const need = { process: 'shot-peening', level: 'inspect', today } as const;
    const authorisation = await requireAuthorisation(tx, actor, need);
    const media = await fitMedia(tx, machine, { today });
    const areas = input.areas.map(fitted);
    const setupId = newId();
    const { program, parameters } = input;
    const shot = { mediaSize: media.size, mediaLot: media.code };
    await tx.peeningSetup.create({
      data: {
        ...{ id: setupId, machineId: machine.id, program, parameters, ...shot, mediaId: media.id, areas },
        ...{ qualifiedBy: actor.personId, qualifiedAt: now, entryId },
      },
    });
    const version = machine.version + 1;
    await tx.peeningMachine.update({ where: { id: machine.id }, data: { version } });
    return {
      reply: { id: machine.id, version, setupId, areas },
      subjects: [{ kind: 'peening-machine', id: machine.id, before: machine.version, after: version }],
      authorisation: { ...authorisation },
      facts: { machine: machine.code, program, ...shot, parameters, areas },
    };
  },
});

/** Throws `curve-unfit`, `intensity-outside` or `exposure-short`, each with the area it is about. */
function fitted(area: Area, index: number) {
  const refuse = (
    type: 'curve-unfit' | 'intensity-outside' | 'exposure-short',
    detail: string,
    field: string,
  ): never => {
    const at: Pointed = { pointer: `/areas/${index}/${field}`, detail };
    throw new Problem(type, `${area.name}: ${detail}`, { area: area.name }, [at]);
  };
  const fit = curveOf(area, (detail) => refuse('curve-unfit', detail, 'strips'));
  const wrong = fit.problemCodes.findIndex((code) => unfit.includes(code));
  if (wrong >= 0) refuse('curve-unfit', fit.problems[wrong] ?? '', 'strips');
  const { intensity, saturationTime } = fit;
  if (intensity < Number(area.low) || intensity > Number(area.high))
    refuse(
      'intensity-outside',
      `${intensity.toFixed(5)} ${area.unit} is not within ${area.low} to ${area.high}`,
      'strips',
    );
  if (Number(area.exposure) < saturationTime)
    refuse('exposure-short', `saturation takes ${saturationTime.toFixed(2)}, parts get ${area.exposure}`, 'exposure');
  const { a = 0, b = 0, c = null } = fit.parameters;
  const shown = {
    parameters: { a: a ?? 0, b: b ?? 0, c: c ?? null },
    residualSd: fit.residualSd,
    warnings: fit.problems,
  };
  return { ...area, intensity, saturationTime, ...shown };
}

function curveOf({ strips, form }: Area, refuse: (why: string) => never): SaturationFit {
  const points = strips.map(({ time, arcHeight }) => ({ time: Number(time), arcHeight: Number(arcHeight) }));
  try {
    return fitSaturation(points, { form });
  } catch (error) {
    return refuse((error as Error).message);
  }
}
