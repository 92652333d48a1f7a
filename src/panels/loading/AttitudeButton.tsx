import './loading.css';
import { attitudeName, isLevel, LEVEL_ATTITUDE } from '../../model/loads/attitude';
import { useBench, useView } from '../../store/react';
import { setAttitude } from '../../store/viewStore';

interface AttitudeButtonProps {
  readonly open: boolean;
  readonly onToggle: () => void;
}

/** Opens the attitudes, and says how the aircraft is held; away from level it also puts it level again. */
export function AttitudeButton({ open, onToggle }: AttitudeButtonProps) {
  const bench = useBench();
  const attitude = useView((view) => view.attitude);
  const name = attitudeName(attitude);
  return (
    <>
      <button
        type="button"
        className="button attitude-button"
        aria-expanded={open}
        aria-label={`Attitude: ${name}`}
        title="Attitude"
        onClick={onToggle}
      >
        <svg className="icon" viewBox="0 0 16 16" aria-hidden="true">
          <path
            style={{ rotate: `${attitude.pitchDeg}deg`, transformOrigin: '8px 8px' }}
            d="M1.5 8.5 4 7h8.5l2-3.2v5.4c0 .8-.6 1.3-1.4 1.3H5zM6.5 8.8h4"
          />
        </svg>
        <span className="attitude-name">{name}</span>
      </button>
      {!isLevel(attitude) && (
        <button type="button" className="button bare" onClick={() => setAttitude(bench.view, LEVEL_ATTITUDE)}>
          Level it
        </button>
      )}
    </>
  );
}
