import './menu.css';
import { useRef, useState } from 'react';
import type { UnitSystem } from '../../model/units';
import { useBench, useCommitted, useView } from '../../store/react';
import type { Theme } from '../../store/viewStore';
import { TextEntry } from '../fields/TextEntry';
import type { FileActions, OpenResult } from '../fileActions';
import { Icon } from '../icons';
import { later } from '../later';
import type { Sheet } from '../sheet';
import { useDrop } from './useDrop';

const Demos = later(
  () => import('./Demos'),
  (module) => module.Demos,
);
const ReadingFaults = later(
  () => import('./ReadingFaults'),
  (module) => module.ReadingFaults,
);

interface AppMenuProps {
  readonly files: FileActions;
  readonly onSheet: (sheet: Sheet) => void;
}

/** The aircraft's name, and behind it all that is seldom needed. */
export function AppMenu({ files, onSheet }: AppMenuProps) {
  const name = useCommitted((aircraft) => aircraft.name);
  const popover = useRef<HTMLDivElement>(null);
  const [failed, setFailed] = useState<Extract<OpenResult, { fileName: string }> | null>(null);
  const [choosing, setChoosing] = useState(false);
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
        <TextEntry
          label="Aircraft"
          read={(aircraft) => aircraft.name}
          write={(aircraft, text) => ({ ...aircraft, name: text })}
          step="Rename the aircraft"
        />
        <ul>
          <MenuItem onPick={run(() => setChoosing(true))}>Choose an aircraft…</MenuItem>
          <MenuItem onPick={run(files.newAircraft)}>New, an empty bench</MenuItem>
          <MenuItem onPick={run(open)}>Open a file…</MenuItem>
          <MenuItem onPick={run(files.saveFile)}>Save as a file</MenuItem>
        </ul>
        <Settings />
        <ul>
          <MenuItem onPick={run(() => onSheet('cautions'))}>Before the first flight</MenuItem>
          <MenuItem onPick={run(() => onSheet('shortcuts'))}>Keys</MenuItem>
        </ul>
      </div>
      {failed && <ReadingFaults {...failed} onClose={() => setFailed(null)} />}
      {choosing && <Demos files={files} onClose={() => setChoosing(false)} />}
    </div>
  );
}

function MenuItem({ onPick, children }: { readonly onPick: () => void; readonly children: string }) {
  return (
    <li>
      <button type="button" className="menu-item" onClick={onPick}>
        {children}
      </button>
    </li>
  );
}

const unitSystems: readonly { readonly value: UnitSystem; readonly label: string }[] = [
  { value: 'metric', label: 'Millimetres and grams' },
  { value: 'inch-ounce', label: 'Inches and ounces' },
];

const themes: readonly { readonly value: Theme; readonly label: string }[] = [
  { value: 'system', label: 'As the system' },
  { value: 'light', label: 'Light' },
  { value: 'dark', label: 'Dark' },
];

function Settings() {
  const bench = useBench();
  const units = useView((view) => view.units);
  const theme = useView((view) => view.theme);
  const fromId = useView((view) => view.measureFromId);
  const points = useCommitted((aircraft) => aircraft.referencePoints);
  const datum = useCommitted((aircraft) => aircraft.datum);
  const known = points.some(({ id }) => id === fromId) ? fromId : null;
  return (
    <div className="menu-settings">
      <label>
        Units
        <select
          value={units}
          onChange={(event) => bench.view.setState({ units: event.target.value as UnitSystem })}
        >
          {unitSystems.map(({ value, label }) => (
            <option key={value} value={value}>
              {label}
            </option>
          ))}
        </select>
      </label>
      <label>
        Stations from
        <select
          value={known ?? ''}
          onChange={(event) => bench.view.setState({ measureFromId: event.target.value || null })}
        >
          <option value="">Datum: {datum}</option>
          {points.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <label>
        Theme
        <select
          value={theme}
          onChange={(event) => bench.view.setState({ theme: event.target.value as Theme })}
        >
          {themes.map(({ value, label }) => (
            <option key={value} value={value}>
              {label}
            </option>
          ))}
        </select>
      </label>
    </div>
  );
}
