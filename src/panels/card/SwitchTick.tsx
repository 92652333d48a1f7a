import { addSwitch, idsOf, removeSwitch, type SwitchKind } from '../../model/document/switchEdits';
import type { Aircraft } from '../../model/document/types';
import { Tick } from '../fields/Choice';

interface SwitchTickProps {
  readonly id: string;
  readonly name: string;
  readonly kind: SwitchKind;
}

const words = {
  aboard: 'Comes off: a load state without it',
  'on-stand': 'Comes off for the balancing stand',
  filled: 'Can be empty: a load state without its liquid',
} as const;

/** Whether an item has a switch of its own on the stage. One that shares a switch with others is left as it is. */
export function SwitchTick({ id, name, kind }: SwitchTickProps) {
  const switchOf = ({ switches = [] }: Aircraft) => switches.find((each) => idsOf(each).includes(id));
  return (
    <Tick
      label={words[kind]}
      step={`Change the load states of ${name}`}
      read={(aircraft) => switchOf(aircraft) !== undefined}
      write={(aircraft, on) => {
        const loadSwitch = switchOf(aircraft);
        if (on) return loadSwitch ? aircraft : addSwitch(aircraft, name, kind, [id]);
        return loadSwitch ? removeSwitch(aircraft, loadSwitch.id) : aircraft;
      }}
    />
  );
}
