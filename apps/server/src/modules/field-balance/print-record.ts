import { Paper } from '../../platform/print/paper.ts';
import { sensorAfterSensor } from './answer.ts';
import type { BalancedContent } from './signed-balance.ts';

interface Printed {
  readonly content: BalancedContent;
  readonly logEntry: string;
  readonly customer: string;
  readonly airport: string;
  readonly signatures: readonly {
    readonly meaning: string;
    readonly name: string;
    readonly signedAt: Date;
    readonly contentHash: string;
  }[];
}

interface Shop {
  readonly name: string;
  readonly certificateNumber: string;
  readonly zone: string;
  readonly recordStatements: unknown;
}

/** The record of a balance on the aircraft: before and after, weights by place, log entry, who signed. The same record gives the same bytes. */
export async function printRecord(printed: Printed, shop: Shop): Promise<Buffer> {
  const { content, signatures } = printed;
  const { caution } = shop.recordStatements as { caution: string };
  const at = signatures.at(-1)?.signedAt ?? new Date(0);
  const words = new Intl.DateTimeFormat('sv-SE', { timeZone: shop.zone, dateStyle: 'short', timeStyle: 'short' });
  const paper = new Paper({
    title: `Balance on the aircraft ${content.number}`,
    shopName: shop.name,
    at,
    foot: caution,
  });
  paper
    .facts([
      ['Customer', printed.customer],
      ['Aircraft', content.aircraft],
      ['Propeller', `${content.propeller.model}, serial ${content.propeller.serial}`],
      ['Place', printed.airport],
      ['Data', content.source],
      ['Procedure', content.procedure],
      ['Instrument', `${content.instrument.tag}, in calibration until ${content.instrument.calibrationDueOn}`],
    ])
    .heading('Before and after');
  beforeAndAfter(paper, content);
  paper.heading('Dynamic weights standing');
  weights(paper, content);
  paper.heading('Entry for the aircraft’s log').paragraph(printed.logEntry).heading('Signed');
  paper.table(
    [
      { head: 'Who', width: 110 },
      { head: 'When', width: 90 },
      { head: 'What', width: '*' },
      { head: 'SHA-256 of what was signed', width: 130 },
    ],
    signatures.map(({ name, signedAt, meaning, contentHash }) => [
      ...[name, words.format(signedAt), meaning],
      contentHash.replace(/(.{16})/g, '$1 ').trim(),
    ]),
  );
  return paper.paragraph(`${shop.name}, certificate ${shop.certificateNumber}`).finish();
}

function beforeAndAfter(paper: Paper, { before, after, unit, sensors }: BalancedContent): void {
  const less = sensors ? 12 : 0;
  const [then, now] = [sensorAfterSensor(before), sensorAfterSensor(after)];
  paper.table(
    [
      ...(sensors ? [{ head: 'Sensor', width: '*' as const }] : []),
      { head: 'Speed', width: 80 - less, side: 'right' },
      { head: `Before, ${unit}`, width: 90 - less, side: 'right' },
      { head: 'Phase', width: 70 - less, side: 'right' },
      { head: `After, ${unit}`, width: 90 - less, side: 'right' },
      { head: 'Phase', width: 70 - less, side: 'right' },
    ],
    now.map(({ rpm, sensor, amplitude, phase }, index) => [
      ...(sensors ? [sensors[sensor] ?? ''] : []),
      ...[`${rpm} rpm`, then[index]?.amplitude ?? '', `${then[index]?.phase ?? ''}°`],
      ...[amplitude, `${phase}°`],
    ]),
  );
}

function weights(paper: Paper, content: BalancedContent): void {
  if (content.weights.length === 0) {
    paper.paragraph('None.');
    return;
  }
  const isInPlanes = content.weights.some(({ plane }) => plane !== undefined);
  paper.table(
    [
      { head: 'Place', width: isInPlanes ? 150 : 60 },
      { head: 'Angle', width: 60, side: 'right' },
      { head: 'What', width: '*' },
      { head: 'Mass', width: 70, side: 'right' },
    ],
    content.weights.map(({ place, plane, angle, found, pieces, partNumber, lotCode, mass }) => [
      ...[
        plane === undefined ? place : `${place}, ${plane}`,
        `${angle}°`,
        found ? 'as found' : `${pieces} × ${partNumber} of ${lotCode}`,
      ],
      `${mass} g`,
    ]),
  );
}
