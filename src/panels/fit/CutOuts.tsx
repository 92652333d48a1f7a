import './fit.css';
import { useContext } from 'react';
import { perObjects } from '../../engine/memory/memory';
import { type CutOut, cutOuts } from '../../model/airframe/cutOuts';
import type { Aircraft } from '../../model/document/types';
import { formatNumber } from '../../model/units';
import { FilesContext } from '../filesContext';
import { Icon } from '../icons';
import { useRestingValue } from '../Live';
import { useReadings } from '../readings';

const cutsFor = perObjects((aircraft: Aircraft, id: string): readonly CutOut[] =>
  cutOuts(aircraft).filter(({ partId, blockId }) => partId === id || blockId === id),
);

/** A file's name from the names of block and part. */
const fileNameOf = ({ blockName, partName }: CutOut) =>
  `${`${blockName} for ${partName}`.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '-')}.svg`;

/** The pockets that an item needs in blocks that may be cut, or that a block needs for what stands in it. */
export function CutOuts({ id }: { readonly id: string }) {
  const say = useReadings();
  const files = useContext(FilesContext);
  const cuts = useRestingValue(({ document }) => cutsFor(document.current(), id));
  if (cuts.length === 0) return null;
  const save = async (cut: CutOut) => {
    const { cutOutSvg } = await import('../../model/fit/cutOutSvg');
    files?.saveText(fileNameOf(cut), cutOutSvg(cut), 'image/svg+xml');
  };
  return (
    <>
      <h4>Cut-outs</h4>
      {cuts.map((cut) => (
        <div key={`${cut.pieceId} ${cut.partId}`} className="fit-cut" data-testid="cut-out">
          <p>
            {cut.partId === id ? cut.blockName : cut.partName}: a pocket{' '}
            <strong>{say.lengthFine(cut.depthMm)}</strong> deep
            {cut.through && ', right through'}, {formatNumber(cut.volumeMm3 / 1000, 1)} cm³,{' '}
            {say.mass(cut.massRemovedG)} less.
            {!cut.openToFace && ' No face is open to it: it has to be let in from the nearest.'}
          </p>
          <p className={cut.wallTooThin ? 'clash' : 'hint'}>
            {cut.wallTooThin && <Icon name="warn" />}
            <span>
              {cut.wallLeftMm === null
                ? 'No wall is left whole around it.'
                : `The thinnest wall left is ${say.lengthFine(cut.wallLeftMm)}${
                    cut.minimumWallMm > 0 ? `; at least ${say.lengthFine(cut.minimumWallMm)} wanted` : ''
                  }.`}
            </span>
          </p>
          <button type="button" className="button" onClick={() => save(cut)}>
            Save the 1:1 template
          </button>
        </div>
      ))}
    </>
  );
}
