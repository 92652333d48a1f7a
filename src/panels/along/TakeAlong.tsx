import './along.css';
import type { FileActions } from '../fileActions';
import { Modal } from '../Modal';
import { ModelAndFilmSection, PictureSection, TableSection } from './FileSections';
import { LinkSection } from './LinkSection';

interface TakeAlongProps {
  readonly files: FileActions;
  readonly onClose: () => void;
}

/** All ways in which the aircraft leaves the bench, beside the file that it is kept as. */
export function TakeAlong({ files, onClose }: TakeAlongProps) {
  return (
    <Modal title="Take along" onClose={onClose} wide>
      <div className="along">
        <section>
          <h3>As a link</h3>
          <LinkSection files={files} />
        </section>
        <PictureSection files={files} />
        <TableSection files={files} />
        <ModelAndFilmSection files={files} />
      </div>
    </Modal>
  );
}
