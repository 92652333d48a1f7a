import type { Reading } from '../../model/lessons/figureText';
import type { Fillings } from '../../model/lessons/fill';
import type { Lesson } from '../../model/lessons/types';

/** What every stage has to speak with. */
export interface Told {
  readonly lesson: Lesson;
  readonly reading: Reading;
  readonly fillings: Fillings;
}

/** Where a marker stands, and whether somebody has put it there. */
export interface Draft {
  readonly value: number;
  readonly placed: boolean;
}

/** The ways on from the end of a lesson. */
export interface WaysOn {
  readonly onLeave: () => void;
  readonly onTake: () => void;
  readonly next: { readonly title: string; open(): void } | null;
}
