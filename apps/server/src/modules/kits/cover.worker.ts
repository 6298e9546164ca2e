import { type Cover, type CoverInput, cover } from '@hubwright/rules/shortage';

/** Which supply covers which kit line, computed off the request thread. */
export default function run(input: CoverInput): Cover {
  return cover(input);
}
