import type { partOperations } from '@hubwright/contracts/inventory/part-operations';
import type { Sent } from '@hubwright/contracts/operation';

type NewPart = Sent<typeof partOperations.addPart>;

/** A part number as it is being written; numbers are text until they are sent. */
export interface PartDraft {
  number: string;
  maker: string;
  description: string;
  class: NewPart['class'] | null;
  issueUnit: NewPart['issueUnit'];
  packSize: string;
  certificateRequired: boolean;
  serialised: boolean;
  leadTimeDays: string;
  unitPrice: string;
  shelfLifeMonths: string;
  minimumDaysAtBuild: string;
  supplierId: string | null;
  homeBin: string;
  alternates: string[];
}

export const emptyPart: PartDraft = {
  number: '',
  maker: '',
  description: '',
  class: null,
  issueUnit: 'piece',
  packSize: '1',
  certificateRequired: true,
  serialised: false,
  leadTimeDays: '',
  unitPrice: '',
  shelfLifeMonths: '',
  minimumDaysAtBuild: '0',
  supplierId: null,
  homeBin: '',
  alternates: [],
};

const whole = (text: string) => (text === '' ? Number.NaN : Number(text));

export function partToSend(draft: PartDraft): NewPart {
  const {
    class: kind,
    packSize,
    leadTimeDays,
    minimumDaysAtBuild,
    shelfLifeMonths,
    supplierId,
    homeBin,
    ...rest
  } = draft;
  return {
    ...rest,
    class: kind as NewPart['class'],
    packSize: whole(packSize),
    leadTimeDays: whole(leadTimeDays),
    minimumDaysAtBuild: whole(minimumDaysAtBuild),
    ...(shelfLifeMonths === '' ? {} : { shelfLifeMonths: whole(shelfLifeMonths) }),
    ...(supplierId === null ? {} : { supplierId }),
    ...(homeBin === '' ? {} : { homeBin }),
  };
}
