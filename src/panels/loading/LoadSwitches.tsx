import './loading.css';
import { type ReactNode, useState } from 'react';
import { positionOf, switchesOf } from '../../model/airframe/loadSwitches';
import type { Aircraft } from '../../model/document/types';
import { feedFindings } from '../../model/loads/feedFindings';
import { useCommitted, useSteadyList, useView } from '../../store/react';
import { SwitchSet } from './SwitchSet';

/** More than so many would cover the stage. */
const MOST_IN_A_ROW = 2;

/**
 * What is aboard and how the undercarriage stands: a switch each. Nothing on an aircraft without; many of them, or any on
 * a narrow stage, behind one button that says how they stand.
 */
export function LoadSwitches({ variants }: { readonly variants: ReactNode }) {
  const switches = useCommitted(useSteadyList(switchesOf));
  const positions = useView((view) => view.positions);
  const [open, setOpen] = useState(false);
  const findings = useCommitted(
    useSteadyList((aircraft: Aircraft) => feedFindings(aircraft).map(({ sentence }) => sentence)),
  );
  const hasVariants = useCommitted((aircraft) => aircraft.variants !== undefined);
  if (switches.length === 0) return hasVariants ? <div className="load-switches">{variants}</div> : null;
  const standing = switches
    .map((loadSwitch) => `${loadSwitch.name} ${positionOf(loadSwitch, positions).name}`)
    .join(', ');
  return (
    <div
      className="load-switches"
      data-testid="switches"
      data-many={switches.length > MOST_IN_A_ROW || undefined}
      data-open={open || undefined}
    >
      {variants}
      <button
        type="button"
        className="button switches-button"
        aria-expanded={open}
        title={standing}
        onClick={() => setOpen(!open)}
      >
        {switches.length === 1 ? standing : 'Aboard'}
        {switches.length > 1 && <span className="unseen">: {standing}</span>}
      </button>
      <SwitchSet switches={switches} />
      {findings.length > 0 && (
        <p className="feed-findings" role="status">
          {findings.join('\n')}
        </p>
      )}
    </div>
  );
}
