import { peopleOperations } from '@hubwright/contracts/people/operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { z } from 'zod';
import { useMay } from '../../api/me.ts';
import { AddPersonForm } from '../../features/people/add-person.tsx';
import { peopleQuery } from '../../features/people/list-people.ts';
import { PeopleTable } from '../../features/people/PeopleTable.tsx';
import { PersonSheet } from '../../features/people/PersonSheet.tsx';
import { useAddress } from '../../shell/use-address.ts';
import { Button } from '../../ui/Button.tsx';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import styles from './administration.module.css';

const address = z.object({ person: z.string().catch(''), off: z.string().catch('') });

/** Left everyone, right the one person opened. */
export function PeoplePage() {
  const { rows } = useSuspenseQuery(peopleQuery).data;
  const [{ person, off }, setAddress] = useAddress(address);
  const [isAdding, setAdding] = useState(false);
  const mayAdd = useMay(peopleOperations.addPerson);
  const opened = rows.find((row) => row.id === person);
  const shown = off === 'shown' ? rows : rows.filter((row) => row.active);
  const close = () => setAdding(false);
  return (
    <div className={opened ? styles.beside : ''}>
      <div className="sheet">
        <PeopleTable
          people={shown}
          hrefOf={(row) => `/administration/people?person=${row.id}${off ? `&off=${off}` : ''}`}
          tools={
            <>
              {mayAdd ? (
                <Button weight={opened ? 'plain' : 'next'} onPress={() => setAdding(true)}>
                  Add a person
                </Button>
              ) : null}
              <Checkbox
                isSelected={off === 'shown'}
                onChange={(isShown) => setAddress({ off: isShown ? 'shown' : '' })}
              >
                Also those turned off
              </Checkbox>
            </>
          }
        />
      </div>
      {opened ? <PersonSheet key={opened.id} person={opened} /> : null}
      <Dialog title="Add a person" width="wide" isOpen={isAdding} onClose={close}>
        <AddPersonForm
          onCancel={close}
          onDone={(added) => {
            close();
            setAddress({ person: added });
          }}
        />
      </Dialog>
    </div>
  );
}
