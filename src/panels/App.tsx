import { type ReactNode, useEffect, useMemo, useState } from 'react';
import './theme.css';
import './controls.css';
import './layout/layout.css';
import type { Bench } from '../store/bench';
import { useBench, useFleet, useMeshInHand, usePlace, useTrace, useView } from '../store/react';
import { Beam } from './beam/Beam';
import { Burn } from './burn/Burn';
import { Card } from './card/Card';
import type { FileActions } from './fileActions';
import { FilesContext } from './filesContext';
import { later } from './later';
import { type Turn, Turns } from './layout/Turns';
import { LoadSwitches } from './loading/LoadSwitches';
import { Manifest } from './manifest/Manifest';
import { Notices } from './Notices';
import type { OpenDialog } from './openDialog';
import { PlaceShown } from './places/PlaceNav';
import { ShowContext } from './showContext';
import { Words } from './Term';
import { TopBar } from './top/TopBar';
import { Boundary } from './trouble/Boundary';
import { VerdictPlace } from './trouble/VerdictPlace';
import { useNudge } from './useNudge';
import { useShortcuts } from './useShortcuts';
import { useTheme } from './useTheme';
import { ViewSwitch } from './ViewSwitch';
import { VariantChoice } from './variants/VariantChoice';

const Cautions = later(
  () => import('./Cautions'),
  (module) => module.Cautions,
  { place: 'The list of cautions' },
);
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
const Shortcuts = later(
  () => import('./Shortcuts'),
  (module) => module.Shortcuts,
  { place: 'The list of keys' },
);

interface AppProps {
  readonly stage: ReactNode;
  readonly files: FileActions;
  readonly start: (bench: Bench) => void;
}

/** Windows with a low strip under the stage: those that are not high, and those that hold all in one column. */
const LOW_WINDOW =
  '(max-height: 819px), (min-width: 701px) and (max-width: 1099px) and (max-aspect-ratio: 1 / 1)';

/** The bench as a person sees it: every place, and the stage handed in from outside. */
export function App({ stage, files, start }: AppProps) {
  const showing = useMemo(() => ({ stage, start }), [stage, start]);
  return (
    <FilesContext value={files}>
      <ShowContext value={showing}>
        <Boundary place="The bench">
          <Places stage={stage} files={files} />
        </Boundary>
        <Notices />
      </ShowContext>
    </FilesContext>
  );
}

function Places({ stage, files }: Omit<AppProps, 'start'>) {
  const [sheet, setSheet] = useState<OpenDialog>(null);
  const [turn, setTurn] = useState<Turn>('stage');
  const bench = useBench();
  const nudge = useNudge();
  const away = useView(({ place }) => place !== 'bench');
  const looksAtMesh = useMeshInHand() !== null;
  const arranging = usePlace((place) => place.open);
  const tracing = useTrace(({ api }) => api.getState().open);
  const revising = useFleet((fleet) => fleet.revisionsOpen);
  useTheme();
  useShortcuts({ openShortcuts: () => setSheet('shortcuts'), save: () => void files.saveFile() });
  useEffect(() => {
    // However it came, by the dialog or dropped on the page, it is read on the card.
    if (looksAtMesh) setTurn('card');
  }, [looksAtMesh]);
  useEffect(() => {
    if (tracing) setTurn('stage');
  }, [tracing]);
  useEffect(() => {
    const window = globalThis.matchMedia(LOW_WINDOW);
    const tell = () => bench.view.setState({ lowWindow: window.matches });
    tell();
    window.addEventListener('change', tell);
    return () => window.removeEventListener('change', tell);
  }, [bench]);
  return (
    <div className="app" data-tab={turn}>
      <header>
        <h1 className="unseen">Counterpoise</h1>
        <Boundary place="The menu">
          <TopBar files={files} onSheet={setSheet} />
        </Boundary>
        <VerdictPlace />
      </header>
      <main className="bench" inert={away}>
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
      </main>
      <PlaceShown />
      {sheet === 'cautions' && <Cautions onClose={() => setSheet(null)} />}
      {sheet === 'words' && <Words onClose={() => setSheet(null)} />}
      {sheet === 'shortcuts' && <Shortcuts onClose={() => setSheet(null)} />}
    </div>
  );
}
