import type { fuelEntries } from '../../../model/glossary/fuelEntries';
import { Arrow, Box, Dimension, Disc, Line, Note, Sheet, SideView } from './pencil';

interface TankProps {
  readonly at: readonly [x: number, y: number];
  readonly wide: number;
  readonly high: number;
  /** 0 empty, 1 full. */
  readonly level: number;
}

function Tank({ at: [x, y], wide, high, level }: TankProps) {
  return (
    <>
      <Box at={[x, y]} wide={wide} high={high} kind="tank" />
      {level > 0 && <Box at={[x, y + high * (1 - level)]} wide={wide} high={high * level} kind="fuel" />}
    </>
  );
}

const pipe = (d: string) => <path className="pipe" d={d} />;

export const fuelDrawings: Readonly<Record<(typeof fuelEntries)[number]['id'], () => React.JSX.Element>> = {
  'header-tank': () => (
    <Sheet shows="A half-empty main tank feeds a full header tank, and that the engine">
      <Tank at={[220, 44]} wide={112} high={72} level={0.4} />
      <Tank at={[112, 70]} wide={48} high={46} level={1} />
      {pipe('M220 104H160M112 96H70')}
      <path className="engine" d="M28 78H70V116H28ZM20 70V124" />
      <Arrow from={[212, 128]} to={[168, 128]} tone="fuel" />
      <Arrow from={[104, 128]} to={[78, 128]} tone="fuel" />
      <Note at={[276, 138]}>main tank</Note>
      <Note at={[136, 150]} strong>
        header tank
      </Note>
      <Note at={[136, 58]} tone="quiet">
        still full
      </Note>
      <Note at={[46, 140]}>engine</Note>
    </Sheet>
  ),
  'dry-full': () => (
    <Sheet shows="The same tank full, and dry with a little left that cannot be drawn">
      <Tank at={[40, 44]} wide={112} high={80} level={0.94} />
      <Tank at={[210, 44]} wide={112} high={80} level={0.1} />
      <Note at={[96, 150]} strong>
        full
      </Note>
      <Note at={[266, 150]} strong>
        dry
      </Note>
      <Note at={[266, 84]} tone="quiet">
        a little stays
      </Note>
    </Sheet>
  ),
  usable: () => (
    <Sheet shows="A tank whose outlet lies above its floor: what is below it stays">
      <Tank at={[80, 30]} wide={180} high={120} level={0.75} />
      <Box at={[80, 126]} wide={180} high={24} kind="trapped" />
      {pipe('M80 126H40')}
      <Note at={[170, 98]} tone="on">
        usable
      </Note>
      <Note at={[170, 143]}>unusable</Note>
      <Arrow from={[62, 114]} to={[32, 114]} tone="fuel" />
      <Note at={[44, 146]}>outlet</Note>
      <Line from={[80, 126]} to={[300, 126]} dashed />
    </Sheet>
  ),
  clunk: () => (
    <Sheet shows="A tank with a hose whose weight lies in the fuel, and a vent at the top">
      <Tank at={[90, 36]} wide={190} high={104} level={0.55} />
      <path className="pipe" d="M60 74H90M90 74C150 70 170 108 214 122" />
      <circle className="thing" data-kind="ballast" cx={222} cy={126} r={10} />
      <path className="pipe" d="M60 52H240V44" />
      <Note at={[222, 160]} strong>
        clunk
      </Note>
      <Note at={[54, 50]} anchor="end">
        vent
      </Note>
      <Note at={[54, 79]} anchor="end">
        engine
      </Note>
      <Arrow from={[150, 44]} to={[200, 44]} />
      <Note at={[172, 30]} tone="quiet">
        air
      </Note>
    </Sheet>
  ),
  burn: () => (
    <Sheet shows="A curve of the fuel left over the flight, from full to dry">
      <path className="axes" d="M54 20V148H330" />
      <path className="curve" d="M54 34L104 66 220 98 268 120 318 146" />
      <Note at={[46, 38]} anchor="end">
        full
      </Note>
      <Note at={[46, 150]} anchor="end">
        dry
      </Note>
      <Note at={[192, 170]}>time</Note>
      <Note at={[88, 40]} anchor="start">
        climb: fast
      </Note>
      <Note at={[170, 74]} anchor="start">
        cruise: slow
      </Note>
    </Sheet>
  ),
  travel: () => (
    <Sheet shows="The path of the CG from full to dry under the aircraft, seen large against the band">
      <SideView at={[86, 44]} scale={0.72} />
      <Box at={[110, 78]} wide={160} high={86} kind="band" />
      <path className="curve on-band" d="M146 88C150 112 166 120 190 126 206 132 200 146 192 154" />
      <Disc at={[146, 88]} r={8} />
      <Note at={[160, 92]} anchor="start" tone="on-band">
        full
      </Note>
      <Note at={[190, 158]} anchor="end" tone="on-band">
        dry
      </Note>
      <Note at={[104, 124]} anchor="end">
        forward limit
      </Note>
      <Note at={[276, 124]} anchor="start">
        aft limit
      </Note>
      <Note at={[204, 114]} anchor="start" tone="on-band">
        most aft
      </Note>
    </Sheet>
  ),
  reserve: () => (
    <Sheet shows="A bar of what is aboard: most is for the flight, the last piece is the reserve">
      <Box at={[30, 66]} wide={300} high={44} kind="tank" />
      <Box at={[30, 66]} wide={226} high={44} kind="fuel" />
      <Box at={[256, 66]} wide={74} high={44} kind="trapped" />
      <Dimension from={30} to={256} y={134} under>
        the flight
      </Dimension>
      <Dimension from={256} to={330} y={134} under>
        reserve
      </Dimension>
      <Note at={[180, 46]} tone="quiet">
        all that is usable
      </Note>
    </Sheet>
  ),
  'internal-resistance': () => (
    <Sheet shows="A pack with a resistance in it: fewer volts come out the more current is drawn">
      <Box at={[36, 54]} wide={96} high={76} kind="energy" />
      <path className="pipe" d="M60 76V88l10 4-20 8 20 8-20 8 10 4v8" />
      <Note at={[84, 44]}>pack</Note>
      <Note at={[100, 104]} tone="on">
        mΩ
      </Note>
      <path className="axes" d="M190 30V146H336" />
      <path className="curve" d="M190 46L330 118" />
      <Note at={[198, 34]} anchor="start">
        volts
      </Note>
      <Note at={[264, 166]}>current drawn</Note>
    </Sheet>
  ),
  wiring: () => (
    <Sheet shows="A pack feeds a regulator, that feeds the receiver, and that the servos">
      <Box at={[18, 72]} wide={70} high={40} kind="energy" />
      <Box at={[128, 72]} wide={70} high={40} kind="tank" />
      <Box at={[238, 72]} wide={54} high={40} kind="radio" />
      <Box at={[318, 40]} wide={28} high={28} kind="control" />
      <Box at={[318, 116]} wide={28} high={28} kind="control" />
      <Arrow from={[88, 92]} to={[126, 92]} />
      <Arrow from={[198, 92]} to={[236, 92]} />
      <Arrow from={[292, 84]} to={[316, 62]} />
      <Arrow from={[292, 100]} to={[316, 122]} />
      <Note at={[53, 62]}>pack</Note>
      <Note at={[163, 62]}>regulator</Note>
      <Note at={[262, 62]}>receiver</Note>
      <Note at={[346, 166]} anchor="end">
        servos
      </Note>
      <Note at={[107, 128]} tone="quiet">
        7.4 V
      </Note>
      <Note at={[217, 128]} tone="quiet">
        5 V
      </Note>
    </Sheet>
  ),
};
