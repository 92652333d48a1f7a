import { type ReactNode, useState } from 'react';
import './theme.css';
import './app.css';
import { useBench, usePlace } from '../store/react';
import { Beam } from './beam/Beam';
import { Burn } from './burn/Burn';
import { Card } from './card/Card';
import type { FileActions } from './fileActions';
import { FilesContext } from './filesContext';
import { later } from './later';
import { LoadSwitches } from './loading/LoadSwitches';
import { Manifest } from './manifest/Manifest';
import { AppMenu } from './menu/AppMenu';
import { Notices } from './Notices';
import type { Sheet } from './sheet';
import { Boundary } from './trouble/Boundary';
import { VerdictPlace } from './trouble/VerdictPlace';
import { useNudge } from './useNudge';
import { useShortcuts } from './useShortcuts';
import { useTheme } from './useTheme';
import { ViewSwitch } from './ViewSwitch';

const Cautions = later(
  () => import('./Cautions'),
  (module) => module.Cautions,
);
const ArrangeSheet = later(
  () => import('./place/ArrangeSheet'),
  (module) => module.ArrangeSheet,
);
const Shortcuts = later(
  () => import('./Shortcuts'),
  (module) => module.Shortcuts,
);

interface AppProps {
  readonly stage: ReactNode;
  readonly files: FileActions;
}

/** The bench as a person sees it: every place, and the stage handed in from outside. */
export function App({ stage, files }: AppProps) {
  return (
    <FilesContext value={files}>
      <Boundary place="The bench">
        <Places stage={stage} files={files} />
      </Boundary>
      <Notices />
    </FilesContext>
  );
}

function Places({ stage, files }: AppProps) {
  const [sheet, setSheet] = useState<Sheet>(null);
  const [tab, setTab] = useState<'manifest' | 'card'>('manifest');
  const bench = useBench();
  const nudge = useNudge();
  const arranging = usePlace((place) => place.open);
  useTheme();
  useShortcuts({ openShortcuts: () => setSheet('shortcuts') });
  return (
    <div className="app" data-tab={tab}>
      <header className="app-header">
        <h1 className="unseen">Counterpoise</h1>
        <Boundary place="The menu">
          <AppMenu files={files} onSheet={setSheet} />
        </Boundary>
        <VerdictPlace />
      </header>
      <main className="bench">
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
          <Boundary place="The row of switches">
            <LoadSwitches />
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
        {/* Only on narrow screens: manifest and card take turns. */}
        <nav className="sheet-tabs" aria-label="Below the bench">
          <button type="button" aria-pressed={tab === 'manifest'} onClick={() => setTab('manifest')}>
            Manifest
          </button>
          <button type="button" aria-pressed={tab === 'card'} onClick={() => setTab('card')}>
            Card
          </button>
        </nav>
        <section className="manifest-place" data-testid="manifest" aria-label="Manifest">
          <Boundary place="The manifest">
            <Manifest onOpenCard={() => setTab('card')} />
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
      </main>
      <footer className="app-footer">
        <p>
          Estimates are estimates: weigh your own parts, and have an experienced hand check the balance before
          the first flight.
        </p>
        <button type="button" className="link" onClick={() => setSheet('cautions')}>
          Before the first flight
        </button>
      </footer>
      {sheet === 'cautions' && <Cautions onClose={() => setSheet(null)} />}
      {sheet === 'shortcuts' && <Shortcuts onClose={() => setSheet(null)} />}
    </div>
  );
}
