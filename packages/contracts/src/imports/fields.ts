/** One column a table of a kind can have. */
export interface ImportField {
  readonly field: string;
  /** As the template heads it. */
  readonly title: string;
  /** Other headings that mean the same, in small letters and blanks. */
  readonly also: readonly string[];
  readonly required: boolean;
  /** What may stand in it. */
  readonly says: string;
  /** Of the invented shop, for the template. */
  readonly example: string;
}

export type FieldGiven = readonly [
  field: string,
  title: string,
  says: string,
  example: string,
  also?: readonly string[],
];

/** A column a table cannot be without. */
export const needed = ([field, title, says, example, also = []]: FieldGiven): ImportField => ({
  ...{ field, title, says, example, also },
  required: true,
});

/** A column that may be missing. */
export const open = (given: FieldGiven): ImportField => ({ ...needed(given), required: false });
