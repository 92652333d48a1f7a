import * as v from 'valibot';
import {
  about,
  angleDeg,
  id,
  massG,
  percent,
  placeMm,
  sizeOrZeroMm,
  volumeMl,
} from '../../document/schema/fields';
import { figure, strict } from './fields';

/** One thing that is done to the bench; what it does not name stays as it is. */
export const change = v.variant('do', [
  strict(
    {
      do: v.literal('place'),
      itemId: about(id, 'the part or tank'),
      stationMm: about(v.optional(placeMm), 'of its middle, mm from the datum, aft +'),
      buttlineMm: about(v.optional(placeMm), 'right +'),
      waterlineMm: about(v.optional(placeMm), 'up +'),
    },
    'sets a part or tank down somewhere else',
  ),
  strict(
    { do: v.literal('shiftStructure'), pieceId: about(id, 'the piece of structure'), aftMm: placeMm },
    'moves a piece of structure along, aft +',
  ),
  strict({ do: v.literal('mass'), itemId: about(id, 'the part'), massG }, 'gives a part another mass'),
  strict({ do: v.literal('takeOut'), itemId: about(id, 'the part or tank') }, 'takes a part or tank out'),
  strict(
    {
      do: v.literal('plusMinus'),
      itemId: about(id, 'the part or tank, or "bare-airframe"'),
      g: about(v.optional(massG), 'what its mass may be off by: two standard uncertainties'),
      mm: about(v.optional(sizeOrZeroMm), 'what its place may be off by: two standard uncertainties'),
    },
    'says how well a thing was measured',
  ),
  strict({ do: v.literal('start'), tankId: id, ml: volumeMl }, 'fills a tank to so much at the start'),
  strict(
    { do: v.literal('fuel'), leftPct: about(percent, '% of the usable fuel') },
    'burns fuel to so much left',
  ),
  strict(
    {
      do: v.literal('hold'),
      pitchDeg: about(v.optional(angleDeg), 'nose up +'),
      rollDeg: about(v.optional(angleDeg), 'right wing down +'),
      forwardG: about(v.optional(figure), 'acceleration along the nose, g, forward +'),
    },
    'holds the aircraft another way; what is left out is 0',
  ),
  strict({ do: v.literal('switch'), switchId: id, positionId: id }, 'puts a switch in a position'),
  strict({ do: v.literal('solved') }, 'gives the part that a "partFor" asks for what the engine found'),
]);
