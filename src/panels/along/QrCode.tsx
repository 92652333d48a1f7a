import { useMemo } from 'react';
import { fitsCode, overCodePct } from './qrRoom';
import { QUIET_SQUARES, qrSquares, squaresPath } from './qrSquares';

interface QrCodeProps {
  readonly front: string;
  readonly digits: string;
}

/** The link as a QR code, dark on white in either theme, or why there is none. */
export function QrCode({ front, digits }: QrCodeProps) {
  const fits = fitsCode(front, digits);
  const code = useMemo(() => (fits ? qrSquares(front, digits) : null), [fits, front, digits]);
  if (!code) {
    return (
      <p>
        This aircraft is {overCodePct(front, digits)} % too much for a QR code: the largest there is holds
        2953 bytes, or 7089 digits (ISO/IEC 18004, version 40, level L). The link and the file carry it.
      </p>
    );
  }
  const side = code.side + 2 * QUIET_SQUARES;
  return (
    <figure className="qr">
      <svg
        viewBox={`${-QUIET_SQUARES} ${-QUIET_SQUARES} ${side} ${side}`}
        role="img"
        aria-label="QR code of the link"
        data-testid="qr"
        shapeRendering="crispEdges"
      >
        <rect x={-QUIET_SQUARES} y={-QUIET_SQUARES} width={side} height={side} fill="#fff" />
        <path d={squaresPath(code)} fill="#000" />
      </svg>
      <figcaption className="hint">
        {code.side} squares a side
        {code.side > DENSE ? ': a dense one. Fill the screen with it and hold still' : ''}.
      </figcaption>
    </figure>
  );
}

/** Version 25 and up are hard for a camera at arm’s length: common experience, no published limit. */
const DENSE = 117;
