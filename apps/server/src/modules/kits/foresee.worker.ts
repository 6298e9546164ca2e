import { type ForeseeInput, type Foresight, foresee, type Share, sharesOf } from '@hubwright/rules/foreseen';

/** As text, so that whoever asks again can tell by it whether anything is different. */
export interface ForeseeJob {
  readonly text: string;
  /** Asks for the units behind this part instead. */
  readonly part?: string;
}

/** What units not in work yet are expected to need, computed off the request thread. */
export default function run({ text, part }: ForeseeJob): Foresight | Share[] {
  const input = JSON.parse(text) as ForeseeInput;
  return part === undefined ? foresee(input) : sharesOf(input, part);
}
