/** What stands open over the bench. */
export type Sheet = 'cautions' | 'shortcuts' | null;
