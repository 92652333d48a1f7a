import { cautions } from '../model/words/cautions';
import { Modal } from './Modal';

/** What to mind before a model flies. */
export function Cautions({ onClose }: { readonly onClose: () => void }) {
  return (
    <Modal title="Before the first flight" onClose={onClose} wide>
      {cautions.map(({ about, says }) => (
        <section key={about} className="caution">
          <h3>{about}</h3>
          <p>{says}</p>
        </section>
      ))}
    </Modal>
  );
}
