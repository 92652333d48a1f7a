import { shownText } from '../../model/document/names';
import { faultCount } from '../../model/reading/fault';
import type { ReadingFault } from '../fileActions';
import { Modal } from '../Modal';

interface ReadingFaultsProps {
  readonly fileName: string;
  readonly faults: readonly ReadingFault[];
  readonly onClose: () => void;
}

/** Everything that was wrong with a file. What stood on the bench still stands there. */
export function ReadingFaults({ fileName, faults, onClose }: ReadingFaultsProps) {
  const count = faultCount(faults);
  return (
    <Modal title="This file could not be read" onClose={onClose} wide>
      <p>
        <strong>{shownText(fileName)}</strong> has {count === 1 ? 'one fault' : `${count} faults`}. The
        aircraft on the bench has not changed.
      </p>
      {faults.length === 1 && <p>{faults[0]?.sentence}</p>}
      <table className="faults">
        <thead>
          <tr>
            <th scope="col">Where</th>
            <th scope="col">Expected</th>
            <th scope="col">Found</th>
          </tr>
        </thead>
        <tbody>
          {faults.map(({ path, expected, received }, at) => (
            <tr key={at}>
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
