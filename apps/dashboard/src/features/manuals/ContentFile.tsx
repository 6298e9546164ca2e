import { manualOperations } from '@hubwright/contracts/manuals/operations';
import { useQuery } from '@tanstack/react-query';
import { FileTrigger } from 'react-aria-components';
import { queryFor } from '../../api/query.ts';
import { countOf } from '../../format/numbers.ts';
import { Button } from '../../ui/Button.tsx';
import { saveFile } from '../../ui/csv.ts';
import { StateMark } from '../../ui/StateMark.tsx';
import type { Manual, Revision } from './manuals.ts';
import { type Content, contentFile, contentIn, contentOf, emptyContent } from './revision-draft.ts';

export interface FileRead {
  readonly name: string;
  readonly content: Content | undefined;
}

function sizeWords(content: Content): string {
  const sum = (count: (model: Content[number]) => number) => content.reduce((all, model) => all + count(model), 0);
  return [
    countOf(content.length, 'model'),
    countOf(
      sum((each) => each.kitList.length),
      'kit list line',
    ),
    countOf(
      sum((each) => each.routes.length),
      'route',
    ),
  ].join(', ');
}

/** The content as a file: taken from the revision before, changed in any editor, and chosen here. */
export function ContentFile(props: {
  manual: Manual;
  before: Revision | undefined;
  read: FileRead | undefined;
  onRead: (file: FileRead) => void;
}) {
  const { manual, before, read, onRead } = props;
  const models = useQuery(queryFor(manualOperations.listModels, { limit: 200 })).data?.rows ?? [];
  const ours = models.filter((model) => model.manual.id === manual.id);
  const save = () => {
    const { name, text } = contentFile(
      manual.number,
      before ? contentOf(before) : emptyContent(ours.map(({ id }) => id)),
    );
    saveFile(name, text, 'application/json');
  };
  if (!before && ours.length === 0) return <p>No model names this manual yet. Add the model first, under Models.</p>;
  return (
    <div className="stack tight">
      <p className="soft small">
        Save the file, change it in an editor, choose it here. Numbers with decimals stand in quotes; nothing is taken
        over before the whole file is right.
      </p>
      <div className="row">
        <Button onPress={save}>{before ? `Save what revision ${before.revision} says` : 'Save an empty file'}</Button>
        <FileTrigger
          acceptedFileTypes={['application/json', '.json']}
          onSelect={async (files) => {
            const file = files?.[0];
            if (file) onRead({ name: file.name, content: contentIn(await file.text()) });
          }}
        >
          <Button>Choose the changed file</Button>
        </FileTrigger>
      </div>
      {read?.content ? (
        <p>
          <StateMark state="have" word={read.name} /> {sizeWords(read.content)}
        </p>
      ) : null}
      {read && !read.content ? (
        <p role="alert">
          <StateMark state="stop" word={`${read.name} is not a file of revision content`} /> Choose the file that was
          saved here.
        </p>
      ) : null}
    </div>
  );
}
