/** The five stages of a lesson, in their order. */
export const STAGES = ['asked', 'tried', 'happened', 'summed', 'checked'] as const;
export type LessonStage = (typeof STAGES)[number];

/** How far a person has come in a lesson, as it is kept. */
export interface LessonProgress {
  readonly stage: LessonStage;
  /** The prediction, in the unit of what was asked; null until it is made. */
  readonly guess: number | null;
  /** How many steps of the experiment are done. */
  readonly steps: number;
  /** What the check was answered with: a value, or which of the choices; null until then. */
  readonly checkGuess: number | null;
  /** It was gone through to its end once. */
  readonly done: boolean;
}

export type ProgressOfAll = Readonly<Record<string, LessonProgress>>;

export const NOT_BEGUN: LessonProgress = {
  stage: 'asked',
  guess: null,
  steps: 0,
  checkGuess: null,
  done: false,
};

/** Begun anew: that it was done once stays. */
export const begunAnew = ({ done }: LessonProgress): LessonProgress => ({ ...NOT_BEGUN, done });

/** How a lesson stands, for the list: 0 not begun, else the number of the stage that it stands at. */
export const stageReached = ({ stage, guess }: LessonProgress): number =>
  guess === null ? 0 : STAGES.indexOf(stage) + 1;
