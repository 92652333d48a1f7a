import { useEffect, useRef, useState } from 'react';
import type { BodyRole } from '../../model/airframe/bodies';
import { fileStem } from '../../model/document/fileStem';
import { variantName } from '../../model/document/variants';
import { elevationSvg } from '../../model/sheet/elevationSvg';
import type { SheetView } from '../../model/sheet/projection';
import { massCsv, partsCsv } from '../../model/words/tablesOut';
import type { Bench } from '../../store/bench';
import type { Pictures } from '../../store/pictures';
import { useBench } from '../../store/react';
import type { FileActions } from '../fileActions';
import { drawnSvg, pageDrawings } from './drawnSvg';
import { FILM_S, filmBurn, filmTrouble } from './film';

interface SectionProps {
  readonly files: FileActions;
}

const nameOf = ({ document }: Bench, what: string) =>
  `${fileStem(variantName(document.api.getState().committed))}-${what}`;

/** Tables for a spreadsheet. */
export function TableSection({ files }: SectionProps) {
  const bench = useBench();
  const save = (what: string, text: string) => files.saveText(nameOf(bench, `${what}.csv`), text, 'text/csv');
  const aircraft = () => bench.document.api.getState().committed;
  const shown = () => {
    const { down, positions } = bench.view.getState();
    const { estimate, estimateFresh } = bench.balance.get();
    return { down, positions, estimate: estimateFresh ? estimate : null };
  };
  return (
    <section>
      <h3>As tables</h3>
      <p className="hint">CSV, always in mm and g from the datum, with decimal points.</p>
      <p className="along-row">
        <button type="button" className="button" onClick={() => save('parts', partsCsv(aircraft()))}>
          Parts
        </button>
        <button type="button" className="button" onClick={() => save('mass', massCsv(aircraft(), shown()))}>
          Mass properties by fuel
        </button>
      </p>
    </section>
  );
}

/** The width of a picture for print: 170 mm at 600 dots to the inch. */
const PRINT_PX = 4016;

const elevations: readonly { readonly view: SheetView; readonly label: string }[] = [
  { view: 'side', label: 'Side' },
  { view: 'top', label: 'Top' },
  { view: 'front', label: 'Front' },
];

/** The stage as it stands, the elevations, and every drawing that is on the screen. */
export function PictureSection({ files }: SectionProps) {
  const bench = useBench();
  const [drawings] = useState(pageDrawings);
  const trial = useTrial();
  const saveSvg = (what: string, svg: string) =>
    files.saveText(nameOf(bench, `${fileStem(what)}.svg`), svg, 'image/svg+xml');
  const elevation = (view: SheetView) =>
    saveSvg(
      view,
      elevationSvg(bench.document.api.getState().committed, view, bench.balance.get().cgMm, colourOf),
    );
  return (
    <section>
      <h3>As pictures</h3>
      <p className="along-row">
        <StageButton
          files={files}
          trial={trial}
          name="stage.png"
          type="image/png"
          take={(stage) => stage.png(PRINT_PX)}
        >
          The stage, PNG
        </StageButton>
        {elevations.map(({ view, label }) => (
          <button key={view} type="button" className="button" onClick={() => elevation(view)}>
            {label}, SVG
          </button>
        ))}
        {drawings.map(({ name, element }, at) => (
          <button
            key={at}
            type="button"
            className="button"
            onClick={() =>
              trial.run(async () => {
                const svg = drawnSvg(element);
                if (svg === null) throw new Error('it is not on the screen any more');
                saveSvg(name, svg);
              })
            }
          >
            {name}, SVG
          </button>
        ))}
      </p>
      <p className="hint">
        The stage is drawn anew for print; the words that lie over it stay out. Drawings come at print size,
        those that are open on the bench now.
      </p>
      {trial.fault && <p role="alert">Not saved: {trial.fault}.</p>}
    </section>
  );
}

const colourOf = (role: BodyRole): string =>
  getComputedStyle(document.documentElement).getPropertyValue(`--${role}`).trim() || '#808080';

/** The model for other programs, and the film of the burn. */
export function ModelAndFilmSection({ files }: SectionProps) {
  const trial = useTrial();
  return (
    <section>
      <h3>As a model, as a film</h3>
      <p className="along-row">
        <StageButton
          files={files}
          trial={trial}
          name="model.glb"
          type="model/gltf-binary"
          take={(stage) => stage.glb()}
        >
          Model, glTF
        </StageButton>
        <FilmButton files={files} trial={trial} />
      </p>
      {trial.fault && <p role="alert">Not saved: {trial.fault}.</p>}
    </section>
  );
}

interface StageButtonProps extends SectionProps {
  readonly trial: Trial;
  readonly name: string;
  readonly type: string;
  readonly take: (stage: Pictures) => Promise<Uint8Array<ArrayBuffer>>;
  readonly children: string;
}

/** Saves what the stage alone can make. */
function StageButton({ files, trial, name, type, take, children }: StageButtonProps) {
  const bench = useBench();
  const save = async () => {
    const stage = bench.pictures.now();
    if (!stage) throw new Error('the stage, which makes it, is not there');
    files.saveBytes(nameOf(bench, name), await take(stage), type);
  };
  return (
    <button type="button" className="button" disabled={trial.busy} onClick={() => trial.run(save)}>
      {children}
    </button>
  );
}

function FilmButton({ files, trial }: SectionProps & { readonly trial: Trial }) {
  const bench = useBench();
  const [seconds, setSeconds] = useState<number | null>(null);
  const control = useRef<AbortController | null>(null);
  useEffect(() => () => control.current?.abort(), []);
  const trouble = filmTrouble(bench);
  if (trouble !== null) return <span className="hint">{trouble}</span>;
  const film = async () => {
    control.current = new AbortController();
    try {
      const bytes = await filmBurn(bench, control.current.signal, (now) => setSeconds(Math.floor(now)));
      files.saveBytes(nameOf(bench, 'burn.webm'), bytes, 'video/webm');
    } finally {
      setSeconds(null);
    }
  };
  return (
    <button type="button" className="button" disabled={trial.busy} onClick={() => trial.run(film)}>
      {seconds === null ? 'Film of the burn, WebM' : `Filming: ${seconds} of ${FILM_S} s`}
    </button>
  );
}

interface Trial {
  readonly busy: boolean;
  readonly fault: string | null;
  run(work: () => Promise<void>): void;
}

/** One thing that is tried at a time, and why the last one was not done. */
function useTrial(): Trial {
  const [busy, setBusy] = useState(false);
  const [fault, setFault] = useState<string | null>(null);
  const run = (work: () => Promise<void>) => {
    setBusy(true);
    setFault(null);
    work().then(
      () => setBusy(false),
      (error: unknown) => {
        setBusy(false);
        setFault((error instanceof Error ? error.message : String(error)).replace(/\.$/, ''));
      },
    );
  };
  return { busy, fault, run };
}
