import type { benchEntries } from '../../../model/glossary/benchEntries';
import { formatNumber } from '../../../model/units';
import { turnG } from './figures';
import { Arrow, Box, Dimension, Disc, FrontView, Line, Note, Sheet } from './pencil';

const BANK_DEG = 60;
const ONE_G_PX = 27;

/** The pull on what is aboard, away from the aircraft's own floor. */
function Pull({
  at: [x, y],
  bankDeg,
}: {
  readonly at: readonly [x: number, y: number];
  readonly bankDeg: number;
}) {
  const g = turnG(bankDeg);
  const turn = (bankDeg * Math.PI) / 180;
  const long = ONE_G_PX * g;
  return (
    <>
      <FrontView at={[x, y]} rollDeg={bankDeg} scale={0.5} />
      <circle className="thing" data-kind="energy" cx={x} cy={y} r={7} />
      <Arrow
        from={[x, y]}
        to={[x - long * Math.sin(turn), y + long * Math.cos(turn)]}
        tone={bankDeg === 0 ? 'mark' : 'bad'}
      />
      <Note at={[x, 168]} strong={bankDeg !== 0}>
        {bankDeg === 0 ? '1 g in level flight' : `${formatNumber(g, 0)} g at ${bankDeg}° of bank`}
      </Note>
    </>
  );
}

const LoadFactor = () => (
  <Sheet shows="From ahead: in a turn banked by 60 degrees a thing pulls twice as hard as in level flight">
    <Pull at={[92, 82]} bankDeg={0} />
    <Pull at={[264, 82]} bankDeg={BANK_DEG} />
  </Sheet>
);

export const benchDrawings: Readonly<Record<(typeof benchEntries)[number]['id'], () => React.JSX.Element>> = {
  verdict: () => (
    <Sheet shows="The head of the screen: a sign, the sentence, its cause, and figures under it">
      <rect className="screen" x={24} y={28} width={312} height={132} rx={6} />
      <circle className="good-sign" cx={54} cy={62} r={14} />
      <path className="tick-mark" d="M47 62l5 5 9-10" />
      <Note at={[78, 60]} anchor="start" tone="good" strong>
        It balances and fits.
      </Note>
      <path
        className="words"
        d="M78 76H270M40 112H90M120 112H170M200 112H250M40 124H78M120 124H160M200 124H240"
      />
      <Line from={[24, 94]} to={[336, 94]} />
      <Arrow from={[312, 16]} to={[258, 52]} />
      <Note at={[306, 14]} anchor="end">
        the verdict
      </Note>
    </Sheet>
  ),
  'load-state': () => (
    <Sheet shows="Three ways of loading one aircraft, each with its CG in or out of the band">
      {(
        [
          ['full, wheels up', 0.42, ''],
          ['dry, wheels up', 0.6, ''],
          ['dry, wheels down', 0.86, 'bad'],
        ] as const
      ).map(([name, share, tone], row) => (
        <g key={name} transform={`translate(0 ${20 + 52 * row})`}>
          <Note at={[24, 26]} anchor="start">
            {name}
          </Note>
          <Box at={[156, 8]} wide={120} high={26} kind="band" />
          <Disc at={[156 + 146 * share, 21]} r={8} />
          {tone === 'bad' && (
            <Note at={[348, 26]} anchor="end" tone="bad" strong>
              worst
            </Note>
          )}
        </g>
      ))}
    </Sheet>
  ),
  fit: () => (
    <Sheet shows="Two things in one place inside the body clash; a third has room">
      <path className="hull" d="M30 96C44 46 120 36 200 40L336 66V122L200 150C120 156 44 146 30 96Z" />
      <Box at={[84, 76]} wide={74} high={36} kind="energy" />
      <Box at={[140, 92]} wide={56} high={36} kind="radio" />
      <rect className="clash-mark" x={140} y={92} width={18} height={20} />
      <Box at={[236, 82]} wide={46} high={28} kind="payload" />
      <Note at={[150, 30]} tone="bad" strong>
        clash
      </Note>
      <Line from={[150, 36]} to={[149, 90]} tone="bad" />
      <Note at={[259, 74]} tone="good">
        has room
      </Note>
    </Sheet>
  ),
  bay: () => (
    <Sheet shows="A room in the body with a lid above it, through which a pack goes in">
      <path
        className="hull"
        d="M30 106C44 66 120 58 150 58M232 58H250L336 76V132L200 158C120 164 44 152 30 106"
      />
      <rect className="room" x={118} y={70} width={140} height={66} />
      <path className="lid" d="M150 58L196 22" />
      <Box at={[176, 18]} wide={50} high={22} kind="energy" />
      <Arrow from={[201, 44]} to={[201, 88]} />
      <Note at={[188, 126]}>bay</Note>
      <Note at={[146, 34]} anchor="end">
        hatch
      </Note>
    </Sheet>
  ),
  'plus-minus': () => (
    <Sheet shows="A figure in the middle of a hill that says where the truth may lie">
      <path className="hill" d="M40 136C110 134 120 44 180 44S250 134 320 136Z" />
      <Line from={[180, 40]} to={[180, 142]} tone="mark" />
      <Dimension from={96} to={264} y={152} under>
        ± : 95 of 100 lie here
      </Dimension>
      <Note at={[180, 32]} strong>
        603 ± 4 mm
      </Note>
    </Sheet>
  ),
  estimate: () => (
    <Sheet shows="A wide halo round a place that was worked out; a small one round a place that was weighed">
      <circle className="halo" cx={104} cy={84} r={46} />
      <Disc at={[104, 84]} />
      <circle className="halo" cx={258} cy={84} r={16} />
      <Disc at={[258, 84]} />
      <Note at={[104, 158]}>an estimate</Note>
      <Note at={[258, 158]}>weighed</Note>
    </Sheet>
  ),
  'load-factor': LoadFactor,
};
