import { FACES, type Face, faceStation, placeFace } from '../../model/airframe/align';
import { itemById } from '../../model/document/edit';
import { LEAST_SHOWN_MM } from '../../model/units';
import { useBench, useView } from '../../store/react';
import { Measure } from '../fields/Measure';
import { useBenchValue } from '../Live';
import { useReadings } from '../readings';

const FACE_WORDS: Readonly<Record<Face, string>> = {
  front: 'front face',
  middle: 'middle',
  rear: 'rear face',
};

/** The station of a part or tank, typed and read to its front face, its middle or its rear face, and from where that is. */
export function StationField({ id, name }: { readonly id: string; readonly name: string }) {
  const bench = useBench();
  const say = useReadings();
  const face = useView((view) => view.face);
  const side = useBenchValue(({ document }) => {
    const item = itemById(document.current(), id);
    const offMm = item ? faceStation(item, face) - say.fromMm : 0;
    if (Math.abs(offMm) < LEAST_SHOWN_MM) return 'at';
    return offMm > 0 ? 'behind' : 'ahead of';
  });
  return (
    <>
      <Measure
        label="Station"
        term="station"
        quantity="length"
        from={say.fromMm}
        step={`Move ${name}`}
        read={(aircraft) => {
          const item = itemById(aircraft, id);
          return item && faceStation(item, face);
        }}
        write={(aircraft, stationMm) => placeFace(aircraft, id, face, stationMm)}
      />
      <div className="station-of">
        <select
          aria-label="Station of its"
          value={face}
          onChange={(event) => bench.view.setState({ face: event.target.value as Face })}
        >
          {FACES.map((which) => (
            <option key={which} value={which}>
              {FACE_WORDS[which]}
            </option>
          ))}
        </select>
        <span className="hint">
          {side} {say.from}
        </span>
      </div>
    </>
  );
}
