import './begin.css';
import { useDeferredValue, useMemo, useState } from 'react';
import { arrangementOf } from '../../model/begin/arrangements';
import { motorOf, readyToFlyG, shapedAircraft } from '../../model/begin/beginAircraft';
import { type TapeField, tapeFaults, wholeTape } from '../../model/begin/tape';
import { PACK_ID } from '../../model/begin/thing';
import type { Aircraft } from '../../model/document/types';
import { useBench } from '../../store/react';
import { Refusal } from '../fields/EditButton';
import { ArrangementCards } from './ArrangementCards';
import { BeginDrawing, type MarkedDistance } from './BeginDrawing';
import { beginningOf, firstSheet, madeAircraft, type Sheet, sheetFaults } from './beginning';
import { KitFields } from './KitFields';
import { LimitFields } from './LimitFields';
import { MakeFields } from './MakeFields';
import { fieldNames, TapeFields } from './TapeFields';

/** A new aircraft from a picture of its arrangement and the few figures that tape, scales and manual give. */
export function Begin() {
  const bench = useBench();
  const [sheet, setSheet] = useState<Sheet>(firstSheet);
  const [looking, setLooking] = useState<Looking | null>(null);
  const [refused, setRefused] = useState<string | null>(null);
  const { arrangement } = sheet;
  const change = (some: Partial<Sheet>) => {
    setSheet((before) => ({ ...before, ...some }));
    setRefused(null);
  };
  // The drawing may lag behind quick typing; the fields never do.
  const drawn = useDrawn(useDeferredValue(sheet));
  const faults = sheetFaults(sheet);
  const put = () => {
    const aircraft = madeAircraft(sheet);
    if (typeof aircraft === 'string') return setRefused(aircraft);
    bench.drag.cancel();
    bench.document.replace(
      aircraft,
      `Begin a new aircraft, ${arrangementOf(arrangement).name.toLowerCase()}`,
    );
    bench.view.setState({
      place: 'bench',
      selectedId: aircraft.parts.some(({ id }) => id === PACK_ID) ? PACK_ID : null,
    });
    bench.notice.tell({ about: 'begin', tone: 'note', text: NEXT });
  };
  return (
    <main className="place begin" data-testid="begin">
      <header className="begin-head">
        <h2>New aircraft</h2>
        <p className="hint">
          What you do not type keeps the proportion of its kind, and is called an assumption.
        </p>
      </header>
      <div className="begin-sheet">
        <ArrangementCards chosen={arrangement} onChoose={(id) => change({ arrangement: id })} />
        <section className="begin-picture" aria-label="Drawing">
          <BeginDrawing
            {...drawn}
            looking={looking && !isMarked(looking) ? looking : null}
            marked={looking && isMarked(looking) ? markedOf(sheet, looking, drawn.aircraft) : null}
            names={fieldNames(drawn.arrangement)}
          />
        </section>
        <div className="begin-fields">
          <TapeFields
            sheet={sheet}
            tape={drawn.tape}
            faults={faults}
            looking={looking && !isMarked(looking) ? looking : null}
            onLook={setLooking}
            onChange={change}
          />
          <MakeFields sheet={sheet} faults={faults} assumedG={drawn.massG} onChange={change} />
          <KitFields sheet={sheet} faults={refused ? faults : {}} onLook={setLooking} onChange={change} />
          <LimitFields
            sheet={sheet}
            points={drawn.aircraft.referencePoints}
            faults={refused || faults.band?.startsWith('The first') ? faults : {}}
            onLook={setLooking}
            onChange={change}
          />
          <div className="begin-put">
            <button type="button" className="button begin-go" onClick={put}>
              Put it on the bench
            </button>
            <Refusal fault={refused} />
            <p className="hint">
              The aircraft that is there now keeps its place in the fleet; undo brings it back too.
            </p>
          </div>
        </div>
      </div>
    </main>
  );
}

/** What is being typed: a figure of the tape, or a distance of the kit or of the manual. */
type Looking = TapeField | Marked;

const marks = ['balancesMm', 'forwardMm', 'aftMm'] as const;
type Marked = (typeof marks)[number];
const isMarked = (looking: Looking): looking is Marked => (marks as readonly string[]).includes(looking);

/** From where the distance is measured to where it ends; null while nothing is typed. */
function markedOf(
  { kit, band }: Sheet,
  looking: Marked,
  { referencePoints }: Aircraft,
): MarkedDistance | null {
  if (looking === 'balancesMm') {
    return kit?.balancesMm == null ? null : { name: 'Balances at', fromMm: 0, toMm: kit.balancesMm };
  }
  const distanceMm = band?.[looking] ?? null;
  const from = referencePoints.find(({ id }) => id === band?.fromId);
  if (distanceMm === null || !from) return null;
  const [fromMm] = from.positionMm;
  return {
    name: looking === 'forwardMm' ? 'Forward limit' : 'Aft limit',
    fromMm,
    toMm: fromMm + distanceMm,
  };
}

const NEXT =
  'On the bench. Next, place the pack: drag it in its bay, or press “Where may it sit?” on its card. Masses marked typical are assumed; weigh yours.';

/** What is drawn: the sheet's aircraft, or the last one that could be while the figures contradict each other. */
function useDrawn(sheet: Sheet) {
  const { arrangement, typed } = sheet;
  const motor = motorOf(sheet);
  const sound = Object.keys(tapeFaults(arrangement, typed, motor)).length === 0;
  const [kept, setKept] = useState(() => drawingOf(sheet));
  const now = useMemo(() => (sound ? drawingOf(sheet) : null), [sheet, sound]);
  if (now && now !== kept) setKept(now);
  if (now) return now;
  // Figures that cannot be of another arrangement must not keep the picture of the one before.
  return kept.arrangement === arrangement ? kept : drawingOf({ ...sheet, typed: {} });
}

function drawingOf(sheet: Sheet) {
  const { arrangement, typed } = sheet;
  const beginning = beginningOf(sheet);
  const aircraft = shapedAircraft(beginning);
  return {
    aircraft,
    massG: readyToFlyG(beginning),
    arrangement,
    tape: wholeTape(arrangement, typed, motorOf(sheet)),
  };
}
