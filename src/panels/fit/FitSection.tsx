import './fit.css';
import { itemById } from '../../model/document/edit';
import { useCommitted } from '../../store/react';
import { BayField } from './BayField';
import { Clearances } from './Clearances';
import { CutOuts } from './CutOuts';
import { EntryPath } from './EntryPath';
import { Gyro } from './Gyro';
import { LeadsAt } from './LeadsAt';
import { OpenTick } from './OpenTick';
import { Problems } from './Problems';
import { Restraint } from './Restraint';

/** Whether a part or tank fits where it stands: what is wrong first, then how much room there is, then what follows. */
export default function FitSection({ id }: { readonly id: string }) {
  const isPart = useCommitted(({ parts }) => parts.some((part) => part.id === id));
  const name = useCommitted((aircraft) => itemById(aircraft, id)?.name ?? '');
  return (
    <>
      <Problems id={id} />
      <Clearances id={id} />
      {isPart && <Gyro id={id} name={name} />}
      {isPart && <BayField id={id} name={name} />}
      <CutOuts id={id} />
      <LeadsAt id={id} />
      <EntryPath id={id} name={name} />
      <Restraint id={id} />
      <OpenTick id={id} name={name} />
    </>
  );
}
