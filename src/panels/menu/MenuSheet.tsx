import type { UnitSystem } from '../../model/units';
import { useBench, useView } from '../../store/react';
import type { Theme } from '../../store/viewStore';
import { TextEntry } from '../fields/TextEntry';
import type { FileActions } from '../fileActions';
import type { OpenDialog } from '../openDialog';

interface MenuSheetProps {
  readonly files: FileActions;
  readonly onSheet: (sheet: OpenDialog) => void;
  readonly onChoose: () => void;
  readonly onOpen: () => void;
  readonly onTake: () => void;
  /** Something else was picked: the sheet has done its work. */
  readonly onPick: () => void;
}

/** All that is seldom needed: files, units, the theme, and what else there is to read. */
export function MenuSheet({ files, onSheet, onChoose, onOpen, onTake, onPick }: MenuSheetProps) {
  const bench = useBench();
  const then = (action: () => unknown) => () => {
    onPick();
    void action();
  };
  return (
    <>
      <TextEntry
        label="Aircraft"
        read={(aircraft) => aircraft.name}
        write={(aircraft, text) => ({ ...aircraft, name: text })}
        step="Rename the aircraft"
      />
      <ul>
        <MenuItem onPick={then(() => bench.view.setState({ place: 'begin', playing: false }))}>
          New aircraft…
        </MenuItem>
        <MenuItem onPick={onChoose}>Choose an aircraft…</MenuItem>
        <MenuItem onPick={then(files.newAircraft)}>New, an empty bench</MenuItem>
        <MenuItem onPick={onOpen}>Open a file…</MenuItem>
        <MenuItem onPick={then(files.saveFile)}>Save as a file</MenuItem>
        <MenuItem onPick={then(() => bench.view.setState({ place: 'variants', playing: false }))}>
          Variants…
        </MenuItem>
        <MenuItem onPick={then(() => bench.trace.setOpen(true))}>Lay a drawing under…</MenuItem>
        <MenuItem onPick={onTake}>Take along…</MenuItem>
        <MenuItem onPick={then(async () => (await import('../present/Present')).bookmark(bench))}>
          Bookmark for a talk
        </MenuItem>
        <MenuItem onPick={then(() => bench.view.setState({ place: 'present', playing: false }))}>
          Present…
        </MenuItem>
        <MenuItem
          onPick={then(() => {
            bench.view.setState({ place: 'bench' });
            bench.fleet.api.setState({ revisionsOpen: true });
          })}
        >
          Revisions…
        </MenuItem>
      </ul>
      <Settings />
      <ul>
        <MenuItem onPick={() => onSheet('cautions')}>Before the first flight</MenuItem>
        <MenuItem onPick={() => onSheet('words')}>Words</MenuItem>
        <MenuItem onPick={() => onSheet('shortcuts')}>Keys</MenuItem>
      </ul>
    </>
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
