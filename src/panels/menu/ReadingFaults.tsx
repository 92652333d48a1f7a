import type { ReadingFault } from '../fileActions';
import { Modal } from '../Modal';

interface ReadingFaultsProps {
  readonly fileName: string;
  readonly faults: readonly ReadingFault[];
  readonly onClose: () => void;
}

/** Everything that was wrong with a file. What stood on the bench still stands there. */
export function ReadingFaults({ fileName, faults, onClose }: ReadingFaultsProps) {
  return (
    <Modal title="This file could not be read" onClose={onClose} wide>
      <p>
        <strong>{fileName}</strong> has {faults.length === 1 ? 'one fault' : `${faults.length} faults`}. The
        aircraft on the bench has not changed.
      </p>
      <table className="faults">
        <thead>
          <tr>
            <th scope="col">Where</th>
            <th scope="col">Expected</th>
            <th scope="col">Found</th>
          </tr>
        </thead>
        <tbody>
          {faults.map(({ path, expected, received }) => (
            <tr key={`${path} ${expected}`}>
              <th scope="row" className="figure">
                {path || 'the file'}
              </th>
              <td>{expected}</td>
              <td>{received}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Modal>
  );
}
