import './fit.css';
import { itemById } from '../../model/document/edit';
import { useCommitted } from '../../store/react';
import { BayField } from './BayField';
import { Clashes } from './Clashes';
import { Clearances } from './Clearances';
import { CutOuts } from './CutOuts';
import { EntryPath } from './EntryPath';
import { Gyro } from './Gyro';
import { KeepApart } from './KeepApart';
import { LeadsAt } from './LeadsAt';
import { Restraint } from './Restraint';

/** Whether a part or tank fits where it stands: the clashes first, then how much room there is, then what follows. */
export default function FitSection({ id }: { readonly id: string }) {
  const isPart = useCommitted(({ parts }) => parts.some((part) => part.id === id));
  const name = useCommitted((aircraft) => itemById(aircraft, id)?.name ?? '');
  return (
    <>
      <Clashes id={id} />
      <Clearances id={id} />
      <KeepApart id={id} />
      {isPart && <Gyro id={id} name={name} />}
      {isPart && <BayField id={id} name={name} />}
      <CutOuts id={id} />
      <LeadsAt id={id} />
      <EntryPath id={id} name={name} />
      <Restraint id={id} />
    </>
  );
}
