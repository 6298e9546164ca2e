import type { ReleaseContent } from '@hubwright/contracts/releases/operations';
import { Paper } from '../../platform/print/paper.ts';

/** The release as PDF. The same content gives the same bytes. */
export function printRelease(content: ReleaseContent, shopName: string): Promise<Buffer> {
  const { unit, approvedBy } = content;
  const paper = new Paper({
    title: `Maintenance release ${content.number}`,
    shopName,
    at: new Date(approvedBy.signedAt),
    foot: `${content.number}   ·   ${content.workOrder}   ·   Demonstration data, not for use on aircraft`,
  });
  paper.paragraph(content.caution);
  if (content.supersedes)
    paper.paragraph(`Corrects and supersedes ${content.supersedes.number}: ${content.supersedes.reason}`);
  paper
    .facts([
      ['Unit', `${unit.maker} ${unit.model}, part number ${unit.partNumber}, serial ${unit.serial}`],
      ['Customer', content.customer],
      ['Aircraft', content.aircraft ?? ''],
      ['Work order', content.workOrder],
      ['Work', content.word],
      ['Data used', content.dataReferences.join('; ')],
      ['Time since new', content.times.sinceNew],
      ['Time since overhaul', content.times.sinceOverhaul],
    ])
    .heading('Work performed');
  for (const line of content.description.split('\n')) paper.paragraph(line);
  if (content.remarks) paper.paragraph(content.remarks);
  tables(paper, content);
  paper
    .heading('Approval for return to service')
    .paragraph(content.statement)
    .facts([
      ['Date of completion', content.completedOn],
      ['Work done by', content.performedBy.join(', ')],
      ['Approved by', [approvedBy.name, approvedBy.personCertificate].filter(Boolean).join(', ')],
      ['Certificate', `${approvedBy.certificateNumber}, ${approvedBy.certificateKind}`],
      ['Signed', `electronically, ${approvedBy.signedAt}`],
    ]);
  return paper.finish();
}

function tables(paper: Paper, content: ReleaseContent): void {
  if (content.parts.length > 0) {
    paper.heading('Serialized parts').table(
      [
        { head: 'Position', width: 90 },
        { head: 'Part number', width: '*' },
        { head: 'Serial', width: '*' },
        { head: 'Since new', width: 80, side: 'right' },
        { head: 'Since overhaul', width: 90, side: 'right' },
      ],
      content.parts.map((part) => [part.position, part.partNumber, part.serial, part.sinceNew, part.sinceOverhaul]),
    );
  }
  if (content.findings.length > 0) {
    paper.heading('Findings').table(
      [
        { head: 'Number', width: 60 },
        { head: 'Part', width: 80 },
        { head: 'Found', width: '*' },
        { head: 'Disposition', width: 80 },
      ],
      content.findings.map((finding) => [finding.number, finding.part, finding.description, finding.disposition]),
    );
  }
  if (content.partsReplaced.length > 0) {
    paper.heading('New parts installed').table(
      [
        { head: 'Part number', width: 110 },
        { head: 'Description', width: '*' },
        { head: 'Quantity', width: 60, side: 'right' },
        { head: 'Lot', width: 90 },
      ],
      content.partsReplaced.map((part) => [part.part, part.description, String(part.quantity), part.lot]),
    );
  }
}
