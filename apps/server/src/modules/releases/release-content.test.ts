import type { ReleaseContent } from '@hubwright/contracts/releases/operations';
import { describe, expect, it } from '@jest/globals';
import { missingFromRecord } from './release-content.ts';

const whole: ReleaseContent = {
  number: 'RS-0001',
  workOrder: 'WO-0001',
  customer: 'Brackenmoor Air Charter',
  aircraft: 'ZZ-BMA',
  unit: { kind: 'propeller', maker: 'Quillon', model: 'Q3C-76', partNumber: 'Q3C-76', serial: 'QA1501' },
  parts: [],
  word: 'overhauled',
  description: 'Overhauled by QOM-301 revision 5.',
  dataReferences: ['QOM-301 revision 5, Overhaul manual'],
  completedOn: '2026-11-25',
  performedBy: ['J. Penhallow'],
  approvedBy: {
    name: 'S. Keld',
    certificateNumber: 'THAW-0001',
    certificateKind: 'Repair station: Propeller, class 2',
    signedAt: '2026-11-25T17:00:00.000Z',
  },
  findings: [],
  partsReplaced: [],
  remarks: '',
  times: { sinceNew: 'unknown', sinceOverhaul: '0.0 h' },
  facts: [],
  statement: 'Approved.',
  caution: 'Demonstration data.',
};
const approver = (change: Partial<ReleaseContent['approvedBy']>) => ({
  ...whole,
  approvedBy: { ...whole.approvedBy, ...change },
});

describe('content of the record', () => {
  it('lacks nothing when all of 14 CFR 43.9(a) is there', () => {
    expect(missingFromRecord(whole, false)).toEqual([]);
  });

  // 14 CFR 43.9(a): (1) description or reference to data, (2) date of completion, (3) who did the work if someone else,
  // (4) signature, certificate number and kind of certificate of the person approving.
  it.each([
    ['a description or a reference', { ...whole, description: ' ', dataReferences: [] }, /43\.9\(a\)\(1\)/],
    ['the date of completion', { ...whole, completedOn: '' }, /43\.9\(a\)\(2\)/],
    ['who did the work', { ...whole, performedBy: [] }, /43\.9\(a\)\(3\)/],
    ['the name of who approves', approver({ name: '' }), /who approves/],
    ['the certificate number', approver({ certificateNumber: ' ' }), /certificate number/],
    ['the kind of certificate', approver({ certificateKind: 'Repair station: ' }), /kind of certificate/],
    ['the person’s own number where the authority asks for it', approver({ personCertificate: '' }), /own certificate/],
    ['the signature', approver({ signedAt: '' }), /signature/],
    ['the serial', { ...whole, unit: { ...whole.unit, serial: '' } }, /serial/],
  ])('is refused without %s alone', (_, content, names) => {
    expect(missingFromRecord(content, false)).toEqual([expect.stringMatching(names)]);
  });

  it('needs either a description or a reference to data, not both', () => {
    expect(missingFromRecord({ ...whole, description: '' }, false)).toEqual([]);
    expect(missingFromRecord({ ...whole, dataReferences: [] }, false)).toEqual([]);
  });

  it('names nobody else when the approver did all the work', () => {
    expect(missingFromRecord({ ...whole, performedBy: [] }, true)).toEqual([]);
  });
});
