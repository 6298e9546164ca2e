/** What a label is printed on: a sheet of A4, or one label after the other on a roll. */
export const labelForms = ['sheet', 'roll-62x29', 'roll-102x51'] as const;
export type LabelForm = (typeof labelForms)[number];
export const labelFormTitles: Record<LabelForm, string> = {
  sheet: 'A4 sheet',
  'roll-62x29': 'roll, 62 × 29 mm',
  'roll-102x51': 'roll, 4 × 2 inch',
};
