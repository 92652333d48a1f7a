import './menu.css';
import { useRef, useState } from 'react';
import { useCommitted } from '../../store/react';
import type { FileActions, OpenResult } from '../fileActions';
import { Icon } from '../icons';
import { later } from '../later';
import type { OpenDialog } from '../openDialog';
import { useDrop } from './useDrop';

const Demos = later(
  () => import('./Demos'),
  (module) => module.Demos,
  { place: 'The choice of aircraft' },
);
// Fetched at once, though it shows when it is opened: saving must not wait for a server.
const MenuSheet = later(
  () => import('./MenuSheet'),
  (module) => module.MenuSheet,
  { place: 'The menu' },
);
const TakeAlong = later(
  () => import('../along/TakeAlong'),
  (module) => module.TakeAlong,
  { place: 'Take along' },
);
const ReadingFaults = later(
  () => import('./ReadingFaults'),
  (module) => module.ReadingFaults,
  { place: 'The list of what is wrong with the file' },
);

interface AppMenuProps {
  readonly files: FileActions;
  readonly onSheet: (sheet: OpenDialog) => void;
}

/** The aircraft's name, and behind it all that is seldom needed. */
export function AppMenu({ files, onSheet }: AppMenuProps) {
  const name = useCommitted((aircraft) => aircraft.name);
  const popover = useRef<HTMLDivElement>(null);
  const [failed, setFailed] = useState<Extract<OpenResult, { fileName: string }> | null>(null);
  const [choosing, setChoosing] = useState(false);
  const [taking, setTaking] = useState(false);
  const close = () => popover.current?.hidePopover();
  const run = (action: () => unknown) => () => {
    close();
    void action();
  };
  const show = (result: OpenResult) => {
    if (!result.ok && 'faults' in result) setFailed(result);
  };
  const open = async () => show(await files.openFile());
  useDrop(async (dropped) => show(await files.openDropped(dropped)));
  return (
    <div className="app-menu">
      <button type="button" className="app-name" popoverTarget="app-menu">
        <span className="aircraft-name">
          {name} <Icon name="down" />
        </span>
      </button>
      <div id="app-menu" ref={popover} popover="auto" className="menu-sheet">
        <MenuSheet
          files={files}
          onSheet={(sheet) => {
            close();
            onSheet(sheet);
          }}
          onChoose={run(() => setChoosing(true))}
          onOpen={run(open)}
          onTake={run(() => setTaking(true))}
          onPick={close}
        />
      </div>
      {failed && <ReadingFaults {...failed} onClose={() => setFailed(null)} />}
      {taking && <TakeAlong files={files} onClose={() => setTaking(false)} />}
      {choosing && <Demos files={files} onClose={() => setChoosing(false)} />}
    </div>
  );
}
