import { type Pocket, pocketIn } from '../../engine/fit/pocket';
import { boxGap, type Solid, solidOf } from '../../engine/fit/solid';
import { massScale } from '../../engine/mass/massProperties';
import type { MassProperties } from '../../engine/mass/types';
import { volumeProperties } from '../../engine/mass/volumeProperties';
import { perObject, perObjects } from '../../engine/memory/memory';
import type { Item } from '../document/edit';
import type { Aircraft, Block } from '../document/types';
import { elementPieces, type Piece } from './pieces';
import { poseOf } from './poses';
import { itemShape, itemSolid, posedPiece } from './solids';

/** A pocket that a part or tank needs in a cuttable block. Lengths in mm, aircraft frame unless said otherwise. */
export interface CutOut extends Pocket {
  /** The block's piece (a pair has two), and its id in the file. */
  readonly pieceId: string;
  readonly blockId: string;
  readonly blockName: string;
  readonly partId: string;
  readonly partName: string;
  readonly massRemovedG: number;
  /** What comes out, g; aircraft frame. */
  readonly massRemoved: MassProperties;
  /** The least wall that the block asks for, mm, and whether it is left. */
  readonly minimumWallMm: number;
  readonly wallTooThin: boolean;
}

/**
 * Every cut-out that the parts and tanks as they stand need in the cuttable blocks. Where two parts that
 * overlap each other share a pocket, what both take out is counted twice.
 */
export const cutOuts = (aircraft: Pick<Aircraft, 'structure' | 'parts' | 'tanks'>): CutOut[] =>
  aircraft.structure.flatMap((element) =>
    element.kind === 'block' && element.cuttable ? blockCutOuts(element, aircraft) : [],
  );

/** The cut-outs in one block. */
function blockCutOuts(block: Block, { parts, tanks }: Pick<Aircraft, 'parts' | 'tanks'>): CutOut[] {
  return elementPieces(block).flatMap((piece) => {
    const gPerMm3 = density(block, piece);
    return [...parts, ...tanks].flatMap((item) => {
      const pocket = pocketOf(piece, item);
      return pocket ? [cutOut(block, piece, item, pocket, gPerMm3)] : [];
    });
  });
}

function cutOut(block: Block, piece: Piece, item: Item, pocket: Pocket, gPerMm3: number): CutOut {
  const minimumWallMm = block.minimumWallMm ?? 0;
  return {
    ...pocket,
    pieceId: piece.id,
    blockId: block.id,
    blockName: block.name,
    partId: item.id,
    partName: item.name,
    massRemovedG: pocket.volumeMm3 * gPerMm3,
    massRemoved: massScale(pocket.removed, gPerMm3),
    minimumWallMm,
    wallTooThin: pocket.wallLeftMm !== null && pocket.wallLeftMm < minimumWallMm,
  };
}

function pocketOf(piece: Piece, item: Item): Pocket | null {
  return boxGap(solidOfPiece(piece), itemSolid(item)) > 0 ? null : pocketFor(piece, item);
}

const pocketFor = perObjects((piece: Piece, item: Item): Pocket | null =>
  pocketIn(posedPiece(piece), { shape: itemShape(item), pose: poseOf(item) }),
);

const solidOfPiece = perObject((piece: Piece): Solid => solidOf(posedPiece(piece)));

/** A block's density, g/mm³; a skin has nothing inside to cut out. */
function density({ mass }: Block, { shape, side }: Piece): number {
  if (mass.by === 'foam') return mass.gPerMl / 1000;
  if (mass.by === 'skin' || mass.spread === 'skin') return 0;
  const massG = side === 'left' ? (mass.leftMassG ?? mass.massG) : mass.massG;
  return massG / volumeProperties(shape).volumeMm3;
}
