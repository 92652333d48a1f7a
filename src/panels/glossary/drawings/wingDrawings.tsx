import type { wingEntries } from '../../../model/glossary/wingEntries';
import { formatNumber } from '../../../model/units';
import { type HalfWing, marginPct, marginShown, planformOf, straight, swept, trapezoid } from './figures';
import { Arrow, Cross, Dimension, Disc, Line, Note, Sheet, SideView, TopView } from './pencil';

interface HalfProps {
  readonly wing: HalfWing;
  /** Where the root's front corner lies on the sheet, and how large a millimetre is. */
  readonly at: readonly [x: number, y: number];
  readonly scale: number;
}

/** A half wing from above with its MAC where the engine puts it: nose to the left, tip up. */
function Half({ wing, at: [x, y], scale }: HalfProps) {
  const { spanMm, rootChordMm, tipChordMm, sweepMm } = wing;
  const { macMm, lemacMm, macButtlineMm } = planformOf(wing);
  const corner = (stationMm: number, outMm: number) =>
    `${(x + stationMm * scale).toFixed(1)} ${(y - outMm * scale).toFixed(1)}`;
  const outline = `M${corner(0, 0)}L${corner(sweepMm, spanMm)}L${corner(sweepMm + tipChordMm, spanMm)}L${corner(rootChordMm, 0)}Z`;
  return (
    <g className="aircraft">
      <path className="wing" d={outline} />
      <path
        className="mac-line"
        d={`M${corner(lemacMm, macButtlineMm)}L${corner(lemacMm + macMm, macButtlineMm)}`}
      />
    </g>
  );
}

const MAC_SCALE = 0.24;
const MAC_AT = [110, 164] as const;

function Mac() {
  const { macMm, lemacMm, macButtlineMm } = planformOf(trapezoid);
  const [left, right] = [lemacMm, lemacMm + macMm].map((mm) => MAC_AT[0] + mm * MAC_SCALE) as [
    number,
    number,
  ];
  const y = MAC_AT[1] - macButtlineMm * MAC_SCALE;
  return (
    <Sheet shows="Half a wing from above; one chord across it stands for the whole">
      <Half wing={trapezoid} at={MAC_AT} scale={MAC_SCALE} />
      <Note at={[right + 12, y + 4]} anchor="start" strong>
        {`MAC ${formatNumber(macMm, 0)} mm`}
      </Note>
      <Note at={[left - 12, y + 4]} anchor="end">
        LEMAC
      </Note>
      <Note at={[MAC_AT[0] + 36, 182]}>{`root ${trapezoid.rootChordMm}`}</Note>
      <Note at={[160, 14]}>{`tip ${trapezoid.tipChordMm}`}</Note>
    </Sheet>
  );
}

const MARGIN_X = 52;
const marginAt = (mm: number) => MARGIN_X + mm;

function Margin() {
  const { neutralPointMm, cgMm, macMm } = marginShown;
  return (
    <Sheet shows="The CG ahead of the neutral point on the MAC; the distance between is the margin">
      <path className="mac-line" d={`M${marginAt(0)} 84H${marginAt(macMm)}`} />
      <Dimension from={marginAt(0)} to={marginAt(macMm)} y={150} under>
        {`MAC ${macMm} mm`}
      </Dimension>
      <Line from={[marginAt(0), 84]} to={[marginAt(0), 150]} dashed />
      <Line from={[marginAt(macMm), 84]} to={[marginAt(macMm), 150]} dashed />
      <Disc at={[marginAt(cgMm), 84]} />
      <Cross at={[marginAt(neutralPointMm), 84]} />
      <Dimension from={marginAt(cgMm)} to={marginAt(neutralPointMm)} y={54}>
        {`${neutralPointMm - cgMm} mm`}
      </Dimension>
      <Note at={[marginAt(cgMm) - 14, 112]}>CG</Note>
      <Line from={[marginAt(neutralPointMm), 98]} to={[marginAt(neutralPointMm), 116]} />
      <Note at={[marginAt(neutralPointMm), 130]}>neutral point</Note>
      <Note at={[180, 24]} strong>
        {`${neutralPointMm - cgMm} ÷ ${macMm} = ${formatNumber(marginPct(), 1)} % of the MAC`}
      </Note>
    </Sheet>
  );
}

export const wingDrawings: Readonly<Record<(typeof wingEntries)[number]['id'], () => React.JSX.Element>> = {
  chord: () => (
    <Sheet shows="A wing from above with its chord at the body and its chord at the tip">
      <g transform="translate(10 4)">
        <TopView at={[40, 92]} />
        <path className="mac-line" d="M126 74H199M138 10H182" />
        <Note at={[204, 46]} anchor="start">
          root chord
        </Note>
        <Note at={[192, 14]} anchor="start">
          tip chord
        </Note>
        <Arrow from={[30, 150]} to={[4, 150]} />
        <Note at={[36, 154]} anchor="start" tone="quiet">
          flight
        </Note>
      </g>
    </Sheet>
  ),
  mac: Mac,
  'neutral-point': () => (
    <Sheet shows="A gust lifts the aircraft at its neutral point, behind the CG, and so turns the nose down again">
      <SideView at={[50, 104]} pitchDeg={6} />
      <Arrow from={[186, 98]} to={[186, 36]} tone="good" />
      <Note at={[196, 34]} anchor="start" tone="good">
        more lift, from a gust
      </Note>
      <Disc at={[154, 108]} />
      <Cross at={[186, 108]} />
      <path className="turn" d="M70 74A60 60 0 0 0 52 112" />
      <polygon className="turn-head" points="50,122 47,107 60,110" />
      <Note at={[66, 58]}>nose comes down</Note>
      <Note at={[150, 152]}>CG</Note>
      <Line from={[154, 120]} to={[152, 140]} />
      <Note at={[200, 152]} anchor="start">
        neutral point
      </Note>
      <Line from={[188, 122]} to={[198, 144]} />
    </Sheet>
  ),
  margin: Margin,
  decalage: () => (
    <Sheet shows="Wing and tail from the side, the wing set nose up against the tail">
      <g className="aircraft">
        <path
          className="wing"
          transform="rotate(9 60 80)"
          d="M60 80C72 60 110 58 180 82 130 94 76 96 60 80Z"
        />
        <path className="wing" d="M250 86C256 78 272 78 316 87 280 93 256 93 250 86Z" />
      </g>
      <Line from={[36, 76]} to={[334, 123]} dashed tone="mark" />
      <Line from={[36, 87]} to={[334, 87]} dashed tone="mark" />
      <path className="turn" d="M326 88A220 220 0 0 1 322 120" />
      <Note at={[312, 146]} strong>
        decalage
      </Note>
      <Note at={[112, 130]}>wing</Note>
      <Note at={[280, 66]}>tail</Note>
    </Sheet>
  ),
  sweep: () => (
    <Sheet shows="Two half wings of the same chords; in the swept one the MAC lies farther aft">
      <Half wing={straight} at={[36, 158]} scale={0.22} />
      <Half wing={swept} at={[200, 158]} scale={0.22} />
      <Note at={[64, 178]}>straight</Note>
      <Note at={[230, 178]}>swept</Note>
      <Dimension from={200} to={200 + swept.sweepMm * 0.22} y={22}>
        {`sweep ${swept.sweepMm}`}
      </Dimension>
      <Note at={[300, 104]} anchor="start">
        MAC aft
      </Note>
    </Sheet>
  ),
  'thrust-line': () => (
    <Sheet shows="The pull of a propeller along a line that passes above the CG">
      <SideView at={[64, 92]} />
      <path className="aircraft-line" d="M62 58V116" />
      <Line from={[20, 80]} to={[330, 80]} dashed tone="mark" />
      <Arrow from={[56, 80]} to={[14, 80]} />
      <Disc at={[178, 102]} />
      <Arrow from={[206, 102]} to={[206, 82]} tone="bad" />
      <Arrow from={[206, 82]} to={[206, 101]} tone="bad" />
      <Note at={[216, 128]} anchor="start">
        its arm from the CG
      </Note>
      <Line from={[207, 104]} to={[220, 118]} />
      <Note at={[34, 66]}>pull</Note>
      <Note at={[330, 38]} anchor="end" strong>
        thrust line
      </Note>
      <Line from={[316, 44]} to={[316, 80]} />
    </Sheet>
  ),
};
