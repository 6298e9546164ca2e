import { describe, expect, it } from '@jest/globals';
import { type Expecting, nothingFound, toSend } from './receive-draft.ts';

const part: Expecting = {
  ...{ partId: 'p', number: 'TX-50', description: 'wire', issueUnit: 'inch' },
  ...{ certificateRequired: false, serialised: false, ages: false },
};

describe('what the receiving form sends', () => {
  it('says the unit the paper counts in, the part’s own unless another was chosen', () => {
    expect(toSend(part, nothingFound).unit).toBe('inch');
    expect(toSend(part, { ...nothingFound, unit: 'piece' }).unit).toBe('piece');
  });

  it('names the sender only where no order says it', () => {
    const found = { ...nothingFound, supplierId: 's' };
    expect(toSend(part, found)).toMatchObject({ supplierId: 's' });
    const line = { id: 'l', orderNumber: 'PO-1', open: 3 };
    expect(toSend({ ...part, line }, found)).not.toHaveProperty('supplierId');
    expect(toSend(part, nothingFound)).not.toHaveProperty('supplierId');
  });
});
