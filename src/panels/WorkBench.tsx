import { type ReactNode, useEffect } from 'react';
import './layout/layout.css';
import { useBench, useFleet, useMeshInHand, usePlace, useTrace } from '../store/react';
import { Beam } from './beam/Beam';
import { Burn } from './burn/Burn';
import { Card } from './card/Card';
import { later } from './later';
import { type Turn, Turns } from './layout/Turns';
import { LoadSwitches } from './loading/LoadSwitches';
import { Manifest } from './manifest/Manifest';
import { Boundary } from './trouble/Boundary';
import { useNudge } from './useNudge';
import { ViewSwitch } from './ViewSwitch';
import { VariantChoice } from './variants/VariantChoice';

const ArrangeSheet = later(
  () => import('./place/ArrangeSheet'),
  (module) => module.ArrangeSheet,
  { place: 'Arrange' },
);
const RevisionsSheet = later(
  () => import('./revisions/RevisionsSheet'),
  (module) => module.RevisionsSheet,
  { place: 'The revisions' },
);
const TraceSheet = later(
  () => import('./trace/TraceSheet'),
  (module) => module.TraceSheet,
  { place: 'The sheet of the drawing' },
);
interface WorkBenchProps {
  readonly stage: ReactNode;
  /** Which of its places has the room, where the window has not room for all. */
  readonly turn: Turn;
  readonly onTurn: (turn: Turn) => void;
}

/** Stage, beam, manifest and card of the bench that is given by its context: what stands inside an element `.bench`. */
export function WorkBench({ stage, turn, onTurn: setTurn }: WorkBenchProps) {
  const bench = useBench();
  const nudge = useNudge();
  const looksAtMesh = useMeshInHand() !== null;
  const arranging = usePlace((place) => place.open);
  const tracing = useTrace(({ api }) => api.getState().open);
  const revising = useFleet((fleet) => fleet.revisionsOpen);
  useEffect(() => {
    // However it came, by the dialog or dropped on the page, it is read on the card.
    if (looksAtMesh) setTurn('card');
  }, [looksAtMesh, setTurn]);
  useEffect(() => {
    if (tracing) setTurn('stage');
  }, [tracing, setTurn]);
  return (
    <>
      <section className="stage" data-testid="stage" aria-label="Stage">
        {/* biome-ignore lint/a11y/useSemanticElements: a drawing is no fieldset */}
        <div
          className="stage-picture"
          role="group"
          // biome-ignore lint/a11y/noNoninteractiveTabindex: the arrow keys move what is selected
          tabIndex={0}
          aria-label="Stage. Arrow keys move the selected thing, square brackets select the next one."
          {...nudge}
        >
          <Boundary place="The stage">{stage}</Boundary>
        </div>
        <ViewSwitch />
        {tracing && <TraceSheet />}
        <Boundary place="The row of switches">
          <LoadSwitches variants={<VariantChoice />} />
        </Boundary>
      </section>
      <section className="beam-place" aria-label="Beam and burn">
        <Boundary place="The beam">
          <Beam />
        </Boundary>
        <Boundary place="The burn">
          <Burn />
        </Boundary>
      </section>
      <Turns turn={turn} onTurn={setTurn} />
      <section className="manifest-place" data-testid="manifest" aria-label="Manifest">
        <Boundary place="The manifest">
          <Manifest onOpenCard={() => setTurn('card')} />
        </Boundary>
      </section>
      <section className="card-place" data-testid="card" aria-label="Card">
        <Boundary place="The card">
          <Card onClose={() => bench.view.setState({ selectedId: null })} />
        </Boundary>
      </section>
      {arranging && (
        <section className="arrange-place" data-testid="arrange" aria-label="Arrange">
          <ArrangeSheet />
        </section>
      )}
      {revising && (
        <section className="arrange-place" data-testid="revisions" aria-label="Revisions">
          <RevisionsSheet />
        </section>
      )}
    </>
  );
}
