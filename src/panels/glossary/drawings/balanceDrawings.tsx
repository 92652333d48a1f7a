import type { balanceEntries } from '../../../model/glossary/balanceEntries';
import { formatNumber } from '../../../model/units';
import { inertiaTimes, seeSaw, seeSawCgMm } from './figures';
import {
  Arrow,
  Box,
  Dimension,
  Disc,
  FrontView,
  Line,
  Note,
  Sheet,
  SideView,
  TopView,
  Wedge,
} from './pencil';

const BEAM_X = 20;
const onBeam = (mm: number) => BEAM_X + mm * 0.9;

/** Two weights on a beam that stands on its balance point. */
function SeeSaw({ arms }: { readonly arms: boolean }) {
  const { left, right } = seeSaw;
  const cgMm = seeSawCgMm();
  const cg = onBeam(cgMm);
  const armOf = (atMm: number) => formatNumber(Math.abs(atMm - cgMm), 0);
  return (
    <>
      <Line from={[onBeam(0), 104]} to={[onBeam(355), 104]} tone="mark" />
      <Box at={[onBeam(left.atMm) - 20, 68]} wide={40} high={36} kind="energy" />
      <Box at={[onBeam(right.atMm) - 26, 54]} wide={52} high={50} kind="radio" />
      <Note at={[onBeam(left.atMm), 60]}>{`${left.massG} g`}</Note>
      <Note at={[onBeam(right.atMm), 46]}>{`${right.massG} g`}</Note>
      <Wedge at={[cg, 105]} />
      {arms && (
        <>
          <Dimension from={onBeam(left.atMm)} to={cg} y={146} under>{`arm ${armOf(left.atMm)} mm`}</Dimension>
          <Dimension
            from={cg}
            to={onBeam(right.atMm)}
            y={146}
            under
          >{`arm ${armOf(right.atMm)} mm`}</Dimension>
        </>
      )}
    </>
  );
}

const momentText = ({ massG, atMm }: { readonly massG: number; readonly atMm: number }) => {
  const armMm = Math.abs(atMm - seeSawCgMm());
  return `${massG} × ${formatNumber(armMm, 0)} = ${formatNumber(massG * armMm, 0)}`;
};

export const balanceDrawings: Readonly<
  Record<(typeof balanceEntries)[number]['id'], () => React.JSX.Element>
> = {
  cg: () => (
    <Sheet shows="An aircraft from its left balances on a wedge that stands under its CG">
      <SideView at={[50, 84]} />
      <Line from={[164, 92]} to={[164, 140]} dashed />
      <Disc at={[164, 90]} />
      <Wedge at={[164, 140]} />
      <Arrow from={[164, 46]} to={[164, 78]} />
      <Note at={[164, 22]} strong>
        CG
      </Note>
      <Note at={[164, 38]}>all its weight acts here</Note>
      <Note at={[184, 158]} anchor="start">
        balances here
      </Note>
    </Sheet>
  ),
  datum: () => (
    <Sheet shows="A line at the tip of the nose is the zero; a scale runs aft from it">
      <SideView at={[50, 74]} />
      <Line from={[50, 24]} to={[50, 150]} dashed tone="mark" />
      <Note at={[50, 18]} strong>
        datum
      </Note>
      <path className="ruler" d="M50 140H320M50 140v8M104 140v8M158 140v8M212 140v8M266 140v8M320 140v8" />
      {[0, 200, 400, 600, 800].map((mm, at) => (
        <Note key={mm} at={[50 + 54 * at, 164]} tone="quiet">
          {mm}
        </Note>
      ))}
      <Note at={[320, 164]} tone="quiet">
        mm
      </Note>
    </Sheet>
  ),
  'reference-point': () => (
    <Sheet shows="The same place reads 560 from the nose and 200 from the front edge of the wing">
      <SideView at={[50, 66]} />
      <Line from={[50, 58]} to={[50, 172]} dashed />
      <Line from={[134, 76]} to={[134, 132]} dashed tone="mark" />
      <Line from={[180, 76]} to={[180, 172]} dashed />
      <Dimension from={134} to={180} y={124} under>
        200
      </Dimension>
      <Dimension from={50} to={180} y={166}>
        560 from the nose
      </Dimension>
      <Note at={[188, 128]} anchor="start">
        from the front edge
      </Note>
    </Sheet>
  ),
  station: () => (
    <Sheet shows="A part lies at station 420: so many millimetres aft of the datum">
      <SideView at={[50, 74]} />
      <Box at={[146, 62]} wide={34} high={16} kind="energy" />
      <Line from={[50, 40]} to={[50, 140]} dashed tone="mark" />
      <Line from={[163, 80]} to={[163, 140]} dashed />
      <Dimension from={50} to={163} y={132} under>
        station 420
      </Dimension>
      <Note at={[50, 32]}>datum</Note>
      <Arrow from={[250, 132]} to={[310, 132]} />
      <Note at={[280, 148]}>aft +</Note>
    </Sheet>
  ),
  buttline: () => (
    <Sheet shows="From above: a part to the right of the middle line has a positive buttline">
      <g transform="translate(0 6)">
        <TopView at={[40, 90]} />
        <Line from={[20, 90]} to={[350, 90]} dashed />
        <Box at={[146, 26]} wide={22} high={16} kind="payload" />
        <Arrow from={[157, 90]} to={[157, 46]} />
        <Note at={[192, 28]} anchor="start">
          buttline +180
        </Note>
        <Note at={[350, 86]} anchor="end">
          middle
        </Note>
        <Note at={[84, 28]} anchor="end" tone="quiet">
          right +
        </Note>
        <Note at={[84, 160]} anchor="end" tone="quiet">
          left −
        </Note>
      </g>
    </Sheet>
  ),
  waterline: () => (
    <Sheet shows="From the left: a part above the datum has a positive waterline">
      <SideView at={[50, 110]} />
      <Line from={[24, 112]} to={[334, 112]} dashed tone="mark" />
      <Box at={[142, 72]} wide={30} high={14} kind="radio" />
      <Arrow from={[157, 112]} to={[157, 90]} />
      <Note at={[166, 62]}>waterline +60</Note>
      <Arrow from={[330, 106]} to={[330, 56]} />
      <Note at={[330, 46]}>up +</Note>
      <Note at={[334, 148]} anchor="end">
        height of the datum
      </Note>
    </Sheet>
  ),
  arm: () => (
    <Sheet shows="Two weights on a beam, each with its arm from the balance point">
      <SeeSaw arms />
    </Sheet>
  ),
  moment: () => (
    <Sheet shows="The lighter weight with the longer arm holds the heavier one: the moments are alike">
      <SeeSaw arms />
      <Note at={[100, 24]} strong>
        {momentText(seeSaw.left)}
      </Note>
      <Note at={[272, 24]} strong>
        {momentText(seeSaw.right)}
      </Note>
      <Note at={[188, 24]} strong>
        =
      </Note>
    </Sheet>
  ),
  band: () => (
    <Sheet shows="A yellow band under the wing, from the forward to the aft limit, with the CG in it">
      <Box at={[140, 30]} wide={44} high={116} kind="band" />
      <SideView at={[50, 88]} />
      <Disc at={[158, 92]} />
      <Line from={[140, 30]} to={[140, 154]} />
      <Line from={[184, 30]} to={[184, 154]} tone="bad" />
      <Note at={[134, 166]} anchor="end">
        forward limit
      </Note>
      <Note at={[190, 166]} anchor="start">
        aft limit
      </Note>
      <Note at={[192, 26]} anchor="start" tone="bad">
        dangerous from here on
      </Note>
    </Sheet>
  ),
  'tail-heavy': () => (
    <Sheet shows="One aircraft with its CG ahead of the band, nose down; another with it behind, nose up">
      <Box at={[66, 66]} wide={22} high={60} kind="band" />
      <SideView at={[10, 92]} scale={0.58} pitchDeg={-9} />
      <Disc at={[50, 98]} r={8} />
      <Note at={[84, 156]}>nose-heavy</Note>
      <Box at={[252, 66]} wide={22} high={60} kind="band" />
      <SideView at={[196, 92]} scale={0.58} pitchDeg={9} />
      <Disc at={[292, 96]} r={8} />
      <Note at={[270, 156]} tone="bad" strong>
        tail-heavy
      </Note>
    </Sheet>
  ),
  ballast: () => (
    <Sheet shows="A small block of lead in the nose moves the CG forward into the band">
      <Box at={[136, 44]} wide={36} high={96} kind="band" />
      <SideView at={[50, 88]} />
      <Box at={[60, 82]} wide={14} high={14} kind="ballast" />
      <g opacity={0.4}>
        <Disc at={[190, 92]} />
      </g>
      <Arrow from={[180, 92]} to={[164, 92]} />
      <Disc at={[154, 92]} />
      <Note at={[66, 132]}>ballast</Note>
      <Note at={[202, 128]} anchor="start" tone="quiet">
        before
      </Note>
      <Note at={[154, 158]}>with it</Note>
    </Sheet>
  ),
  sideways: () => (
    <Sheet shows="From ahead: the CG to one side of the middle, and that wing drops">
      <FrontView at={[180, 96]} rollDeg={6} />
      <Line from={[180, 26]} to={[180, 150]} dashed />
      <Disc at={[206, 100]} />
      <Arrow from={[298, 112]} to={[298, 140]} tone="bad" />
      <Note at={[298, 158]} tone="bad">
        heavy side drops
      </Note>
      <Box at={[42, 70]} wide={12} high={10} kind="ballast" />
      <Note at={[12, 54]} anchor="start">
        a little weight here
      </Note>
    </Sheet>
  ),
  inertia: () => (
    <Sheet shows="The same two weights, near the middle and twice as far out: four times as hard to turn">
      <Bell cx={90} arm={28} />
      <Note at={[90, 158]}>1 ×</Note>
      <Bell cx={252} arm={56} />
      <Note at={[252, 158]} strong>
        {formatNumber(inertiaTimes(2), 0)} ×
      </Note>
      <Note at={[180, 22]}>the same weights, twice as far out</Note>
    </Sheet>
  ),
  gyro: () => (
    <Sheet shows="A gyro beside the CG, with an arrow round it for the turn that it feels">
      <SideView at={[50, 92]} />
      <Disc at={[164, 94]} />
      <Box at={[182, 84]} wide={22} high={16} kind="control" />
      <path className="turn" d="M132 60A46 46 0 0 1 206 60" />
      <polygon className="turn-head" points="212,70 198,62 210,54" />
      <Note at={[170, 34]}>feels how fast it turns</Note>
      <Note at={[196, 140]}>gyro, near the CG</Note>
      <Line from={[194, 102]} to={[194, 128]} />
    </Sheet>
  ),
  'bare-airframe': () => (
    <Sheet shows="An empty aircraft on a scale, and what is carried beside it">
      <SideView at={[20, 74]} scale={0.86} />
      <path className="scale" d="M60 108H196V122H60ZM84 108V96M172 108V94" />
      <Note at={[128, 119]} strong>
        1 840 g
      </Note>
      <Note at={[128, 148]}>bare airframe</Note>
      <Box at={[284, 56]} wide={40} high={16} kind="energy" />
      <Box at={[290, 80]} wide={24} high={16} kind="radio" />
      <Box at={[286, 104]} wide={34} high={18} kind="payload" />
      <Note at={[304, 148]} tone="quiet">
        not in it
      </Note>
    </Sheet>
  ),
  'ready-to-fly': () => (
    <Sheet shows="Airframe, parts and liquid added up to the whole mass">
      <SideView at={[12, 66]} scale={0.36} />
      <Note at={[60, 100]}>airframe</Note>
      <Note at={[122, 70]}>+</Note>
      <Box at={[144, 54]} wide={34} high={20} kind="energy" />
      <Note at={[161, 100]}>parts</Note>
      <Note at={[198, 70]}>+</Note>
      <Box at={[220, 48]} wide={44} high={28} kind="tank" />
      <Box at={[220, 58]} wide={44} high={18} kind="fuel" />
      <Note at={[242, 100]}>liquid</Note>
      <Note at={[284, 70]}>=</Note>
      <Note at={[322, 70]} strong>
        all up
      </Note>
      <path className="scale" d="M120 128H240V144H120Z" />
      <Note at={[180, 141]} strong>
        4 920 g
      </Note>
      <Note at={[180, 168]} tone="quiet">
        at the fuel shown
      </Note>
    </Sheet>
  ),
};

/** Two weights on a rod that turns about its middle. */
function Bell({ cx, arm }: { readonly cx: number; readonly arm: number }) {
  return (
    <>
      <Line from={[cx - arm, 92]} to={[cx + arm, 92]} tone="mark" />
      <circle className="thing" data-kind="energy" cx={cx - arm} cy={92} r={12} />
      <circle className="thing" data-kind="energy" cx={cx + arm} cy={92} r={12} />
      <circle className="axis" cx={cx} cy={92} r={4} />
      <Dimension from={cx} to={cx + arm} y={126} under>
        {''}
      </Dimension>
    </>
  );
}
