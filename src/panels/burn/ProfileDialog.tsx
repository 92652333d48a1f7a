import type { Aircraft, Fuel } from '../../model/document/types';
import { formatTime } from '../../model/units';
import { useCommitted } from '../../store/react';
import { EditButton } from '../fields/EditButton';
import { RowsTable } from '../fields/RowsTable';
import { TextEntry } from '../fields/TextEntry';
import { Modal } from '../Modal';
import { burnProfiles, dumpProfiles } from './profiles';

type Phase = Fuel['profile']['phases'][number];

const withProfile = (aircraft: Aircraft, change: Partial<Fuel['profile']>): Aircraft =>
  aircraft.fuel
    ? { ...aircraft, fuel: { ...aircraft.fuel, profile: { ...aircraft.fuel.profile, ...change } } }
    : aircraft;

const lengthOf = (phases: readonly Phase[]) =>
  formatTime(phases.reduce((sum, { durationS }) => sum + durationS, 0));

/** The fuel profile: one from the list, or phases typed by hand. */
export function ProfileDialog({ onClose }: { readonly onClose: () => void }) {
  const use = useCommitted(({ fuel }) => fuel?.use ?? 'burn');
  const phases = useCommitted(({ fuel }) => fuel?.profile.phases);
  const current = useCommitted(({ fuel }) => JSON.stringify(fuel?.profile.phases));
  const offered = use === 'dump' ? dumpProfiles : burnProfiles;
  return (
    <Modal title="Fuel profile" onClose={onClose} wide>
      <div className="profiles">
        {offered.map((profile) => (
          <EditButton
            key={profile.name}
            aria-pressed={JSON.stringify(profile.phases) === current}
            step="Choose a fuel profile"
            edit={(aircraft) => withProfile(aircraft, profile)}
          >
            {profile.name} <span className="hint">{lengthOf(profile.phases)}</span>
          </EditButton>
        ))}
      </div>
      <TextEntry
        label="Name"
        step="Rename the fuel profile"
        read={({ fuel }) => fuel?.profile.name}
        write={(aircraft, name) => withProfile(aircraft, { name })}
      />
      <RowsTable<Phase>
        title={`Phases, ${lengthOf(phases ?? [])} in all`}
        noun="phase"
        least={1}
        columns={[
          { key: 'name', label: 'Phase', quantity: 'text' },
          { key: 'durationS', label: 'Lasts', quantity: 'time' },
          { key: 'throttlePct', label: use === 'dump' ? 'Valve open' : 'Throttle', quantity: 'ratio' },
        ]}
        read={({ fuel }) => fuel?.profile.phases ?? []}
        write={(aircraft, rows) => withProfile(aircraft, { phases: rows })}
        another={() => ({ name: 'Cruise', durationS: 300, throttlePct: 50 })}
      />
    </Modal>
  );
}
