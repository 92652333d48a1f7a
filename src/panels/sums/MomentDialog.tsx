import { momentSheet } from '../../model/words/workingSheet';
import { useBalance } from '../../store/react';
import { weightsAlong } from '../beam/weights';
import { Modal } from '../Modal';
import { useReadings } from '../readings';
import { SheetView } from './SheetView';
import { useFrom } from './useFrom';

/** The sum behind what one thing does to the beam. */
export function MomentDialog({ id, onClose }: { readonly id: string; readonly onClose: () => void }) {
  const { units } = useReadings();
  const balance = useBalance((answer) => answer);
  const from = useFrom();
  const weight = weightsAlong(balance, 0).find(({ sourceId }) => sourceId === id);
  const { cgMm } = balance;
  if (!weight || !cgMm) return null;
  const name = balance.bodies.find(({ sourceId }) => sourceId === id)?.name ?? id;
  const title = `Moment of ${name}`;
  return (
    <Modal title={title} onClose={onClose}>
      <SheetView title={title} sheet={momentSheet(name, weight.massG, weight.atMm, cgMm[0], units, from)} />
    </Modal>
  );
}
