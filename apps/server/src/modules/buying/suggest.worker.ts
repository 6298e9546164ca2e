import { type SuggestInput, type Suggestion, suggest } from '@hubwright/rules/replenishment';

/** What to buy of each part from each supplier that sells it, computed off the request thread. */
export default function run(questions: readonly SuggestInput[]): (Suggestion | undefined)[] {
  return questions.map((question) => suggest(question));
}
