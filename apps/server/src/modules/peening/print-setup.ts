import type { PeeningMachine } from '@hubwright/contracts/peening/operations';
import { Paper } from '../../platform/print/paper.ts';

type Setup = PeeningMachine['setups'][number];
export type FittedArea = Setup['areas'][number];

export interface PrintOptions {
  readonly shopName: string;
  readonly caution: string;
  readonly at: Date;
  /** An instant as the shop's clock shows it. */
  readonly inWords: (instant: Date) => string;
}

export interface SetupOnPaper extends Pick<Setup, 'program' | 'parameters' | 'mediaSize' | 'mediaLot' | 'areas'> {
  readonly machine: { readonly code: string; readonly title: string };
  readonly qualifiedBy: string;
  readonly qualifiedAt: Date;
}

const formulas = { exponential: 'a (1 - e^-bt)', rational: 'a t / (b + t)', stretched: 'a (1 - e^-bt^c)' };

/** A qualified program on paper, with the readings each curve goes through. */
export function printSetup(setup: SetupOnPaper, options: PrintOptions): Promise<Buffer> {
  const printed = options.inWords(options.at);
  const paper = new Paper({
    title: `Peening program ${setup.program}`,
    ...{ shopName: options.shopName, at: options.at },
    foot: `${setup.machine.code}   ·   printed ${printed}   ·   ${options.caution}`,
  });
  paper.facts([
    ['Machine', `${setup.machine.code}, ${setup.machine.title}`],
    ['Media', `${setup.mediaSize}, lot ${setup.mediaLot}`],
    ...setup.parameters.map(({ name, value, unit }) => [name, `${value} ${unit}`.trim()] as const),
    ['Qualified by', `${setup.qualifiedBy}, ${options.inWords(setup.qualifiedAt)}`],
  ]);
  for (const area of setup.areas) {
    paper.heading(`${area.name}: ${area.low} to ${area.high} ${area.unit} ${area.strip}`);
    paper.facts(curveFacts(area));
    paper.table(
      [
        { head: 'Exposure', width: 90, side: 'right' },
        { head: `Arc height, ${area.unit}`, width: 110, side: 'right' },
        { head: 'On the curve', width: 110, side: 'right' },
        { head: '', width: '*' },
      ],
      area.strips.map(({ time, arcHeight }) => [time, arcHeight, heightAt(area, Number(time)).toFixed(5), '']),
    );
    for (const warning of area.warnings) paper.paragraph(`WARNING: ${warning}`);
  }
  return paper.finish();
}

/** What the curve of an area says, as name and value. */
export function curveFacts(area: FittedArea): (readonly [string, string])[] {
  const { a, b, c } = area.parameters;
  const fitted = [`a ${a.toPrecision(5)}`, `b ${b.toPrecision(5)}`, ...(c === null ? [] : [`c ${c.toPrecision(5)}`])];
  return [
    ['Intensity', `${area.intensity.toFixed(5)} ${area.unit} ${area.strip}`],
    ['Saturation time', area.saturationTime.toFixed(3)],
    ['Exposure of parts', area.exposure],
    ['Curve', `${formulas[area.form]} with ${fitted.join(', ')}; scatter ${area.residualSd.toPrecision(2)}`],
  ];
}

function heightAt({ form, parameters: { a, b, c } }: FittedArea, time: number): number {
  if (form === 'rational') return (a * time) / (b + time);
  return a * (1 - Math.exp(-b * time ** (form === 'stretched' ? (c ?? 1) : 1)));
}
