import type { FileActions } from '../fileActions';
import { Modal } from '../Modal';

/** The aircraft that come with the bench, each with what it teaches. */
export function Demos({ files, onClose }: { readonly files: FileActions; readonly onClose: () => void }) {
  return (
    <Modal title="Choose an aircraft" onClose={onClose}>
      <ul className="demos">
        {files.demos.map(({ id, name, lesson }) => (
          <li key={id}>
            <button
              type="button"
              onClick={() => {
                onClose();
                void files.openDemo(id);
              }}
            >
              <strong>{name}</strong>
              <span>{lesson}</span>
            </button>
          </li>
        ))}
      </ul>
    </Modal>
  );
}
