import type { Vec3 } from '../../engine/geometry/types';
import { lastOnly } from '../../engine/memory/memory';
import type { Balance } from '../balance/balance';
import type { Aircraft } from '../document/types';
import { variantName } from '../document/variants';
import type { Judgement } from '../judgement/types';
import type { Say } from '../words/say';
import type { ShownMass } from '../words/verdictFacts';
import { type BalancingChoice, balancedState, keepBetween } from './balancing';
import { bannerOf, blockingReasons, NO_APPROVAL } from './blocking';
import { type Block, BREAK, SECTIONS, type Section, type SectionId, sectionNames, words } from './blocks';
import { type FieldCard, fieldCard } from './card';
import { balanceWords, cgBlocks } from './cgPage';
import { stripBlocks, stripPlace } from './cgStrips';
import { checkBlocks } from './checks';
import { fittingBlocks } from './fitting';
import { marksOf } from './marks';
import { numbered } from './numbered';
import { bodyOf, type Paper } from './paper';
import { type OrderSearch, partsBlocks } from './parts';
import { cutOutTemplates, templateBlocks } from './templates';
import { viewBlocks } from './viewDrawings';
import { weighBlocks } from './weighForm';

/** Everything that a sheet is made of; the day and the name come from outside. */
export interface SheetInput {
  readonly aircraft: Aircraft;
  /** As shown on the bench. */
  readonly shown: Balance;
  readonly judgement: Judgement;
  readonly down: Vec3;
  /** The attitude on the bench in words; null when it is level. */
  readonly held: string | null;
  readonly mass: ShownMass | null;
  readonly say: Say;
  /** Where stations are counted from, amid a sentence: "the datum, tip of the nose". */
  readonly from: string;
  readonly search: OrderSearch;
  readonly paper: Paper;
  readonly choice: BalancingChoice;
  /** Where the wing is marked, mm from the centre line; null for just beside the hull. */
  readonly buttlineMm: number | null;
  /** The last revision that was given a name; null where there is none. */
  readonly revision: string | null;
  /** Sections that are not wanted: they are not worked out. */
  readonly leftOut: readonly SectionId[];
}

/** The whole sheet, to be dealt onto pages. */
export interface BuildSheet {
  /** The aircraft, its variant and its revision, as they stand in the title block. */
  readonly name: string;
  /** At the foot of every page: that it is no approval, and what is an estimate. */
  readonly note: string;
  /** At the head of every page; null where nothing found stands in the way of a flight. */
  readonly banner: string | null;
  readonly sections: readonly Section[];
  /** Null when it is left out. */
  readonly card: FieldCard | null;
}

/** Puts the sheet together. Every figure is the bench’s own, in its units and from its reference point. */
export function buildSheet(input: SheetInput): BuildSheet {
  const { aircraft, judgement, say, shown, from, leftOut, buttlineMm, choice, paper } = input;
  const banner = bannerOf(blockingReasons(aircraft, judgement, say));
  const body = bodyOf(paper, banner !== null);
  const balanced = balancedState(aircraft, choice);
  const keep = keepBetween(aircraft, shown, balanced);
  const strip = { aircraft, say, balanced, keep, banded: shown.band !== null, buttlineMm };
  const place = stripPlace(strip);
  const balance = balanceWords({ balanced, keep, say, from, place, shown });
  const wideMm = body.wideMm;
  const blocksOf: Readonly<Record<SectionId, () => readonly Block[]>> = {
    drawings: () => drawingBlocks(aircraft, shown, judgement, say, from, wideMm, body.highMm, input.held),
    parts: () => partsBlocks(aircraft, { say, wideMm, search: input.search }),
    fitting: () => fittingBlocks(aircraft, { say, wideMm, search: input.search }),
    templates: () => [
      ...stripBlocks(strip, body),
      BREAK,
      ...cutOutTemplates(aircraft).flatMap((template) => templateBlocks(template, body)),
    ],
    cg: () => cgBlocks({ ...input, balanced, keep, place, wideMm }),
    weighing: () => weighBlocks({ aircraft, say, from, balanced, wideMm }),
    checks: () => checkBlocks(aircraft, balanced.words, balance),
    card: () => [],
  };
  const sections = SECTIONS.filter((id) => !leftOut.includes(id)).map((id) => ({
    id,
    title: sectionNames[id],
    blocks: blocksOf[id](),
  }));
  const card = leftOut.includes('card') ? null : fieldCard({ aircraft, say, balanced, balance, banner });
  const { revision } = input;
  // What came after a revision was named is not in it, and what is on the bench may.
  const name = [variantName(aircraft), revision && `after revision “${revision}”`].filter(Boolean).join(', ');
  const note = `${judgement.band?.from === 'estimate' ? 'The band is an estimate. ' : ''}${NO_APPROVAL}`;
  return { name, note, banner, sections, card };
}

/** The drawings take the longest, and stay as they are when only a tick or the state of balancing changes. */
const drawingBlocks = lastOnly(
  (
    aircraft: Aircraft,
    shown: Balance,
    judgement: Judgement,
    say: Say,
    from: string,
    wideMm: number,
    highMm: number,
    held: string | null,
  ): readonly Block[] => {
    const marks = marksOf(aircraft, shown, judgement, say, held);
    const drawing = { aircraft, things: numbered(aircraft), marks, say, from };
    const blocks = (['side', 'top', 'front'] as const).flatMap((view) =>
      viewBlocks(drawing, view, { wideMm, highMm }),
    );
    return blocks.length > 0 ? blocks : [words('There is nothing to draw yet.')];
  },
);
